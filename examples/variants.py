"""Worked example of the library: how many flutes for the lens cell, then its files.

    python examples/variants.py [FOLDER]

Compares three numbers of flutes for M18x0.75, takes the one with the widest land that still leaves
chip room, looks at a section, and writes STEP and STL. `variants.ipynb` goes on with the solid.
"""

import sys
from pathlib import Path

import tapmodel

LEAST_CHIP_ROOM = 24.0  # of one flute [mm²]


def main(out: Path) -> None:
    """Choose, model and write one tap."""
    rows = tapmodel.compare("M18x0.75", {"flutes.count": [3, 4, 5]})
    print(rows)

    roomy = [row for row in rows if row["flute_area"] >= LEAST_CHIP_ROOM and not row["errors"]]
    count = min(roomy, key=lambda row: row["chip_thickness"])["flutes.count"]
    tap = tapmodel.design(Path(__file__).with_name("lens-cell.toml"), {"flutes.count": count})
    print(f"\n{tap!r}: rake {tap.figures.rake_crest:.2f} deg at the crest")
    for finding in tap.findings:
        print(f"{finding.severity.value}: {finding.code}")

    (outside,) = tap.section(tap.tap.chamfer_length + 2)
    print(f"{len(outside)} points follow the section behind the chamfer within a micrometre")

    record = tap.write(out, formats=("step", "stl"))
    for file in record["files"]:
        print(f"{file['path']}: {file['bytes'] / 1000:.0f} kB")


if __name__ == "__main__":
    main(Path(sys.argv[1] if len(sys.argv) > 1 else "out"))
