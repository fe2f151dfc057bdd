"""How many shelves so many pieces take, and what there is of everything."""

from dataclasses import replace

from demould.mise.figure import Figure
from demould.mise.kitchen import ColdPlace, Shelves
from demould.mise.shape import Box, Cylinder, WaterOnly
from demould.plan.kitchen.limits import in_the_cold, resources, shelves_for
from tests.demo_folder import demo_folder

UPRIGHT = ColdPlace(
    key="freezer",
    air=Figure(value=-20, unit="°C", name="air"),
    kind="upright freezer",
    shelves=Shelves(count=6, length_mm=600, width_mm=400),
)


def test_a_tray_of_600_by_400_takes_30_of_80_by_56_worked_by_hand() -> None:
    """20 mm between them: 600 / 100 = 6 along, 400 / 76 = 5 across."""
    pebble = Box(length_mm=80, width_mm=56, height_mm=34)
    assert [shelves_for(UPRIGHT, pebble, n) for n in (1, 30, 31, 535)] == [1, 1, 2, 18]


def test_a_log_is_turned_to_fit_worked_by_hand() -> None:
    """350 mm across and 550 along: 400 / 370 = 1 and 600 / 570 = 1, turned or not."""
    log = Box(length_mm=350, width_mm=550, height_mm=70)
    assert shelves_for(UPRIGHT, log, 2) == 2


def test_a_pot_and_what_has_no_size_take_one_shelf() -> None:
    assert shelves_for(UPRIGHT, None, 500) == 1
    assert shelves_for(UPRIGHT, WaterOnly(water_ml=90), 500) == 1


def test_what_is_larger_than_a_shelf_takes_one_a_piece() -> None:
    assert shelves_for(UPRIGHT, Cylinder(diameter_mm=700, height_mm=10), 3) == 3


def test_where_nobody_said_shelves_none_are_counted() -> None:
    assert shelves_for(replace(UPRIGHT, shelves=None), None, 9) == 0


def test_a_place_that_is_not_there_takes_nothing() -> None:
    assert in_the_cold(demo_folder().kitchen, "bench", None, 9, 900) == {}


def test_the_demo_kitchen_has_these_limits_worked_by_hand() -> None:
    found = {one.name: one.capacity for one in resources(demo_folder().kitchen)}
    assert found["mould:pebble"] == 3
    assert found["tool:gun"] == 1
    assert found["jug:100 mm"] == 1
    assert found["cold:blast"] == 5000
    assert (found["shelf:blast"], found["shelf:freezer"]) == (3, 6)
    assert "cold:freezer" not in found
