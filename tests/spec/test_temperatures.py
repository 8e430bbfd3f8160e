"""Temperatures as people write them."""

import pytest

from tapmodel.spec.temperatures import celsius_of


@pytest.mark.parametrize(
    ("text", "celsius"),
    [
        *(("925", 925.0), ("925C", 925.0), (" 925 °C ", 925.0), ("925.5 c", 925.5)),
        *(("1700F", 926.667), ("1700 °F", 926.667), ("400 deg F", 204.444), ("-40F", -40.0)),
    ],
)
def test_as_written(text: str, celsius: float) -> None:
    assert celsius_of(text) == pytest.approx(celsius, abs=1e-3)


@pytest.mark.parametrize("text", ["", "hot", "925K", "nan", "1e3", "9 2 5", "٩٢٥", "925CC", "1,5"])
def test_what_is_none(text: str) -> None:
    assert celsius_of(text) is None
