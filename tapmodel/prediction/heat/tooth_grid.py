"""Half a pitch of the tap's own thread in the axial plane, from mid crest to mid root.

Two blocks: the tooth above the foot of its flank, and the body below. The section lies in the
middle of a land; the flutes' walls, from which carbon enters too, are not in it.
"""

import numpy as np

from tapmodel.prediction.heat.grid import Floats, Grid, Spacing, numbered, split
from tapmodel.shape.profile import Segment, segments
from tapmodel.tap.tap import TapThread

_NARROWEST = 1e-3
"""Half a crest or root, in pitches, that is not made narrower: a block needs four sides."""


def tooth_grid(thread: TapThread, depth: float, fine: Spacing) -> Grid:
    """The grid of a thread.

    Args:
        thread: of the tap; y = 0 is the bottom of its root.
        depth: of the body below that [mm].
        fine: how finely it is divided.

    Source: derived here; the tooth's block is interpolated between its four sides.
    """
    crest, _, root, _ = segments(thread)
    across = 1 - fine.shares(_foot(thread, root)[0])[::-1]
    tooth = _tooth(thread, crest, root, across, fine)
    body = _body(thread, root, across, depth, fine)
    return _joined(tooth, body, len(across))


def _foot(thread: TapThread, root: Segment) -> tuple[float, float]:
    """Where the flank ends at the root: x, and y above the root's bottom [mm]."""
    x = min(root.start, thread.pitch * (0.5 - _NARROWEST))
    return x, root.start_radius - thread.minor / 2


def _tooth(
    thread: TapThread, crest: Segment, root: Segment, across: Floats, fine: Spacing
) -> Floats:
    """Nodes of the tooth, shape (along the flank, across, 2), the first row at the foot."""
    wide, low = _foot(thread, root)
    narrow = max(crest.end, _NARROWEST * thread.pitch)
    high = crest.end_radius - thread.minor / 2
    along = fine.both_ends(float(np.hypot(wide - narrow, high - low)))[:, None]
    x = across * (wide + along * (narrow - wide))
    bulge = crest.radius(narrow * across) - crest.end_radius
    y = low + along * (high - low + bulge)
    return np.stack([x, np.broadcast_to(y, x.shape)], axis=-1)


def _body(thread: TapThread, root: Segment, across: Floats, depth: float, fine: Spacing) -> Floats:
    """Nodes of the body, shape (down, across, 2), the first row on foot and root."""
    wide, low = _foot(thread, root)
    half = thread.pitch / 2 - wide
    beyond = wide + half * fine.shares(half)[1:]
    x = np.concatenate([across * wide, beyond])
    top = np.concatenate([np.full(len(across), low), root.radius(beyond) - thread.minor / 2])
    down = fine.shares(depth)[:, None]
    y = top - down * (depth + top)
    return np.stack([np.broadcast_to(x, y.shape), y], axis=-1)


def _joined(tooth: Floats, body: Floats, shared: int) -> Grid:
    """Both blocks, their common side once."""
    below = numbered(body.shape[0], body.shape[1])
    above = numbered(tooth.shape[0] - 1, shared) + below.size
    standing = np.concatenate([below[:1, :shared], above])
    surface = np.zeros(below.size + above.size, dtype=bool)
    # The crest, the flank with its foot, and the root.
    surface[standing[-1]] = surface[standing[:, -1]] = surface[below[0, shared - 1 :]] = True
    # Rows of the tooth run upwards and those of the body downwards: the one is turned over.
    triangles = np.concatenate([split(standing), split(below)[:, ::-1]])
    nodes = np.concatenate([body.reshape(-1, 2), tooth[1:].reshape(-1, 2)])
    under_crest = np.concatenate([standing[::-1, 0], below[1:, 0]])
    narrow = np.full((len(above), below.shape[1]), -1)
    narrow[:, :shared] = above[::-1]
    rows = np.concatenate([narrow, below])
    return Grid(nodes, triangles, surface, under_crest, below[:, -1], rows)
