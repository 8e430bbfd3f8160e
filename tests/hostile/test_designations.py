"""Designations: refused with a message that says what is meant, or read as what they say."""

import pytest
from designations import LOOKALIKES, NONSENSE, STRANGE, VALID
from entry import faults, refusal_faults, run
from sweeps import in_part


def _refusals(texts: list[str]) -> dict[str, list[str]]:
    ended = {text: refusal_faults(run(["design", "--", text]), "designation") for text in texts}
    return {text: found for text, found in ended.items() if found}


def test_nonsense_is_refused() -> None:
    assert _refusals(list(NONSENSE)) == {}


@pytest.mark.parametrize("valid", VALID)
def test_letters_of_another_script_are_refused(valid: str) -> None:
    places = [i for i, c in enumerate(valid) if c != c.translate(LOOKALIKES)]
    wrong = [valid[:i] + valid[i].translate(LOOKALIKES) + valid[i + 1 :] for i in places]
    assert len(wrong) > 1
    assert _refusals(wrong) == {}


@pytest.mark.parametrize("valid", VALID)
def test_letters_that_do_not_print_are_refused(valid: str) -> None:
    assert _refusals([f"{valid[:1]}{letter}{valid[1:]}" for letter in STRANGE.values()]) == {}


@pytest.mark.parametrize("valid", VALID)
def test_a_designation_is_read_whatever_its_case_and_blanks(valid: str) -> None:
    forms = [valid, valid.lower(), f"  {valid}\t", valid.replace("x", "\u00d7"), f"{valid}\n"]
    for text in in_part(forms, VALID.index(valid), every=len(forms)):
        ended = run(["design", "--json", "--no-strength", "--", text])
        assert faults(ended) == []
        assert ended.code == 0, ended.err
    # What seeks no cures takes a tenth of the time, and names thread, starts, lead and limits.
    measured = {text: run(["wires", "--json", "--", text]) for text in forms}
    assert faults(measured[valid]) == []
    assert measured[valid].code == 0, measured[valid].err
    assert {text for text in forms if measured[text] != measured[valid]} == set()


def test_a_dash_before_a_number_is_a_minus_only_where_it_stands_off() -> None:
    assert run(["design", "--", "G-1/2"]).out == run(["design", "--", "G 1/2"]).out
    assert run(["design", "--", "G -1/2"]).code == 2
