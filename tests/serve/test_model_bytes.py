"""The model that a page asks for: head and arrays, as the command line's preview has them."""

import json
import struct

import httpx
import numpy as np
import pytest
from asked import settled_of
from served_page import Served

from tapmodel.geometry.preview.quick_mesh import preview_mesh


def _parts(answer: httpx.Response) -> tuple[dict[str, object], bytes]:
    assert answer.status_code == 200
    assert answer.headers["content-type"] == "application/octet-stream"
    (length,) = struct.unpack_from("<I", answer.content)
    assert length % 4 == 0
    return json.loads(answer.content[4 : 4 + length]), answer.content[4 + length :]


def test_the_model_comes_as_arrays_that_hold_the_preview(served: Served) -> None:
    job = {"designation": "M8", "flutes.count": 4}
    head, data = _parts(served.post("model", {"job": job}))
    lengths = head["lengths"]
    assert isinstance(lengths, dict)
    assert len(data) == sum(-(-size // 4) * 4 for size in lengths.values())
    places = np.frombuffer(data, "<u2", lengths["places"] // 2).reshape(-1, 3)
    begin = sum(-(-lengths[name] // 4) * 4 for name in ("places", "normals"))
    kind = "<u2" if head["vertices"] <= 65536 else "<u4"
    numbers = np.frombuffer(data, kind, 3 * head["triangles"], begin).reshape(-1, 3)
    corners = (np.array(head["low"]) + places * np.array(head["step"]))[numbers]
    volume = np.einsum("ij,ij->", np.cross(corners[:, 0], corners[:, 1]), corners[:, 2]) / 6
    mesh = preview_mesh(settled_of("M8", ["flutes.count=4"]).tap)
    a, b, c = (mesh.vertices[mesh.triangles[:, k]] for k in range(3))
    assert volume == pytest.approx(np.einsum("ij,ij->", np.cross(a, b), c) / 6, rel=1e-4)


def test_its_texts_are_in_the_units_that_are_asked_for(served: Served) -> None:
    head, _ = _parts(served.post("model", {"job": {"designation": "M8"}, "units": "inch"}))
    web = next(mark for mark in head["marks"] if mark["key"] == "web")
    core = settled_of("M8").tap.flutes.core_diameter
    assert web["text"] == f"{core / 25.4:.3f} in"


def test_a_view_tells_when_its_model_is_another(served: Served) -> None:
    def key(**job: object) -> str:
        asked = {
            "job": {"designation": "M10"} | {k.replace("_", ".", 1): v for k, v in job.items()}
        }
        return served.post("tap", asked).json()["view"]["model"]

    first = key()
    assert key() == first
    assert key(flutes_count=4) != first
    assert key(hole_depth=12) != first
    units = served.post("tap", {"job": {"designation": "M10"}, "units": "inch"}).json()
    assert units["view"]["model"] != first


def test_a_job_without_a_tap_is_refused(served: Served) -> None:
    answer = served.post("model", {"job": {"designation": "M10", "flutes.count": 99}})
    assert answer.status_code == 422
    assert answer.json()["error"]["field"] == "flutes.count"
