"""The thinnest wall round each part, and what will show."""

from dataclasses import replace

import pytest

from demould.amounts.layers.fit import does_it_fit
from demould.amounts.layers.wall import better_height, walls, will_show
from demould.mise.dessert import Dessert, Stands
from demould.mise.figure import Assumed, how_known, unfold
from demould.mise.kitchen import Kitchen
from demould.mise.shape import Cylinder, WaterOnly
from tests.desserts.build import layer, stated
from tests.desserts.domes import MEADOW_DOMES
from tests.desserts.kitchen import KITCHEN
from tests.desserts.others import EMBER_LOG, ORCHARD_RING
from tests.desserts.pebble import RIVER_PEBBLE


def standing(dessert: Dessert, of: str, apart: float) -> Dessert:
    layers = tuple(
        replace(one, stands=Stands(of=of, apart=stated(apart, "mm")))
        if one.component == "centre"
        else one
        for one in dessert.layers
    )
    return replace(dessert, layers=layers)


@pytest.mark.parametrize(("off", "least"), [(0.0, 7.1), (5.5, 2.1), (2.4, 5.0)])
def test_the_centre_of_the_pebble_so_far_off_the_base(off: float, least: float) -> None:
    # The kitchen's own shapes, printed to 0.1 mm.
    centre, base = walls(standing(RIVER_PEBBLE, "base", off), KITCHEN)
    assert centre.least.value == pytest.approx(least, abs=0.05)
    assert centre.towards_open == pytest.approx(off)
    assert centre.towards_bottom == pytest.approx(11 - off)
    assert centre.will_show is (least < 4.9)
    assert not base.will_show


def test_seven_over_the_insert_of_a_dome() -> None:
    centre, _ = walls(standing(MEADOW_DOMES, "sponge", 0), KITCHEN)
    assert centre.least.value == pytest.approx(7.0, abs=0.01)
    assert centre.at_worst.value == pytest.approx(5.0, abs=0.01)
    assert how_known(centre.at_worst) == "assumed"


def test_a_centre_left_in_the_middle_hangs_on_an_assumption() -> None:
    (at,) = (
        part
        for _, part in unfold(walls(RIVER_PEBBLE, KITCHEN)[0].least)
        if part.name == "height of the centre over the bottom"
    )
    assert at.value == pytest.approx(5.5)
    # It can go down to the bottom and up to the base, 29 - 18.
    assert at.origin == Assumed(low=0, high=11)


def test_what_will_show_is_said_with_where_it_would_not() -> None:
    centre, base = walls(RIVER_PEBBLE, KITCHEN)
    assert str(will_show(RIVER_PEBBLE, KITCHEN, centre)) == (
        "centre is 2.1 mm under the face and will show; want 5 mm all round: 11.0 mm"
        " over the bottom of the mould gives 7.1 mm"
    )
    assert will_show(RIVER_PEBBLE, KITCHEN, base) is None


def test_a_centre_too_large_at_any_height_is_to_be_smaller() -> None:
    wide = Cylinder(diameter_mm=62, height_mm=6)
    filled = replace(
        MEADOW_DOMES, layers=(layer("mousse"), layer("centre", wide), layer("mousse"))
    )
    filled = standing(filled, "open side", 0.0)
    (centre,) = walls(filled, KITCHEN)
    # Corner 31 mm out, 6 mm under the middle: 35 - hypot(31, 6) = 3.42.
    assert centre.least.value == pytest.approx(3.42, abs=0.01)
    assert better_height(filled, KITCHEN, centre) is None
    assert str(will_show(filled, KITCHEN, centre)) == (
        "centre is 3.4 mm under the face and will show; want 5 mm all round: take a"
        " smaller one"
    )


def test_a_part_that_goes_through_the_wall_is_refused() -> None:
    flat = replace(
        layer("centre", Cylinder(diameter_mm=60, height_mm=4)),
        stands=Stands(of="bottom", apart=stated(3, "mm")),
    )
    filled = replace(MEADOW_DOMES, layers=(layer("mousse"), flat, layer("mousse")))
    (centre,) = walls(filled, KITCHEN)
    # 3 mm up a ball of 70 mm is 2 sqrt(3 x 67) = 28.35 mm wide: 30 - 14.18.
    assert centre.least.value == pytest.approx(-15.82, abs=0.01)
    assert centre.spots is None
    assert [str(one) for one in does_it_fit(filled, KITCHEN)] == [
        ": centre, 3 mm over the bottom of the dome mould, goes 15.8 mm through its"
        " wall. Let it stand elsewhere, turn it over, or make it smaller."
    ]


def test_sides_and_ends_of_a_ring_and_a_log() -> None:
    centre, sponge, base = walls(ORCHARD_RING, KITCHEN)
    assert (centre.sides, sponge.sides, base.sides) == (10, 10, 10)
    assert sponge.towards_open == pytest.approx(0)
    _, strip = walls(EMBER_LOG, KITCHEN)
    assert strip.sides == 5
    assert strip.least.value == pytest.approx(5, abs=0.01)


def test_a_free_form_gives_a_guess() -> None:
    moulds = tuple(
        replace(one, shape=WaterOnly(water_ml=90)) if one.key == "dome" else one
        for one in KITCHEN.moulds
    )
    kitchen: Kitchen = replace(KITCHEN, moulds=moulds)
    centre, _ = walls(MEADOW_DOMES, kitchen)
    assert how_known(centre.least) == "assumed"
    assert centre.least.value == pytest.approx(3.5, abs=0.1)
