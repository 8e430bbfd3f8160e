"""The process beside the server: it does what it is asked, and its death costs one answer."""

import os
import signal
import time
from collections.abc import Iterator
from functools import partial
from operator import truediv

import psutil
import pytest
from served_page import HOST, TOKEN, Served

from tapmodel.errors import KernelError
from tapmodel.run.crew import Limits
from tapmodel.serve.answering import respond
from tapmodel.serve.answers.model import model_answer
from tapmodel.serve.app import application
from tapmodel.serve.asked import Asked, Opening
from tapmodel.serve.building.builds import Builds
from tapmodel.serve.mate import Mate, hired

M10 = {"designation": "M10"}


@pytest.fixture(scope="module")
def mate() -> Iterator[Mate]:
    with Mate("tapmodel.serve.answers.model") as one:
        yield one


def test_it_answers_as_the_server_itself_does(mate: Mate) -> None:
    asked = Asked(job={"designation": "M4", "blank.thread_length": 4})
    there = mate.do(partial(respond, model_answer), asked)
    here = respond(model_answer, asked)
    assert len(here.body) > 10_000
    assert there.body == here.body
    assert there.headers == here.headers


def test_a_refusal_comes_back_in_the_readers_units(mate: Mate) -> None:
    # No tap is left of it, and what is said of that holds a length.
    job = {"designation": "M10", "flutes.cutter_diameter": 30, "flutes.core_diameter": 9}
    asked = Asked(job=job, units="inch")
    there = mate.do(partial(respond, model_answer), asked)
    assert there.status_code == 422
    assert b" in" in there.body
    assert there.body == respond(model_answer, asked).body


def test_its_death_costs_one_answer(mate: Mate) -> None:
    # Each process here leads a group of its own, which bears its number.
    first = mate.do(os.getpgid, 0)
    assert first not in {os.getpid(), 0}
    with pytest.raises(KernelError, match="SIGKILL"):
        mate.do(signal.raise_signal, signal.SIGKILL)
    second = mate.do(os.getpgid, 0)
    assert second not in {os.getpid(), first}


def test_what_does_not_end_costs_one_answer(mate: Mate, monkeypatch: pytest.MonkeyPatch) -> None:
    first = mate.do(os.getpgid, 0)
    with monkeypatch.context() as short:
        short.setattr("tapmodel.serve.mate.LONGEST", 0.5)
        with pytest.raises(KernelError, match=r"no end within 0\.5 s"):
            mate.do(time.sleep, 1000)
    assert not psutil.pid_exists(first)
    assert mate.do(os.getpgid, 0) not in {os.getpid(), first}


def test_cures_stand_back_behind_the_model() -> None:
    priority = partial(os.getpriority, os.PRIO_PROCESS)
    with hired() as mates:
        own = os.getpriority(os.PRIO_PROCESS, 0)
        assert mates.shaper.do(priority, 0) == own
        assert mates.seeker.do(priority, 0) > own


def test_what_fails_there_is_told_here(mate: Mate) -> None:
    with pytest.raises(KernelError, match="ZeroDivisionError"):
        mate.do(partial(truediv, 1), 0)
    assert mate.do(partial(truediv, 1), 4) == 0.25


def test_it_ends_with_its_context() -> None:
    with Mate("tapmodel.serve.answers.model") as one:
        number = one.do(os.getpgid, 0)
        assert psutil.pid_exists(number)
    assert not psutil.pid_exists(number)


def test_the_page_is_answered_while_cures_are_sought() -> None:
    with Builds(Limits()) as builds, hired() as mates:
        job = {"designation": "Tr16x4"}
        served = Served(application(TOKEN, {HOST}, Opening(job=M10), builds, mates), builds)
        found = served.post("cures", {"job": job}).json()["findings"]
        assert any(one["cures"] for one in found)
        assert served.post("model", {"job": M10}).status_code == 200
        assert served.post("model", {"job": M10 | {"flutes.count": 99}}).status_code == 422
