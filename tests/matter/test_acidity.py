"""pH as a band: citric acid against tables, known mixes inside their bands."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from demould.larder.ingredient import Composition, Ingredient
from demould.larder.read import ingredient
from demould.matter.acidity import CITRIC_PK, acidity, citrate_charge
from demould.matter.inside import Inside


def of(*parts: tuple[str, float]) -> Inside:
    return tuple((ingredient(name), grams) for name, grams in parts)


@pytest.mark.parametrize("n", range(3))
def test_at_each_constant_one_more_proton_is_half_gone(n: int) -> None:
    # By the definition of the constants; neighbours 1.6 apart blur it by 0.03.
    assert citrate_charge(CITRIC_PK[n]) == pytest.approx(n + 0.5, abs=0.035)


@pytest.mark.parametrize(("percent", "ph"), [(0.1, 2.8), (1.0, 2.2), (5.0, 1.8)])
def test_citric_acid_in_water(percent: float, ph: float) -> None:
    # Handbook values for citric acid solutions (from memory), to a tenth.
    mix = of(("citric_acid", percent), ("water", 100 - percent))
    found = acidity(mix)
    assert found is not None
    assert found.likely == pytest.approx(ph, abs=0.1)


@pytest.mark.parametrize("name", ["blackcurrant", "cream_35", "lemon_juice", "kiwi"])
def test_an_ingredient_alone_keeps_its_own_ph(name: str) -> None:
    found = acidity(of((name, 100)))
    assert found is not None
    own = ingredient(name).ph
    assert own is not None
    assert found.likely == pytest.approx(own, abs=0.02)
    assert found.low < own < found.high


def test_a_blackcurrant_centre_is_under_the_window_of_pectin_nh() -> None:
    # Common practice, no source: blackcurrant alone is near 2.9.
    found = acidity(of(("blackcurrant", 380), ("pear", 160), ("sucrose", 85)))
    assert found is not None
    assert found.high < 3.2
    assert str(found.reason).startswith("1.9 % acid, most of it from Blackcurrant")


def test_milk_takes_up_acid_that_water_does_not() -> None:
    # 10 g of lemon juice in 100 g of milk curdle it (4.6 cold, from 5.2 when hot); in
    # water they make it as sour as lemonade. Common practice, no source.
    milk = acidity(of(("milk_whole", 100), ("lemon_juice", 10)))
    water = acidity(of(("water", 100), ("lemon_juice", 10)))
    assert milk is not None
    assert water is not None
    assert milk.low < 5.2 < milk.high
    assert water.high < 3


@given(grams=st.floats(0.1, 50), more=st.floats(1, 50))
def test_more_juice_is_never_less_sour(grams: float, more: float) -> None:
    less = acidity(of(("milk_whole", 100), ("lemon_juice", grams)))
    much = acidity(of(("milk_whole", 100), ("lemon_juice", grams + more)))
    assert less is not None
    assert much is not None
    assert much.likely < less.likely
    assert much.low <= much.likely <= much.high


def test_nothing_with_a_ph_has_none() -> None:
    assert acidity(of(("sucrose", 100))) is None


def test_a_citrate_is_not_reckoned_with() -> None:
    assert acidity(of(("lemon_juice", 50), ("trisodium_citrate", 1))) is None


def test_protein_without_a_ph_is_taken_as_nearly_neutral() -> None:
    nut = Ingredient(
        id="nut", name="nut", per_100g=Composition(protein=20, water=80), source="x"
    )
    found = acidity(((nut, 100.0), *of(("lemon_juice", 1))))
    assert found is not None
    assert 5.5 < found.likely < 6.5
