"""The whole design of a tap, in the order in which its values are settled, and judged."""

import re
from dataclasses import replace

from tapmodel.design.choose.blank import choose_blank
from tapmodel.design.choose.chamfer import chamfer_cone, chamfer_record
from tapmodel.design.choose.flute_record import flute_record
from tapmodel.design.choose.flutes import choose_flutes
from tapmodel.design.choose.hole import tapped_hole
from tapmodel.design.choose.ledger import Ledger
from tapmodel.design.choose.relief import choose_reliefs
from tapmodel.design.choose.thread import tap_thread
from tapmodel.design.rules.order import Context, findings
from tapmodel.shape.flute_section import land_angle
from tapmodel.spec.job import Job
from tapmodel.tap.design import TapDesign


def settle(job: Job) -> TapDesign:
    """Settle every number of the tap that `job` asks for, then judge it.

    Findings of severity error stand in the result; nothing is repaired, and no cure is sought.

    Raises:
        InputError: a value that cannot be used at all.
        NoTapError: values that leave no tap to describe.

    Source: the functions called here name theirs, choice by choice.
    """
    ledger = Ledger(job.given())
    hole = tapped_hole(job.designation, ledger)
    thread = tap_thread(hole, ledger)
    cone = chamfer_cone(thread, hole, ledger)
    flutes = choose_flutes(thread, hole.diameter, ledger)
    count, section = flutes.wish.count, flutes.section
    chamfer = chamfer_record(cone, thread, section, count)
    land = land_angle(section, count, thread.major / 2)
    relief = choose_reliefs(thread, hole.diameter, land, ledger)
    chosen = choose_blank(thread, chamfer, section, hole.diameter, ledger)
    design = TapDesign(
        name=job.name or re.sub(r"[^A-Za-z0-9._]+", "-", hole.text).strip("-"),
        designation=hole.text,
        hole=hole.found.limits,
        basic_pitch_diameter=hole.found.basic_pitch_diameter,
        drill=hole.drill,
        thread=thread,
        chamfer=chamfer,
        flutes=flute_record(section, count, thread, chosen),
        relief=relief,
        blank=chosen.blank,
        choices=ledger.choices,
        findings=(),
    )
    context = Context(hole, flutes, bool(job.blank.shank_must_pass))
    return replace(design, findings=findings(design, context))
