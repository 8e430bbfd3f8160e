"""The command: its one line, what a bad start says, and that it ends cleanly with all it began."""

import json
import re
import signal
import socket
import subprocess
import sys
import threading
import time
from collections.abc import Iterator
from pathlib import Path

import pytest
from served_process import COMMAND, Running, start

from tapmodel.serve.address import address_of, listening_at

SMALL = {"designation": "M4x0.7", "blank.thread_length": 4}


@pytest.fixture(scope="module")
def running(tmp_path_factory: pytest.TempPathFactory) -> Iterator[Running]:
    started = start(tmp_path_factory.mktemp("served"), "M8", "--port", "0")
    yield started
    started.process.kill()
    started.process.communicate()


def _fails(*words: str) -> tuple[int, str, str]:
    ended = subprocess.run(
        [*COMMAND, *words], capture_output=True, text=True, check=False, timeout=60
    )
    return ended.returncode, ended.stdout, ended.stderr


def test_the_whole_address_stands_on_one_line(running: Running) -> None:
    assert re.fullmatch(r"http://127\.0\.0\.1:\d+/[\w-]{32}/", running.link)
    status, page = running.ask("GET", "")
    assert (status, b"Tap for M8" in page) == (200, True)


def test_without_a_job_it_opens_with_m10(tmp_path: Path) -> None:
    started = start(tmp_path)
    assert b"Tap for M10" in started.ask("GET", "")[1]
    assert started.ended_by(signal.SIGINT)[0] == 130


BROWSER = """#!{python}
import pathlib, sys, urllib.request
opener = urllib.request.build_opener(urllib.request.ProxyHandler({{}}))
answer = opener.open(sys.argv[1], timeout=60)
pathlib.Path({seen!r}).write_text(str(answer.status))
"""


def test_a_browser_that_runs_in_the_terminal_is_answered(tmp_path: Path) -> None:
    browser, seen = tmp_path / "browser", tmp_path / "seen"
    browser.write_text(BROWSER.format(python=sys.executable, seen=str(seen)))
    browser.chmod(0o755)
    started = start(tmp_path, "M8", browser=browser)
    until = time.monotonic() + 120
    while not seen.exists():
        assert time.monotonic() < until, "the page is not served before the browser has ended"
        time.sleep(0.1)
    assert started.ended_by(signal.SIGINT)[0] == 130
    assert seen.read_text() == "200"


PASSWD = [
    "../../etc/passwd",
    "..%2f..%2f..%2fetc%2fpasswd",
    "%2e%2e/%2e%2e/%2e%2e/etc/passwd",
    "..%5c..%5cetc%5cpasswd",
    "%252e%252e%252fetc%252fpasswd",
    "page.js%00",
    "//etc/passwd",
    "build/../../../../etc/passwd",
    "build/x/files/..%2f..%2f..%2fetc%2fpasswd",
]


@pytest.mark.parametrize("path", PASSWD)
def test_no_path_on_the_wire_leads_to_the_disk(running: Running, path: str) -> None:
    status, text = running.ask("GET", path)
    assert status == 404
    assert b"root:" not in text


@pytest.mark.parametrize("path", ["/", "/../etc/passwd", "/tap"])
def test_nothing_is_told_without_the_token(running: Running, path: str) -> None:
    assert running.ask("GET", path)[0] == 404


def test_a_name_led_to_this_machine_is_refused(running: Running) -> None:
    port = running.link.split("/")[2].rpartition(":")[2]
    assert running.ask("GET", "", host=f"evil.example:{port}")[0] == 421
    assert running.ask("GET", "", host=f"localhost:{port}")[0] == 200
    # Nor does it help to say who one is.
    forwarded = {"x-forwarded-for": "10.0.0.1", "x-forwarded-host": f"localhost:{port}"}
    assert running.ask("GET", "", host="evil.example", **forwarded)[0] == 421


def test_a_forged_post_is_refused(running: Running) -> None:
    body = {"job": {"designation": "M10"}}
    assert running.ask("POST", "tap", body, origin="http://evil.example")[0] == 403
    assert running.ask("POST", "tap", body, **{"content-type": "text/plain"})[0] == 415
    assert running.ask("POST", "tap", body)[0] == 200


def test_two_clients_at_once_get_their_own_answers(running: Running) -> None:
    wrong: list[object] = []

    def work(sizes: list[int]) -> None:
        for size in sizes:
            _, answer = running.ask("POST", "tap", {"job": {"designation": f"M{size}"}})
            title = json.loads(answer)["view"]["title"]
            wrong.extend([title] * (not title.startswith(f"Tap for M{size}x")))

    rows = [6, 8, 10, 12], [20, 16, 14, 10]
    threads = [threading.Thread(target=work, args=(row * 3,)) for row in rows]
    for thread in threads:
        thread.start()
    for thread in threads:
        thread.join()
    assert wrong == []


def test_moves_that_nobody_waits_for_are_not_worked_at(running: Running) -> None:
    _, _, host, token = running.link.rstrip("/").split("/")
    name, port = host.split(":")

    def moved(offset: float) -> None:
        """Ask, and leave at once."""
        body = json.dumps({"job": {"designation": "M30", "flutes.offset": offset}}).encode()
        head = (
            f"POST /{token}/papers HTTP/1.1\r\nHost: {host}\r\nContent-Type: application/json\r\n"
        )
        with socket.create_connection((name, int(port))) as asking:
            asking.sendall(head.encode() + b"Content-Length: %d\r\n\r\n" % len(body) + body)

    asked = {"job": {"designation": "M30"}}
    running.ask("POST", "papers", asked)
    began = time.perf_counter()
    other = {"job": {"designation": "M30", "flutes.offset": 0.99}}
    running.ask("POST", "papers", other)
    papers = time.perf_counter() - began
    for number in range(40):
        moved(1 + number / 100)
    began = time.perf_counter()
    assert running.ask("POST", "tap", asked)[0] == 200
    assert running.ask("POST", "papers", asked)[0] == 200
    # Papers are made one after the other, and one of those had been begun at most.
    assert time.perf_counter() - began < 20 * papers


@pytest.mark.parametrize(("ending", "code"), [("SIGINT", 130), ("SIGTERM", 130)])
def test_it_ends_cleanly_with_what_it_builds(tmp_path: Path, ending: str, code: int) -> None:
    started = start(tmp_path, "M4x0.7", "--set", "blank.thread_length=4")
    status, _ = started.ask("POST", "build", {"job": SMALL, "formats": ["step"]})
    assert status == 202
    while not _spawned(started.process.pid):
        time.sleep(0.01)
    assert [path.name[:15] for path in tmp_path.iterdir()] == ["tapmodel-serve-"]
    children = _spawned(started.process.pid)
    ended, told = started.ended_by(getattr(signal, ending))
    assert (ended, told) == (code, "\ntapmodel: stopped; the page is not served any more\n")
    assert [*tmp_path.iterdir()] == []
    assert not any(Path(f"/proc/{pid}").exists() for pid in children)


def _spawned(parent: int) -> list[int]:
    tasks = Path(f"/proc/{parent}/task").iterdir()
    return [int(pid) for task in tasks for pid in (task / "children").read_text().split()]


def test_a_port_that_is_taken_is_told_with_its_option(running: Running) -> None:
    port = running.link.split("/")[2].rpartition(":")[2]
    code, printed, told = _fails("--port", port)
    assert (code, printed) == (2, "")
    assert told.startswith(f"tapmodel: --port: {port} cannot be used; allowed: a port that is free")
    assert told.count("\n") == 1


@pytest.mark.parametrize("host", ["192.0.2.77", "no-such-host.invalid", "ö" * 300])
def test_an_address_that_is_not_of_this_machine_is_told(host: str) -> None:
    code, printed, told = _fails("--host", host)
    assert (code, printed) == (2, "")
    assert told.startswith("tapmodel: --host: ")
    assert told.count("\n") == 1


@pytest.mark.parametrize(
    "words", [("M10", "--set", "flutes.count=99"), ("M10", "--set", "flutes.offset=4.9")]
)
def test_a_bad_job_is_told_as_design_tells_it(words: tuple[str, ...]) -> None:
    ended = subprocess.run(
        [sys.executable, "-m", "tapmodel", "design", *words],
        capture_output=True,
        text=True,
        check=False,
    )
    assert _fails(*words) == (ended.returncode, ended.stdout, ended.stderr)


def test_the_shop_of_a_job_is_read_once_into_its_values(tmp_path: Path) -> None:
    (tmp_path / "shop.toml").write_text('[shop]\ncutters = [2.5, 3.5]\nleadscrew = "8tpi"\n')
    job = tmp_path / "job.toml"
    job.write_text('designation = "M8"\n[shop]\nfile = "shop.toml"\nleadscrew = "6mm"\n')
    started = start(tmp_path, str(job))
    _, page = started.ask("GET", "")
    found = re.search(rb'id="page-data">(.*?)</script>', page)
    assert found
    opened = json.loads(found[1])
    # Nobody asked for units: they follow the thread, whichever is typed later.
    assert (opened["live"]["units"], opened["view"]["units"]) == (None, "mm")
    live = opened["live"]["job"]
    assert live["shop.cutters"] == [2.5, 3.5]
    assert live["shop.leadscrew"] == "6mm"
    assert "shop.file" not in live
    assert started.ask("POST", "tap", {"job": live})[0] == 200
    assert started.ended_by(signal.SIGINT)[0] == 130


def test_others_in_the_network_are_let_in_only_deliberately(tmp_path: Path) -> None:
    started = start(tmp_path, "--host", "0.0.0.0")  # noqa: S104  (what is tried)
    assert started.ask("GET", "")[0] == 200
    assert started.ask("GET", "", host="evil.example")[0] == 421
    code, told = started.ended_by(signal.SIGTERM)
    assert code == 130
    assert "whoever in the network has this address" in told


def test_no_answer_waits_for_its_first_part_to_be_acknowledged() -> None:
    with (
        listening_at("127.0.0.1", 0) as listening,
        socket.create_connection(listening.getsockname()),
        listening.accept()[0] as connection,
    ):
        assert connection.getsockopt(socket.IPPROTO_TCP, socket.TCP_NODELAY)


def test_hosts_are_the_names_of_where_it_listens() -> None:
    with listening_at("127.0.0.1", 0) as listening:
        address = address_of(listening, "127.0.0.1")
    port = address.port
    assert address.is_loopback
    assert address.hosts == {f"{name}:{port}" for name in ("127.0.0.1", "localhost", "[::1]")}
    with listening_at("", 0) as listening:
        address = address_of(listening, "")
    assert not address.is_loopback
    assert f"{address.host.lower()}:{address.port}" in address.hosts
    assert not address.link("token").startswith("http://0")
