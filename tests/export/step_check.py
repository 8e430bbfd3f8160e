"""A STEP file judged without the kernel: topology by counting, geometry by its own formulas."""

from collections import Counter, defaultdict
from dataclasses import dataclass
from pathlib import Path

import numpy as np
from step_entities import Entity, StepFile
from step_shapes import distances, edge_points


@dataclass(frozen=True, slots=True)
class StepVerdict:
    """What was found.

    Attributes:
        solids, faces, edges: how many.
        edges_amiss: edges not used once each way.
        loops_amiss: loops whose edges do not run head to tail.
        genus: from the Euler sum of the shell.
        vertex_gap: largest distance of a vertex from the end of its curve [mm].
        edge_gap: largest distance of an edge from the surfaces of its faces [mm].
        entities: every type of entity in the file.
        products: names of the parts.
        text: of the file.
    """

    solids: int
    faces: int
    edges: int
    edges_amiss: int
    loops_amiss: int
    genus: float
    vertex_gap: float
    edge_gap: float
    entities: set[str]
    products: list[str]
    text: str


def check_step(path: Path) -> StepVerdict:
    """Read and judge the file at `path`."""
    step = StepFile(path)
    faces = list(step.all("ADVANCED_FACE"))
    edges = list(step.all("EDGE_CURVE"))
    uses: dict[str, Counter[bool]] = defaultdict(Counter)
    on_face: dict[str, list[str]] = {}
    loops_amiss = loops = 0
    for face in faces:
        on_face[face.ref] = []
        for bound in face.params[1]:
            run = list(_loop(step, step[bound]))
            loops += 1
            starts, ends = zip(*(_ends(step[edge], forward) for edge, forward in run), strict=True)
            loops_amiss += ends != (*starts[1:], starts[0])
            for edge, forward in run:
                uses[edge][forward] += 1
                on_face[face.ref].append(edge)
    vertices = {str(vertex) for edge in edges for vertex in edge.params[1:3]}
    euler = len(vertices) - len(edges) + len(faces) - (loops - len(faces))
    sampled = {edge.ref: edge_points(step, edge) for edge in edges}
    return StepVerdict(
        solids=len(list(step.all("MANIFOLD_SOLID_BREP"))),
        faces=len(faces),
        edges=len(edges),
        edges_amiss=sum(uses[edge.ref] != {True: 1, False: 1} for edge in edges),
        loops_amiss=loops_amiss,
        genus=1 - euler / 2,
        vertex_gap=max(np.linalg.norm(gap, axis=1).max() for _, gap in sampled.values()),
        edge_gap=max(
            distances(step, step[face.params[2]], _points(sampled, on_face[face.ref])).max()
            for face in faces
        ),
        entities=step.names,
        products=[item.params[1] for item in step.all("PRODUCT")],
        text=step.text,
    )


def _points(sampled: dict[str, tuple], edges: list[str]) -> np.ndarray:
    return np.concatenate([sampled[edge][0] for edge in edges])


def _loop(step: StepFile, bound: Entity) -> list[tuple[str, bool]]:
    """Edges of a face's bound with the sense in which it runs them, in its order."""
    _, loop, kept = bound.params
    oriented = [step[use].params for use in step[loop].params[1]]
    run = [(str(edge), str(sense) == ".T.") for _, _, _, edge, sense in oriented]
    return run if str(kept) == ".T." else [(edge, not sense) for edge, sense in run[::-1]]


def _ends(edge: Entity, forward: bool) -> tuple[str, str]:
    start, end = (str(vertex) for vertex in edge.params[1:3])
    return (start, end) if forward else (end, start)
