"""The drawing of a carburised tooth, and the record of it."""

from pathlib import Path
from typing import Any

from tapmodel.errors import InputError
from tapmodel.export.atomic import write_whole
from tapmodel.prediction.heat.record import Carburised
from tapmodel.run.delivery.place import deliver
from tapmodel.run.delivery.staging import staging
from tapmodel.shop.heat.carburised import carburised_record
from tapmodel.version import __version__
from tapmodel.words import Units

SCHEMA = "tapmodel.carburising/1"


def deliver_carbon(
    found: Carburised, thread: str, name: str, out: Path, units: Units = Units.MM
) -> dict[str, Any]:
    """Deliver the drawing as SVG and DXF to a folder of its own, `out/<name>-heat`.

    Args:
        found: with a tooth.
        thread: designation.
        name: of the tap, for files.
        out: folder for results; made if missing.
        units: of lengths in the drawing.

    Returns:
        The record, with `delivery`.

    Raises:
        InputError: when `out` cannot be written, or there is no tooth to draw.
    """
    if found.tooth is None:
        raise InputError(
            "--out", str(out), "only beside a JOB: a flat surface has no tooth to draw"
        )
    # The drawings' library takes a third of a second to load.
    from tapmodel.report.drawings.views.carbon import draw  # noqa: PLC0415

    folder = f"{name}-heat"
    with staging(out, folder) as staged:
        picture = draw(found, found.tooth, thread, units)
        write_whole(staged / f"{name}-carbon.svg", picture.svg().encode())
        picture.write_dxf(staged / f"{name}-carbon.dxf")
        record = {"schema": SCHEMA, "version": __version__, "name": folder}
        record |= carburised_record(found, thread)
        return deliver(staged, out / folder, record)
