"""Density of a mix, overrun, air."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from demould.larder.ingredient import Composition
from demould.larder.read import ingredient
from demould.matter.density import air, mix_density, overrun
from tests.desserts.build import stated


@pytest.mark.parametrize(
    ("made_of", "printed", "off"),
    [
        # CRC Handbook of Chemistry and Physics (from memory), at 20 °C. The additive rule
        # leaves out contraction: sugar solutions come out up to 0.6 % light, spirit 3.5 % (it draws together most of all).
        (Composition(water=100), 0.9982, 0.003),
        (Composition(water=90, sucrose=10), 1.0381, 0.004),
        (Composition(water=70, sucrose=30), 1.1270, 0.006),
        (Composition(water=40, sucrose=60), 1.2865, 0.006),
        (Composition(alcohol=100), 0.7893, 0.0001),
        (Composition(water=67, alcohol=33), 0.9485, 0.036),
    ],
)
def test_densities_are_near_the_printed_ones(
    made_of: Composition, printed: float, off: float
) -> None:
    assert mix_density(made_of) == pytest.approx(printed, rel=off)


def test_milk_and_cream_are_near_what_dairies_print() -> None:
    # Whole milk 1.030 g/ml, cream of 35 % 0.99 (from memory of dairy tables). Milk fat
    # part solid and protein in solution: allow 1 %.
    assert mix_density(ingredient("milk_whole").per_100g) == pytest.approx(
        1.03, rel=0.01
    )
    assert mix_density(ingredient("cream_35").per_100g) == pytest.approx(0.99, rel=0.01)


def test_constituents_alone_have_the_published_density() -> None:
    # Choi and Okos 1986 at 20 °C: 995.74, 1319.53, 917.24, 1592.9 kg/m3, to the digit.
    for part, printed in [
        ("water", 0.99574),
        ("protein", 1.31953),
        ("fat", 0.91724),
        ("starch", 1.5929),
    ]:
        assert mix_density(Composition(**{part: 100.0})) == pytest.approx(
            printed, abs=6e-6 if part != "starch" else 6e-5
        )


@given(st.floats(1, 99), st.floats(-40, 150))
def test_a_mix_lies_between_its_parts(water: float, at_c: float) -> None:
    light = mix_density(Composition(fat=100), at_c)
    heavy = mix_density(Composition(water=100), at_c)
    mixed = mix_density(Composition(water=water, fat=100 - water), at_c)
    low, high = sorted((light, heavy))
    assert low * (1 - 1e-9) <= mixed <= high * (1 + 1e-9)


@given(st.floats(0.1, 2))
def test_a_sheet_that_does_not_add_up_counts_as_shares(factor: float) -> None:
    whole = mix_density(Composition(water=60, fat=35, lactose=5))
    part = mix_density(
        Composition(water=60 * factor, fat=35 * factor, lactose=5 * factor)
    )
    assert part == pytest.approx(whole)


def test_only_known_temperatures_and_something_are_weighed() -> None:
    with pytest.raises(
        ValueError, match=r"^densities are known from -40 to 150 °C, not at 151 °C$"
    ):
        mix_density(Composition(water=100), 151)
    with pytest.raises(ValueError, match=r"^a mix of nothing has no density$"):
        mix_density(Composition())


def test_overrun_and_air_are_two_things() -> None:
    # 1.03 to 0.62 g/ml is 66 %; twice the volume is 100 % overrun and half air.
    base, whipped = stated(1.03, "g/ml"), stated(0.62, "g/ml")
    assert overrun(base, whipped).value == pytest.approx(66.1, abs=0.05)
    assert air(base, whipped).value == pytest.approx(39.8, abs=0.05)
    one, half = stated(1.0, "g/ml"), stated(0.5, "g/ml")
    assert overrun(one, half).value == pytest.approx(100)
    assert air(one, half).value == pytest.approx(50)


@given(st.floats(0.5, 1.3), st.floats(0.1, 0.99))
def test_air_follows_from_overrun(base: float, share: float) -> None:
    dense, light = stated(base, "g/ml"), stated(base * share, "g/ml")
    more = overrun(dense, light).value / 100
    assert air(dense, light).value == pytest.approx(100 * more / (1 + more))
