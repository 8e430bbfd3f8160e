"""The exact solid for CAM and CAD programs: AP214, mm, one named part.

AP214 is read by older CAM programs too; AP242 would be as large and say no more here.
"""

from pathlib import Path

from tapmodel.export.atomic import write_whole
from tapmodel.export.clock import stamp
from tapmodel.geometry.kernel.step.text import Statements, real, text
from tapmodel.geometry.kernel.step.topology import Shell
from tapmodel.geometry.kernel.topology import Solid

_HEAD = """ISO-10303-21;
HEADER;
FILE_DESCRIPTION(('exact solid of a tap'),'2;1');
FILE_NAME({name},'{time}',(''),(''),'tapmodel','tapmodel','');
FILE_SCHEMA(('AUTOMOTIVE_DESIGN {{ 1 0 10303 214 1 1 1 1 }}'));
ENDSEC;
DATA;
"""
# How closely edges, surfaces and corners agree is 0.1 nm at worst, and the file states twice that
# [mm]. Readers move ends of curves by as much as is stated: with 5e-7 a few came 0.5 nm off.
UNCERTAINTY = 2e-7
_TAIL = "\nENDSEC;\nEND-ISO-10303-21;\n"


def write_step(solid: Solid, path: Path, name: str) -> None:
    """Write one solid as a STEP file of one part.

    Args:
        solid: the solid.
        path: of the file.
        name: of the part, as a CAD program shows it.

    Raises:
        InputError: when nothing can be written there.
        KernelError: when the solid holds something that no tap has.
    """
    write_whole(path, step_text(solid, name).encode("ascii"))


def step_text(solid: Solid, name: str) -> str:
    """The whole text of the file.

    Raises:
        KernelError: when the solid holds something that no tap has.
    """
    to = Statements()
    _product(to, Shell(to, solid).written(), text(name))
    head = _HEAD.format(name=text(name), time=stamp().strftime("%Y-%m-%dT%H:%M:%S"))
    return head + "\n".join(to.lines) + _TAIL


def _product(to: Statements, solid: str, name: str) -> None:
    """Wrap a solid up as a part: the few statements that every AP214 file needs."""
    origin, z, x = (
        to.point((0, 0, 0)),
        to.direction((0, 0, 1)),
        to.direction((1, 0, 0)),
    )
    frame = to.shared(f"AXIS2_PLACEMENT_3D('',{origin},{z},{x})")
    model = to.own(f"ADVANCED_BREP_SHAPE_REPRESENTATION('',({frame},{solid}),{_context(to)})")
    application = to.own(
        "APPLICATION_CONTEXT('core data for automotive mechanical design processes')"
    )
    to.own(
        "APPLICATION_PROTOCOL_DEFINITION("
        f"'international standard','automotive_design',2000,{application})"
    )
    trade = to.own(f"PRODUCT_CONTEXT('',{application},'mechanical')")
    product = to.own(f"PRODUCT({name},{name},'',({trade}))")
    to.own(f"PRODUCT_RELATED_PRODUCT_CATEGORY('part',$,({product}))")
    version = to.own(f"PRODUCT_DEFINITION_FORMATION('','',{product})")
    stage = to.own(f"PRODUCT_DEFINITION_CONTEXT('part definition',{application},'design')")
    definition = to.own(f"PRODUCT_DEFINITION('design','',{version},{stage})")
    shape = to.own(f"PRODUCT_DEFINITION_SHAPE('','',{definition})")
    to.own(f"SHAPE_DEFINITION_REPRESENTATION({shape},{model})")


def _context(to: Statements) -> str:
    """Units, and how closely curves, surfaces and corners agree."""
    mm = to.own("(LENGTH_UNIT()NAMED_UNIT(*)SI_UNIT(.MILLI.,.METRE.))")
    radian = to.own("(NAMED_UNIT(*)PLANE_ANGLE_UNIT()SI_UNIT($,.RADIAN.))")
    steradian = to.own("(NAMED_UNIT(*)SI_UNIT($,.STERADIAN.)SOLID_ANGLE_UNIT())")
    close = to.own(
        f"UNCERTAINTY_MEASURE_WITH_UNIT(LENGTH_MEASURE({real(UNCERTAINTY)}),{mm},"
        "'distance_accuracy_value','largest gap between edges and surfaces')"
    )
    return to.own(
        "(GEOMETRIC_REPRESENTATION_CONTEXT(3)"
        f"GLOBAL_UNCERTAINTY_ASSIGNED_CONTEXT(({close}))"
        f"GLOBAL_UNIT_ASSIGNED_CONTEXT(({mm},{radian},{steradian}))"
        "REPRESENTATION_CONTEXT('','3D'))"
    )
