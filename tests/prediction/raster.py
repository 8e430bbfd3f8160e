"""Chips by brute force: cells of the thread's plane, each given to the first tooth that has it.

It asks the surfaces that the solid is built by, and knows nothing of how chips are integrated.
"""

import numpy as np

from tapmodel.shape.form import Form
from tapmodel.shape.walls import FACE
from tapmodel.tap.tap import Tap


def raster_areas(tap: Tap, drill: float, start: int, count: int) -> dict[float, float]:
    """Area of every chip of one of the threads by the height of its tooth [mm², mm].

    There are `count` cells to a pitch and as many from the wall of the hole to the crests.
    """
    form, pitch = Form(tap), tap.thread.pitch
    middles = (np.arange(count) + 0.5) / count
    depth = (tap.thread.major - drill) / 2
    cell = pitch * depth / count**2
    across, up = (middles - 0.5) * pitch, drill / 2 + middles * depth
    w, radius = np.meshgrid(across, up)
    phi = form.wall_phi(FACE, radius)
    left = np.ones_like(w, dtype=bool)
    found: dict[float, float] = {}
    turns = int(tap.chamfer_length / pitch) + 3 * tap.thread.starts
    for turn in range(-2 * tap.thread.starts + start, turns, tap.thread.starts):
        for number in range(form.lands):
            land, rounds = np.full(w.shape, number), np.full(w.shape, turn)
            z = w + form.offset_to_z(land, rounds, phi)
            under = (radius < form.threaded(land, phi, z)).all(axis=0)
            taken = left & under & (z >= 0)
            left &= ~taken
            if taken.any():
                height = form.crest_z[number] + turn * pitch
                found[round(float(height), 6)] = float(taken.sum()) * cell
    return found
