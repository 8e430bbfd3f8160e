"""Every value that was settled, by whom and why."""

from tapmodel.design.tap_design import TapDesign
from tapmodel.report.blocks import Section, Table, Words


def section(design: TapDesign) -> Section:
    """One line for each choice."""
    lines = tuple(
        (
            Words(choice.field),
            Words(choice.value),
            Words("given" if choice.given else "rule"),
            Words(choice.why),
            Words(choice.source),
        )
        for choice in design.choices
    )
    head = ("field", "value", "by", "why", "source")
    return Section("choices", "Choices and their reasons", (Table(head, lines),))
