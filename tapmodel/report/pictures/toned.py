"""The tones of a design."""

from tapmodel.designing.record import TapDesign
from tapmodel.report.pictures.axes import hand_sign
from tapmodel.report.pictures.tones import Tones
from tapmodel.shape.flute_section import crest_edge_angle


def tones(design: TapDesign) -> Tones:
    """Where this tap is ground, straw or plain steel."""
    tap, flutes, thread = design.tap, design.tap.flutes, design.tap.thread
    crest, point = thread.major / 2, tap.chamfer.point_diameter / 2
    return Tones(
        hand=hand_sign(design),
        sector=360 / flutes.count,
        edge=crest_edge_angle(flutes, thread.major),
        land=design.figures.land_angle,
        cutter=(flutes.cutter_diameter / 2, flutes.offset, flutes.centre_radius),
        stop=flutes.full_depth_length,
        crest=crest,
        root=thread.minor / 2,
        core=max(flutes.core_diameter / 2, 0.0),
        point=point,
        slope=(crest - point) / tap.chamfer_length if tap.chamfer_length else 1e3,
        end=tap.blank.thread_length,
    )
