"""What is in the freezer already counts: row by row worked out by hand."""

from dataclasses import replace

import pytest

from demould.demo import NOW
from demould.mise.find import find_in
from demould.mise.order import Frozen
from demould.week.making import Amounts, making_of
from demould.week.orders import ordered
from demould.week.to_plan import to_make
from tests.demo_folder import demo_folder, order_of


def pebbles(*frozen: Frozen) -> Amounts:
    folder = demo_folder()
    order = replace(order_of("river-pebble"), frozen=frozen)
    find = find_in(folder.larder)
    return making_of(order, ordered(folder, order), folder.kitchen, find).amounts


def test_12_boxed_pebbles_leave_15_of_27_worked_by_hand() -> None:
    """15 x 38.504 g = 577.6; + 40 g once, / 0.96 = 643.3 g; / 892.6 = 0.7207, up."""
    amounts = pebbles(Frozen(pieces=12))
    assert amounts.pieces == 27
    assert amounts.rounds.each == (15,)
    ganache = next(make for make in amounts.makes if make.component == "ganache")
    assert ganache.factor.value == 0.721
    assert ganache.weigh.value == pytest.approx(892.6 * 0.721, abs=0.01)


def test_all_27_are_dipped_and_10_centres_fewer_are_cooked_worked_by_hand() -> None:
    amounts = pebbles(Frozen(pieces=12), Frozen(pieces=10, component="centre"))
    assert amounts.still == {
        "ganache": 15,
        "centre": 5,
        "base": 15,
        "dip": 27,
        "spray": 27,
        "sauce": 24,
    }
    assert amounts.own_rounds["centre"].each == (5,)
    dip = next(make for make in amounts.makes if make.component == "dip")
    assert dip.in_pieces.value == pytest.approx(27 * 9.142, abs=0.1)


def test_where_all_is_there_nothing_is_filled() -> None:
    amounts = pebbles(Frozen(pieces=40))
    assert amounts.rounds.each == ()
    assert {make.component for make in amounts.makes} == {"dip", "spray", "sauce"}


def test_nothing_frozen_makes_every_component_once() -> None:
    names = [make.component for make in pebbles().makes]
    assert len(names) == len(set(names)) == 6


def test_the_plan_is_told_what_is_still_to_make_and_which_jug() -> None:
    folder = demo_folder()
    order = replace(order_of("river-pebble"), frozen=(Frozen(pieces=12),))
    making = making_of(
        order, ordered(folder, order), folder.kitchen, find_in(folder.larder)
    )
    make = to_make(making, {})
    assert (make.pieces, make.rounds, make.counts["base"]) == (27, (15,), 15)
    assert make.jug == ("dip", 100.0)
    assert order.due > NOW
