"""The pictures of a tap as its page shows them."""

from collections.abc import Mapping

from tapmodel.designing.record import TapDesign
from tapmodel.report.page.write import Picture
from tapmodel.report.pictures.catalogue import all_pictures


def stills(design: TapDesign, pictures: Mapping[str, bytes]) -> tuple[Picture, ...]:
    """Each picture with its title and its words.

    Args:
        design: every number of the tap.
        pictures: PNG by the names of `all_pictures`.
    """
    views = all_pictures(design)
    return tuple(
        Picture(views[name].title, views[name].alt, png, views[name].caption)
        for name, png in pictures.items()
    )
