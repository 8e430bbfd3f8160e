"""What the program says of itself: help, examples, version, colour, completion."""

import os
import pty
import shlex
import subprocess
import sys

import pytest

import tapmodel
from tapmodel.cli.app import app
from tapmodel.cli.commands import (
    build,
    compare,
    design,
    dividing,
    gears,
    heat,
    measured,
    new,
    page,
    route,
    schema,
    sheet,
    verify,
    wires,
)
from tapmodel.cli.commands import set as set_command

COMMANDS = (
    *(build, compare, design, dividing, gears, new, page, schema, set_command, sheet, verify),
    *(wires, heat, measured, route),
)
NAMES = [room.__name__.rpartition(".")[2] for room in COMMANDS]


def said(*words: str, **environment: str) -> str:
    done = subprocess.run(
        [sys.executable, "-m", "tapmodel", *words],
        capture_output=True,
        text=True,
        check=True,
        env={**os.environ, "COLUMNS": "80", **environment},
    )
    return done.stdout


def test_no_line_of_the_help_breaks_off() -> None:
    listed = said("--help").partition("Commands:")[2]
    assert [line.split()[0] for line in listed.strip().splitlines()] == [
        *("design", "new", "set", "build", "verify", "sheet", "poster", "route", "page"),
        *("serve", "wires", "measured", "gears", "dividing", "heat", "compare", "schema"),
    ]
    assert "..." not in listed


def test_the_version_is_that_of_the_package() -> None:
    assert said("--version") == f"tapmodel {tapmodel.__version__}\n"


@pytest.mark.parametrize("room", COMMANDS, ids=NAMES)
def test_examples_are_in_the_help_and_can_be_typed(room: object) -> None:
    command = getattr(room, "__name__").rpartition(".")[2]  # noqa: B009
    examples: tuple[str, ...] = getattr(room, "EXAMPLES")  # noqa: B009
    shown = said(command, "--help").splitlines()
    for example in examples:
        assert f"    {example}" in shown
        program, named, *words = shlex.split(example.partition(" > ")[0])
        assert (program, named) == ("tapmodel", command)
        # The parser alone: nothing is run.
        parsed = _click().commands[command].make_context(command, words)
        assert parsed.params


def _click():  # noqa: ANN202  (the parser's own type has no public name)
    import typer.main  # noqa: PLC0415

    return typer.main.get_command(app)


def on_a_terminal(*words: str, **environment: str) -> str:
    """What a command writes when it believes itself watched."""
    ours, theirs = pty.openpty()
    command = [sys.executable, "-m", "tapmodel", *words]
    environment = {**os.environ, "TERM": "xterm", **environment}
    environment.pop("NO_COLOR", None) if environment.get("NO_COLOR") == "" else None
    run = subprocess.Popen(command, stdout=theirs, stderr=theirs, env=environment)
    os.close(theirs)
    written = b""
    while True:
        try:
            piece = os.read(ours, 65536)
        except OSError:  # how a terminal says that nobody writes any more
            break
        written += piece
    os.close(ours)
    assert run.wait() in {0, 1}
    return written.decode().replace("\r\n", "\n")


def test_colour_is_for_terminals_alone() -> None:
    words = ("design", "M6", "--set", "blank.square_across_flats=7")
    coloured = on_a_terminal(*words, NO_COLOR="")
    plain = on_a_terminal(*words, NO_COLOR="1")
    assert "\x1b[31m" in coloured
    assert "\x1b" not in plain
    assert plain == on_a_terminal(*words, NO_COLOR="", TERM="dumb")


def test_commands_and_fields_complete() -> None:
    how = {"_TAPMODEL_COMPLETE": "complete_bash"}
    assert said(COMP_WORDS="tapmodel sch", COMP_CWORD="1", **how).split() == ["schema"]
    fields = said(COMP_WORDS="tapmodel design --set flutes.c", COMP_CWORD="3", **how).split()
    assert fields == ["flutes.count=", "flutes.cutter_diameter=", "flutes.core_diameter="]
    # A list cannot be varied.
    shop = said(COMP_WORDS="tapmodel compare --vary shop.", COMP_CWORD="3", **how).split()
    assert shop == [
        *("shop.file=", "shop.tools=", "shop.dividing_ratio=", "shop.leadscrew="),
        *("shop.relief_by=", "shop.offset_step=", "shop.indicator_step=", "shop.furnace="),
        *("shop.mill_control=", "shop.index=", "shop.rate="),
    ]


def test_swapped_words_of_verify_are_answered_with_the_right_ones() -> None:
    command = [sys.executable, "-m", "tapmodel", "verify", "M10", "back from cam.STEP"]
    done = subprocess.run(command, capture_output=True, text=True, check=False)
    assert done.returncode == 2
    assert "tapmodel verify 'back from cam.STEP' M10" in done.stderr
