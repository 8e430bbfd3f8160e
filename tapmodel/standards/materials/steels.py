"""Steels for taps: how hard tempering leaves them, how they are hardened, how tough they are."""

from dataclasses import dataclass
from difflib import get_close_matches
from functools import cache, lru_cache
from itertools import pairwise

from tapmodel.errors import InputError, MeantError
from tapmodel.sources import Source
from tapmodel.spec.temperatures import celsius
from tapmodel.standards.materials.called import key, told_beside
from tapmodel.standards.tables import Row, cell_source, read_table

DEFAULT = "O1"
"""For a shop with a small furnace: it hardens in oil, hardly warps, and is tempered to light straw
(400 F, 62 HRC) in a kitchen oven (common practice)."""

CARBURISING = 850.0
"""From which on mild steel is austenite right through and takes up carbon [deg C] (common
practice)."""

FIELD = "tap.material"
TEMPER_FIELD = "tap.temper"

_SEVERAL = dict.fromkeys(map(key, ("drill rod", "tool steel", "carbon steel")), "W1 or O1")
"""Names under which more than one steel is sold, with the usual ones (common practice): drill rod
hardens in water or in oil."""

ROUNDED = 0.5
"""Degrees by which a row in °F may be missed by who types whole °C."""

_LONGEST = 60  # letters of a name that suggestions are sought for

_TELLING, _NEAR = 5, 0.8
"""Letters of a name that may be mistyped, and how like another it then is. In a shorter one, as in
O3 or HSS-E, another letter is another steel."""


@dataclass(frozen=True, slots=True)
class TapSteel:
    """A steel as it is in the tap.

    Attributes:
        name: as the trade calls it.
        hardness: of the tap, or of its case [HRC].
        temper: temperature of tempering [deg C]; 0 where the hardness was given without one.
        toughness: KIc [MPa·sqrt(m)].
        harden_low, harden_high: from which it is quenched [deg C].
        quench: water, oil or air.
        case_depth: of a carburised steel [mm]; 0 for one that is hard through.
        core_tensile: tensile strength under the case [MPa]; 0 likewise.
        source: of the hardness.
        harden_source: of the range from which it is quenched, and the quench.
        called: as whoever asked for it did; empty where nobody named it.
    """

    name: str
    hardness: float
    temper: float
    toughness: float
    harden_low: float
    harden_high: float
    quench: str
    case_depth: float
    core_tensile: float
    source: Source
    harden_source: Source
    called: str = ""

    @property
    def furnace(self) -> float:
        """What the furnace must reach at least [deg C]: to harden it, and to carburise it first.

        Source: `harden_low`, `CARBURISING`.
        """
        return max(self.harden_low, CARBURISING) if self.case_depth else self.harden_low

    @property
    def told(self) -> str:
        """As papers write it: the word of whoever asked, and behind it the name of the table."""
        return told_beside(self.called, self.name)


def steel_names() -> tuple[str, ...]:
    """Names of all steels held, as they are told to the user."""
    return tuple(row["name"] for row in read_table("tool_steels"))


# Every design asks for several, and every trial of a cure for the same ones again.
@lru_cache(maxsize=256)
def steel_named(text: str, *, temper: float | None = None) -> TapSteel:
    """A steel by its name, or by another of its names; case and signs make no difference.

    Args:
        text: the name.
        temper: at which it was tempered [deg C]; None for the usual one.

    Raises:
        MeantError: more than one steel is called so.
        InputError: none is, or the table has no hardness for that temper.

    Source: the tables of tool steels, each row with its own.
    """
    row = _row(text)
    heat = celsius(float(row["usual_temper"]), row["unit"]) if temper is None else temper
    hardness, source = hardness_after(row["name"], heat)
    return TapSteel(
        name=row["name"],
        hardness=hardness,
        temper=heat,
        toughness=float(row["toughness"]),
        harden_low=celsius(float(row["harden_low"]), row["unit"]),
        harden_high=celsius(float(row["harden_high"]), row["unit"]),
        quench=row["quench"],
        case_depth=float(row["case"]),
        core_tensile=float(row["core"]),
        source=source,
        harden_source=cell_source(row["name"], "hardening", row["read"]),
    )


def hardness_after(name: str, temper: float) -> tuple[float, Source]:
    """Hardness after tempering [HRC], and where it is published; straight between the rows.

    Args:
        name: one of `steel_names`.
        temper: [deg C].

    Raises:
        InputError: the table does not go so low or so high.

    Source: rows of the table of tempering; no formula fits a whole row of tool steel.
    """
    rows = temper_rows(name)
    low, high = rows[0].temper, rows[-1].temper
    if not low - ROUNDED <= temper <= high + ROUNDED:
        raise InputError(TEMPER_FIELD, temper, f"{low:.0f} to {high:.0f} °C for {name}")
    for before, after in pairwise(rows):
        if temper <= after.temper or after is rows[-1]:
            share = (temper - before.temper) / (after.temper - before.temper)
            share = min(max(share, 0.0), 1.0)
            nearer = before if share < 0.5 else after
            return before.hardness + share * (after.hardness - before.hardness), nearer.source
    raise InputError(TEMPER_FIELD, temper, f"no table for {name}")


@dataclass(frozen=True, slots=True)
class TemperRow:
    """A printed row of a table of tempering.

    Attributes:
        temper: temperature [deg C].
        hardness: after it [HRC].
        source: who published it.
    """

    temper: float
    hardness: float
    source: Source


@cache
def temper_rows(name: str) -> tuple[TemperRow, ...]:
    """The table of tempering of a steel, from the lowest temperature.

    Args:
        name: one of `steel_names`.

    Source: each row with its own.
    """
    rows = (row for row in read_table("tool_steel_tempering") if row["steel"] == name)
    return tuple(
        TemperRow(
            celsius(float(row["temperature"]), row["unit"]), float(row["hardness"]), _source(row)
        )
        for row in rows
    )


def _source(row: Row) -> Source:
    place = f"tempering, {row['temperature']} °{row['unit']}"
    return cell_source(row["steel"], place, row["read"])


def _row(text: str) -> Row:
    wanted = key(text)
    names = _by_key()
    if wanted in names:
        return names[wanted]
    if wanted in _SEVERAL:
        raise MeantError(FIELD, text, _SEVERAL[wanted])
    raise InputError(FIELD, text, _offered(wanted))


def _offered(wanted: str) -> str:
    """What a message says is allowed: every steel, and first those whose name is near."""
    near = [name for name in _by_key() if len(name) >= _TELLING]
    close = get_close_matches(wanted[:_LONGEST], near, n=3, cutoff=_NEAR)
    begun = [name for name in near if len(wanted) >= _TELLING and name.startswith(wanted)]
    likely = dict.fromkeys(_by_key()[name]["name"] for name in (close or begun))
    every = f"one of {', '.join(steel_names())}"
    meant = " or ".join(f'"{name}"' for name in likely)
    return f"did you mean {meant}? Else {every}" if meant else every


@cache
def _by_key() -> dict[str, Row]:
    """The row of every name: case, blanks, dashes, dots and other signs make no difference."""
    rows = read_table("tool_steels")
    called = {key(row["name"]): row for row in rows}
    for row in rows:
        called |= {key(other): row for other in row["other_names"].split(";")}
    return called
