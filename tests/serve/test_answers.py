"""What the page is answered: designs, refusals that name the field, job files, papers."""

import asyncio
import re
import threading
from concurrent.futures import ThreadPoolExecutor

import pytest
from httpx import AsyncClient, Response
from served_page import TOKEN, Served
from sweeps import in_part

from tapmodel.designing.design import settled_tap
from tapmodel.serve import asked as asking
from tapmodel.serve.asked import Asked, answered
from tapmodel.spec.job_file import job_for

M10 = {"designation": "M10"}

# Job, field to blame, and what the sentence tells.
BAD = [
    ({}, "designation", "needed"),
    ({"designation": "hello"}, "designation", "'hello'"),
    ({"designation": 5}, "designation", "text in quotes"),
    ({"designation": "M10" * 1000}, "designation", "at most 80"),
    (M10 | {"flutes.count": 99}, "flutes.count", "at most 12"),
    (M10 | {"flutes.ofset": 1}, "flutes.ofset", "did you mean “flutes: offset of the cutter”?"),
    (M10 | {"flutes.offset": "1/0in"}, "flutes.offset", "1/0in"),
    (M10 | {"flutes.offset": 1e99}, "flutes.offset", "at most 1000"),
    (M10 | {"hole.material": "cheese"}, "hole.material", "C45"),
    (M10 | {"name": "../x"}, "name", "letters, digits"),
    (M10 | {"shop.cutters": ["a"]}, "shop.cutters", "'a'"),
    (M10 | {"flutes": 5}, "flutes", "keys of the table"),
    (
        M10 | {"chamfer": {"angle": 9, "length": 5, "point_diameter": 5}},
        "chamfer.angle",
        "delete one",
    ),
    (M10 | {"flutes.rake": 4, "flutes.offset": 1}, "flutes.rake", "delete all but one"),
    (M10 | {"flutes.offset": 4.9}, "flutes.offset", "at most"),
    (M10 | {"shop.file": "/etc/passwd"}, "shop.file", "tapmodel serve JOB"),
    (M10 | {"shop": {"file": "shop.toml"}}, "shop.file", "tapmodel serve JOB"),
]


@pytest.mark.parametrize(("job", "field", "words"), BAD)
@pytest.mark.parametrize("path", ["tap", "job", "papers", "build"])
def test_bad_input_is_refused_with_its_field(
    served: Served, path: str, job: dict[str, object], field: str, words: str
) -> None:
    formats = {"formats": ["step"]} if path == "build" else {}
    answer = served.post(path, {"job": job} | formats)
    error = answer.json()["error"]
    assert (answer.status_code, error["field"]) == (422, field)
    assert words in error["message"]
    assert len(error["message"]) < 2500
    # And nothing is lost by it.
    assert served.post("tap", {"job": M10}).status_code == 200


@pytest.mark.parametrize(
    "body",
    [
        [],
        5,
        {},
        {"job": []},
        {"job": M10, "units": "m"},
        {"job": M10, "z": -1},
        {"job": M10, "x": 1},
    ],
)
def test_a_request_of_another_form_is_refused(served: Served, body: object) -> None:
    assert served.post("tap", body).status_code == 422


def test_a_refusal_is_told_in_the_units_of_the_page(served: Served) -> None:
    job = M10 | {"flutes.offset": 4.9}
    told = [
        served.post("tap", {"job": job, "units": units}).json()["error"]["message"]
        for units in ("mm", "inch", "mm")
    ]
    assert "offset 4.900 mm" in told[0]
    assert "offset 0.1929 in" in told[1]
    assert told[2] == told[0]


@pytest.mark.parametrize("pointer", [{"shop.file": "s.toml"}, {"shop": {"file": "s.toml"}}])
def test_no_request_has_a_file_read(
    served: Served, pointer: dict[str, object], monkeypatch: pytest.MonkeyPatch
) -> None:
    def read(*_given: object) -> None:
        raise AssertionError("a file was read")

    monkeypatch.setattr("tapmodel.spec.toml_file._read", read)
    for path in ("tap", "job", "papers", "build"):
        formats = {"formats": ["job"]} if path == "build" else {}
        assert served.post(path, {"job": M10 | pointer} | formats).status_code == 422
    text = 'designation = "M10"\n[shop]\nfile = "s.toml"\n'
    answer = served.post("read", {"text": text})
    assert (answer.status_code, answer.json()["error"]["field"]) == (422, "shop.file")


def test_an_answer_is_the_design_of_the_command_line(served: Served) -> None:
    job = M10 | {"flutes.offset": 0.5}
    view = served.post("tap", {"job": job}).json()["view"]
    design = settled_tap(job_for("M10", ["flutes.offset=0.5"]))
    drill = next(one for one in view["first"] if one["key"] == "drill")
    assert drill["text"] == f"{design.drill:.2f}\u00a0mm"
    # Within the whole thread.
    assert design.tap.chamfer_length < view["section"]["z"] < design.tap.blank.thread_length
    lower = served.post("tap", {"job": job, "z": 2}).json()["view"]
    assert lower["section"]["z"] == 2
    assert lower["section"]["area"] < view["section"]["area"] * 0.99


def test_the_same_design_is_made_once(served: Served, monkeypatch: pytest.MonkeyPatch) -> None:
    made: list[str] = []

    def counted(job):  # noqa: ANN001, ANN202  (as the function in its place)
        made.append(job.designation)
        return settled_tap(job)

    monkeypatch.setattr(asking, "settled_tap", counted)
    job = {"designation": "M10", "flutes.offset": 0.503}
    for z in (1, 2, 3):
        assert served.post("tap", {"job": job, "z": z}).status_code == 200
    for _ in range(2):
        assert (
            served.post("tap", {"job": {"designation": "M10", "flutes.offset": 4.91}}).status_code
            == 422
        )
    assert made == ["M10", "M10"]


def test_designs_of_several_threads_are_those_of_one() -> None:
    jobs = [
        {"designation": f"M{d}", "flutes.rake": rake}
        for d in in_part((5, 8, 12, 16))
        for rake in (3, 8)
    ]
    asking._designed.cache_clear()
    with ThreadPoolExecutor(4) as threads:
        together = [*threads.map(lambda job: answered(Asked(job=job)).design, jobs)]
    asking._designed.cache_clear()
    assert together == [answered(Asked(job=job)).design for job in jobs]


async def _tap(client: AsyncClient, designation: str) -> Response:
    return await client.post(f"/{TOKEN}/tap", json={"job": {"designation": designation}})


def test_a_slow_request_makes_no_other_wait(
    served: Served, monkeypatch: pytest.MonkeyPatch
) -> None:
    begun, go_on = threading.Event(), threading.Event()

    def slow(job):  # noqa: ANN001, ANN202  (as the function in its place)
        if job.designation == "M33":
            begun.set()
            go_on.wait(30)
        return settled_tap(job)

    monkeypatch.setattr(asking, "settled_tap", slow)
    monkeypatch.setattr("tapmodel.serve.aside.aside.__defaults__", (None, 3))

    async def both() -> Response:
        async with served.client() as client:
            # What the first answer loads is not to be waited for.
            await _tap(client, "M10")
            waiting = asyncio.create_task(_tap(client, "M33"))
            await asyncio.to_thread(begun.wait, 30)
            assert (await _tap(client, "M10")).status_code == 200
            assert not waiting.done()
            return await waiting

    answer = asyncio.run(both())
    go_on.set()
    assert answer.status_code == 503
    assert "within 3 s" in answer.json()["error"]["message"]


def test_a_job_goes_out_as_a_file_and_comes_back(served: Served) -> None:
    job = M10 | {
        "flutes.offset": 0.5,
        "blank.shank_diameter": "1/4in",
        "shop.cutters": ["1/8in", 3],
    }
    answer = served.post("job", {"job": job, "units": "both"}).json()
    assert answer["name"] == "M10x1.5.toml"
    read = served.post("read", {"text": answer["text"]}).json()["job"]
    assert read["flutes.offset"] == 0.5
    assert read["blank.shank_diameter"] == "1/4in"
    assert read["shop.cutters"] == ["1/8in", 3]
    assert read["units"] == "both"
    views = [served.post("tap", {"job": one, "units": "mm"}).json()["view"] for one in (job, read)]
    # The usual edits count as given in the file; the tap is the same.
    for part in ("title", "verdict", "first", "section"):
        assert views[0][part] == views[1][part]


@pytest.mark.parametrize(
    ("text", "field", "words"),
    [
        ("", "designation", "needed"),
        ('designation = "M10"\nflutes.count = 99', "flutes.count", "at most 12"),
        ('designation = "M10"\ndrill = 1/4in', "", "line 2"),
        ('designation = "M10"\n' + "[" * 5000, "", "TOML"),
        ('a = "\x00"', "", "TOML"),
    ],
)
def test_a_file_that_is_no_job_is_refused(
    served: Served, text: str, field: str, words: str
) -> None:
    answer = served.post("read", {"text": text})
    error = answer.json()["error"]
    assert (answer.status_code, error["field"] if field else "") == (422, field)
    assert words in error["message"]


def test_papers_are_chapters_and_drawings_without_style_sheets(served: Served) -> None:
    papers = served.post("papers", {"job": M10, "units": "inch"}).json()
    chapters = {one["key"]: one["html"] for one in papers["chapters"]}
    assert "\u00a0in" in chapters["hole"]
    assert "choices" in chapters
    for html in chapters.values():
        assert not re.search(r"<script|<style| style=| on\w+=|http", html)
    drawings = {one["name"]: one["svg"] for one in papers["drawings"]}
    assert {"side", "cross-section", "milling"} <= drawings.keys()
    side = drawings["side"]
    assert "<style" not in side
    assert " class=" not in side
    looks = re.findall(r"<g [^>]*>(?=<path)", side)
    assert len(looks) >= 4
    assert all(' stroke="' in look and ' fill="' in look for look in looks)
    assert len(re.findall("<path ", side)) > 100
