"""STEP text without repetition: equal geometry once, coordinates to 1e-10 mm, no padding.

The kernel writes the surface that all crests of a land lie on once for each of them, and every
corner once for each curve that ends in it. A reader takes one instance as well as many.
"""

import re

# Only geometry is shared; topology keeps an instance for each vertex, edge and face.
_SHAREABLE = frozenset(
    {
        "CARTESIAN_POINT",
        "DIRECTION",
        "VECTOR",
        "LINE",
        "CIRCLE",
        "AXIS2_PLACEMENT_3D",
        "PLANE",
        "CYLINDRICAL_SURFACE",
        "CONICAL_SURFACE",
        "SPHERICAL_SURFACE",
        "B_SPLINE_SURFACE_WITH_KNOTS",
    }
)
_STATEMENT = re.compile(r"#(\d+)\s*=\s*((?:[^';]|'(?:[^']|'')*')*);")
_STRING = re.compile(r"('(?:[^']|'')*')")
_REFERENCE = re.compile(r"#(\d+)")
_DECIMALS = 10


def compacted(text: str) -> str:
    """The same model in fewer words.

    Args:
        text: a whole STEP file as the kernel writes it.
    """
    head, data = text.split("DATA;", 1)
    body, tail = data.split("ENDSEC;", 1)
    statements = {int(match[1]): _without_padding(match[2]) for match in _STATEMENT.finditer(body)}
    lines = [f"#{number}={content};" for number, content in _shared(statements).items()]
    return "\n".join([head + "DATA;", *lines, "ENDSEC;" + tail])


def _without_padding(content: str) -> str:
    pieces = _STRING.split(content)
    pieces[::2] = ["".join(piece.split()) for piece in pieces[::2]]
    tight = "".join(pieces)
    return _rounded(tight) if tight.startswith("CARTESIAN_POINT") else tight


def _rounded(point: str) -> str:
    start, _, rest = point.rpartition("(")
    return f"{start}({','.join(map(_shortest, rest.rstrip(')').split(',')))}))"


def _shortest(number: str) -> str:
    text = f"{float(number):.{_DECIMALS}f}".rstrip("0")
    return "0." if text == "-0." else text


def _shared(statements: dict[int, str]) -> dict[int, str]:
    """Statements with equal geometry joined and numbers closed up, in the same order."""
    while True:
        first: dict[str, int] = {}
        same = {
            number: first.setdefault(content, number)
            for number, content in statements.items()
            if content[: content.find("(")] in _SHAREABLE
        }
        repeated = {number: kept for number, kept in same.items() if number != kept}
        if not repeated:
            break
        statements = {
            number: _renumbered(content, repeated)
            for number, content in statements.items()
            if number not in repeated
        }
    order = {number: n for n, number in enumerate(statements, 1)}
    return {order[number]: _renumbered(text, order) for number, text in statements.items()}


def _renumbered(content: str, numbers: dict[int, int]) -> str:
    pieces = _STRING.split(content)
    pieces[::2] = [
        _REFERENCE.sub(lambda m: f"#{numbers.get(int(m[1]), int(m[1]))}", piece)
        for piece in pieces[::2]
    ]
    return "".join(pieces)
