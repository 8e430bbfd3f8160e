"""Chips made by hand: a sharp V cut by teeth of one feed, and a tap and hole to go with them."""

import math
from dataclasses import replace

from tapmodel.prediction.chips.record import Chips, Tooth
from tapmodel.prediction.torque.record import HoleToTap
from tapmodel.shape.relief import con_eccentric, concentric
from tapmodel.standards.materials.work import WorkMaterial, work_material
from tapmodel.tap.tap import Blank, Chamfer, Flutes, Reliefs, Tap, TapThread
from tapmodel.words import Hand, ReliefPlace

LEAN = math.tan(math.radians(30))


def v_chips(diameter: float, drill: float, length: float, count: int) -> Chips:
    """The V of 60 degrees between two diameters in `count` slices of one thickness, each exact.

    A slice from radius a to b of the V that ends at R has the area and moment of the integral of
    2 (R - r) tan(30) over r.
    """
    top, wall = diameter / 2, drill / 2
    feed = (top - wall) / count

    def area(r: float) -> float:
        return LEAN * (2 * top * r - r**2)

    def moment(r: float) -> float:
        return LEAN * (top * r**2 - 2 * r**3 / 3)

    teeth: list[Tooth] = []
    for number in range(count):
        a, b = wall + number * feed, wall + (number + 1) * feed
        size = area(b) - area(a)
        teeth.append(
            Tooth(
                land=number % 3,
                turn=number // 3,
                height=length * (number + 0.5) / count,
                area=size,
                thickness=feed,
                width=size / feed,
                radius=(moment(b) - moment(a)) / size,
            )
        )
    whole = LEAN * (top - wall) ** 2
    return Chips(tuple(teeth), whole, whole, feed, feed)


def plain_tap(diameter: float = 10.0, pitch: float = 1.5, pitches: float = 4.0) -> Tap:
    """A tap of three flutes with a margin on its crests, in proportion to its diameter."""
    pitch_diameter, flat = diameter - 0.6495 * pitch, math.sqrt(3)
    major = pitch_diameter + (pitch / 2 - pitch / 8) * flat
    point, length = diameter - 1.1 * pitch, pitches * pitch
    angle = math.degrees(math.atan((major - point) / 2 / length))
    return Tap(
        thread=TapThread(
            pitch=pitch,
            starts=1,
            hand=Hand.RIGHT,
            flank_angle=30.0,
            major=major,
            pitch_diameter=pitch_diameter,
            minor=pitch_diameter - (pitch / 2 - pitch / 8) * flat,
            rounded_crest=False,
            rounded_root=False,
            first_z=0.31 * pitch,
        ),
        chamfer=Chamfer(angle, point),
        flutes=Flutes(3, 0.7 * diameter, -0.28 * diameter, 0.47 * diameter, 2.6 * diameter),
        relief=Reliefs(
            con_eccentric(ReliefPlace.CREST, major, 42.0, 14.0, 0.004 * diameter),
            con_eccentric(ReliefPlace.CHAMFER, major, 42.0, 0.0, 0.02 * diameter),
        ),
        blank=Blank(
            overall_length=8.0 * diameter,
            thread_length=2.4 * diameter,
            neck_diameter=0.8 * diameter,
            neck_length=0.5 * diameter,
            shoulder_angle=30.0,
            shank_diameter=diameter,
            square_across_flats=0.8 * diameter,
            square_length=1.1 * diameter,
            rear_chamfer=0.05 * diameter,
            front_centre=0.2 * diameter,
            rear_centre=0.3 * diameter,
        ),
    )


def unrelieved(tap: Tap) -> Tap:
    """The same with lands that rub from edge to heel."""
    bare = Reliefs(concentric(ReliefPlace.CREST), concentric(ReliefPlace.CHAMFER))
    return replace(tap, relief=bare)


def through(depth: float = 15.0, diameter: float = 10.0, drill: float = 8.5) -> HoleToTap:
    return HoleToTap(diameter, drill, depth, blind=False)


def blind(depth: float = 15.0, diameter: float = 10.0, drill: float = 8.5) -> HoleToTap:
    return HoleToTap(diameter, drill, depth, blind=True)


def of_one_force(name: str, force: float) -> WorkMaterial:
    """A material whose specific force is the same for all chips; no formula holds for it.

    None may be carried over to it either: formula C grows otherwise than by the cube of the size.
    """
    material = work_material(name)
    return replace(
        material,
        kienzle=replace(material.kienzle, kc11=force, mc=0.0),
        group=replace(material.group, c_like=""),
    )
