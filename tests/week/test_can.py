"""Can we? Against the latest starts a head of pastry worked out by hand."""

from dataclasses import replace
from datetime import timedelta

from demould.demo import NOW
from demould.mise.folder import Folder
from demould.mise.order import Order
from demould.week.can import can_we
from tests.demo_folder import demo_folder, order_of
from tests.week.demo_week import at

PEBBLES = replace(order_of("river-pebble"), key="this order")


def alone() -> Folder:
    return replace(demo_folder(), orders=())


def all_in_the_house() -> Folder:
    """Give the demo with nothing ordered yet, and nothing that has to be called."""
    larder = tuple(replace(one, stock=None) for one in demo_folder().larder)
    return replace(alone(), larder=larder)


# Ganache takes 55 min of stove and rest before the kitchen closes at 17:00 on Thursday,
# rests 12 h and is whipped on Friday: no later than Thu 16:05 (worked by hand).
def test_with_all_in_the_house_the_ganache_decides_when_to_say_so() -> None:
    found = can_we(all_in_the_house(), PEBBLES, NOW)
    assert found.answer
    assert found.say_by == at("Thu 16:05")
    assert found.then is not None
    assert found.then[1].endswith(".ganache.0.steep")


# Cocoa butter takes 3 days: called on Tuesday it comes on Friday. Called on Wednesday it
# would come on Saturday before 09:00, when nobody is there until 10:00: the next day it
# can come is Tuesday.
def test_what_has_to_be_called_decides_where_it_comes_late() -> None:
    found = can_we(alone(), PEBBLES, NOW)
    assert found.answer
    assert found.say_by == at("Tue 17:00")
    assert can_we(alone(), PEBBLES, at("Tue 17:00") - timedelta(minutes=1)).answer
    after = can_we(alone(), PEBBLES, at("Wed 08:00"))
    assert after.answer is False
    assert [limit.over for limit in after.limits] == ["delivery"]
    assert after.limits[0].text.startswith("Stone dip: melt for this order waits")


def test_beside_the_other_orders_it_is_planned_with_them() -> None:
    found = can_we(demo_folder(), replace(PEBBLES, due=at("Sat 20:30")), NOW)
    assert (found.answer, found.beside) == (True, 2)


def test_too_many_is_told_by_the_first_limit_with_what_helps() -> None:
    many = replace(PEBBLES, pieces=500)
    found = can_we(all_in_the_house(), many, NOW)
    assert found.answer is False
    assert found.limits[0].over == "mould"
    assert "more pebble moulds" in found.limits[0].help


# On Saturday from 10:00: 25 + 42 + 30 + 15 min, 6 h and 33 min of plates are over at
# 18:25. Thawed from Friday, when the kitchen closes at 17:00, it holds 24 h, to Saturday
# 17:00. So 17:00 and 18:30 can be had, and what lies between can not (worked by hand).
def test_between_two_ways_that_both_work_there_may_be_none() -> None:
    for due, can in (("Sat 17:00", True), ("Sat 18:30", True)):
        asked = replace(PEBBLES, due=at(due))
        assert can_we(all_in_the_house(), asked, NOW).answer is can
    found = can_we(all_in_the_house(), replace(PEBBLES, due=at("Sat 18:00")), NOW)
    assert found.answer is False
    assert found.limits or (found.why is not None and found.why.conflict)


def test_one_piece_for_today_is_no() -> None:
    asked = Order(key="x", dessert="meadow-domes", pieces=1, due=at("Tue 16:00"))
    found = can_we(all_in_the_house(), asked, NOW)
    assert found.answer is False
    assert found.say_by is None
