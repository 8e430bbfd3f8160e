"""What the desk makes of the solid where it has little else to do; it loads the kernel for it."""

from tapmodel.export.step.proved import deliver_step
from tapmodel.geometry.kernel.measure.solid import is_valid
from tapmodel.geometry.kernel.solid_bytes import from_bytes
from tapmodel.geometry.kernel.topology import Solid
from tapmodel.run.desk.handover import SolidFile, take_solid
from tapmodel.run.wish import Order
from tapmodel.stages import OnStage

__all__ = ["is_valid", "write"]


def write(order: Order, handed: SolidFile, stage: OnStage) -> Solid:
    """Write the STEP file of the solid that was put down, read it back, and return the solid.

    Raises:
        InputError: when nothing can be written there.
        KernelError: when the file fails its proof.
    """
    solid = from_bytes(take_solid(handed))
    deliver_step(solid, order.file(".step"), order.design.name, stage)
    return solid
