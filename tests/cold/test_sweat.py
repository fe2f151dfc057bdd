import psychrolib
import pytest
from CoolProp.HumidAirProp import HAPropsSI

from demould.cold.around.moist import settling_point_c
from demould.cold.sweat import VISIBLE_UM, kept_at, sweat

psychrolib.SetUnitSystem(psychrolib.SI)


# As printed for Magnus with 17.625 and 243.04, one decimal; the WMO's 17.62 and 243.12
# differ by under 0.02 K there, so 0.05 of rounding and that.
@pytest.mark.parametrize(
    ("room_c", "relative", "dew_c"),
    [
        (22, 0.60, 13.9),
        (20, 0.50, 9.3),
        (21, 0.55, 11.6),
        (18, 0.45, 5.9),
        (24, 0.65, 17.0),
        (16, 0.45, 4.1),
        (25, 0.65, 18.0),
    ],
)
def test_dew_points_are_the_printed_ones(
    room_c: float, relative: float, dew_c: float
) -> None:
    found = sweat(room_c, relative, kept_at(3, 10), 4.3)
    assert found.point_c == pytest.approx(dew_c, abs=0.07)
    assert found.point == "dew"


# Two other programs. They carry real gas and another vapour curve: 0.03 K between all.
@pytest.mark.parametrize(
    ("room_c", "relative"), [(4, 0.85), (20, 0.5), (22, 0.6), (30, 0.4)]
)
def test_dew_points_are_other_programs(room_c: float, relative: float) -> None:
    found = settling_point_c(room_c, relative)
    coolprop = HAPropsSI("D", "T", room_c + 273.15, "R", relative, "P", 101325.0)
    assert found == pytest.approx(coolprop - 273.15, abs=0.03)
    psychro = psychrolib.GetTDewPointFromRelHum(room_c, relative)
    assert found == pytest.approx(psychro, abs=0.03)


@pytest.mark.parametrize(("room_c", "relative"), [(4, 0.6), (2, 0.4), (3, 0.3)])
def test_below_nought_it_is_the_frost_point(room_c: float, relative: float) -> None:
    # CoolProp's "D" is over ice below 0 °C; the two over-ice fits are 0.06 K apart. In
    # rooms below 0 °C it takes humidity over ice, weather services and we over water.
    found = sweat(room_c, relative, kept_at(-30, 10), 4.3)
    assert found.point == "frost"
    coolprop = HAPropsSI("D", "T", room_c + 273.15, "R", relative, "P", 101325.0)
    assert found.point_c == pytest.approx(coolprop - 273.15, abs=0.1)


# 3 °C in 21 °C and 55 %, ten minutes: 10 to 18 micrometres at h 4.3 to 8; on 107.8 cm2
# that is 0.1 to 0.2 g, both ends by rounding. By hand at 4.3: h_m = 4.3 / (1.225 * 1006 * 0.89) = 3.92e-3 m/s,
# 10.08 - 5.95 = 4.13 g/m3, 600 s: 9.7 g/m2. Printed in whole micrometres.
@pytest.mark.parametrize(("h", "film_um"), [(4.3, 10), (8, 18)])
def test_a_chilled_piece_on_the_plate(h: float, film_um: float) -> None:
    found = sweat(21, 0.55, kept_at(3, 10), h)
    assert found.film_um == pytest.approx(film_um, abs=0.5)
    assert found.grams_m2 * 107.8e-4 == pytest.approx(0.15, abs=0.06)
    # On a skin kept as cold water settles evenly; it is followed in 200 spans of 3 s.
    even = 10 * VISIBLE_UM / found.film_um
    assert found.visible_min == pytest.approx(even, abs=10 / 200)


def test_what_would_avoid_it() -> None:
    found = sweat(21, 0.55, kept_at(3, 10), 4.3)
    # By psychrolib: the humidity at which 21 °C air has its dew point at 3 °C.
    driest = psychrolib.GetRelHumFromTDewPoint(21, 3)
    assert found.driest == pytest.approx(driest, abs=0.002)
    assert found.coolest_c is not None
    dew = psychrolib.GetTDewPointFromRelHum(found.coolest_c, 0.55)
    assert dew == pytest.approx(3, abs=0.05)
    dry = sweat(21, found.driest - 0.01, kept_at(3, 10), 4.3)
    assert dry.film_um == 0
    assert dry.visible_min is None


def test_dry_air_has_no_dew_point() -> None:
    found = sweat(21, 0.0, kept_at(3, 10), 4.3)
    assert found.point_c is None
    assert found.coolest_c is None
    assert found.film_um == 0


def test_a_skin_too_warm_for_any_room_to_wet() -> None:
    assert sweat(21, 0.01, kept_at(20, 10), 4.3).coolest_c is None


def test_water_dries_off_once_the_skin_is_warm() -> None:
    warming: tuple[tuple[float, float], ...] = (
        (0.0, 3.0),
        (15.0, 11.5),
        (25.0, 20.0),
        (240.0, 20.5),
    )
    whole = sweat(21, 0.55, warming, 4.3)
    cold = sweat(21, 0.55, warming[:2], 4.3)
    kept = sweat(21, 0.55, kept_at(3, 15), 4.3)
    assert 0 < cold.film_um < kept.film_um
    assert whole.film_um == 0
    assert whole.visible_min == pytest.approx(cold.visible_min)
