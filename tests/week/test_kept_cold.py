"""Single questions of the cold, on the demo kitchen."""

from dataclasses import replace

import pytest

from demould.mise.dessert import Dessert
from demould.mise.figure import Figure
from demould.mise.find import find_in
from demould.mise.folder import dessert_of
from demould.mise.kitchen import ColdPlace, Kitchen
from demould.week.at_the_table import at_the_table
from demould.week.in_the_room import Room, on_the_plate, out_of, room_of
from demould.week.kept_cold import beside_of, in_a_tub, on_the_road
from tests.demo_folder import demo_folder

FIND = find_in(demo_folder().larder)
ROOM = Room(air_c=21, relative=0.55, said=True)


def kitchen() -> Kitchen:
    return demo_folder().kitchen


def place(key: str) -> ColdPlace:
    return next(one for one in kitchen().cold if one.key == key)


def dessert(key: str = "river-pebble") -> Dessert:
    return dessert_of(demo_folder(), key)


def test_the_room_is_the_kitchens_or_an_assumed_one() -> None:
    assert room_of(kitchen()) == Room(air_c=21, relative=0.55, said=True)
    silent = replace(kitchen(), room=None, room_humidity=None)
    assert room_of(silent) == Room(air_c=21, relative=0.55, said=False)


# Estimates of the trade for a pebble at 3 °C in 21 °C and 55 %: dew point 11.6 °C (Magnus,
# WMO), in ten minutes 0.1 to 0.2 g, a film of 10 to 18 µm, with a skin that stays cold.
def test_a_pebble_on_the_plate_is_as_wet_as_the_trade_reckons() -> None:
    told = on_the_plate(dessert(), kitchen(), FIND, ROOM, 10)
    assert told.likely.point_c == pytest.approx(11.6, abs=0.05)
    assert 0.1 < told.grams.high < 0.2
    assert 10 <= told.film_um.high <= 18.5
    # The skin warms past half of the way to the dew point: less settles in truth.
    assert told.grams.low < told.grams.likely < told.grams.high
    assert told.skin[-1][1] > 3 + (11.6 - 3) / 2
    assert told.soonest_min is not None
    assert told.soonest_min < 5


def test_a_dry_room_leaves_it_dry() -> None:
    told = on_the_plate(dessert(), kitchen(), FIND, replace(ROOM, relative=0.2), 30)
    assert told.grams.high == 0
    assert told.soonest_min is None


# For an iced nougat without what is folded in as pieces, 0.3 g of water bound per g of
# protein: first ice about -4.0 °C; 57 % at -10, 63 % at -12, 74 % at -18. Common practice,
# printed to whole per cents and reckoned with other constants: within 1.5.
def test_the_terrines_ice_is_what_the_trade_reckons() -> None:
    told = at_the_table(dessert("amber-terrine"), kitchen(), FIND, ROOM)
    (nougat,) = told.smooth
    assert nougat.starts_c == pytest.approx(-4.0, abs=0.2)
    shares = dict(nougat.shares)
    assert [100 * shares[at] for at in (-10, -12, -18)] == pytest.approx(
        [57, 63, 74], abs=1.5
    )
    (all_in,) = told.all_in
    assert dict(all_in.shares)[-12] < shares[-12] - 0.1
    names = [name for name, _ in told.waits]
    assert names == ["fridge", "room"]
    fridge, room = (wait for _, wait in told.waits)
    assert fridge is not None
    assert room is not None
    assert room.high < fridge.low


# Estimates of the trade: 0.7 to 0.8 °C a minute at h 10 for a finished piece of 78 g. This
# one has no coat (71 g), and frost brings a third more heat to a skin so cold.
def test_out_of_the_freezer_lots_are_small() -> None:
    told, each = out_of(dessert(), kitchen(), FIND, ROOM, -20)
    assert each == 1.0
    assert 0.7 < told.per_minute.low < told.per_minute.likely < 1.25
    assert 3 <= told.lot(each) <= 6
    # A glaze's step of an hour for 14 is not what each of them stands out.
    assert out_of(dessert("meadow-domes"), kitchen(), FIND, ROOM, -20)[1] == 1.0


def test_a_box_on_the_road_is_its_heat_over_its_leak() -> None:
    told = on_the_road(
        dessert(), kitchen(), FIND,
        pieces=12, minutes=60, outside_c=21, ice_kg=0.5,
    )  # fmt: skip
    # By hand: 18 K x 0.8 W/K = 14.4 W, 51.84 kJ an hour; 0.5 kg of ice takes 167 kJ.
    heat = told.box.kilograms * 3500
    assert told.arrives_dry_c == pytest.approx(min(21, 3 + 51840 / heat))
    assert told.arrives_c == 3
    assert told.holds_h == pytest.approx(0.5 * 334e3 / 14.4 / 3600)
    assert told.needs_kg == pytest.approx((51840 - 2 * heat) / 334e3)
    assert told.box.kilograms == pytest.approx(12 * 0.0712, rel=0.02)


# Estimates of the trade: 35 to 5 °C at +3, h 15 on both faces: 20 mm 1.8 h, 50 mm 5.5 h,
# 100 mm 14 h.
def test_tubs_cool_as_printed() -> None:
    told = in_a_tub(place("fridge"), 2.0)
    hours = dict(told.rows)
    assert hours[20] == pytest.approx(1.8, abs=0.05)
    assert hours[50] == pytest.approx(5.5, abs=0.05)
    assert hours[100] == pytest.approx(14, abs=0.5)
    assert 20 < told.deepest_mm < 25
    own = replace(place("fridge"), film=Figure(value=30, unit="W/m2K", name="film"))
    assert in_a_tub(own, 2.0).deepest_mm > told.deepest_mm


def test_a_full_round_beside_finished_pieces() -> None:
    told = beside_of(dessert(), kitchen(), FIND, place("freezer"), 2.0)
    assert told.round == 24
    assert -20 < told.warmest_c < -15
    assert told.most is None or told.most.low > told.round
