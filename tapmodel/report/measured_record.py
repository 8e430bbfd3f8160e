"""The answer about what was measured, for JSON, its sentences in the reader's units."""

from typing import Any

from tapmodel.report.units import Units
from tapmodel.report.words.findings import said
from tapmodel.report.words.measured import judged, lacking
from tapmodel.shop.measured.answer import MeasuredAnswer
from tapmodel.shop.measured.record import measured_record


def record_of(answer: MeasuredAnswer, units: Units = Units.MM) -> dict[str, Any]:
    """Keys and values as `measured_record` has them."""
    return measured_record(
        answer,
        lambda one: judged(one, units),
        lambda one: said(one, units),
        lacking(answer.lacking, units),
    )
