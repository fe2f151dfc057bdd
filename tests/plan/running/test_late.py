"""A slip of the agreed week: inside the spare time nothing, one minute more something."""

from datetime import datetime
from functools import cache

import pytest

from demould.plan.answer.schedule import Planned
from demould.plan.judge.check import check
from demould.plan.kitchen.clock import minutes_since, moment_at
from demould.plan.running.late import Late, late
from demould.plan.running.same_hands import by_the_same_hands
from tests.week.demo_week import DOMES, PEBBLE, at, demo_week

MELT = f"{PEBBLE}.dip.0.melt"


@cache
def agreed() -> dict[str, Planned]:
    return {place.id: place for place in demo_week().timing.schedule.steps}


def slip(step: str, minutes: int, now: datetime) -> Late:
    laid = demo_week().timing.laid
    return late(laid, agreed(), step, minutes, minutes_since(laid.origin, now))


# The dip has to be melted from 11:05 at the latest: 25 + 42 + 30 + 15 min, six hours and
# 33 min of plates are over at 19:30 (worked by hand).
def spare_of_the_dip() -> int:
    laid = demo_week().timing.laid
    start = moment_at(laid.origin, agreed()[MELT].start)
    return int((at("Sat 11:05") - start).total_seconds() // 60)


def test_up_to_the_spare_time_every_order_stands_and_the_plan_is_judged() -> None:
    found = slip(MELT, spare_of_the_dip(), at("Sat 09:30"))
    assert found.why is None
    assert found.stands_up_to == spare_of_the_dip()
    assert found.schedule is not None
    assert {one.step.split(".")[-1] for one in found.moved} <= {
        "dip",
        "harden",
        "spray",
        "thaw",
    }
    assert f"{PEBBLE}.piece.0.plate" not in {one.step for one in found.moved}


def test_one_minute_more_says_which_order_gives_and_by_how_much() -> None:
    found = slip(MELT, spare_of_the_dip() + 1, at("Sat 09:30"))
    assert found.why is not None
    assert found.moved == ()
    assert found.behind == {"saturday dinner": 1}


def test_inside_its_own_spare_time_nothing_else_moves() -> None:
    """Round 2 is demoulded on Thursday, and dipped on Saturday."""
    step = f"{PEBBLE}.piece.2.demould"
    found = slip(step, 1, at("Thu 13:00"))
    assert found.why is None
    assert all(one.step == step for one in found.moved)


def test_a_slip_of_nothing_to_come_moves_as_few_as_can_be() -> None:
    """The glaze of the domes on the rack is followed by its thaw, and nothing else."""
    found = slip(f"{DOMES}.piece.1.glaze", 30, at("Thu 14:00"))
    assert found.why is None
    assert found.fewest
    others = {one.step for one in found.moved} - {f"{DOMES}.piece.1.glaze"}
    assert others == {f"{DOMES}.piece.0.thaw"}


def test_the_same_hands_do_what_they_were_to_do() -> None:
    timing = demo_week().timing
    swapped = {"Mirel": "Jonne", "Jonne": "Mirel"}
    from dataclasses import replace

    turned = replace(
        timing.schedule,
        steps=tuple(
            replace(one, who=tuple(swapped[name] for name in one.who))
            for one in timing.schedule.steps
        ),
    )
    assert check(timing.laid.problem, turned) == ()
    again = by_the_same_hands(timing.laid.problem, turned, agreed())
    assert {one.id: set(one.who) for one in again.steps} == {
        one.id: set(one.who) for one in timing.schedule.steps
    }


@pytest.mark.parametrize("minutes", [5, 500])
def test_a_step_under_way_ends_later_and_what_waits_for_it_has_not_begun(
    minutes: int,
) -> None:
    """The melting that began is not over; nothing after it is taken as done."""
    began = at("Sat 10:30")
    found = slip(MELT, minutes, began)
    assert found.begins == moment_at(
        demo_week().timing.laid.origin, agreed()[MELT].end + minutes
    )
    assert (found.why is None) == (minutes == 5)
