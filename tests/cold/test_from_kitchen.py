from dataclasses import replace

import pytest

from demould.cold.around.film import closed_box, in_series
from demould.cold.from_kitchen import (
    air_unsure_k,
    load_in_words,
    machine_of,
    to_freeze,
    to_thaw,
    trays,
)
from demould.larder.read import film
from demould.mise.figure import Assumed, Figure, Measured
from demould.mise.kitchen import ColdPlace
from tests.desserts.kitchen import KITCHEN as BRACKMOOR
from tests.desserts.others import ORCHARD_RING
from tests.desserts.pebble import RIVER_PEBBLE as PEBBLE


def degrees(value: float) -> Figure:
    return Figure(name="air", value=value, unit="°C")


BLAST = ColdPlace(
    key="blast",
    air=degrees(-35),
    kind="blast chiller",
    load=Figure(name="load of a cycle", value=5, unit="kg"),
)
FREEZER = ColdPlace(key="freezer", air=degrees(-20), kind="upright freezer")
FRIDGE = ColdPlace(key="fridge", air=degrees(3), kind="fan fridge")


def test_a_freezer_holds_all_the_moulds_at_once() -> None:
    place = to_freeze(PEBBLE, BRACKMOOR, BLAST)
    assert place.load is not None
    assert place.load.pieces == 24
    assert place.lying == "in moulds"
    assert place.load.machine.set_c == -35
    # 5 kg a cycle: twice 180.6 W.
    assert place.load.machine.capacity == pytest.approx(361.1, abs=0.1)
    (metal,) = place.load.lumps
    # Three trays of 1 kg steel, 477 J/kgK, each with 51.75 g of silicone sheet.
    assert metal.holds == pytest.approx(3 * (477 + 0.05175 * 1300), rel=1e-3)
    assert str(load_in_words(PEBBLE, BRACKMOOR)) == (
        "24 in 3 moulds, each mould on a steel tray, put in warm together"
    )


def test_a_freezer_nobody_rated_has_the_strength_of_its_kind() -> None:
    machine = machine_of(FREEZER)
    # Net capacity of a domestic freezer at -18: 50 to 150 W (common practice, no
    # source); the corners halve 100 W and add half.
    assert machine.capacity == 100
    assert machine.room_c == 21


def test_fridges_have_no_load_and_boxes_their_own_film() -> None:
    turned = replace(PEBBLE, upside_down=True)
    open_ = to_thaw(turned, BRACKMOOR, FRIDGE, "open")
    boxed = to_thaw(turned, BRACKMOOR, FRIDGE, "in closed boxes")
    assert open_.load is None
    assert open_.lying == "on its top"
    upright = to_thaw(PEBBLE, BRACKMOOR, FRIDGE, "open")
    assert upright.lying == "on a tray"
    cake = to_thaw(ORCHARD_RING, BRACKMOOR, FRIDGE, "open")
    assert cake.lying in ("large", "large on its top")
    assert to_freeze(ORCHARD_RING, BRACKMOOR, BLAST).lying == "large"
    assert open_.film_likely == film("fan_fridge_open").total.value
    assert boxed.film_likely == film("fridge_closed_box").total.value
    assert boxed.lying == "alone"


def test_a_films_own_reading_wins() -> None:
    own = Figure(name="film", value=14, unit="W/m2K", origin=Measured(readings=90))
    measured = replace(FRIDGE, film=own)
    open_ = to_thaw(PEBBLE, BRACKMOOR, measured, "open")
    assert (open_.film_low, open_.film_likely, open_.film_high) == pytest.approx(
        (12.6, 14, 15.4)
    )
    said = replace(own, origin=Assumed(low=9, high=20))
    spread = to_thaw(PEBBLE, BRACKMOOR, replace(FRIDGE, film=said), "open")
    assert (spread.film_low, spread.film_high) == (9, 20)
    boxed = to_thaw(PEBBLE, BRACKMOOR, measured, "in closed boxes")
    assert boxed.film_likely == film("fridge_closed_box").total.value


def test_water_gets_to_open_pieces_by_the_films_convection() -> None:
    open_ = to_thaw(PEBBLE, BRACKMOOR, FRIDGE, "open").humid
    lid = to_thaw(PEBBLE, BRACKMOOR, FRIDGE, "under a lid").humid
    box = to_thaw(PEBBLE, BRACKMOOR, FRIDGE, "in closed boxes").humid
    assert open_ is not None
    assert lid is not None
    assert box is not None
    assert open_.relative == lid.relative == box.relative == (0.6, 0.75, 0.9)
    known = film("fan_fridge_open").convective
    assert open_.reach == (known.low, known.value, known.high)
    assert box.reach[2] < lid.reach[1] < open_.reach[0]


def test_air_that_was_measured_is_less_unsure_than_a_display() -> None:
    measured = replace(FREEZER, air=replace(FREEZER.air, origin=Measured()))
    guessed = replace(
        FREEZER, air=replace(FREEZER.air, origin=Assumed(low=-24, high=-19))
    )
    found = [air_unsure_k(one) for one in (measured, FREEZER, guessed, FRIDGE)]
    assert found == [0.3, 1.0, 4.0, 0.5]
    assert to_freeze(PEBBLE, BRACKMOOR, measured).air_unsure_k == 0.3
    assert to_thaw(PEBBLE, BRACKMOOR, FRIDGE, "in closed boxes").air_unsure_k == 0.5


def test_a_fridge_without_a_fan_is_damper_and_stiller() -> None:
    still = replace(FRIDGE, kind="still fridge")
    for cover in ("open", "under a lid", "wrapped in film", "in closed boxes"):
        there, fan = (to_thaw(PEBBLE, BRACKMOOR, one, cover) for one in (still, FRIDGE))
        assert there.humid is not None
        assert fan.humid is not None
        assert there.humid.relative[1] > fan.humid.relative[1]
        assert there.film_likely <= fan.film_likely
    open_ = to_thaw(PEBBLE, BRACKMOOR, still, "open")
    assert open_.film_likely == film("still_fridge").total.value


def test_film_around_a_piece_holds_heat_back_and_lets_no_water_in() -> None:
    film_ = to_thaw(PEBBLE, BRACKMOOR, FRIDGE, "wrapped in film")
    open_ = to_thaw(PEBBLE, BRACKMOOR, FRIDGE, "open")
    assert film_.humid is not None
    assert max(film_.humid.reach) == 0
    assert film_.lying == open_.lying
    # By hand: 1.5 mm of air of 0.0245 W/mK (Table A.4, from memory) is 16.3 W/m2K; in
    # series with 12 that is 6.9.
    assert film_.film_likely == pytest.approx(1 / (1 / 12 + 1.5e-3 / 0.0244), rel=0.01)
    assert film_.film_low < film_.film_likely < film_.film_high < open_.film_high


def test_a_box_and_a_lid_are_what_their_walls_and_air_leave() -> None:
    # The table's rows beside the rule: a lone piece's still film inside (8.5), 2 mm of
    # plastic, and the fridge's own over the cover's larger outside (a box 1.5 times, a
    # lid twice to thrice the pieces' skin), with a fan (12) and without (7).
    box = film("fridge_closed_box").total
    found = [closed_box(8.5, outside, 1.5) for outside in (7, 12)]
    assert box.low < found[0] < box.value * 1.15
    assert found[1] < box.high
    lid = film("covered_tray").total
    assert (
        lid.low
        < in_series(8.5, 2.0 * 7)
        < lid.value
        < in_series(8.5, 3 * 12)
        < lid.high
    )


def test_a_places_own_humidity_and_film_win() -> None:
    own = Figure(name="humidity", value=96, unit="%", origin=Measured())
    told = to_thaw(PEBBLE, BRACKMOOR, replace(FRIDGE, humidity=own), "open").humid
    assert told is not None
    assert told.relative == pytest.approx((0.864, 0.96, 1.0))
    film_ = Figure(name="film", value=9, unit="W/m2K", origin=Measured())
    told = to_thaw(PEBBLE, BRACKMOOR, replace(FRIDGE, film=film_), "open").humid
    assert told is not None
    # Radiation of a dull skin at 0 °C to walls at 3 °C: 4 x 0.9 x 5.67e-8 x 274.65^3.
    glow = 4 * 0.9 * 5.670e-8 * 274.65**3
    assert told.reach == pytest.approx((8.1 - glow, 9 - glow, 9.9 - glow), rel=1e-4)


def test_nobody_thaws_in_a_freezer() -> None:
    with pytest.raises(
        ValueError, match=r"^nobody knows how damp the air of a blast chiller is$"
    ):
        to_thaw(PEBBLE, BRACKMOOR, BLAST, "open")


def test_trays_are_counted() -> None:
    assert trays(4, 10).passes == pytest.approx(4 * 0.6)
    assert trays(4, 10).start_c == 21
