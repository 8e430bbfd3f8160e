"""Designations: refused with a message that says what is meant, or read as what they say."""

import pytest
from designations import LOOKALIKES, NONSENSE, STRANGE, VALID
from entry import faults, refusal_faults, run


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
    ended = run(["design", "--json", "--no-strength", "--", valid])
    assert faults(ended) == []
    assert ended.code == 0, ended.err
    # What seeks no cures takes a tenth of the time, and names thread, starts, lead and limits.
    measured = run(["wires", "--json", "--", valid])
    assert measured.code == 0, measured.err
    for text in (valid.lower(), f"  {valid}\t", valid.replace("x", "\u00d7"), f"{valid}\n"):
        assert run(["wires", "--json", "--", text]) == measured


def test_a_dash_before_a_number_is_a_minus_only_where_it_stands_off() -> None:
    assert run(["design", "--", "G-1/2"]).out == run(["design", "--", "G 1/2"]).out
    assert run(["design", "--", "G -1/2"]).code == 2
