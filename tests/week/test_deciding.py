from dataclasses import replace

from demould.mise.figure import Figure
from demould.mise.find import find_in
from demould.mise.order import Order
from demould.week.deciding import Decision, decisions_of
from demould.week.making import Making, making_of
from demould.week.timing import Timing
from tests.demo_folder import demo_folder, demo_makings
from tests.week.demo_week import (
    DOMES,
    PEBBLE,
    at,
    domes,
    entry,
    kitchen,
    ordered_as,
    pebbles,
    planned,
)


def made(order: Order) -> Making:
    dessert = pebbles().amounts.dessert
    return making_of(order, dessert, kitchen(), find_in(demo_folder().larder))


def decisions(*makings: Making, timing: Timing | None = None) -> list[Decision]:
    return list(decisions_of(makings, kitchen(), timing or planned()))


def asked(*makings: Making) -> list[str]:
    return [str(one.asks) for one in decisions(*makings)]


# (3 x 38.5 g + 40 g) / 0.96 = 162 g; the whisk takes 400 g at least (worked by hand).
def test_a_last_round_under_the_whisk_has_three_ways_out() -> None:
    first = decisions(pebbles())[0]
    assert str(first.asks) == (
        "27 River Pebble in 24 cavities: the round of 3 is 162 g,"
        " under the whisk's 400 g"
    )
    assert [str(answer) for answer in first.answers] == [
        "3 by hand",
        "borrow 1 mould, one round",
        "24 and no spare",
    ]


def test_who_has_chosen_by_hand_is_not_asked_again() -> None:
    by_hand = made(ordered_as(pebbles(), choices=("by hand",)))
    assert asked(by_hand) == [
        "a piece of River Pebble for the probe? 27 becomes 28",
    ]


# 26 ordered are 30 made (binomial: 0.945 for 29, 0.984 for 30): 24 + 6 in 24 cavities.
def test_without_spares_it_would_still_be_two_rounds() -> None:
    more = decisions(made(ordered_as(pebbles(), pieces=26)))[0]
    assert [str(answer) for answer in more.answers] == [
        "6 by hand",
        "borrow 1 mould, one round",
    ]


# 3 ordered are 4 made: (4 x 38.5 + 40) / 0.96 = 202 g, and fewer would be less still.
def test_a_small_order_in_one_round_can_only_be_whisked_by_hand() -> None:
    few = decisions(made(ordered_as(pebbles(), pieces=3)))[0]
    assert str(few.asks) == (
        "4 River Pebble in 24 cavities: the round of 4 is 202 g,"
        " under the whisk's 400 g"
    )
    assert [str(answer) for answer in few.answers] == ["4 by hand"]


# One probed leaves 26, of which 24 come out whole only 861 times in 1000 (binomial).
def test_a_probed_piece_makes_27_into_28() -> None:
    assert asked(domes()) == ["a piece of Meadow Domes for the probe? 14 becomes 15"]
    assert asked(pebbles())[1:] == [
        "a piece of River Pebble for the probe? 27 becomes 28"
    ]
    assert decisions(domes())[0].answers == ()


def test_whoever_has_spares_enough_can_probe_one() -> None:
    five = Figure(name="spares", value=5, unit="pieces")
    assert len(asked(made(ordered_as(pebbles(), spares=five)))) == 1


def test_the_cooks_own_number_becomes_one_more() -> None:
    alone = made(ordered_as(pebbles(), choices=("no spares",)))
    assert asked(alone) == ["a piece of River Pebble for the probe? 24 becomes 25"]


def test_it_is_decided_before_the_moulds_are_first_touched() -> None:
    timing = planned(
        entry(f"{PEBBLE}.ganache.0.steep", "Wed 09:00", "Wed 09:10", "Mirel"),
        entry(f"{PEBBLE}.piece.1.fill", "Thu 09:15", "Thu 09:33", "Mirel Jonne"),
        entry(f"{PEBBLE}.piece.1.set-out", "Thu 09:00", "Thu 09:10", "Mirel"),
        entry(f"{DOMES}.piece.1.fill", "Thu 10:50", "Thu 11:05", "Mirel Jonne"),
    )
    found = decisions(*demo_makings(), timing=timing)
    assert [one.by for one in found] == [
        at("Thu 10:50"),
        at("Thu 09:00"),
        at("Thu 09:00"),
    ]


def test_without_a_plan_there_is_no_hour_to_decide_by() -> None:
    assert {one.by for one in decisions(*demo_makings())} == {None}


def test_a_whisk_that_takes_less_is_no_question() -> None:
    tools = tuple(replace(tool, least=None) for tool in kitchen().tools)
    room = replace(kitchen(), tools=tools)
    making = making_of(
        pebbles().order,
        pebbles().amounts.dessert,
        room,
        find_in(demo_folder().larder),
    )
    assert len(asked(making)) == 1
