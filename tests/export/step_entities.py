"""A STEP file as entities, read without the kernel."""

from collections.abc import Iterator
from dataclasses import dataclass
from pathlib import Path

import numpy as np
from steputils import p21

Floats = np.ndarray


@dataclass(frozen=True, slots=True)
class Entity:
    """One simple entity: its number, type and parameters."""

    ref: str
    name: str
    params: tuple


class StepFile:
    """Entities by reference and by type."""

    def __init__(self, path: Path) -> None:
        """Parse the file at `path`."""
        instances = p21.readfile(str(path)).data[0].instances
        self.names = {name for item in instances.values() for name in _names(item)}
        self._simple = {
            ref: Entity(ref, item.entity.name, tuple(item.entity.params))
            for ref, item in instances.items()
            if hasattr(item, "entity")
        }
        self.text = path.read_text("ascii")

    def __getitem__(self, ref: str) -> Entity:
        """Entity of the number `ref`."""
        return self._simple[str(ref)]

    def all(self, name: str) -> Iterator[Entity]:
        """Every simple entity of one type."""
        return (item for item in self._simple.values() if item.name == name)

    def numbers(self, ref: str) -> Floats:
        """Coordinates of a point, a direction or a vertex."""
        item = self[ref]
        if item.name == "VERTEX_POINT":
            return self.numbers(item.params[1])
        return np.array(item.params[1], dtype=float)

    def frame(self, ref: str) -> tuple[Floats, Floats]:
        """Origin, and the unit axes x, y, z as rows, of an AXIS2_PLACEMENT_3D."""
        _, origin, axis, first = self[ref].params
        z, x = self.numbers(axis), self.numbers(first)
        x = x - z * (x @ z) / (z @ z)
        rows = np.array([x, np.cross(z, x), z])
        return self.numbers(origin), rows / np.linalg.norm(rows, axis=1, keepdims=True)


def _names(item: object) -> list[str]:
    entities = getattr(item, "entities", None) or [item.entity]
    return [entity.name for entity in entities]
