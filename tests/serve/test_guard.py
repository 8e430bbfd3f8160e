"""Who is answered: the page itself, by an address that is served, with the token."""

import asyncio
import json
from collections.abc import AsyncIterator

import pytest
from served_page import HOST, JSON, TOKEN, Served, serving
from starlette.types import ASGIApp

from tapmodel.run.crew import Limits
from tapmodel.serve.body import DEEPEST
from tapmodel.serve.building.builds import Builds
from tapmodel.serve.guard.headers import HEADERS
from tapmodel.serve.guard.rate import A_SECOND, AT_ONCE, Rate
from tapmodel.serve.guard.size import LARGEST

M10 = {"job": {"designation": "M10"}}


def _message(answer) -> str:  # noqa: ANN001  (the client's own)
    return answer.json()["error"]["message"]


def test_the_page_itself_is_answered(served: Served) -> None:
    assert served.get("").status_code == 200
    assert served.get("page.js").headers["content-type"].startswith("text/javascript")
    own = {"origin": f"http://{HOST}", "sec-fetch-site": "same-origin"}
    assert served.post("tap", M10, **own).status_code == 200
    assert served.post("tap", M10, **{"content-type": f"{JSON}; charset=utf-8"}).status_code == 200


@pytest.mark.parametrize("path", ["", "page.js", "tap", "build", "nothing"])
@pytest.mark.parametrize(
    "token", ["", "another", TOKEN[:-1], f"{TOKEN}x", TOKEN.upper(), "%00", "ö"]
)
def test_without_the_token_nothing_is_answered(served: Served, token: str, path: str) -> None:
    answer = served.ask("GET", f"/{token}/{path}")
    assert answer.status_code == 404
    assert TOKEN not in answer.text


def test_the_token_alone_is_no_path(served: Served) -> None:
    assert served.ask("GET", f"/{TOKEN}").status_code == 404


# Names that lead to this machine, or look like it, and that are not served.
@pytest.mark.parametrize(
    "host",
    [
        "evil.example",
        "evil.example:8123",
        "127.0.0.1",
        "127.0.0.1:80",
        "127.0.0.1:8123.evil.example",
        "localhost.evil.example:8123",
        f"{HOST}@evil.example",
        "0.0.0.0:8123",
        "",
    ],
)
def test_another_host_is_refused_before_anything_is_told(served: Served, host: str) -> None:
    for answer in (served.get("", host=host), served.post("tap", M10, host=host)):
        assert answer.status_code == 421
        assert "M10" not in answer.text


@pytest.mark.parametrize(
    ("forged", "status"),
    [
        ({"origin": "http://evil.example"}, 403),
        ({"origin": "null"}, 403),
        ({"origin": f"https://{HOST}"}, 403),
        ({"origin": "http://127.0.0.1:8124"}, 403),
        ({"sec-fetch-site": "cross-site"}, 403),
        ({"sec-fetch-site": "same-site"}, 403),
        ({"content-type": "text/plain"}, 415),
        ({"content-type": "application/x-www-form-urlencoded"}, 415),
        ({"content-type": "multipart/form-data; boundary=application/json"}, 415),
        ({"content-type": ""}, 415),
    ],
)
def test_a_post_from_another_site_is_refused(
    served: Served, forged: dict[str, str], status: int
) -> None:
    for path in ("tap", "build", "job", "read", "papers"):
        assert served.post(path, M10 | {"formats": ["step"]}, **forged).status_code == status
    assert served.builds.running is None


def test_another_site_can_stop_no_build(served: Served) -> None:
    forged = {"origin": "http://evil.example"}
    answer = served.ask("DELETE", f"/{TOKEN}/build/any", headers=forged)
    assert answer.status_code == 403


@pytest.mark.parametrize("method", ["OPTIONS", "PUT", "PATCH", "TRACE", "POST"])
def test_no_other_method_is_answered(served: Served, method: str) -> None:
    answer = served.ask(method, f"/{TOKEN}/page.js", headers={"content-type": JSON})
    assert answer.status_code == 405


def test_every_answer_tells_the_browser_what_it_may_not(served: Served) -> None:
    answers = [
        served.get(""),
        served.get("page.css"),
        served.post("tap", M10),
        served.post("tap", {"job": {}}),
        served.ask("GET", "/"),
        served.get("", host="evil.example"),
        served.post("tap", M10, origin="null"),
        served.send("tap", b"x" * (LARGEST + 1)),
    ]
    assert {answer.status_code for answer in answers} == {200, 422, 404, 421, 403, 413}
    for answer in answers:
        assert {name: answer.headers[name] for name in HEADERS} == HEADERS
    policy = HEADERS["Content-Security-Policy"]
    assert "default-src 'none'; script-src 'self'; style-src 'self'" in policy
    assert "unsafe" not in policy
    assert "http" not in policy


# Decoded, as no client can send them; what one can goes over the wire in test_start.py.
PATHS = [
    "/..%2f..%2fetc/passwd",
    "/....//etc/passwd",
    "/..\\..\\etc\\passwd",
    "/page.js/../../app.py",
    "/page.js\x00.css",
    "/built/page.js",
    "/__init__.py",
    "/build/x/files/../../../../etc/passwd",
    "/build/x/files//etc/passwd",
]


@pytest.mark.parametrize("path", PATHS)
def test_no_path_leads_to_the_disk(served: Served, path: str) -> None:
    assert _status(served.app, f"/{TOKEN}{path}") == 404


def _status(app: ASGIApp, path: str) -> int:
    """Of the answer to a path just as it is."""
    told: list[int] = []
    scope = {
        "type": "http",
        "method": "GET",
        "path": path,
        "raw_path": path.encode(),
        "query_string": b"",
        "headers": [(b"host", HOST.encode())],
        "client": ("127.0.0.1", 1),
        "server": ("127.0.0.1", 8123),
        "scheme": "http",
    }

    async def receive() -> dict[str, object]:
        return {"type": "http.request", "body": b"", "more_body": False}

    async def send(message: dict[str, object]) -> None:
        if message["type"] == "http.response.start":
            told.append(message["status"])

    asyncio.run(app(scope, receive, send))
    return told[0]


def test_a_body_is_measured_by_what_it_says_and_as_it_comes(served: Served) -> None:
    padded = {"job": {"designation": "M10"}, "units": None}
    fits = json.dumps(padded).encode().ljust(LARGEST)
    assert served.send("tap", fits).status_code == 200
    assert served.send("tap", fits + b" ").status_code == 413

    # Without a length, in pieces.
    async def pieces(text: bytes) -> AsyncIterator[bytes]:
        for at in range(0, len(text), 10_000):
            yield text[at : at + 10_000]

    assert served.send("tap", pieces(fits)).status_code == 200
    answer = served.send("tap", pieces(fits + b" "))
    assert answer.status_code == 413
    assert str(LARGEST) in _message(answer)


@pytest.mark.parametrize(
    "text",
    [
        "",
        "{",
        "M10",
        '{"job": NaN}',
        '{"z": Infinity, "job": {}}',
        '{"job": {"designation": "M10", "flutes.rake": 1e999}}',
        "[" * 100_000,
        '{"a":' * 40_000,
        "9" * 5000,
        '{"job": {"name": "\\ud800"}}',
        '{"\\udc00": 1}',
    ],
)
def test_what_is_no_json_is_refused(served: Served, text: str) -> None:
    answer = served.send("tap", text.encode())
    assert answer.status_code == 400
    assert "JSON" in _message(answer)


def test_letters_of_another_coding_are_refused(served: Served) -> None:
    body = '{"job": {"designation": "M10", "name": "ö"}}'.encode("latin-1")
    answer = served.send("tap", body)
    assert answer.status_code == 400


def test_lists_within_lists_end_somewhere(served: Served) -> None:
    def deep(levels: int) -> object:
        value: object = 1
        for _ in range(levels):
            value = [value]
        return value

    # The request and its job are two levels.
    refused = served.post("tap", {"job": {"designation": deep(DEEPEST - 1)}})
    assert (refused.status_code, str(DEEPEST) in _message(refused)) == (400, True)
    assert served.post("tap", {"job": {"designation": deep(DEEPEST - 2)}}).status_code == 422


def test_a_slider_is_never_too_fast_and_a_flood_is_told_to_wait() -> None:
    seconds = 0.0
    answered: list[int] = []

    async def app(_scope, _receive, _send) -> None:  # noqa: ANN001  (the server's own)
        answered.append(200)

    async def send(message: dict[str, object]) -> None:
        if message["type"] == "http.response.start":
            answered.append(message["status"])
            assert (b"retry-after", b"1") in message["headers"]

    rate = Rate(app, clock=lambda: seconds)

    def ask(count: int, client: str = "one") -> list[int]:
        answered.clear()
        for _ in range(count):
            scope = {"type": "http", "client": (client, 1)}
            asyncio.run(rate(scope, None, send))
        return answered.copy()

    assert AT_ONCE >= 2 * 200
    assert ask(AT_ONCE) == [200] * AT_ONCE
    assert ask(2) == [429, 429]
    assert ask(1, "other") == [200]
    seconds += 0.1
    assert ask(A_SECOND // 10 + 1) == [200] * (A_SECOND // 10) + [429]
    seconds += 3600
    assert ask(AT_ONCE + 1) == [200] * AT_ONCE + [429]
    # A machine with many addresses cannot fill the memory.
    for number in range(1100):
        ask(1, str(number))
    assert len(rate._left) == 1000


def test_another_site_cannot_use_up_what_the_page_may_ask() -> None:
    with Builds(Limits()) as builds:
        served = serving(builds)
        for _ in range(AT_ONCE + 1):
            served.ask("GET", "/guessed/")
        assert served.post("tap", M10).status_code == 200


def test_a_fault_of_the_program_is_told_in_one_sentence(
    served: Served, monkeypatch: pytest.MonkeyPatch
) -> None:
    def fails(*_given: object) -> None:
        raise ZeroDivisionError("within")

    monkeypatch.setattr("tapmodel.serve.asked.settled_tap", fails)
    answer = served.post("tap", {"job": {"designation": "M17"}})
    assert answer.status_code == 500
    assert _message(answer).endswith("please report it: ZeroDivisionError: within")
