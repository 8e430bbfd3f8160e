"""Units of the job's fields: a field's type names its unit, and its description ends in it."""

from enum import StrEnum
from typing import TYPE_CHECKING, Any, get_args

if TYPE_CHECKING:
    from pydantic import BaseModel
    from pydantic.fields import FieldInfo


class Unit(StrEnum):
    """What a number of the job counts, as it is written behind the number."""

    NONE = ""
    MM = "mm"
    DEGREES = "deg"
    PERCENT = "%"
    PITCHES = "pitches (leads)"
    OF_SPACING = "of the spacing"
    HRC = "HRC"
    CELSIUS = "°C"
    IN_100 = "per 100 of length"


TOLD = {Unit.MM, Unit.DEGREES, Unit.PERCENT, Unit.HRC, Unit.CELSIUS, Unit.IN_100}
"""Units that a description names in brackets; the others stand in its words."""


def unit_in(field: "FieldInfo") -> Unit:
    """The unit that the type of a field names, `Unit.NONE` for none."""
    return _named(field.annotation) or Unit.NONE


def _named(kind: object) -> Unit | None:
    """The first unit in the arguments of a type, however deep: `list[Annotated[..., unit]]`."""
    for part in get_args(kind):
        found = part if isinstance(part, Unit) else _named(part)
        if found is not None:
            return found
    return None


def description(field: "FieldInfo") -> str:
    """What a field means, with its unit."""
    unit = unit_in(field)
    told = field.description or ""
    return f"{told} [{unit}]" if unit in TOLD else told


def describe(schema: dict[str, Any], model: "type[BaseModel]") -> None:
    """Write the units into the descriptions of a model's JSON schema."""
    for name, field in model.model_fields.items():
        if field.description:
            schema["properties"][field.alias or name]["description"] = description(field)
