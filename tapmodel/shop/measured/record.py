"""The answer about what was measured as plain numbers and words, for JSON; mm, degrees, N·m."""

from collections.abc import Callable
from dataclasses import asdict
from typing import Any

from tapmodel.designing.record import TapDesign
from tapmodel.findings import Finding
from tapmodel.prediction.prediction import Prediction
from tapmodel.shop.measured.answer import MeasuredAnswer
from tapmodel.shop.measured.verdicts import Judgement, Way
from tapmodel.spec.measured.record import Measured
from tapmodel.spec.measured.sizes import Size

Sentence = Callable[[Judgement], str]


def measured_record(
    answer: MeasuredAnswer, sentence: Sentence, finding: Callable[[Finding], str], lacking: str
) -> dict[str, Any]:
    """Keys and values of the answer.

    `measured` has what was typed, `verdicts` the meaning of each size, `as_it_is` and
    `as_designed` what is foretold of the tap with and without what was measured; None where
    nothing can be.

    Args:
        answer: of the tap.
        sentence: tells a verdict.
        finding: tells a finding.
        lacking: why there is no tap; "" where there is one.
    """
    design, made = answer.design, answer.made
    return {
        "name": design.name,
        "designation": design.designation,
        "measured": _measured(design.measured or Measured()),
        "verdicts": [_verdict(answer, one, sentence(one)) for one in answer.judgements],
        "as_it_is": _tap(made) if made else None,
        "no_tap": lacking or None,
        "as_designed": _tap(design),
        "findings": [
            {"code": one.code, "severity": one.severity.value, "what": finding(one)}
            for one in answer.risen
        ],
    }


def _measured(measured: Measured) -> dict[str, Any]:
    found: dict[str, Any] = {}
    for size, one in measured.pairs:
        found[size.value] = {"value": one.number, "typed": one.typed}
        if one.wire is not None:
            found[size.value]["wire"] = one.wire
        if one.on is not None:
            found[size.value]["on"] = one.on.isoformat()
    return found


def _verdict(answer: MeasuredAnswer, one: Judgement, sentence: str) -> dict[str, Any]:
    found: dict[str, Any] = {
        "size": one.size.value,
        "value": one.value,
        "designed": one.aim,
        "low": one.low,
        "high": one.high,
        "verdict": one.standing.value,
        "take": one.take,
        "take_least": one.take_least,
        "take_most": one.take_most,
        "way": one.way.value if one.way else None,
        "why": one.why.value if one.why else None,
        **one.values,
        "what": sentence,
    }
    if one.way is Way.SLIDE and one.reading is not None:
        found["compound"] = one.reading.compound
        feeds = one.reading.infeed_at_compound
        found["infeed_at_compound"] = {f"{angle:g}": feed for angle, feed in feeds}
        found["scrap_below"], found["wear_left"] = one.reading.scrap_below, one.reading.wear_left
    over = answer.over_wires
    if one.size is Size.PITCH_DIAMETER and over is not None:
        found["over_wires"] = {
            "value": over.reading.measured,
            "wire": over.wire,
            "designed": over.aim,
            "low": over.low,
            "high": over.high,
        }
    return found


def _tap(design: TapDesign) -> dict[str, Any] | None:
    foreseen = design.prediction
    if foreseen is None:
        return None
    return {
        "major": design.tap.thread.major,
        "pitch_diameter": design.tap.thread.pitch_diameter,
        "minor": design.tap.thread.minor,
        "core_diameter": design.figures.core_diameter,
        "rake_crest": design.figures.rake_crest,
        "land_width": design.figures.land_width,
        "chamfer_length": design.figures.chamfer_length,
        "chip_thickness": design.figures.chip_thickness,
        **_foretold(foreseen),
    }


def _foretold(foreseen: Prediction) -> dict[str, Any]:
    gauge, rubbing = foreseen.gauge, foreseen.rubbing
    return {
        "torque": asdict(foreseen.torque.band),
        "bears": foreseen.strength.bears,
        "stop_at": foreseen.stop_at,
        "rubbing": {
            "crest": asdict(rubbing.crest),
            "flank": asdict(rubbing.flank),
            "chamfer": asdict(rubbing.chamfer),
        },
        "gauge": asdict(gauge) | {"face_limit": gauge.face_limit.value},
    }
