"""The design as a page of text: every number with its unit, its limits and its reason."""

from collections.abc import Iterator

from tapmodel.designing.record import TapDesign
from tapmodel.findings import Finding
from tapmodel.report.blocks import small_length
from tapmodel.report.columns import columns
from tapmodel.report.words.choices import value_text
from tapmodel.report.words.findings import what
from tapmodel.report.words.limits import actual, allowed
from tapmodel.shape.figures import ReliefFigures
from tapmodel.tap.tap import Relief
from tapmodel.words import ReliefKind, Severity

Row = tuple[str, str]

_WIDTHS = (34, 0)  # of the columns

_FRAME = "Heights count from the front (cutting) end; angles behind the cutting edge of a land."

_MARKS = {Severity.ERROR: "ERROR", Severity.WARNING: "warning", Severity.NOTE: "note"}


def design_page(design: TapDesign) -> str:
    """Everything that was settled, by the part of the tap it belongs to."""
    lines = [f"Tap for {design.designation}", _FRAME]
    for title, rows in _sections(design):
        lines += ["", title]
        lines += [f"  {line}" for line in columns(rows, _WIDTHS)]
    lines += ["", *findings_text(design.findings)]
    return "\n".join(lines)


def findings_text(findings: tuple[Finding, ...]) -> list[str]:
    """One paragraph for each finding, errors first."""
    order = list(_MARKS)
    ranked = sorted(findings, key=lambda finding: order.index(finding.severity))
    if not ranked:
        return ["no findings"]
    lines: list[str] = []
    for finding in ranked:
        lines.append(f"{_MARKS[finding.severity]} [{finding.code}] {what(finding)}")
        lines.append(f"    is {actual(finding)}; allowed {allowed(finding)}; {finding.source}")
    return lines


def _sections(design: TapDesign) -> Iterator[tuple[str, list[Row]]]:
    yield "Hole", _hole(design)
    yield "Thread of the tap", _thread(design)
    yield "Chamfer", _chamfer(design)
    yield "Flutes", _flutes(design)
    for relief, figures in design.reliefs:
        yield f"Relief of the {relief.applies_to.value}", _relief(relief, figures)
    yield "Blank", _blank(design)


def _mm(value: float, digits: int = 3) -> str:
    return f"{value:.{digits}f} mm"


def _degrees(value: float) -> str:
    return f"{value:.2f}°"


def _span(low: float, high: float) -> str:
    return f"{low:.3f} to {high:.3f} mm"


def _hole(design: TapDesign) -> list[Row]:
    hole, chosen = design.hole, design.choice("hole.class")
    return [
        ("tolerance class", value_text(chosen) if chosen else "none"),
        ("major diameter, at least", _mm(hole.major_min)),
        ("pitch diameter", _span(hole.pitch_min, hole.pitch_max)),
        ("minor diameter", _span(hole.minor_min, hole.minor_max)),
        ("drill", f"{design.drill:.3f}".removesuffix("0") + " mm"),
    ]


def _thread(design: TapDesign) -> list[Row]:
    thread, limits = design.tap.thread, design.limits
    hand = f"{thread.hand.value} hand"
    starts = f"{thread.starts} starts, lead {thread.lead:g} mm, " if thread.starts > 1 else ""
    return [
        ("pitch", f"{thread.pitch:g} mm, {starts}{hand}"),
        ("class of the tap", limits.tap_class),
        ("flank angle", _degrees(thread.flank_angle)),
        ("major diameter", f"{_mm(thread.major)} (at least {limits.major_min:.3f})"),
        (
            "pitch diameter",
            f"{_mm(thread.pitch_diameter, 4)} ({limits.pitch_min:.4f} to {limits.pitch_max:.4f})",
        ),
        ("minor diameter", _mm(thread.minor)),
        ("crest", _end(thread.crest_flat, thread.crest_radius)),
        ("root", _end(thread.root_flat, thread.root_radius)),
    ]


def _end(flat: float, radius: float) -> str:
    digits = small_length(max(flat, radius)).digits
    return f"radius {_mm(radius, digits)}" if radius else f"flat {_mm(flat, digits)} wide"


def _chamfer(design: TapDesign) -> list[Row]:
    chamfer, figures = design.tap.chamfer, design.figures
    return [
        ("angle to the axis", _degrees(chamfer.angle)),
        ("length", f"{_mm(figures.chamfer_length)} = {figures.chamfer_pitches:.2f} pitches"),
        ("point diameter", _mm(chamfer.point_diameter)),
        ("teeth that cut", f"{figures.chamfer_teeth}, chip {figures.chip_thickness:.4f} mm each"),
    ]


def _flutes(design: TapDesign) -> list[Row]:
    flutes, figures = design.tap.flutes, design.figures
    side = "no offset (centred)"
    if flutes.offset != 0:
        way = "towards" if flutes.offset > 0 else "away from"
        side = f"{abs(flutes.offset):.3f} mm {way} the land whose cutting face it makes"
    return [
        ("count and cutter", f"{flutes.count}, ball-nose {flutes.cutter_diameter:g} mm"),
        ("offset of the cutter", side),
        ("depth below the blank's top", _mm(figures.depth_from_top)),
        ("core (web) diameter", _mm(flutes.core_diameter)),
        (
            "rake at crest, pitch line, root",
            f"{figures.rake_crest:.2f}°, {figures.rake_pitch:.2f}°, {figures.rake_root:.2f}°",
        ),
        ("chordal hook", _degrees(figures.chordal_hook)),
        ("land", f"{_degrees(figures.land_angle)}, {_mm(figures.land_width)} wide"),
        (
            "area of one flute",
            f"{figures.flute_area:{'.3f' if figures.flute_area > 1 else '.3g'}} mm²",
        ),
        ("full depth up to", _mm(flutes.full_depth_length)),
        ("run-out ends at", _mm(figures.runout_end)),
    ]


def _relief(relief: Relief, figures: ReliefFigures) -> list[Row]:
    if relief.kind is ReliefKind.CONCENTRIC:
        return [("kind", "concentric: no drop")]
    side = "behind" if figures.arc_direction >= 0 else "before"
    return [
        ("kind", relief.kind.value),
        (
            "margin, relief angle at the edge",
            f"{relief.margin_angle:.2f}°, {figures.edge_angle:.2f}°",
        ),
        ("drop at the heel", _mm(figures.heel_drop, 4)),
        (
            "grinding arc",
            (
                f"radius {figures.arc_radius:.3f} mm, "
                f"centre {relief.arc_offset:.4f} mm off the axis "
                f"at {abs(figures.arc_direction):.2f}° {side} the edge"
            ),
        ),
    ]


def _blank(design: TapDesign) -> list[Row]:
    blank = design.tap.blank
    neck = "none"
    if blank.neck_length > 0:
        neck = f"{blank.neck_diameter:.3f} mm for {blank.neck_length:.2f} mm"
    return [
        ("overall length", _mm(blank.overall_length, 1)),
        ("thread length", _mm(blank.thread_length, 1)),
        ("neck", neck),
        ("shank diameter", _mm(blank.shank_diameter)),
        (
            "square",
            (
                f"{blank.square_across_flats:g} mm across flats, {blank.square_length:g} mm long, "
                f"from z = {blank.square_start:g} mm"
            ),
        ),
    ]
