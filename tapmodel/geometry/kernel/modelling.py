"""The solid as an object of the modelling package, for those who go on modelling."""

# pyright: reportMissingTypeStubs=false, reportUnknownMemberType=false
# pyright: reportUnknownArgumentType=false
# The package's own types are incomplete.

import cadquery as cq

from tapmodel.geometry.kernel.topology import Solid


def modelled(solid: Solid) -> cq.Solid:
    """The same solid, not copied."""
    return cq.Solid(solid.wrapped)


def workplane(solid: Solid) -> cq.Workplane:
    """A workplane on the tap's front, looking at its point, with the solid on the stack."""
    return cq.Workplane("XY").newObject([modelled(solid)])
