"""How well the model agrees with the design: what was measured on it, beside what must be."""

from collections.abc import Sequence
from functools import partial

from tapmodel.checks.proof.record import MeshProof, ModelProof, Station
from tapmodel.report.blocks import (
    Area,
    Block,
    Chapter,
    Length,
    Paragraphs,
    Quantity,
    Row,
    Rows,
    Table,
    Told,
    Words,
)
from tapmodel.report.units import MM_PER_INCH, volume_in_words
from tapmodel.words import Units

_SECTIONS = "Areas of sections square to the axis"
_SURFACES = "Sampled points of the faces against the surfaces of the design"
_FEATURES = "Points of the design's features and edges against the faces"


def chapter(proof: ModelProof, mesh: MeshProof, simplifications: Sequence[str] = ()) -> Chapter:
    """Proof of the solid and of its mesh.

    Args:
        proof: of the solid.
        mesh: of the triangles made from it.
        simplifications: what the model leaves out of a real tap, a sentence each.
    """
    blocks: list[Block] = [Rows(_solid(proof), "Solid"), _stations(proof)]
    blocks += [_surfaces(proof), _features(proof)]
    blocks.append(Rows(_mesh(mesh), "Mesh"))
    if simplifications:
        left_out = tuple(f"Left out of the model: {text}." for text in simplifications)
        blocks.append(Paragraphs(left_out))
    return Chapter("proof", "Proof of the model", tuple(blocks))


def _solid(proof: ModelProof) -> tuple[Row, ...]:
    return (
        Row("closed solids", Words(str(proof.solids))),
        Row("faces", Words(str(proof.faces))),
        Row("through holes (genus)", Words(str(proof.genus))),
        Row("valid for the kernel", Words("yes" if proof.valid else "no")),
        Row("volume, measured", _volume(proof.volume)),
        Row("volume, summed up from the design", _volume(proof.volume_expected)),
        Row("relative difference", Words(f"{proof.volume_relative_error:+.1e}")),
    )


def _stations(proof: ModelProof) -> Table:
    head = ("height above the front", "of what", "measured", "must be", "relative difference")
    return Table(head, tuple(map(_station, proof.stations)), _SECTIONS)


def _station(station: Station) -> tuple[Quantity, ...]:
    return (
        Length(station.z),
        Words(station.what),
        Area(station.area, 7),
        Area(station.area_expected, 7),
        Words(f"{station.area / station.area_expected - 1:+.1e}"),
    )


def _surfaces(proof: ModelProof) -> Table:
    farthest = (proof.deviation_um_max, proof.deviation_points)
    return _farthest(("surface", _SURFACES), proof.deviation_um_by_surface, farthest)


def _features(proof: ModelProof) -> Table:
    farthest = (proof.ideal_um_max, proof.ideal_points)
    return _farthest(("feature", _FEATURES), proof.ideal_um_by_feature, farthest)


def _farthest(
    titles: tuple[str, str], by_name: dict[str, float], total: tuple[float, int]
) -> Table:
    kind, title = titles
    lines: list[tuple[Quantity, ...]] = [
        (Words(name), _off(micrometres)) for name, micrometres in by_name.items()
    ]
    last = (Words("all"), _off(total[0], f" at {total[1]} points"))
    return Table((kind, "farthest off"), (*lines, last), title)


def _off(micrometres: float, where: str = "") -> Told:
    """A distance between model and design, to two digits."""
    return Told(lambda units: _distance(micrometres, units) + where)


def _distance(micrometres: float, units: Units) -> str:
    inches = micrometres / 1000 / MM_PER_INCH
    texts = {Units.MM: f"{micrometres:.2g} µm", Units.INCH: f"{inches:.2g} in"}
    return texts[units] if units in texts else " = ".join(texts.values())


def _volume(mm3: float) -> Told:
    return Told(partial(volume_in_words, mm3))


def _mesh(mesh: MeshProof) -> tuple[Row, ...]:
    return (
        Row("triangles", Words(str(mesh.triangles))),
        Row("chord to the solid", Length(mesh.chord_mm)),
        Row("watertight", Words("yes" if mesh.watertight else "no")),
        Row("cuts itself", Words("yes" if mesh.self_intersecting else "no")),
        Row("volume", _volume(mesh.volume)),
    )
