"""Whether a relief as it was made clears: the same question as of the design, by the same law."""

from dataclasses import dataclass

import numpy as np

from tapmodel.prediction.rubbing.contact import UM, contact_of
from tapmodel.prediction.rubbing.record import Contact
from tapmodel.prediction.rubbing.rubbing import AS_USUAL
from tapmodel.prediction.rubbing.surfaces import Land, Surface, land_of, surfaces_of
from tapmodel.shop.relief.made import Made
from tapmodel.tap.tap import Tap
from tapmodel.words import ReliefPlace


@dataclass(frozen=True, slots=True)
class Touching:
    """A surface that a relief carries, as designed and as made."""

    name: str
    designed: Contact
    made: Contact

    @property
    def binds(self) -> bool:
        """Whether it stands proud by more than anybody can grind or measure."""
        return self.made.clearance_min_um < -AS_USUAL.noise * UM


def touching(tap: Tap, bore: float, place: ReliefPlace, made: Made) -> tuple[Touching, ...]:
    """How the surfaces that a relief carries touch the work once it is made so.

    The land is looked at between the edges and heels of the design: a deeper drop moves the heel
    along the wall of the flute by a tenth of itself.

    Args:
        tap: as designed.
        bore: diameter of the drilled hole [mm].
        place: of the relief.
        made: what it has become.

    Source: `tapmodel.prediction.rubbing.land`, with the drop as made in place of the law's.
    """
    found = surfaces_of(tap, bore)
    carried = {
        ReliefPlace.CHAMFER: (("chamfer", found.chamfer),),
        ReliefPlace.CREST: (("crest", found.crest),),
        ReliefPlace.THREAD: (("crest", found.crest), ("flanks", found.flank)),
    }[place]
    return tuple(
        Touching(
            name,
            contact_of(surface, land_of(surface), AS_USUAL),
            contact_of(surface, _as_made(surface, made), AS_USUAL),
        )
        for name, surface in carried
    )


def _as_made(surface: Surface, made: Made) -> Land:
    edges, phi = surface.edges, land_of(surface).phi
    bends = np.clip(made.kinks, phi[:, :1], phi[:, -1:])
    phi = np.sort(np.hstack([phi, bends]), axis=1)
    start = made.drop(edges.phi) - surface.advance * edges.phi
    fallen = made.drop(phi) - surface.advance * phi
    return Land(phi, (fallen - start[:, None]) * surface.square[:, None])
