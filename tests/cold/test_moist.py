import CoolProp.HumidAirProp as Humid
import psychrolib
import pytest
from hypothesis import given
from hypothesis import strategies as st

from demould.cold.around.moist import (
    latent,
    saturation_pa,
    settling,
    settling_point_c,
    vapour_in_air,
    vapour_transfer,
)

psychrolib.SetUnitSystem(psychrolib.SI)

# Dew points of three rooms by two libraries, read from them: °C, share, °C.
ROOMS = [(4, 0.85, 1.710), (20, 0.50, 9.274), (22, 0.60, 13.888)]


@pytest.mark.parametrize(("air_c", "relative", "printed"), ROOMS)
def test_dew_points_are_those_of_two_libraries(
    air_c: float, relative: float, printed: float
) -> None:
    # Magnus after WMO is said to be good to 0.04 K in this range.
    found = settling_point_c(air_c, relative)
    assert found == pytest.approx(printed, abs=0.02)
    library = Humid.HAPropsSI("D", "T", air_c + 273.15, "P", 101325, "R", relative)
    assert found == pytest.approx(library - 273.15, abs=0.02)
    other = psychrolib.GetTDewPointFromRelHum(air_c, relative)
    assert found == pytest.approx(other, abs=0.02)


def test_below_zero_the_frost_point_is_told() -> None:
    # Goff and Gratch over ice at -0.866 °C (psychrolib's table equation): 569 Pa, which
    # is 70 % of the 813.5 Pa over water at 4 °C.
    found = settling_point_c(4, 0.70)
    assert found == pytest.approx(-0.86, abs=0.01)
    assert psychrolib.GetSatVapPres(found) == pytest.approx(
        0.70 * psychrolib.GetSatVapPres(4), rel=2e-3
    )


@given(st.floats(-40, 50))
def test_vapour_pressure_is_that_of_ashrae(at_c: float) -> None:
    assert saturation_pa(at_c) == pytest.approx(
        psychrolib.GetSatVapPres(at_c), rel=5e-3
    )


def test_vapour_in_air_is_that_of_a_library() -> None:
    per_dry = Humid.HAPropsSI("W", "T", 277.15, "P", 101325, "R", 0.7)
    dry = Humid.HAPropsSI("Vda", "T", 277.15, "P", 101325, "R", 0.7)
    # Real air takes up 0.4 % more than its ideal gases, and Magnus is 0.1 % off.
    assert vapour_in_air(4, 0.7) == pytest.approx(per_dry / dry, rel=6e-3)


def test_vapour_crosses_a_film_as_heat_does() -> None:
    # By hand: air at 2 °C weighs 101325 / (287.05 * 275.15) = 1.2829 kg/m3 and holds
    # 1290.6 J/(m3 K); h 2.5 over 0.89 of it is 2.1765 mm/s.
    assert vapour_transfer(2.5, 4, 0) == pytest.approx(2.1765e-3, rel=1e-4)


@given(air_c=st.floats(-20, 30), relative=st.floats(0.05, 1))
def test_nothing_settles_at_the_settling_point(air_c: float, relative: float) -> None:
    at = settling_point_c(air_c, relative)
    assert at is not None
    # Vapour at the skin's own temperature is denser by the ratio of kelvins.
    excess = (air_c - at) / (at + 273.15)
    here = settling(5, air_c, relative, at)
    assert here == pytest.approx(
        -vapour_transfer(5, air_c, at) * vapour_in_air(air_c, relative) * excess,
        rel=1e-6,
        abs=1e-12,
    )


def test_water_settles_on_the_colder_skin_and_leaves_the_warmer() -> None:
    assert settling(5, 4, 0.7, -2) > 0 > settling(5, 4, 0.7, 1)


def test_frost_brings_the_heat_of_melting_too() -> None:
    assert latent(-0.1) - latent(0.1) == pytest.approx(334e3, rel=1e-3)


def test_dry_air_has_no_settling_point_and_humidity_has_bounds() -> None:
    assert settling_point_c(4, 0) is None
    with pytest.raises(
        ValueError, match=r"^a relative humidity of 70; it must be from 0 to 1$"
    ):
        settling_point_c(4, 70)
