import pytest

from demould.cold.van import Box, arrival_c, ice_hours, ice_needed_kg, minutes_dry

# 2 kg of 3.5 J/g°C, a box of 0.8 W/K, 18 °C warmer outside: 14.4 W. Printed: 3 to 7 °C
# in about 32 min dry; 1 kg of ice (334 kJ) holds about 6.4 h. By hand 1944 s, 23 194 s.
BOX = Box(kilograms=2, heat=3500, leak=0.8, inside_c=3, outside_c=21)


def test_a_dry_box_is_the_printed_one() -> None:
    assert BOX.watts == pytest.approx(14.4)
    dry = minutes_dry(BOX, 7)
    assert dry == pytest.approx(32.4, abs=0.01)
    assert arrival_c(BOX, 32.4) == pytest.approx(7, abs=0.001)


def test_ice_is_the_printed_hours() -> None:
    assert ice_hours(BOX, 1) == pytest.approx(6.443, abs=0.001)
    assert arrival_c(BOX, 6.4 * 60, 1) == pytest.approx(3)
    assert arrival_c(BOX, 6.443 * 60 + 32.4, 1) == pytest.approx(7, abs=0.01)


def test_ice_for_a_trip_brings_it_to_the_limit() -> None:
    # 3 h: 155 520 J less 28 000 J the goods may take: 0.3818 kg.
    ice = ice_needed_kg(BOX, 180, 7)
    assert ice == pytest.approx(127520 / 334e3)
    assert arrival_c(BOX, 180, ice) == pytest.approx(7)
    assert ice_needed_kg(BOX, 30, 7) == 0


def test_goods_never_get_warmer_than_outside() -> None:
    assert arrival_c(BOX, 1e4) == 21


def test_a_cold_day_needs_no_ice() -> None:
    cold = Box(kilograms=2, heat=3500, leak=0.8, inside_c=3, outside_c=1)
    assert minutes_dry(cold, 7) is None
    assert ice_hours(cold, 1) is None
    assert ice_needed_kg(cold, 600, 7) == 0
    assert arrival_c(cold, 60) < 3
    assert (
        minutes_dry(Box(kilograms=2, heat=3500, leak=0.8, inside_c=3, outside_c=6), 7)
        is None
    )


def test_a_box_of_nothing_is_refused() -> None:
    with pytest.raises(
        ValueError, match=r"^a box needs goods, their heat and a leak above 0$"
    ):
        Box(kilograms=0, heat=3500, leak=0.8, inside_c=3, outside_c=21)
