"""Every size that a standard lists, and the metric grid beyond the lists, as designations."""

from collections.abc import Collection, Iterator

from sweeps import whole

from tapmodel.standards.tables import read_table
from tapmodel.standards.unified.series import constant_pitch_sizes, series_of

MOST_STARTS = 4

STEP = 17
"""Of which tests take every so many: no step in common with the two, four or five ways in which a
size is written, so that each family is met in either hand and with every number of starts."""

FEW, STEP_OF_FEW = 100, 7
"""Of families of fewer sizes more are taken."""

# Pitches that no standard lists: odd divisions, inch pitches, and what old lathes cut [mm].
ODD_PITCHES = (
    *(0.05, 0.06, 0.07, 0.08, 0.09, 0.1, 0.12, 0.15, 0.22, 0.28, 0.32, 0.4233),
    *(0.55, 0.635, 0.9, 1.1, 1.604, 2.117, 3.175, 4.2333),
)
_ISO_261_PITCHES = (
    *(0.2, 0.25, 0.3, 0.35, 0.4, 0.45, 0.5, 0.6, 0.7, 0.75, 0.8, 1.0, 1.25, 1.5, 1.75),
    *(2.0, 2.5, 3.0, 3.5, 4.0, 4.5, 5.0, 5.5, 6.0, 8.0),
)


def listed_designations() -> Iterator[str]:
    """Every listed size of every family, both hands, with 1 to 4 starts where they can be written.

    Odd numbers of starts stand in the right hand, even ones in the left: a left-hand tap is
    mirrored when its edges are found, so that each hand with each number of starts adds nothing.
    """
    for family in _families():
        yield from family


def sampled(named: Collection[str] = ()) -> list[str]:
    """Of every family the first and last size and some between, and those that are named."""
    texts = list[str]()
    for family in _families():
        every = [*family]
        last = len(every) - 1
        step = STEP if last > FEW else STEP_OF_FEW
        step = 1 if whole() else step
        texts += [t for n, t in enumerate(every) if n % step == 0 or n == last or t in named]
    return texts


def _families() -> Iterator[Iterator[str]]:
    yield _metric()
    yield _trapezoidal()
    yield _acme()
    yield _unified()
    yield _whitworth()
    yield (f"{row['number']} BA" for row in read_table("ba_sizes"))
    yield (f"{row['size']} UNM" for row in read_table("miniature"))
    yield (f"G {row['size']}{hand}" for row in read_table("pipe_sizes") for hand in ("", " LH"))


def _metric() -> Iterator[str]:
    for diameter, pitch in _metric_pairs():
        for starts in range(1, MOST_STARTS + 1):
            yield metric(diameter, pitch, starts, left=starts % 2 == 0)
        yield metric(diameter, pitch, 1, left=True)


def _trapezoidal() -> Iterator[str]:
    for row in read_table("trapezoidal_pitches"):
        for pitch in (float(text) for text in row["pitches"].split("/")):
            for starts in range(1, MOST_STARTS + 1):
                of = f"(P{pitch:g})" if starts > 1 else ""
                left = " LH" if starts % 2 == 0 else ""
                yield f"Tr{row['diameter']}x{starts * pitch:g}{of}{left}"


def _acme() -> Iterator[str]:
    for row in read_table("acme_sizes"):
        yield f"{row['size']}-{row['tpi']} ACME-2G"
        pitch = 1 / float(row["tpi"])
        for starts in range(2, MOST_STARTS + 1):
            left = "-LH" if starts % 2 == 0 else ""
            lengths = f"{pitch:.4f}P-{starts * pitch:.4f}L"
            yield f"{float(row['major']):g}-{lengths}-ACME-2G{left}"


def _unified() -> Iterator[str]:
    for row in read_table("unified_series"):
        for series in ("UNC", "UNF", "UNEF"):
            if row[series]:
                name = f"{row['size']}-{row[series]} {series}"
                yield from (name, f"{name}-2B-LH")
    for row in read_table("unified_constant_pitch"):
        tpi = float(row["tpi"])
        for size in constant_pitch_sizes(tpi):
            if series_of(size, tpi) == "UN":
                yield f"{size:g}-{row['tpi']} UN"


def _whitworth() -> Iterator[str]:
    for row in read_table("whitworth_pitches"):
        for series in ("bsw", "bsf"):
            if row[series]:
                name = f"{row['diameter']} {series.upper()}"
                yield from (name, f"{name} LH")


def metric_grid() -> Iterator[str]:
    """M1 to M300: every diameter of ISO 261 with every pitch it lists anywhere and 20 odd ones."""
    for diameter in sorted({diameter for diameter, _ in _metric_pairs()}):
        for pitch in sorted({*_ISO_261_PITCHES, *ODD_PITCHES}):
            # Coarser than a fifth is no thread, finer than a thousandth no thread either.
            if diameter / 1000 <= pitch <= diameter / 4:
                yield metric(diameter, pitch, 1, left=False)


def metric(diameter: float, pitch: float, starts: int, *, left: bool) -> str:
    """A designation as ISO 965-1 writes it, several starts by lead and pitch."""
    lead = f"xPh{starts * pitch:g}P{pitch:g}" if starts > 1 else f"x{pitch:g}"
    return f"M{diameter:g}{lead}{'-LH' if left else ''}"


def _metric_pairs() -> list[tuple[float, float]]:
    pairs: list[tuple[float, float]] = []
    for row in read_table("metric_pitches"):
        pitches = [row["coarse"], *row["fine"].split("/")]
        pairs += [(float(row["diameter"]), float(pitch)) for pitch in pitches if pitch]
    return pairs
