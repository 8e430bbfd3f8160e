"""The grammar of ISO trapezoidal designations."""

import re

import pytest
from asked import settled_of
from hypothesis import given
from hypothesis import strategies as st

from tapmodel.errors import InputError, MeantError
from tapmodel.spec.designation import canonical, parse, read_class
from tapmodel.words import Family, Hand

R, L = Hand.RIGHT, Hand.LEFT

# text: (diameter, pitch, hand, class, starts, canonical)
READ = {
    "Tr16x4": (16, 4, R, None, 1, "Tr16x4"),
    "TR 20 x 4": (20, 4, R, None, 1, "Tr20x4"),
    "tr8\u00d71,5": (8, 1.5, R, None, 1, "Tr8x1.5"),
    "Tr14x3 LH": (14, 3, L, None, 1, "Tr14x3 LH"),
    "Tr14x3LH": (14, 3, L, None, 1, "Tr14x3 LH"),
    "Tr14x3-LH": (14, 3, L, None, 1, "Tr14x3 LH"),
    "Tr16x6 P3": (16, 3, R, None, 2, "Tr16x6(P3)"),
    "Tr16x6(P3)": (16, 3, R, None, 2, "Tr16x6(P3)"),
    "Tr16 x Ph 6 P 3": (16, 3, R, None, 2, "Tr16x6(P3)"),
    "Tr16x3P3": (16, 3, R, None, 1, "Tr16x3"),
    "Tr20x4-7H": (20, 4, R, "7H", 1, "Tr20x4"),
    "Tr20x4 \u2013 8H": (20, 4, R, "8H", 1, "Tr20x4-8H"),
    "Tr40x14(P7)LH-8H": (40, 7, L, "8H", 2, "Tr40x14(P7) LH-8H"),
    "Tr40 x 14 ( P 7 ) - 9H - LH": (40, 7, L, "9H", 2, "Tr40x14(P7) LH-9H"),
    "Tr20x4RH": (20, 4, R, None, 1, "Tr20x4"),
}


@pytest.mark.parametrize("text", READ)
def test_reading(text: str):
    diameter, pitch, hand, hole_class, starts, standard = READ[text]
    found = parse(text)
    assert found.family is Family.TRAPEZOIDAL
    assert (found.diameter, found.pitch, found.hand) == (diameter, pitch, hand)
    assert (found.hole_class, found.starts, found.text) == (hole_class, starts, text)
    assert found.default_class == "7H"
    assert canonical(found) == standard


@pytest.mark.parametrize(
    ("text", "reason"),
    [
        *((text, "an ISO trapezoidal thread as Tr") for text in ("Tr", "Tr16", "Tr16-4", "Tr x4")),
        *(
            (text, "an ISO trapezoidal thread as Tr")
            for text in ("Tr16x4x2", "Tr16x6(P3", "Tr16x4LR")
        ),
        *((text, "an ISO trapezoidal thread as Tr") for text in ("Tr16x4-7H-7H", "Tr16x4 LH RH")),
        *((text, "sizes over 0 mm") for text in ("Tr0x4", "Tr16x0", "Tr16x4(P0)")),
        *((text, "1 to 8 times the pitch") for text in ("Tr16x5(P3)", "Tr16x3(P4)", "Tr16x27P3")),
        ("Tr16x4-7e", "small letters are classes of the screw"),
        ("Tr16x4-6H", "a class of the hole: 7H, 8H or 9H"),
        ("Tr16x4-7G", "a class of the hole: 7H, 8H or 9H"),
    ],
)
def test_refusal_names_the_field_and_the_reason(text: str, reason: str):
    with pytest.raises(InputError, match=reason) as caught:
        parse(text)
    assert caught.value.field == "designation"
    assert caught.value.value == text
    assert "Tr16x4, Tr14x3 LH" in caught.value.allowed


def test_a_class_of_the_job_is_read_alike():
    assert read_class(Family.TRAPEZOIDAL, " 8H ") == "8H"
    with pytest.raises(InputError, match="classes of the screw"):
        read_class(Family.TRAPEZOIDAL, "8c")


def test_another_thread_is_not_equal():
    same = parse("Tr20x4")
    assert same == parse("TR 20 x 4P4 - 7H")
    for other in ("Tr20x2", "Tr22x4", "Tr20x4 LH", "Tr20x4-8H", "Tr20x8(P4)", "M20x4"):
        assert same != parse(other)


@given(
    st.integers(1, 40000),
    st.integers(1, 5000),
    st.integers(1, 8),
    st.sampled_from(["", "-7H", "-8H", "-9H"]),
    st.sampled_from(["", " LH"]),
)
def test_the_canonical_text_reads_back_as_the_same_thread(
    size: int, pitch: int, starts: int, hole_class: str, hand: str
):
    typed = f"Tr{size / 100:g}x{starts * pitch / 100:g}(P{pitch / 100:g}){hand}{hole_class}"
    thread = parse(typed)
    assert (thread.diameter, thread.pitch, thread.starts) == (size / 100, pitch / 100, starts)
    again = parse(canonical(thread))
    assert again == thread
    assert canonical(again) == canonical(thread)


@pytest.mark.parametrize("text", ["Tr16x8", "Tr16x8 2-start"])
def test_a_length_too_long_for_a_pitch_is_offered_as_lead(text: str) -> None:
    with pytest.raises(MeantError, match=r"did you mean Tr16x8\(P4\)") as caught:
        settled_of(text)
    for offer in re.findall(r"Tr\S+\(P[0-9.]+\)", caught.value.allowed):
        assert settled_of(offer).tap.thread.lead == 8


@pytest.mark.parametrize("typed", ["Tr16x8-P4", "tr16x8 - p4", "Tr16x8-P4 LH", "Tr16x8-P4-8H"])
def test_the_name_of_its_files_is_read_and_written_as_the_standard_has_it(typed: str) -> None:
    thread = parse(typed)
    assert (thread.pitch, thread.starts) == (4, 2)
    left, wide = "LH" in typed, "8H" in typed
    assert canonical(thread) == f"Tr16x8(P4){' LH' * left}{'-8H' * wide}"
    # as files are named where no job names them
    assert canonical(parse(settled_of("Tr16x8(P4)").name)) == "Tr16x8(P4)"
