"""Designations as people write them: every listed thread in many spellings, and the answers."""

import re
import sys
from collections.abc import Iterator
from pathlib import Path

import pytest

from tapmodel.errors import InputError
from tapmodel.spec.designation import canonical, parse

sys.path.insert(0, str(Path(__file__).parent.parent / "geometry"))
from listed_jobs import listed_designations

LISTED = list(listed_designations())
SIGNS = {"1/4": "\u00bc", "1/2": "\u00bd", "3/4": "\u00be", "1/8": "\u215b", "3/8": "\u215c"} | {
    "5/8": "\u215d",
    "7/8": "\u215e",
}
LEFT = ("LH", "left", "LEFT", "left hand", "Left-Hand", "left-handed", "L.H.", "lh")


def _in_mm(text: str) -> bool:
    return text.startswith(("M", "Tr"))


def _spellings(text: str) -> Iterator[str]:
    yield from (text.lower(), text.upper(), f"  {text} ")
    if _in_mm(text):
        yield from (text.replace("x", cross) for cross in (" x ", "*", " * ", "\u00d7", "X"))
        yield text.replace("x0.", "x.").replace("P0.", "P.") if text.startswith("M") else text
        number, hand = re.fullmatch(r"(.*?[0-9)])((?:[ -]LH)?)", text).groups()  # type: ignore[union-attr]
        yield from (f"{number}{mm}{hand}" for mm in ("mm", " mm", "MM") if number[-1] != ")")
        yield text.replace("x", " mm x ")
    elif "P-" not in text:
        yield re.sub(r"^([0-9/ .]+)-", r"\1 ", text)
        yield re.sub(r"^([0-9/ .]+)-", r"\1 - ", text)
        if re.match("[0-9]+ [0-9]+/", text):
            yield text.replace(" ", "-", 1)
    fraction = re.search(r"(?<![0-9/])[1357]/[248](?![0-9])", text)
    if fraction and fraction[0] in SIGNS:
        signed = text.replace(fraction[0], SIGNS[fraction[0]])
        yield from (signed, re.sub("([0-9]) ", r"\1", signed, count=1))
    if text.endswith("LH"):
        yield from (text[:-2] + hand for hand in LEFT)
        yield from (f"{text[:-3]} {hand}" for hand in LEFT)
        yield from (f"{hand} {text[:-3]}" for hand in LEFT)
        head, series = text[:-3].rpartition(" ")[::2]
        if series in ("BSW", "BSF"):
            yield from (f"{head} {hand} {series}" for hand in LEFT)


def test_every_listed_thread_is_read_alike_in_all_its_spellings() -> None:
    wrong: dict[str, str] = {}
    number = 0
    for text in LISTED:
        found = parse(text)
        for spelling in _spellings(text):
            number += 1
            try:
                same = parse(spelling) == found
            except InputError:
                same = False
            if not same:
                wrong[spelling] = text
    assert wrong == {}
    assert len(LISTED) > 3000
    assert number > 10 * len(LISTED)


@pytest.mark.parametrize(
    ("typed", "standard"),
    [
        ("M27 x .75", "M27x0.75"),
        ("M10x1LH", "M10x1-LH"),
        ("1/2BSWLH", "1/2 BSW LH"),
        ("1/4-20UNCLH", "1/4-20 UNC-2B-LH"),
        ("1 3/8 24 TPI LH", "1 3/8-24-2B-LH"),
        ("1/2 13 t.p.i. UNC", "1/2-13 UNC-2B"),
        ("1 3/8-24 UN left hand", "1 3/8-24 UN-2B-LH"),
        ("1 3/8-24 UN right hand", "1 3/8-24 UN-2B"),
        ("M27*0.75", "M27x0.75"),
        ("M27x0.75mm", "M27x0.75"),
        ("M27 mm x ,75 mm left", "M27x0.75-LH"),
        ("M20 6G left hand", "M20-6G-LH"),
        ("1-3/8 24 LH", "1 3/8-24-2B-LH"),
        ("1 3/8-24 LH Whit", "1 3/8-24 Whit LH"),
        ("1/2-12 left BSW normal", "1/2-12 BSW normal LH"),
        ("1/4x20 UNC", "1/4-20 UNC-2B"),
        ("1/4x20", "1/4-20-2B"),
        ('1.375"x24 LH', "1 3/8-24-2B-LH"),
        ("0.25 x 20 tpi", "1/4-20-2B"),
        ("10 32 UNF", "10-32 UNF-2B"),
        ("2 4.5 UNC", "2-4.5 UNC-2B"),
        ("1 1/2 6 UNC right hand", "1 1/2-6 UNC-2B"),
        ("1/2 10 acme", "1/2-10 ACME-2G"),
        ("Tr12x6 (P3) LH", "Tr12x6(P3) LH"),
        ("Tr12x6(P3) LH 2-start", "Tr12x6(P3) LH"),
        ("Tr12x6 P3 two starts left", "Tr12x6(P3) LH"),
        ("Tr12x3 1 start", "Tr12x3"),
        ("M20xPh3P1.5 double start", "M20xPh3P1.5"),
        ("1/2-10 ACME 2-start", "0.500-0.1P-0.2L-ACME-2G"),
    ],
)
def test_what_people_write_is_read(typed: str, standard: str) -> None:
    found = parse(typed)
    assert canonical(found) == standard
    assert found.text == typed


@pytest.mark.parametrize(
    ("typed", "answers"),
    [
        ("Tr12x3 LH 2-start", ("Tr12x6(P3) LH for pitch 3 and", "Tr12x3(P1.5) LH for lead 3 and")),
        ("M20x3 2 start", ("M20xPh6P3 for pitch 3 and lead 6", "M20xPh3P1.5 for lead 3 and")),
        ("Tr12x6(P3) 3-start", ("same number of starts as lead and pitch give, 2",)),
        ("M20 2-start", ("the pitch too, as in M20xPh3P1.5",)),
        ("1/2 BSW two starts", ("a single start", "metric, trapezoidal and Acme")),
        ("Tr12x3 9-start", ("1 to 8 starts",)),
    ],
)
def test_a_number_of_starts_tells_pitch_from_lead_or_is_asked_for(
    typed: str, answers: tuple[str, ...]
) -> None:
    with pytest.raises(InputError) as failure:
        parse(typed)
    for answer in answers:
        assert answer in str(failure.value)
    for text in re.findall(r"(\S+x\S+(?: LH)?) for (?:pitch|lead)", str(failure.value)):
        assert parse(text).starts == 2


@pytest.mark.parametrize(
    ("typed", "message"),
    [
        ("27x0.75", "did you mean M27x0.75?"),
        ("27 x .75 mm", "did you mean M27x0.75?"),
        ("27*0,75-LH", "did you mean M27x0.75-LH?"),
        ("12x3 LH", "did you mean M12x3 LH (metric) or Tr12x3 LH (trapezoidal)?"),
        ("1.375x24", "did you mean 1.375-24 (inches, and threads per inch)?"),
        ("8x32 LH", "did you mean #8-32 LH (a number size, and threads per inch)?"),
        ("1/2", "did you mean 1/2 BSW, 1/2 BSF, G 1/2, or with threads per inch as in 1/2-20?"),
    ],
)
def test_what_only_lacks_a_letter_is_asked_for_in_one_short_line(typed: str, message: str) -> None:
    with pytest.raises(InputError) as failure:
        parse(typed)
    assert str(failure.value) == f"designation: {typed!r} cannot be used; {message}"


@pytest.mark.parametrize("typed", ["12x15", "27x0", "27x.75x2", "0x1", "banana", "10"])
def test_where_there_is_no_telling_one_example_of_each_family_is_shown(typed: str) -> None:
    with pytest.raises(InputError, match=r"for instance M18x0\.75, 0\.50 UNM, .* or 1/2-10 ACME"):
        parse(typed)
