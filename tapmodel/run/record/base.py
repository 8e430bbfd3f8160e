"""What all parts of the record's model share: the base, and numbers with their units."""

from typing import Annotated

from pydantic import BaseModel, ConfigDict, Field

Millimetres = Annotated[float, Field(json_schema_extra={"unit": "mm"})]
Micrometres = Annotated[float, Field(json_schema_extra={"unit": "µm"})]
Degrees = Annotated[float, Field(json_schema_extra={"unit": "deg"})]
SquareMillimetres = Annotated[float, Field(json_schema_extra={"unit": "mm²"})]
NewtonMetres = Annotated[float, Field(json_schema_extra={"unit": "N·m"})]
CubicMillimetres = Annotated[float, Field(json_schema_extra={"unit": "mm³"})]
Number = float | int | str | bool | list[float] | list[str] | None


class Part(BaseModel):
    """Base of all parts: nothing unknown is read, nothing is converted."""

    model_config = ConfigDict(extra="forbid", frozen=True, defer_build=True)
