"""Solids out of STEP files, read by the kernel."""

# pyright: reportMissingTypeStubs=false, reportAttributeAccessIssue=false
# pyright: reportUnknownVariableType=false, reportUnknownMemberType=false
# pyright: reportUnknownArgumentType=false, reportUnknownParameterType=false
# The kernel's binding carries no type stubs; only its own names are let off.

from pathlib import Path

from OCP.IFSelect import IFSelect_ReturnStatus
from OCP.Message import Message, Message_ProgressRange
from OCP.STEPControl import STEPControl_Reader
from OCP.StepData import StepData_Factors
from OCP.StepShape import StepShape_ManifoldSolidBrep
from OCP.StepToTopoDS import StepToTopoDS_Builder
from OCP.Transfer import Transfer_TransientProcess

from tapmodel.errors import KernelError
from tapmodel.geometry.kernel.topology import Solid, solids
from tapmodel.stages import Stage


def read_step_text(path: Path) -> list[Solid]:
    """All solids in a STEP file, made fit for use: with curves in the surfaces' parameters.

    Raises:
        KernelError: when the kernel cannot read it.
    """
    # What it has to say of a broken file it would print on stdout, in colours.
    Message.DefaultMessenger_s().ChangePrinters().Clear()
    reader = _read(path)
    if reader.TransferRoots() < 1:
        raise KernelError(Stage.STEP, f"{path} holds nothing that can be read")
    return solids(reader.OneShape())


def read_plain(path: Path) -> list[Solid]:
    """All solids in a STEP file in mm, as it stands: nothing mended, fitted or added.

    That takes a tenth of the time. Good for comparing; volumes and sections cannot be taken.

    Raises:
        KernelError: when the kernel cannot read it.
    """
    reader = _read(path)  # the model lives as long
    model = reader.StepModel()
    items = (model.Value(n) for n in range(1, model.NbEntities() + 1))
    found: list[Solid] = []
    for item in items:
        if isinstance(item, StepShape_ManifoldSolidBrep):
            record = Transfer_TransientProcess(model.NbEntities())
            record.SetModel(model)
            builder = StepToTopoDS_Builder()
            builder.Init(item, record, StepData_Factors(), Message_ProgressRange())
            if not builder.IsDone():
                raise KernelError(Stage.STEP, f"a solid in {path} could not be read")
            found += solids(builder.Value())
    return found


def _read(path: Path) -> STEPControl_Reader:
    reader = STEPControl_Reader()
    status = reader.ReadFile(str(path))
    if status != IFSelect_ReturnStatus.IFSelect_RetDone:
        raise KernelError(Stage.STEP, f"the kernel could not read {path} ({status.name})")
    return reader
