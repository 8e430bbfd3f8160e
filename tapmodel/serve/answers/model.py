"""The model that a page turns: a quick mesh of the tap that is asked for."""

from starlette.responses import Response

from tapmodel.geometry.preview.quick_mesh import preview_mesh
from tapmodel.report.page.solid import Model, sent_model
from tapmodel.serve.asked import Asked, answered

_CAPTION = "Preview, not verified"


def model_answer(asked: Asked) -> Response:
    """The mesh of a design as bytes; see `sent_model`.

    Raises:
        KernelError: when a part of the mesh does not close.
    """
    # A model has no cures; to seek them takes several times as long as to make it.
    told = answered(asked, cured=False)
    mesh = preview_mesh(told.design.tap)
    content = sent_model(Model(mesh.vertices, mesh.triangles, _CAPTION), told.design, told.units)
    return Response(content, media_type="application/octet-stream")
