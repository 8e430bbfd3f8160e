"""The STEP file made at the desk, which loads the kernel for it."""

from tapmodel.desk.handover import SolidFile, take_solid
from tapmodel.export.proved_step import deliver_step
from tapmodel.geometry.solid_bytes import from_bytes
from tapmodel.stages import Told
from tapmodel.wish import Order


def write(order: Order, handed: SolidFile, stage: Told) -> None:
    """Write the solid that was put down, and read the file back.

    Raises:
        InputError: when nothing can be written there.
        KernelError: when the file fails its proof.
    """
    solid = from_bytes(take_solid(handed))
    deliver_step(solid, order.file(".step"), order.design.name, stage)
