"""Gelatin of another strength: both laws, each against what is printed for it."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from demould.larder.read import unit_weight
from demould.matter.gelatin import as_bloom, water_for, within_the_law

# Strength goes with the square of concentration: A. G. Ward and A. Courts (eds.), The
# Science and Technology of Gelatin, Academic Press, 1977 (as quoted). 10 g of 200 bloom
# by that, to two decimals; beside it the straight ratio many suppliers print.
TEN_OF_200 = [
    (140, 11.95, 14.29),
    (160, 11.18, 12.50),
    (180, 10.54, 11.11),
    (220, 9.53, 9.09),
    (240, 9.13, 8.33),
    (250, 8.94, 8.00),
]


@pytest.mark.parametrize(("bloom", "root", "ratio"), TEN_OF_200)
def test_ten_grams_of_200_bloom(bloom: float, root: float, ratio: float) -> None:
    both = as_bloom(10, 200, bloom)
    assert both.root == pytest.approx(root, abs=0.0051)
    assert both.ratio == pytest.approx(ratio, abs=0.0051)


def test_the_root_law_gives_equal_bloom_in_the_cup_it_is_defined_by() -> None:
    # Bloom is the force on 6.67 % gel after 16 to 18 h at 10 °C, and force goes with
    # concentration squared: 6.67 % of 250 and so much of 160 push back alike.
    grams = as_bloom(6.67, 250, 160).root
    assert 160 * (grams / 6.67) ** 2 == pytest.approx(250)


def test_the_trade_table_that_goes_by_the_ratio() -> None:
    # A supplier's table, 220 to 180: factor 1.22; the root law says 1.106.
    both = as_bloom(1, 220, 180)
    assert both.ratio == pytest.approx(1.22, abs=0.005)
    assert both.root == pytest.approx(1.106, abs=0.0005)
    assert both.apart == pytest.approx(1.2222 / 1.1055 - 1, abs=1e-3)


def test_leaves_are_made_to_the_ratio_and_not_to_the_root() -> None:
    # Common practice, no source: bronze 3.3 g, silver 2.5, gold 2.0, platinum 1.7 are
    # exchanged leaf for leaf. Grams x bloom is nearly one number, grams x root is not.
    grades = [(3.3, 140), (2.5, 160), (2.0, 200), (1.7, 240)]
    by_ratio = [as_bloom(g, b, 200).ratio for g, b in grades]
    by_root = [as_bloom(g, b, 200).root for g, b in grades]
    assert max(by_ratio[1:]) / min(by_ratio[1:]) < 1.03
    assert max(by_root) / min(by_root) > 1.4


@pytest.mark.parametrize(("grade", "grams", "bloom"), [("gold leaf gelatin", 2.0, 200)])
def test_a_leaf_weighs_what_its_grade_says(
    grade: str, grams: float, bloom: float
) -> None:
    # Common practice, no source; leaves run from 1.7 to 5 g: weigh one.
    mass, strength = unit_weight(grade), unit_weight(grade, "bloom")
    assert mass is not None
    assert strength is not None
    assert (mass.value, strength.value) == (grams, bloom)


@given(grams=st.floats(0.1, 100), first=st.floats(100, 300), second=st.floats(100, 300))
def test_there_and_back_is_the_same_amount(
    grams: float, first: float, second: float
) -> None:
    there = as_bloom(grams, first, second)
    assert as_bloom(there.root, second, first).root == pytest.approx(grams)
    assert as_bloom(there.ratio, second, first).ratio == pytest.approx(grams)
    stronger = second > first
    assert (there.root <= grams) is stronger or there.root == pytest.approx(grams)
    assert there.apart >= -1e-12


def test_the_law_is_said_for_140_to_260_bloom() -> None:
    assert within_the_law(160, 240)
    assert not within_the_law(100, 200)


def test_a_gelatin_without_strength_is_refused() -> None:
    with pytest.raises(
        ValueError, match=r"^a gelatin of 0 bloom; it must be more than 0$"
    ):
        as_bloom(1, 0, 200)


def test_water_for_soaking() -> None:
    # Common practice, no source: five times its own weight, 4.5 to 7.
    assert water_for(4.7) == pytest.approx((21.15, 23.5, 32.9))
