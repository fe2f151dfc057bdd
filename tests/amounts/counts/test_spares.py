"""Spares by the binomial law."""

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from scipy.stats import binom

from demould.amounts.counts.spares import make_for, pieces_to_make, sure_of
from demould.mise.figure import unfold
from tests.desserts.build import stated
from tests.desserts.kitchen import KITCHEN


@pytest.mark.parametrize(
    ("needed", "made"), [(12, 14), (24, 27), (50, 56), (100, 109), (500, 535)]
)
def test_at_5_percent_breakage_95_percent_sure(needed: int, made: int) -> None:
    assert pieces_to_make(needed, 0.05, 0.95) == made


def test_24_of_27_is_sure_enough_and_of_26_not() -> None:
    assert sure_of(24, 27, 0.05) == pytest.approx(0.956, abs=0.0005)
    assert sure_of(24, 26, 0.05) == pytest.approx(0.861, abs=0.0005)


@settings(max_examples=60)
@given(st.integers(1, 600), st.integers(0, 80), st.floats(0.001, 0.6))
def test_the_chance_is_that_of_a_statistics_library(
    needed: int, spares: int, breakage: float
) -> None:
    made = needed + spares
    ours = sure_of(needed, made, breakage)
    # Sums of some 80 logarithms of factorials: 1e-10 is far above their rounding.
    assert ours == pytest.approx(binom.cdf(spares, made, breakage), rel=1e-9, abs=1e-12)


@settings(max_examples=60)
@given(st.integers(1, 2000), st.floats(0, 0.5), st.floats(0, 0.999))
def test_it_is_the_least_number_that_is_sure(
    needed: int, breakage: float, sure: float
) -> None:
    made = pieces_to_make(needed, breakage, sure)
    assert sure_of(needed, made, breakage) >= sure
    assert made == needed or sure_of(needed, made - 1, breakage) < sure


def test_nothing_breaks_nothing_needed_nothing_made() -> None:
    assert pieces_to_make(24, 0, 0.99) == 24
    assert pieces_to_make(0, 0.05, 0.95) == 0
    assert sure_of(5, 4, 0.1) == 0


def test_shares_that_cannot_be_are_refused() -> None:
    with pytest.raises(
        ValueError, match=r"^breakage of 100 %; it must be from 0 to 99 %$"
    ):
        sure_of(1, 2, 1.0)
    with pytest.raises(ValueError, match=r"^sure of 100 %; it must be under 100 %$"):
        pieces_to_make(1, 0.05, 1.0)


def test_the_kitchen_says_how_many_to_make() -> None:
    made = make_for(24, KITCHEN)
    assert made.value == 27
    assert [part.name for _, part in unfold(made)] == [
        "pieces to make",
        "breakage",
        "how sure",
    ]
    assert str(getattr(made.origin, "rule", "")) == (
        "the fewest of which 24 come out whole 95 times in 100, where 5 % break"
    )


def test_spares_in_the_order_win() -> None:
    assert make_for(24, KITCHEN, stated(1, "pieces")).value == 25
