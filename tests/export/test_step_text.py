import pytest

from tapmodel.geometry.kernel.step.text import Statements, real, text


def test_equal_content_is_written_once_and_own_content_as_often_as_asked():
    to = Statements()
    first, again = to.point((1.0, 2.0, 3.0)), to.point((1.0, 2.000000001, 3.0))
    corners = to.own(f"VERTEX_POINT('',{first})"), to.own(f"VERTEX_POINT('',{again})")
    assert first == again == "#1"
    assert corners == ("#2", "#3")
    assert to.lines == [
        "#1=CARTESIAN_POINT('',(1.,2.,3.));",
        "#2=VERTEX_POINT('',#1);",
        "#3=VERTEX_POINT('',#1);",
    ]


def test_points_are_kept_to_ten_picometres():
    to = Statements()
    to.point((-0.0123456749, -1e-13, 123.45678901234))
    assert to.lines == ["#1=CARTESIAN_POINT('',(-0.01234567,0.,123.45678901));"]


@pytest.mark.parametrize(
    ("value", "written"),
    [(1 / 3, "0.333333333333"), (2.0, "2."), (-1e-15, "0."), (5e-7, "0.0000005"), (100.0, "100.")],
)
def test_other_numbers_are_kept_to_the_twelfth_decimal(value: float, written: str):
    assert real(value) == written


def test_strings_are_in_plain_letters_with_what_they_need():
    assert text("d'Arcy \\ µ 螺 \U0001d6fc") == (
        "'d''Arcy \\\\ \\X2\\00B5\\X0\\ \\X2\\87BA\\X0\\ \\X4\\0001D6FC\\X0\\'"
    )
