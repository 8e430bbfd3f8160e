import pytest

from tapmodel.errors import InputError
from tapmodel.export.formats import DEFAULT_FORMATS, Format, parse_formats


def test_the_default_is_every_format():
    assert parse_formats(DEFAULT_FORMATS) == tuple(Format)
    models, papers = ["step", "stl", "3mf", "glb", "dxf"], ["pictures", "sheet", "drawings", "page"]
    assert [known.value for known in Format] == models + papers


@pytest.mark.parametrize(
    ("text", "expected"),
    [
        ("stl", (Format.STL,)),
        ("page,step", (Format.STEP, Format.PAGE)),
        ("3mf,step", (Format.STEP, Format.THREEMF)),
        (" GLB , Stl,glb", (Format.STL, Format.GLB)),
    ],
)
def test_each_format_comes_once_and_in_one_order(text: str, expected: tuple[Format, ...]):
    assert parse_formats(text) == expected


@pytest.mark.parametrize("text", ["", ",", "step,", "iges", "step;stl", "step stl", ".stl"])
def test_anything_else_is_refused_with_what_is_allowed(text: str):
    with pytest.raises(InputError) as caught:
        parse_formats(text)
    assert caught.value.field == "--formats"
    assert caught.value.value == text
    assert all(known.value in caught.value.allowed for known in Format)
