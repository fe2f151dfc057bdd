from dataclasses import replace

import pytest

from demould.cold.from_kitchen import (
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
    open_ = to_thaw(turned, BRACKMOOR, FRIDGE, boxed=False)
    boxed = to_thaw(turned, BRACKMOOR, FRIDGE, boxed=True)
    assert open_.load is None
    assert open_.lying == "on its top"
    upright = to_thaw(PEBBLE, BRACKMOOR, FRIDGE, boxed=False)
    assert upright.lying == "on a tray"
    cake = to_thaw(ORCHARD_RING, BRACKMOOR, FRIDGE, boxed=False)
    assert cake.lying in ("large", "large on its top")
    assert to_freeze(ORCHARD_RING, BRACKMOOR, BLAST).lying == "large"
    assert open_.film_likely == film("fan_fridge_open").total.value
    assert boxed.film_likely == film("fridge_closed_box").total.value
    assert boxed.lying == "alone"


def test_a_films_own_reading_wins() -> None:
    own = Figure(name="film", value=14, unit="W/m2K", origin=Measured(readings=90))
    measured = replace(FRIDGE, film=own)
    open_ = to_thaw(PEBBLE, BRACKMOOR, measured, boxed=False)
    assert (open_.film_low, open_.film_likely, open_.film_high) == pytest.approx(
        (12.6, 14, 15.4)
    )
    said = replace(own, origin=Assumed(low=9, high=20))
    spread = to_thaw(PEBBLE, BRACKMOOR, replace(FRIDGE, film=said), boxed=False)
    assert (spread.film_low, spread.film_high) == (9, 20)
    boxed = to_thaw(PEBBLE, BRACKMOOR, measured, boxed=True)
    assert boxed.film_likely == film("fridge_closed_box").total.value


def test_trays_are_counted() -> None:
    assert trays(4, 10).passes == pytest.approx(4 * 0.6)
    assert trays(4, 10).start_c == 21
