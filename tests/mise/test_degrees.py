"""Temperatures in a cook's words."""

import pytest

from demould.mise.degrees import degrees_in


@pytest.mark.parametrize(
    ("text", "found"),
    [
        ("4 to 8 °C, soft peaks", [(4, 8)]),
        ("83-84°C", [(83, 84)]),
        ("at -14 to -12 °C", [(-14, -12)]),
        ("core \u221218 °C", [(-18, -18)]),
        ("45 °C, then 32 °C (30 to 34 °C)", [(45, 45), (32, 32), (30, 34)]),
        ("stands 20 min; 5 mm", []),
        ("at 2,5 °", [(2.5, 2.5)]),
        ("12.3.4 °C", []),
    ],
)
def test_temperatures_are_read(text: str, found: list[tuple[float, float]]) -> None:
    assert [tuple(one) for one in degrees_in(text)] == found
