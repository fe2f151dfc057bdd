"""Boiling points at height against CoolProp, sugar against the straight rule."""

import pytest
from CoolProp.CoolProp import PropsSI
from hypothesis import given
from hypothesis import strategies as st

from demould.matter.boiling import (
    cook_sugar_to,
    pressure_pa,
    solids_at,
    vapour_pa,
    water_boils_c,
)


@pytest.mark.parametrize("height", [0, 120, 300, 1000, 1500, 3000, 5000])
def test_water_boils_where_coolprop_says(height: float) -> None:
    # Saturation temperature by IAPWS-95 under the pressure of ISO 2533:1975; the
    # auxiliary equation used here is good to 0.01 K.
    kelvin = PropsSI("T", "P", pressure_pa(height), "Q", 0, "Water")
    assert water_boils_c(height) == pytest.approx(kelvin - 273.15, abs=0.01)


@pytest.mark.parametrize("at_c", [5, 60, 100, 140, 180])
def test_vapour_pressure_is_coolprop_s(at_c: float) -> None:
    pascal = PropsSI("P", "T", at_c + 273.15, "Q", 0, "Water")
    assert vapour_pa(at_c) == pytest.approx(pascal, rel=3e-4)


@pytest.mark.parametrize(
    ("height", "pascal"), [(0, 101325), (1000, 89875), (2000, 79495), (3000, 70109)]
)
def test_pressure_of_the_standard_atmosphere(height: float, pascal: float) -> None:
    # ISO 2533:1975 prints 89 874.6, 79 495.2 and 70 108.5 Pa (from memory).
    assert pressure_pa(height) == pytest.approx(pascal, abs=5)


def test_sugar_for_118_up_at_1500_m() -> None:
    # Common practice: about 1 °C lower per 300 m, 95 °C at 1500 m: 118 becomes 113.
    found = cook_sugar_to(118, water_boils_c(1500))
    assert found.likely == pytest.approx(113.0, abs=0.05)
    # By equal strength: 84.56/101.33 of the vapour pressure at 118 °C.
    pascal = (
        PropsSI("P", "T", 118 + 273.15, "Q", 0, "Water") * pressure_pa(1500) / 101325
    )
    equal = PropsSI("T", "P", pascal, "Q", 0, "Water") - 273.15
    assert found.low == pytest.approx(equal, abs=0.02)


@given(asked=st.floats(100, 180), height=st.floats(0, 3000))
def test_higher_up_sugar_is_cooked_lower(asked: float, height: float) -> None:
    found = cook_sugar_to(asked, water_boils_c(height))
    assert found.low <= found.likely <= asked + 0.01
    assert found.likely - found.low < 6


def test_solids_of_a_boiling_syrup() -> None:
    # Soft to firm ball, 116 to 120 °C, is 87 to 90 % sugar (from memory).
    assert solids_at(0) == 0
    assert 87 <= solids_at(18) <= 90
    assert solids_at(-1) == 0
    assert solids_at(60) == 95


def test_what_cannot_be_is_refused_in_a_sentence() -> None:
    with pytest.raises(ValueError, match=r"^sugar cooked to 90 °C; it must be 100 to"):
        cook_sugar_to(90, 95)
    with pytest.raises(ValueError, match=r"^water that boils at 40 °C; it must be 80"):
        cook_sugar_to(118, 40)
    with pytest.raises(
        ValueError, match=r"^a kitchen 9000 m above the sea; it must be"
    ):
        pressure_pa(9000)
