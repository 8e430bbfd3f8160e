"""The grammar of designations."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from tapmodel.errors import InputError
from tapmodel.spec.designation import Designation, canonical, parse
from tapmodel.spec.hole_class import HoleClass, default_hole_class, parse_hole_class
from tapmodel.words import Family, Hand

R, L = Hand.RIGHT, Hand.LEFT
H6, G6, H4H5 = "6H", "6G", "4H5H"

# text: (diameter, pitch, hand, class, starts, canonical)
READ = {
    "M18x0.75": (18, 0.75, R, None, 1, "M18x0.75"),
    "M18 x 0,75": (18, 0.75, R, None, 1, "M18x0.75"),
    "M18\u00d70.75": (18, 0.75, R, None, 1, "M18x0.75"),
    "M10": (10, None, R, None, 1, "M10"),
    "m10X1": (10, 1, R, None, 1, "M10x1"),
    " M 2.5 ": (2.5, None, R, None, 1, "M2.5"),
    "M20x1.5-LH": (20, 1.5, L, None, 1, "M20x1.5-LH"),
    "M20x1.5 lh": (20, 1.5, L, None, 1, "M20x1.5-LH"),
    "M20x1.5-RH": (20, 1.5, R, None, 1, "M20x1.5"),
    "M20x1.5-6H-LH": (20, 1.5, L, H6, 1, "M20x1.5-LH"),
    "M20x1.5 \u2013 LH \u2013 6G": (20, 1.5, L, G6, 1, "M20x1.5-6G-LH"),
    "M10-6G": (10, None, R, G6, 1, "M10-6G"),
    "M8x1 4H5H": (8, 1, R, H4H5, 1, "M8x1-4H5H"),
    "M8x1-6H6H": (8, 1, R, H6, 1, "M8x1"),
    "M1.2-6H": (1.2, None, R, H6, 1, "M1.2-6H"),
    "M1.2-5H": (1.2, None, R, "5H", 1, "M1.2"),
    "M20xPh3P1.5": (20, 1.5, R, None, 2, "M20xPh3P1.5"),
    "m20 x ph 3 p 1,5 - 6G - LH": (20, 1.5, L, G6, 2, "M20xPh3P1.5-6G-LH"),
    "M20xPh1.05P0.35": (20, 0.35, R, None, 3, "M20xPh1.05P0.35"),
    "M20xPh1.5P1.5": (20, 1.5, R, None, 1, "M20x1.5"),
}


@pytest.mark.parametrize("text", READ)
def test_reading(text: str):
    diameter, pitch, hand, hole_class, starts, standard = READ[text]
    found = parse(text)
    assert (found.diameter, found.pitch, found.hand) == (diameter, pitch, hand)
    assert (found.hole_class, found.starts, found.text) == (hole_class, starts, text)
    assert canonical(found) == standard


@pytest.mark.parametrize(
    "text",
    [
        *("", "M", "10", "M10x", "M10-", "M10--6H", "M10-LH-", "Mx1", "M-10", "M1e1", "M10LX"),
        *("M10x1x20", "M10-1.5", "M10-6H-6H", "M10-LH-RH", "M10-6H-7", "M0", "M10x0", "M10x0,0"),
        *("M10-9H", "M10-3H", "M10-6F", "M10-5H6G", "M10-6H/6g", "MNaN", "Minf", "M12345x1"),
        *("M20xPh3", "M20xPh3P2", "M20xPh1P1.5", "M20xPh18P2", "M20xP1.5"),
        *("M\u0661\u0660", "M10\nx1 LH 6H 5H", "M10x1\0", "M" + "1" * 5000),
    ],
)
def test_refusal_names_the_field_and_shows_the_forms(text: str):
    with pytest.raises(InputError, match=r"for instance.* M18x0.75") as caught:
        parse(text)
    assert caught.value.field == "designation"
    assert caught.value.value == text


@pytest.mark.parametrize("text", ["M10-6g", "M10x1-4g6g", "M10-6h", "M10-6H6g"])
def test_a_class_of_the_screw_is_explained(text: str):
    with pytest.raises(InputError, match="class of the hole, in capital letters"):
        parse(text)


@pytest.mark.parametrize(
    ("lead", "reason"), [("Ph3P2", "1 to 8 times"), ("Ph20P2", "1 to 8 times")]
)
def test_a_lead_that_is_no_multiple_is_explained(lead: str, reason: str):
    with pytest.raises(InputError, match=reason):
        parse(f"M20x{lead}")


SIZES = st.integers(1, 30000).map(lambda n: n / 100)
CLASSES = st.builds(HoleClass, st.integers(4, 8), st.integers(4, 8), st.sampled_from(["G", "H"]))


def _metric(  # noqa: PLR0913, PLR0917  (drawn by the strategies below)
    diameter: float,
    pitch: float | None,
    hand: Hand,
    hole_class: HoleClass | None,
    text: str,
    starts: int = 1,
) -> Designation:
    meant = str(default_hole_class(diameter, pitch))
    named = str(hole_class) if hole_class else None
    return Designation(Family.METRIC, diameter, pitch, hand, named, meant, text, starts)


SINGLE = st.builds(
    _metric,
    SIZES,
    st.none() | st.integers(1, 80000).map(lambda n: n / 10000),
    st.sampled_from(Hand),
    st.none() | CLASSES,
    st.just(""),
)
MULTIPLE = st.builds(
    _metric,
    SIZES,
    st.integers(1, 800).map(lambda n: n / 100),
    st.sampled_from(Hand),
    st.none() | CLASSES,
    st.just(""),
    st.integers(2, 8),
)


@given(SINGLE | MULTIPLE)
def test_the_canonical_text_reads_back_as_the_same_thread(designation: Designation):
    again = parse(canonical(designation))
    assert again == designation
    assert hash(again) == hash(designation)
    assert canonical(again) == canonical(designation)


def test_another_thread_is_not_equal():
    same = parse("M20x1.5")
    assert same == parse("M20 x 1,5 - 6H")
    for other in ("M20", "M20x1", "M22x1.5", "M20x1.5-LH", "M20x1.5-6G", "M20xPh3P1.5"):
        assert parse(other) != same
    assert same != "M20x1.5"


def test_the_class_meant_by_none_depends_on_the_size():
    assert str(default_hole_class(1.4, None)) == "5H"
    assert str(default_hole_class(1.6, None)) == "6H"
    assert str(default_hole_class(0.99, None)) == "4H"
    assert parse("M1.2").effective_class == "5H"
    assert parse("M10-7H").effective_class == "7H"


# A note to a thread chart on the web: M1.8x0.2 and finer are 4H, M2x0.25 and finer 5H.
FINEST = {"M1.8x0.2": "4H", "M1x0.2": "4H", "M2x0.25": "5H", "M2.2x0.25": "5H", "M2.5x0.35": "6H"}


def test_the_finest_pitches_mean_a_finer_class():
    assert {thread: parse(thread).effective_class for thread in FINEST} == FINEST
    assert parse("M20x0.249").effective_class == "4H"
    assert parse("M20x0.299").effective_class == "5H"
    assert parse("M20x0.3").effective_class == "6H"


@pytest.mark.parametrize("text", ["", "6", "H6", "6h", "66H", "6H6H6H", "6H-5H"])
def test_a_class_alone_is_refused_by_its_own_name(text: str):
    with pytest.raises(InputError, match="grades 4 to 8") as caught:
        parse_hole_class(text)
    assert caught.value.field == "hole.class"


def test_a_class_is_written_as_on_drawings():
    assert [str(parse_hole_class(text)) for text in ("6H", " 5H6H ", "7G7G")] == [
        "6H",
        "5H6H",
        "7G",
    ]
    with pytest.raises(InputError, match="grades 4 to 8"):
        HoleClass(9, 6, "H")
