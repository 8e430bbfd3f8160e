"""The answers about hardening and carburising as pages of text."""

from collections.abc import Iterator

from tapmodel.prediction.heat.record import CASE, Carburised, Place, Profile
from tapmodel.report.blocks import (
    Block,
    Chapter,
    Length,
    Paragraphs,
    Quantity,
    Row,
    Rows,
    Table,
    Telling,
    Temperature,
    Told,
    Words,
)
from tapmodel.report.chapters.cautions import HARDENING, RULES
from tapmodel.report.chapters.machines.hardening import told_of_sections
from tapmodel.report.screen.chapter import chapter_lines
from tapmodel.report.screen.columns import Pen
from tapmodel.report.units import Units, as_text, in_words
from tapmodel.report.words.carburising import CAUSTIC, CAUTION, COMPUTED, heeded
from tapmodel.report.words.hardening import SUPPLIER, up_to
from tapmodel.shop.heat.carburised import Heed, heeds
from tapmodel.shop.heat.hardened import Hardened
from tapmodel.standards.materials.hardening import Fact, Of
from tapmodel.standards.materials.steels import TemperRow

UNKNOWN = Words("not known here: the supplier's data say it")


def hardened_page(found: Hardened, units: Units, pen: Pen) -> str:
    """Heat, soak, medium, temper and the section, each with its source."""
    steel = found.judged.hardening.steel
    lines = (Rows(tuple(_hardening(found))), Paragraphs(tuple(_told(found))))
    return _page(Chapter("heat", f"Harden and temper {steel.name}", lines), units, pen)


def _hardening(found: Hardened) -> Iterator[Row]:
    judged, tempering = found.judged, found.tempering
    hardening, known = judged.hardening, judged.known
    steel = hardening.steel
    if steel.case_depth:
        yield Row("carburise first, depth of the case", Length(steel.case_depth, 1))
    yield Row("quench from", Temperature((steel.harden_low, steel.harden_high)))
    preheat, soak, hard = (hardening.fact(of) for of in (Of.PREHEAT, Of.SOAK, Of.QUENCHED))
    if preheat:
        yield Row("preheat at", Temperature((preheat.low,)))
    yield Row("hold at that heat", Words(f"{_range(soak)} min") if soak else UNKNOWN)
    yield Row("quench in", Words(steel.quench))
    yield Row("hardness as quenched", Words(f"{_range(hard)} HRC") if hard else UNKNOWN)
    if not steel.case_depth:
        told = Told(lambda units: up_to(judged, known, units)) if known else UNKNOWN
        yield Row("hardens through", told)
        for other in hardening.in_other_media:
            yield Row(f"hardens through in {other.quench}", Told(_to_some(other)))
    yield Row("temper at", Temperature((tempering.temper,)))
    yield Row("hardness after that", Words(f"{tempering.hardness:.3g} HRC"))


def _to_some(fact: Fact) -> Telling:
    return lambda units: f"to some {in_words(fact.high, '.0f', units)} round"


def _range(fact: Fact) -> str:
    return " to ".join(dict.fromkeys(f"{end:g}" for end in (fact.low, fact.high)))


def _told(found: Hardened) -> Iterator[str | Telling]:
    judged, tempering = found.judged, found.tempering
    rows = tuple(dict.fromkeys((tempering.before, tempering.after)))
    yield lambda units: _between(rows, units)
    if judged.sections:
        yield from told_of_sections(judged)
    others = {str(fact.source) for fact in judged.hardening.facts}
    sources = sorted({str(row.source) for row in rows} | others)
    yield f"Sources: {'; '.join([str(judged.hardening.steel.harden_source), *sources])}."
    yield SUPPLIER
    yield HARDENING
    yield RULES


def _between(rows: tuple[TemperRow, ...], units: Units) -> str:
    ends = [f"{_hot(row.temper, units)} for {row.hardness:g} HRC" for row in rows]
    if len(ends) == 1:
        return f"The temper is a printed row: {ends[0]}."
    return f"The temper lies between two printed rows, straight: {' and '.join(ends)}."


def _hot(celsius: float, units: Units) -> str:
    return as_text(Temperature((celsius,)), units)


def carburised_page(found: Carburised, name: str, units: Units, pen: Pen) -> str:
    """Carbon under a flat surface and in the tooth, the time, and what to heed."""
    asked = found.asked
    rows = (
        Row(
            "carbon of the steel, of the surface", Words(f"{asked.steel:g} %, {asked.surface:g} %")
        ),
        Row("at", Temperature((asked.celsius,))),
        Row("for", Words(_time(asked.hours))),
        *_cases(found),
    )
    blocks: list[Block] = [Rows(rows), _table(found)]
    texts = [_heeded(heed, found) for heed in heeds(found)]
    blocks.append(Paragraphs((*texts, COMPUTED, SUPPLIER, CAUTION, HARDENING, CAUSTIC, RULES)))
    title = f"Carburise {name}" if name else "Carburise a flat surface"
    return _page(Chapter("carburise", title, tuple(blocks)), units, pen)


def _heeded(heed: Heed, found: Carburised) -> Telling:
    return lambda units: heeded(heed, found, units)


def _cases(found: Carburised) -> Iterator[Row]:
    """Depths of the case, and the middle of the tooth."""
    tooth, case = found.tooth, f"case, to {CASE:g} % carbon"
    if tooth is not None:
        yield Row(f"{case}, under the root", _depth(tooth.under_root))
        middle = tooth.middle
        yield Row("carbon in the middle of the tooth", Words(f"{middle.carbon:.2f} %"))
        hard = f"{middle.hardness:.0f} HRC"
        yield Row("hardness of its martensite, as quenched", Words(hard))
    yield Row(f"{case}, under a flat", _depth(found.flat))
    yield Row("total case by Harris's table, under a flat", Length(found.harris, 2))


def _depth(profile: Profile) -> Quantity:
    return Words("none") if profile.case is None else Length(profile.case, 2)


def _time(hours: float) -> str:
    """Hours, or minutes where they are few."""
    return f"{hours:.3g} h" if hours >= 2 else f"{60 * hours:.3g} min"


def _table(found: Carburised) -> Table:
    """Straight down from crest, root and a flat surface, as far as there is any carbon."""
    tooth = found.tooth
    lines = {"under a flat": found.flat}
    if tooth is not None:
        lines = {"under the crest": tooth.under_crest, "under the root": tooth.under_root} | lines
    depths = [place.depth for place in max((one.places for one in lines.values()), key=len)]
    told = {depth: [_at(profile, depth) for profile in lines.values()] for depth in depths}
    least = found.asked.steel + _TRACE
    deep = [d for d, places in told.items() if any(p and p.carbon > least for p in places)]
    return Table(
        ("depth", *lines),
        tuple((Length(depth, 1), *map(_cell, told[depth])) for depth in deep),
        "carbon, hardness of its martensite as quenched, austenite that a quench from there leaves",
    )


_TRACE = 0.005
"""More carbon than the steel has, that is not told any more [mass %]."""


def _at(profile: Profile, depth: float) -> Place | None:
    return next((place for place in profile.places if place.depth == depth), None)


def _cell(place: Place | None) -> Words:
    if place is None:
        return Words("-")
    return Words(f"{place.carbon:.2f} %, {place.hardness:.0f} HRC, {place.retained:.0%}")


def _page(chapter: Chapter, units: Units, pen: Pen) -> str:
    return "\n".join(chapter_lines(chapter, units, pen))
