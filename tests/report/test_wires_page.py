from tapmodel.designing.record import TapDesign
from tapmodel.report.wires_page import wires_page
from tapmodel.shop.wires.answer import Wires, answer_wires
from tapmodel.shop.wires.asked import Overrides, free_thread, thread_of_design


def test_page_tells_limits_verdict_and_infeed(small_design: TapDesign):
    asked = thread_of_design(small_design, 7.35, Overrides())
    answer = answer_wires(asked, Wires(wire=0.58, measured=8.4, compound=29.5))
    page = wires_page(answer)
    assert answer.reading is not None
    assert "Measured 8.400 mm: too large: take more" in page
    assert f"compound at 29.5°  {answer.reading.infeed:.4f} mm" in page
    assert "limits over wires                     8.28" in page
    assert "measure over wires before the flutes" in page


def test_page_of_a_free_form_has_no_limits():
    page = wires_page(answer_wires(free_thread(14.5, 25.4, Overrides(lead_angle=5.0)), Wires()))
    assert "limits" not in page
    assert "best 13.0682 mm" in page
