"""The record of one run, put together: what other parts and outside checks read.

`record.model` says what each key means. The frame and every law needed to recompute a point of the
surface stand in `tapmodel.tap.tap` and `tapmodel.shape.relief`. In the file, `made` alone depends
on more than the job, the program's version and what else stands in the folder.
"""

from collections.abc import Mapping
from dataclasses import asdict
from typing import Any

from tapmodel.checks.proof.record import MeshProof, ModelProof
from tapmodel.designing.choice import Choice, RunnerUp
from tapmodel.designing.limits.crests import major_zone
from tapmodel.designing.record import TapDesign
from tapmodel.findings import Finding
from tapmodel.report.words.choices import source_text, value_text, why
from tapmodel.report.words.findings import what
from tapmodel.report.words.limits import actual, allowed, expected
from tapmodel.report.words.no_solid import no_solid
from tapmodel.report.words.runners_up import runner_up_text
from tapmodel.run.record.model import SCHEMA, Record
from tapmodel.run.record.numbers import finite
from tapmodel.run.record.parts import SIMPLIFICATIONS
from tapmodel.run.record.prediction.compose import prediction_part
from tapmodel.spec.units import Unit
from tapmodel.tap.tap import TapThread
from tapmodel.version import __version__


def design_record(design: TapDesign) -> dict[str, Any]:
    """The record without model, mesh and files: what the design alone settles."""
    return _checked(_design(design))


def _checked(parts: dict[str, Any]) -> dict[str, Any]:
    """The parts as the model of the record has them; whatever it does not know is a fault."""
    return Record.model_validate(parts).model_dump(mode="json", by_alias=True, exclude_unset=True)


def _design(design: TapDesign) -> dict[str, Any]:
    return {
        "schema": SCHEMA,
        "version": __version__,
        "name": design.name,
        "designation": design.designation,
        "hole": asdict(design.hole),
        "basic_pitch_diameter": design.basic_pitch_diameter,
        "drill": design.drill,
        **_tap(design),
        "choices": [_choice(choice) for choice in design.choices],
        "findings": [_finding(finding) for finding in design.findings],
        "prediction": prediction_part(design),
    }


def _finding(finding: Finding) -> dict[str, Any]:
    """A finding in words and in numbers.

    How cures were sought is the design room's own affair; what was found stands in `cures`.
    """
    limit = finding.limit
    return {
        "code": finding.code,
        "severity": finding.severity,
        "what": what(finding),
        "field": finding.field,
        "value": finding.actual if isinstance(finding.actual, str) else finite(finding.actual),
        "low": finite(limit.low),
        "high": finite(limit.high),
        "unit": limit.unit,
        "expected": expected(finding),
        "actual": actual(finding),
        "allowed": allowed(finding),
        "source": str(finding.source),
        "no_solid": no_solid(finding.no_solid),
        "cures": [
            {
                "settings": [asdict(setting) for setting in cure.settings],
                "worsens": [worse.code for worse in cure.worsens],
                "leaves": [note.code for note in cure.leaves],
            }
            for cure in finding.cures
        ],
    }


def _choice(choice: Choice) -> dict[str, Any]:
    """A choice in words; `number` is its value as it is, in `unit`."""
    other = choice.runner_up
    return {
        "field": choice.field,
        "value": value_text(choice),
        "number": choice.value,
        "unit": choice.unit.value,
        "given": choice.given,
        "why": why(choice),
        "source": source_text(choice),
        **({"runner_up": _runner_up(other, choice.unit)} if other else {}),
    }


def _runner_up(other: RunnerUp, unit: Unit) -> dict[str, Any]:
    weight = other.weight
    return {
        "value": other.value,
        "what": runner_up_text(other, unit),
        "torque": weight.torque,
        "bears": weight.bears,
        "rubbing_width": weight.rubs,
        "chip_thickness": weight.chip,
        "raised": other.raised,
    }


def _thread(thread: TapThread) -> dict[str, Any]:
    """The thread's definition; a back taper of none is left out, as there was none to tell of."""
    fields = asdict(thread)
    if not thread.back_taper:
        del fields["back_taper"]
    return fields


def _tap(design: TapDesign) -> dict[str, Any]:
    """What the tap is, and what follows from that, part by part."""
    tap, figures, limits = design.tap, design.figures, design.limits
    thread, flutes = tap.thread, tap.flutes
    least, most = major_zone(design)
    return {
        "thread": _thread(thread)
        | {
            "lead": thread.lead,
            "crest_flat": thread.crest_flat,
            "crest_radius": thread.crest_radius,
            "root_flat": thread.root_flat,
            "root_radius": thread.root_radius,
            "tap_class": limits.tap_class,
            "major_min": least,
            "major_max": most,
            "pitch_min": limits.pitch_min,
            "pitch_max": limits.pitch_max,
        },
        "chamfer": asdict(tap.chamfer)
        | {
            "length": figures.chamfer_length,
            "pitches": figures.chamfer_pitches,
            "teeth": figures.chamfer_teeth,
            "chip_thickness": figures.chip_thickness,
        },
        "flutes": asdict(flutes)
        | {
            "depth_from_top": figures.depth_from_top,
            "core_diameter": figures.core_diameter,
            "rake_crest": figures.rake_crest,
            "rake_pitch": figures.rake_pitch,
            "rake_root": figures.rake_root,
            "chordal_hook": figures.chordal_hook,
            "land_angle": figures.land_angle,
            "land_width": figures.land_width,
            "area": figures.flute_area,
            "angles": flutes.angles,
            "runout_end": figures.runout_end,
        },
        "relief": {
            name: asdict(relief) | asdict(follows)
            for name, (relief, follows) in zip(("thread", "chamfer"), design.reliefs, strict=True)
        },
        "blank": asdict(tap.blank)
        | {
            "square_start": tap.blank.square_start,
            "full_thread_depth": design.full_thread_depth,
        },
    }


# Names of the lengths that may be moved.
_MOVED = {
    "turned": "neck and shank in radius",
    "depth": "flutes in length",
    "thread": "thread along the axis",
    "mesh": "neck and shank in radius in the mesh",
}


def full_record(
    design: TapDesign,
    solid: tuple[ModelProof, dict[str, float]],
    mesh: MeshProof,
    run: dict[str, Any],
) -> dict[str, Any]:
    """The record of a built tap; delivery adds the list of files.

    Args:
        design: every number of the tap.
        solid: what was measured on it, and the lengths that were moved to make it [mm].
        mesh: what was measured on it.
        run: how the run went.
    """
    proof, moved = solid
    model = asdict(proof) | {
        "moved_mm": moved,
        "self_intersecting": mesh.self_intersecting,
        "simplifications": [*SIMPLIFICATIONS, *_unmarked(design), *_parted(moved)],
    }
    measured = asdict(mesh)
    del measured["self_intersecting"]
    return _checked(_design(design) | {"model": model, "mesh": measured}) | {"run": run}


def _unmarked(design: TapDesign) -> list[str]:
    return ["rings that tell it from others of its set are not there"] if design.part else []


def _parted(moved: Mapping[str, float]) -> list[str]:
    if not any(moved.values()):
        return []
    told = [f"{what} by {1e6 * moved[key]:+.1f} nm" for key, what in _MOVED.items() if moved[key]]
    return [f"surfaces and corners that would all but touch are parted: {', '.join(told)}"]
