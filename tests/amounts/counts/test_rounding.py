"""Counts down, factors up."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from demould.amounts.counts.rounding import (
    filled_pieces,
    short_at_rim_mm,
    up_to_thousandths,
    whole_pieces,
)


@pytest.mark.parametrize(
    ("pieces", "whole"),
    [
        (13.92, 13),
        (13.999, 13),
        (13.9999, 13),
        (13.999999, 14),
        (14.0, 14),
        (0.1 * 3 / 0.3 * 14, 14),
        (0.99, 0),
        (-0.4, 0),
    ],
)
def test_pieces_go_down_but_a_speck_is_forgiven(pieces: float, whole: int) -> None:
    assert whole_pieces(pieces) == whole


def test_a_terrine_a_quarter_millimetre_short_fits_and_a_dome_does_not() -> None:
    # 1057 g less 5 % are 1004.15 of the 1008 g it takes: 6.4 ml over 300 x 80 mm.
    assert short_at_rim_mm((1008 - 1004.15) / 0.6, 300 * 80) == pytest.approx(
        0.27, abs=0.003
    )
    assert filled_pieces(1004.15 / 1008, 1680, 300 * 80) == 1
    # 13.92 domes: 0.08 x 50.4 ml over a circle of 70 mm is 1.0 mm.
    assert filled_pieces(13.92, 50.4, 3848) == 13


@given(st.integers(1, 200), st.floats(1, 2000), st.floats(100, 50_000))
def test_half_a_millimetre_is_the_line(whole: int, each: float, opening: float) -> None:
    ml = opening / 1000
    if each < ml:
        return
    assert filled_pieces(whole - 0.51 * ml / each, each, opening) == whole - 1
    assert filled_pieces(whole - 0.48 * ml / each, each, opening) == whole


@given(st.floats(0.0005, 1000))
def test_factors_go_up_by_less_than_a_thousandth(factor: float) -> None:
    up = up_to_thousandths(factor)
    assert factor - 1e-8 <= up < factor + 0.001
    assert up_to_thousandths(up) == up
