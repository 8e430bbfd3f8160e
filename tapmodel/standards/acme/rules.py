"""General-purpose Acme threads, as the design room asks for them."""

from tapmodel.sources import Source
from tapmodel.spec.designations.record import Designation
from tapmodel.standards.acme.hole_limits import AcmeThread, acme_hole_limits, check_size
from tapmodel.standards.cut_tap import cut_class, cut_limits_by
from tapmodel.standards.family_rules import FamilyRules, settled_pitch
from tapmodel.standards.inches import inches, printed, threads_per_inch
from tapmodel.standards.limits import HoleLimitsFound
from tapmodel.standards.thread_forms import ACME
from tapmodel.words import Certainty


def _thread(designation: Designation) -> AcmeThread:
    return AcmeThread(
        diameter=printed(inches(designation.diameter), 4),
        tpi=threads_per_inch(settled_pitch(designation)),
        starts=designation.starts,
    )


def _settle(designation: Designation) -> Designation:
    thread = _thread(designation)
    check_size(thread.diameter, thread.tpi)
    return designation


def _hole_limits(designation: Designation) -> HoleLimitsFound:
    return acme_hole_limits(_thread(designation), designation.effective_class)


RULES = FamilyRules(
    form=ACME,
    settle=_settle,
    hole_limits=_hole_limits,
    tap_class=cut_class,
    tap_limits=cut_limits_by(_hole_limits),
    drop_to_drill=0.975,
    default_class=Source("ASME B1.5", "class 2G is the one preferred", Certainty.MEMORY),
)
