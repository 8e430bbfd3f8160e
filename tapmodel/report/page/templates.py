"""The templates that page and card are filled into; whatever is filled in is escaped."""

import re
from functools import cache
from importlib import resources
from typing import TYPE_CHECKING

from tapmodel.report.units import unparted

if TYPE_CHECKING:
    from jinja2 import Environment
    from markupsafe import Markup


def filled(name: str, **values: object) -> str:
    """A template with its values; texts among them are escaped, markup stands as it is.

    Args:
        name: of a file beside this one.
        values: by the names that the template calls them; every one must be there.
    """
    return loaded().get_template(name).render(values)


def markup(text: str) -> "Markup":
    """Text of this program that is HTML already."""
    from markupsafe import Markup  # noqa: PLC0415  (loaded with the templates)

    return Markup(text)  # noqa: S704  (callers hand in what they made or escaped themselves)


def own_file(name: str) -> "Markup":
    """A style sheet or script beside this file, to stand as it is."""
    return markup((resources.files("tapmodel.report.page") / name).read_text(encoding="utf-8"))


@cache
def loaded() -> "Environment":
    """The library of the templates; it is loaded only where a page or a card is written."""
    from jinja2 import Environment, PackageLoader, StrictUndefined  # noqa: PLC0415

    found = Environment(
        loader=PackageLoader("tapmodel.report", "page"),
        autoescape=True,
        undefined=StrictUndefined,
        trim_blocks=True,
        keep_trailing_newline=True,
    )
    found.filters["with_unit"] = _unbroken
    return found


def _unbroken(text: str) -> "Markup":
    """A number and its unit stay together; a field's name breaks behind its dots and strokes."""
    from markupsafe import escape  # noqa: PLC0415  (loaded with the templates)

    joined = str(escape(unparted(text)))
    return markup(re.sub(r"(?<=[a-z])([._])(?=[a-z])", r"\1<wbr>", joined))
