"""STEP text out of a solid and back, by the kernel; files are the export room's business."""

# pyright: reportMissingTypeStubs=false, reportAttributeAccessIssue=false
# pyright: reportUnknownVariableType=false, reportUnknownMemberType=false
# pyright: reportUnknownArgumentType=false, reportUnknownParameterType=false
# The kernel's binding carries no type stubs; only its own names are let off.

from pathlib import Path

import cadquery as cq
from OCP.APIHeaderSection import APIHeaderSection_MakeHeader
from OCP.IFSelect import IFSelect_ReturnStatus
from OCP.Interface import Interface_Static
from OCP.Message import Message
from OCP.StepBasic import StepBasic_Product
from OCP.STEPControl import STEPControl_Reader, STEPControl_StepModelType, STEPControl_Writer
from OCP.StepData import StepData_StepModel
from OCP.TCollection import TCollection_HAsciiString

from tapmodel.errors import KernelError
from tapmodel.geometry.topology import Solid

# AP214 is read by older CAM programs too; AP242 would be as large and say no more here.
_SETTINGS = {
    "write.step.schema": "AP214IS",
    "write.step.unit": "MM",
    "write.surfacecurve.mode": "Off",
    "write.step.assembly": "Off",
}


def write_step_text(solid: Solid, path: Path, name: str) -> None:
    """Write one solid as a single part of AP214, in mm, to 13 digits.

    Curves in the parameters of the surfaces are left out: they would double the file, and
    readers compute them.

    Args:
        solid: the solid.
        path: of the file.
        name: of the product in the file.

    Raises:
        KernelError: when the kernel refuses.
    """
    writer = STEPControl_Writer()
    for key, value in _SETTINGS.items():
        if not Interface_Static.SetCVal_s(key, value):
            raise KernelError("STEP", f"the kernel does not know the setting {key} = {value}")
    _demand(
        writer.Transfer(solid.wrapped, STEPControl_StepModelType.STEPControl_ManifoldSolidBrep),
        "the solid could not be expressed in STEP",
    )
    _label(writer.Model(), name)
    _demand(writer.Write(str(path)), f"the kernel could not write {path}")


def read_step_text(path: Path) -> list[Solid]:
    """All solids in a STEP file.

    Raises:
        KernelError: when the kernel cannot read it.
    """
    # What it has to say of a broken file it would print on stdout, in colours.
    Message.DefaultMessenger_s().ChangePrinters().Clear()
    reader = STEPControl_Reader()
    _demand(reader.ReadFile(str(path)), f"the kernel could not read {path}")
    if reader.TransferRoots() < 1:
        raise KernelError("STEP", f"{path} holds nothing that can be read")
    return cq.Shape.cast(reader.OneShape()).Solids()


def _demand(status: IFSelect_ReturnStatus, complaint: str) -> None:
    if status != IFSelect_ReturnStatus.IFSelect_RetDone:
        raise KernelError("STEP", f"{complaint} ({status.name})")


def _label(model: StepData_StepModel, name: str) -> None:
    """Name the product and the header; the kernel would number its products by itself."""
    text = TCollection_HAsciiString(_encoded(name))
    for number in range(1, model.NbEntities() + 1):
        entity = model.Value(number)
        if isinstance(entity, StepBasic_Product):
            entity.SetName(text)
            entity.SetId(text)
    header = APIHeaderSection_MakeHeader(model)
    nobody = TCollection_HAsciiString("")
    header.SetName(text)
    header.SetAuthorValue(1, nobody)
    header.SetOrganizationValue(1, nobody)
    header.SetOriginatingSystem(TCollection_HAsciiString("tapmodel"))


def _encoded(name: str) -> str:
    """A name in the plain letters of ISO 10303-21; apostrophes and backslashes the kernel doubles.

    Source: ISO 10303-21 clause 6.4.3 (from memory): other letters as hexadecimals, of four
    digits after X2 or of eight after X4.
    """
    return "".join(_letter(c) for c in name)


def _letter(c: str) -> str:
    code = ord(c)
    if 31 < code < 127:
        return c
    return f"\\X2\\{code:04X}\\X0\\" if code < 0x10000 else f"\\X4\\{code:08X}\\X0\\"
