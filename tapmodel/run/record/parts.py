"""Parts of a record: what it says of every model, what is filed, what tells which tap it is."""

import json
from collections.abc import Mapping
from typing import Any

# What the model leaves out of a real tap, named in every record.
SIMPLIFICATIONS = (
    "the thread ends in a plane square to the axis; on the lathe the tool is withdrawn there",
    "corners of the profile are sharp; a real tool leaves its nose radius",
)

_TOLD_ONLY = {"run", "delivery"}
_OF_THE_RUN = _TOLD_ONLY | {"schema", "version", "model", "mesh", "made", "files", "left_out"}


def design_part(record: Mapping[str, Any]) -> dict[str, Any]:
    """What of a record tells which tap it is, as it reads in a file."""
    part = {key: value for key, value in record.items() if key not in _OF_THE_RUN}
    return json.loads(json.dumps(part))


def filed(record: Mapping[str, Any]) -> dict[str, Any]:
    """What of a record stands in the file: without what the same job does not repeat.

    Told only are the `run`, which is its seconds and memory, and `delivery`.
    """
    return {key: value for key, value in record.items() if key not in _TOLD_ONLY}
