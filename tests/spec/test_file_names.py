"""Names that every system takes, held to Python's own rules for Windows."""

import ntpath
import warnings
from pathlib import Path, PureWindowsPath

import pytest
from asked import settled_of

from tapmodel.designing.design import design_tap
from tapmodel.errors import InputError
from tapmodel.file_names import RULES, fault, refuse_strange
from tapmodel.spec.job_file import read_job

DEVICES, END, SIGNS, CONTROLS = "devices", "at the end", "< > :", "control characters"

# A name, and a word of the reason why it is refused; None where it is taken.
NAMES: dict[str, str | None] = {
    "CON": DEVICES,
    "con": DEVICES,
    "Prn": DEVICES,
    "AUX.toml": DEVICES,
    "nul.tar.gz": DEVICES,
    "NUL .txt": DEVICES,
    "COM1": DEVICES,
    "com9.step": DEVICES,
    "COM²": DEVICES,
    "LPT1": DEVICES,
    "lpt³.x": DEVICES,
    "CONIN$": DEVICES,
    "conout$.x": DEVICES,
    "tap.": END,
    "tap ": END,
    "tap. .": END,
    "...": END,
    "CON.": END,
    "a:b": SIGNS,
    "a<b": SIGNS,
    "a>b": SIGNS,
    'a"b': SIGNS,
    "a|b": SIGNS,
    "a?b": SIGNS,
    "a*b": SIGNS,
    "a\\b": SIGNS,
    "a/b": SIGNS,
    "C:": SIGNS,
    "a\nb": CONTROLS,
    "a\x1b": CONTROLS,
    "\x00": CONTROLS,
    "tap": None,
    ".tap": None,
    " tap": None,
    "M18x0.75-LH": None,
    "CONE": None,
    "ICON": None,
    "con-1": None,
    "con_1.aux": None,
    "my.con": None,
    "COM0": None,
    "COM10": None,
    "COM": None,
    "LPTx": None,
    "NULL": None,
    "auxiliary.txt": None,
    "Gewinde-Ø18 (µ)": None,
}


@pytest.mark.parametrize("name", NAMES)
def test_a_name_is_taken_or_refused_for_its_reason(name: str) -> None:
    why, word = fault(name), NAMES[name]
    assert (why is None) == (word is None)
    if word:
        assert word in str(why)


def _is_reserved(name: str) -> bool:
    if hasattr(ntpath, "isreserved"):
        return ntpath.isreserved(name)
    with warnings.catch_warnings():
        warnings.simplefilter("ignore")
        bad = set('<>:"/\\|?*') | {chr(n) for n in range(32)}
        return PureWindowsPath(name).is_reserved() or name[-1] in ". " or bool(bad & set(name))


@pytest.mark.parametrize("name", NAMES)
def test_python_judges_alike(name: str) -> None:
    assert (fault(name) is not None) == _is_reserved(name)


def test_every_rule_is_in_the_table() -> None:
    given = {fault(name) for name in NAMES}
    assert given == {None, *(rule.why for rule in RULES)}


JOB_NAMES = {
    "CON": False,
    "nul.v2": False,
    "Com3": False,
    "tap.": False,
    "tap ": False,
    "a:b": False,
    ".tap": False,
    "x" * 64: False,
    "": False,
    "x" * 63: True,
    "x": True,
    "left tap": True,
    "console": True,
    "rev. 2": True,
}


@pytest.mark.parametrize("name", JOB_NAMES)
def test_a_job_s_name_is_held_to_them_on_every_system(name: str, tmp_path: Path) -> None:
    file = tmp_path / "job.toml"
    file.write_text(f'designation = "M6"\nname = "{name}"\n')
    if JOB_NAMES[name]:
        assert design_tap(read_job(file, [])).name == name
        return
    with pytest.raises(InputError) as refused:
        read_job(file, [])
    assert refused.value.field.endswith(": name")
    assert refused.value.value == name
    assert "no device of Windows such as CON" in refused.value.allowed


def test_names_made_of_designations_are_taken() -> None:
    for text in ("M18x0.75-LH", "1/2 BSW", "G 1/2", "7/16-26 UNS-2B", "2 BA", "Tr16x6(P3)", "M6"):
        assert fault(settled_of(text).name) is None


PLACES: dict[str, str | None] = {
    "CON": "'CON'",
    "out/aux.1/x": "'aux.1'",
    "C:\\taps": "'C:\\\\taps'",
    "a./b": "'a.'",
    "out/x ": "'x '",
    "there:/CON": "'CON'",
    "out": None,
    "../out": None,
    "./a/..": None,
    "there:": None,
    "there:/new": None,
}


@pytest.mark.parametrize("place", PLACES)
def test_a_place_is_refused_for_what_is_still_to_be_made(
    place: str, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.chdir(tmp_path)
    (tmp_path / "there:").mkdir()  # as some systems name what they mount
    part = PLACES[place]
    if part is None:
        refuse_strange("--out", Path(place))
        refuse_strange("--out", tmp_path / place)
        return
    for path in (Path(place), tmp_path / place):
        with pytest.raises(InputError) as refused:
            refuse_strange("--out", path)
        assert (refused.value.field, refused.value.value) == ("--out", str(path))
        assert part in refused.value.allowed
