"""What a build ends with on the screen: what was made, how well it agrees, where it is."""

from pathlib import Path
from typing import Any

from tapmodel.report.screen.columns import columns
from tapmodel.report.words.proved import proved
from tapmodel.words import Units


def build_summary(record: dict[str, Any], folder: Path, units: Units) -> str:
    """A short table from the record of a run and the folder of its files, told in `units`."""
    model, flutes = record["model"], record["flutes"]
    rows = [
        (
            "made",
            (
                f"{record['designation']}: {flutes['count']} flutes, {model['faces']} faces, "
                f"{model['volume']:.2f} mm³"
            ),
        ),
        *proved(record, units),
        ("time", _cost(record["run"])),
    ]
    if any(model["moved_mm"].values()):
        rows.insert(-1, ("parted", model["simplifications"][-1]))
    rows += [
        ("file", f"{folder / file['path']}  ({file['bytes'] / 1000:.0f} kB)")
        for file in record["files"]
    ]
    rows.append(("file", f"{folder / 'record.json'}"))
    return "\n".join(columns(rows))


def _cost(run: dict[str, Any]) -> str:
    memory = " and ".join(f"{p['peak_memory_mb']:.0f} MB" for p in run["processes"].values())
    return f"{run['seconds']:.1f} s, {memory}"
