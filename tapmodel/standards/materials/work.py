"""Materials that are tapped, by standard or plain name, with what is published about each."""

from dataclasses import dataclass
from difflib import get_close_matches
from functools import cache

from tapmodel.errors import InputError
from tapmodel.sources import Source
from tapmodel.standards.materials.called import key, told_beside
from tapmodel.standards.materials.groups import WorkGroup, work_groups
from tapmodel.standards.materials.kienzle import Kienzle, fitted_constants
from tapmodel.standards.tables import Row, read_table
from tapmodel.words import Certainty

FIELD = "hole.material"
"""Field of the job that such a name is given in."""

KIENZLE = {
    "KE": Source(
        "König and Essel",
        "specific cutting forces, which reproduce the read rows of a lathe-chuck maker's manual "
        "RN-1391 p. 43 within 6.5 %",
        Certainty.READ,
    ),
    "FCM": Source(
        "Tabellenbuch Metall",
        "p. 215, as read in the material cards of FreeCAD",
        Certainty.READ,
    ),
    "TM": Source("Tabellenbuch Metall", "specific cutting forces", Certainty.MEMORY),
    "KV": Source("Kienzle and Victor", "specific cutting forces", Certainty.MEMORY),
    "LOW": Source("handbooks", "specific cutting forces, low certainty", Certainty.MEMORY),
    "HT": Source(
        "tapmodel",
        "those of the annealed steel, raised as the printed torque of the hardened one",
        Certainty.DERIVED,
    ),
}
"""Sources of the constants of Kienzle's law, by their key in the table."""

FITTED_SOURCE = "a lathe-chuck maker's manual RN-1391"

TORQUE_A = Source(
    "a tap maker's general catalogue 2016-17", "p. 781, tapping torque, table 1", Certainty.READ
)
TORQUE_B = Source("a tap maker's page of calculation formulas", "tapping torque", Certainty.READ)

PLAIN = (
    *("mild steel", "free-cutting steel", "medium-carbon steel", "alloy steel", "tool steel"),
    *("silver steel", "cast steel", "stainless steel", "cast iron", "nodular iron"),
    *("malleable iron", "brass", "bronze", "gunmetal", "copper", "aluminium", "cast aluminium"),
    "magnesium",
)
"""Names that a message offers to whoever knows no standard one; each is an alias or a name."""

NEAREST = 4
"""Names like the one typed that a message offers at most."""


@dataclass(frozen=True, slots=True)
class WorkMaterial:
    """A material to be tapped.

    Attributes:
        name: as its standard writes it, or plainly.
        group: what its kind asks of a tap.
        hardness: Brinell, as usually delivered.
        kienzle: specific cutting force of a plain edge.
        torque_a, torque_b: specific force [N/mm²] of two printed formulas of the tapping torque;
            None where their tables have no row for the material or its group. The three forces are
            different numbers, none of which does for another's formula.
        printed: torque by these formulas in that of the teeth, least and greatest: of this material
            where both are printed, else of all in its group; None where none is of any.
        called: as whoever asked for it did; empty where nobody named it.
    """

    name: str
    group: WorkGroup
    hardness: float
    kienzle: Kienzle
    torque_a: float | None
    torque_b: float | None
    printed: tuple[float, float] | None = None
    called: str = ""

    @property
    def told(self) -> str:
        """As papers write it: the word of whoever asked, and behind it the name of the table."""
        return told_beside(self.called, self.name)


def work_material(text: str) -> WorkMaterial:
    """The material of that name: case, blanks, dashes, dots and other signs make no difference.

    Raises:
        InputError: no material has such a name; the message offers those like it.

    Source: as each row of its table says.
    """
    found = _bykey().get(key(text))
    if found is None:
        raise InputError(FIELD, text, _offered(text))
    return found


@cache
def work_materials() -> tuple[WorkMaterial, ...]:
    """All materials, in the order of the table.

    Source: as each row of its table says.
    """
    return tuple(_material(row) for row in read_table("work_materials"))


@cache
def names_of(material: str) -> tuple[str, ...]:
    """Every name by which the material of that name is known, the name itself first.

    Raises:
        KeyError: no material has that name.

    Source: from memory.
    """
    rows = {row["name"]: row for row in read_table("work_materials")}
    return (material, *_aliases(rows[material]))


def _offered(text: str) -> str:
    """What a message says is allowed: names like the one typed, and the plain ones."""
    likely = get_close_matches(key(text)[:60], _spelled(), n=NEAREST, cutoff=0.6)
    plain = "a standard name such as C45, 42CrMo4, 1.4301 or EN AW-6082, or one of "
    plain += ", ".join(PLAIN)
    meant = " or ".join(f'"{_spelled()[key]}"' for key in likely)
    return f"did you mean {meant}? Else {plain}" if meant else plain


@cache
def _spelled() -> dict[str, str]:
    """Every name by its key."""
    names = (name for material in work_materials() for name in names_of(material.name))
    return {key(name): name for name in names}


@cache
def _bykey() -> dict[str, WorkMaterial]:
    return {
        key(name): material for material in work_materials() for name in names_of(material.name)
    }


def _aliases(row: Row) -> list[str]:
    return [name for part in row["aliases"].split(";") if (name := part.strip())]


def _material(row: Row) -> WorkMaterial:
    group = work_groups()[row["group"]]
    return WorkMaterial(
        name=row["name"],
        group=group,
        hardness=float(row["hb"]),
        kienzle=_kienzle(row, group.kienzle_rake),
        torque_a=_number(row["kc_a"]),
        torque_b=_number(row["kc_b"]),
        printed=_printed(row),
    )


def _kienzle(row: Row, rake: float) -> Kienzle:
    key = row["kienzle"]
    if key in KIENZLE:
        return Kienzle(float(row["kc11"]), float(row["mc"]), rake, KIENZLE[key])
    kc11, mc = fitted_constants(key)
    place = f"p. 43 table 2, fitted to the row of {key}"
    return Kienzle(kc11, mc, rake, Source(FITTED_SOURCE, place, Certainty.DERIVED))


def _printed(row: Row) -> tuple[float, float] | None:
    """Of the material alone where both formulas tell of it: one of two may be the narrower."""
    alone = row["kc_a"] and row["kc_b"]
    like = [row] if alone else _by_group()[row["group"]]
    lows, highs = (
        [float(one[end]) for one in like if one[end]] for end in ("printed_low", "printed_high")
    )
    return (min(lows), max(highs)) if lows else None


@cache
def _by_group() -> dict[str, list[Row]]:
    groups: dict[str, list[Row]] = {}
    for row in read_table("work_materials"):
        groups.setdefault(row["group"], []).append(row)
    return groups


def _number(cell: str) -> float | None:
    return float(cell) if cell else None
