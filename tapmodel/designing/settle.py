"""The whole design of a tap, in the order in which its values are settled, and judged."""

import re
from dataclasses import replace
from functools import lru_cache

from tapmodel.designing.choose.blank import Front, choose_blank
from tapmodel.designing.choose.chamfer import Teeth, choose_chamfer
from tapmodel.designing.choose.drill import with_drill_in_mm
from tapmodel.designing.choose.flutes import choose_flutes
from tapmodel.designing.choose.hole import tapped_hole
from tapmodel.designing.choose.ledger import NO_ADVICE, Advice, Ledger
from tapmodel.designing.choose.part import part_of_set
from tapmodel.designing.choose.relief import choose_reliefs
from tapmodel.designing.choose.thread import tap_thread
from tapmodel.designing.choose.work import choose_material, choose_work
from tapmodel.designing.limits.chips import chip_range
from tapmodel.designing.questioned import questioned
from tapmodel.designing.record import TapDesign
from tapmodel.designing.rules.order import Context, findings, foreseen
from tapmodel.designing.weighing.core import stronger_core
from tapmodel.designing.weighing.shank import stronger_shank
from tapmodel.errors import NoTapError
from tapmodel.findings import Finding
from tapmodel.shape.figures import figures_of
from tapmodel.shape.flute_section import land_angle
from tapmodel.spec.job import DESCRIBED, Job
from tapmodel.tap.tap import Flutes, Tap, chamfer_length


def settle(job: Job) -> TapDesign:
    """Settle every number of the tap that `job` asks for, then judge it.

    Findings of severity error stand in the result; nothing is repaired, and no cure is sought. A
    bare number that makes sense only in another unit is asked back instead: what else the rules
    would find follows from it.

    Raises:
        InputError: a value that cannot be used at all.
        NoTapError: values that leave no tap to describe, or that are asked back.

    Source: the functions called here name theirs, choice by choice.
    """
    questions = asked_back(job)
    if questions:
        raise NoTapError(*questions)
    return settled_as_mm(job)


def settled_as_mm(job: Job) -> TapDesign:
    """The same, every bare number taken for the mm that it is: values found by a rule are.

    Raises:
        InputError, NoTapError: as `settle`, but nothing is asked back.

    Source: as `settle`.
    """

    def trial(advice: Advice) -> TapDesign:
        return foreseen(_settled(job, advice))

    # No tap has both: one is of coarse threads, the other of large and fine ones.
    return stronger_shank(stronger_core(trial(NO_ADVICE), trial), trial)


def asked_back(job: Job) -> tuple[Finding, ...]:
    """Bare numbers that make sense only in another unit, each an error.

    Raises:
        InputError: a value that cannot be used at all.

    Source: as `tapmodel.designing.questioned.questioned`.
    """
    given = job.typed()
    ruled = _by_rule(job.designation) if len(given) > 1 else None
    return tuple(questioned(given, ruled)) if ruled else ()


@lru_cache(maxsize=64)
def _by_rule(designation: str) -> TapDesign | None:
    """The design in which nothing is given but the thread; None where the rules leave no tap."""
    try:
        return _settled(Job.model_validate({"designation": designation}))
    except NoTapError:
        return None


def rejudged(job: Job, made: TapDesign) -> TapDesign:
    """A tap in the place of the one that a job asks for, judged by the same rules and foreseen.

    It is there, whatever rule it breaks: so it is foreseen wherever it has a solid.

    Args:
        job: that was asked for.
        made: its design, with another tap and the figures of that.

    Raises:
        InputError, NoTapError: as `settle`.

    Source: as `settle`.
    """
    _, context = _chosen(job, NO_ADVICE)
    # What the job wishes of its flutes was judged when they were chosen.
    context = replace(context, flutes=replace(context.flutes, unmet=None))
    judged = replace(made, findings=findings(made, context), prediction=None)
    return foreseen(judged, broken=True)


def _settled(job: Job, advice: Advice = NO_ADVICE) -> TapDesign:
    """The tap and what its rules find; what it will do in the hole is not yet foreseen."""
    design, context = _chosen(job, advice)
    return replace(design, findings=findings(design, context))


def _chosen(job: Job, advice: Advice) -> tuple[TapDesign, Context]:
    """The tap, not yet judged, and what its rules need beside it."""
    ledger = Ledger(with_drill_in_mm(job.given()), advice)
    hole = tapped_hole(job.designation, ledger)
    thread, limits = tap_thread(hole, ledger)
    part = part_of_set(thread, hole, ledger)
    wires = ledger.given_numbers("shop.wires")
    # Nothing of the tap follows from these: kept for whoever mills, threads and relieves it.
    ledger.given_numbers("shop.plates")
    ledger.given("shop.dividing_ratio")
    ledger.given("shop.leadscrew")
    ledger.given_numbers("shop.gears")
    for text in (*sorted(DESCRIBED), "shop.relief_by", "shop.mill_control", "shop.index"):
        ledger.given_word(text)
    ledger.given_numbers("shop.wheels")
    ledger.given("shop.offset_step")
    ledger.given("shop.indicator_step")
    ledger.given("shop.rate")
    material = choose_material(ledger)
    flutes = choose_flutes(thread, hole, material.group, ledger)
    count, section = flutes.wish.count, flutes.section
    teeth = Teeth(count, chip_range(material.group, thread.pitch))
    chamfer = choose_chamfer(thread, hole, teeth, ledger)
    land = land_angle(section, count, thread.major / 2)
    relief = choose_reliefs(thread, hole.diameter, land, ledger)
    length = chamfer_length(thread, chamfer)
    work = choose_work(material, hole.diameter, thread.pitch, length / thread.lead, ledger)
    front = Front(length, chamfer.point_diameter, section, work.depth)
    chosen = choose_blank(thread, front, hole, ledger)
    tap = Tap(
        thread=thread,
        chamfer=chamfer,
        flutes=Flutes(
            count=count,
            cutter_diameter=2 * section.ball_radius,
            offset=section.offset,
            centre_radius=section.centre_radius,
            full_depth_length=chosen.full_depth_length,
        ),
        relief=relief,
        blank=chosen.blank,
    )
    design = TapDesign(
        name=job.name or re.sub(r"[^A-Za-z0-9._]+", "-", hole.text).strip("-"),
        designation=hole.text,
        hole=hole.found.limits,
        basic_pitch_diameter=hole.found.basic_pitch_diameter,
        drill=hole.drill,
        work=work,
        limits=limits,
        tap=tap,
        figures=figures_of(tap),
        choices=ledger.choices,
        findings=(),
        wires=wires,
        part=part,
    )
    return design, Context(hole, flutes, bool(job.blank.shank_must_pass))
