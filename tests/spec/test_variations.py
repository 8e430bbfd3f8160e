import pytest

from tapmodel.errors import InputError
from tapmodel.spec.variations import variation


def test_a_list_holds_its_values_as_a_job_would() -> None:
    assert variation("flutes.count=3,4,5").values == (3, 4, 5)
    assert variation("relief.chamfer.kind=concentric, eccentric").values == (
        "concentric",
        "eccentric",
    )
    assert variation("flutes.cutter_diameter=1/4in,6").values == ("1/4in", 6)


def test_a_range_holds_both_ends_in_even_steps() -> None:
    found = variation("flutes.offset=-1:3:9")
    assert found.field == "flutes.offset"
    assert found.values == (-1, -0.5, 0, 0.5, 1, 1.5, 2, 2.5, 3)
    assert variation("blank.neck_length=0.1:0.4:4").values == (0.1, 0.2, 0.3, 0.4)


def test_ends_of_a_range_may_be_in_inches() -> None:
    assert variation("flutes.cutter_diameter=1/8in:1/4in:3").values == (
        *("3.175mm", "4.7625mm", "6.35mm"),
    )


@pytest.mark.parametrize(
    ("text", "named"),
    [
        ("flutes.count", "field=values"),
        ("flutes.count=", "field=values"),
        ("flutes.number=3,4", "a field of the job"),
        ("shop.cutters=3,4", "single value"),
        ("flutes.offset=1:2:1", "2 to 1000"),
        ("flutes.offset=1:2:x", "2 to 1000"),
        ("flutes.offset=a:2:3", "from:to:number"),
        ("flutes.offset=1:2:1001", "2 to 1000"),
    ],
)
def test_what_is_no_variation_is_refused_with_what_is(text: str, named: str) -> None:
    with pytest.raises(InputError, match=named) as refused:
        variation(text)
    assert "--vary" in str(refused.value)


def test_a_range_with_a_unit_at_an_end_keeps_one_so_that_nothing_of_it_is_asked_back() -> None:
    assert variation("flutes.offset=0.1in:0.3in:3").values == ("2.54mm", "5.08mm", "7.62mm")
    assert variation("flutes.offset=0:0.3:3").values == (0, 0.15, 0.3)


def test_a_field_that_is_nearly_one_is_guessed() -> None:
    with pytest.raises(InputError, match=r'did you mean "flutes\.count"\?'):
        variation("flute.count=3,4")
