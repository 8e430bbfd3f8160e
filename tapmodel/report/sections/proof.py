"""How well the solid agrees with its design, from the record of a build."""

from typing import Any

from tapmodel.report.blocks import Block, Paragraphs, Row, Rows, Section, Table, Words


def section(record: dict[str, Any]) -> Section:
    """Volume, areas, deviation and mesh; says so where no solid was built."""
    blocks: list[Block] = []
    if "model" in record:
        blocks += _model(record["model"])
    if "mesh" in record:
        blocks.append(_mesh(record["mesh"]))
    if not blocks:
        blocks.append(Paragraphs(("No solid was built for this page.",)))
    return Section("proof", "Proof of the solid", tuple(blocks))


def _model(model: dict[str, Any]) -> list[Block]:
    rows = (
        Row(
            "solids, faces, genus", Words(f"{model['solids']}, {model['faces']}, {model['genus']}")
        ),
        Row("volume", Words(f"{model['volume']:.3f} mm³")),
        Row("volume by quadrature", Words(f"{model['volume_expected']:.3f} mm³")),
        Row("volume differs by", Words(f"{model['volume_relative_error']:.1e}")),
        Row("points held to the design's surfaces", Words(str(model["deviation_points"]))),
        Row("largest deviation", Words(f"{model['deviation_um_max']:.2g} µm")),
    )
    lines = tuple(
        (
            Words(f"{station['z']:.3f} mm"),
            Words(station["what"]),
            Words(f"{station['area']:.5f} mm²"),
            Words(f"{station['area_expected']:.5f} mm²"),
        )
        for station in model["stations"]
    )
    areas = Table(("z", "where", "area of the solid", "by quadrature"), lines, "Sections")
    left_out = Paragraphs(tuple(f"Left out: {text}." for text in model["simplifications"]))
    return [Rows(rows), areas, left_out]


def _mesh(mesh: dict[str, Any]) -> Rows:
    rows = (
        Row("triangles", Words(str(mesh["triangles"]))),
        Row("watertight", Words("yes" if mesh["watertight"] else "no")),
        Row("chord between mesh and solid", Words(f"{mesh['chord_mm']:g} mm")),
        Row("volume of the mesh", Words(f"{mesh['volume']:.3f} mm³")),
    )
    return Rows(rows, "Mesh")
