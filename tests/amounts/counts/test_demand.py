"""What has to be ready of a component."""

from dataclasses import replace

import pytest

from demould.amounts.counts.demand import Demand, cuts_of, demand
from demould.amounts.layers.piece import piece
from demould.mise.dessert import Dessert, OnPlate
from tests.desserts.build import stated
from tests.desserts.domes import MEADOW_DOMES, SPONGE
from tests.desserts.kitchen import KITCHEN
from tests.desserts.pebble import GANACHE, RIVER_PEBBLE


def of(dessert: Dessert, key: str, pieces: int = 27) -> Demand:
    component = next(one for one in dessert.components if one.key == key)
    found = demand(dessert, KITCHEN, piece(dessert, KITCHEN), component, pieces)
    assert found is not None
    return found


def test_what_is_blown_past_must_be_ready_too() -> None:
    spray = of(RIVER_PEBBLE, "spray")
    assert spray.each.value == pytest.approx(2 * spray.stays.value)
    assert spray.blown_past == pytest.approx(spray.stays.value)
    assert of(RIVER_PEBBLE, "ganache").blown_past == 0


def test_what_runs_off_must_be_ready_but_is_not_lost() -> None:
    glaze = of(MEADOW_DOMES, "glaze", 14)
    assert glaze.each.value == pytest.approx(2.5 * glaze.stays.value)
    assert glaze.blown_past == 0


def test_only_the_dip_has_something_that_stands() -> None:
    dip = of(RIVER_PEBBLE, "dip")
    assert dip.standing is not None
    assert dip.standing.value == pytest.approx(323, abs=0.6)
    assert dip.jug is not None
    assert of(RIVER_PEBBLE, "centre").standing is None


def test_a_component_in_the_piece_and_beside_it_is_added_up() -> None:
    beside = OnPlate(what="dot", amount=stated(5, "g"), component="ganache")
    more = replace(RIVER_PEBBLE, plate=(beside,), portions=stated(2, "portions"))
    assert of(more, "ganache").each.value == pytest.approx(38.504 + 10, abs=0.001)
    assert of(more, "ganache").stays.value == pytest.approx(38.504 + 10, abs=0.001)


def test_only_cut_layers_are_cuts() -> None:
    assert len(cuts_of(MEADOW_DOMES, SPONGE)) == 1
    assert cuts_of(RIVER_PEBBLE, GANACHE) == ()
