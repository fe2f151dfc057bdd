from dataclasses import replace
from datetime import datetime, timedelta

import pytest

from demould.demo import NOW
from demould.plan.judge.check import check
from demould.plan.kitchen.clock import moment_at
from demould.week.timing import timing_of
from demould.week.to_plan import to_make
from tests.week.demo_week import (
    PEBBLE,
    at,
    demo_week,
    domes,
    kitchen,
    pebbles,
    planned,
)


# 18 ml x 1.10 + 9.896 ml x 0.95 + 62.104 ml x 0.62 = 19.8 + 9.4 + 38.5 (worked by hand):
# what stands in the mould, not yet dipped or sprayed.
def test_what_goes_into_the_cold_is_the_piece_without_its_finish() -> None:
    made = to_make(pebbles(), {})
    assert made.piece_g == pytest.approx(67.7, abs=0.05)
    assert set(made.part_g) == {"ganache", "centre", "base"}
    assert made.part_g["ganache"] == pytest.approx(38.5, abs=0.05)
    assert (made.pieces, made.rounds) == (27, (24, 3))
    assert made.own_rounds == {"centre": (27,)}


def test_what_is_waited_for_is_handed_on() -> None:
    waits = {"mousse": at("Wed 09:00")}
    assert to_make(domes(), waits).arrivals == waits


def test_the_demo_stands() -> None:
    timing = demo_week().timing
    assert timing.stands
    assert check(timing.laid.problem, timing.schedule) == ()


def test_entries_are_the_plan_on_the_kitchens_clock_in_its_order() -> None:
    timing = demo_week().timing
    moments = [(one.start, one.end) for one in timing.entries]
    assert moments == sorted(moments)
    places = {step.id: step for step in timing.schedule.steps}
    assert set(places) == {one.id for one in timing.entries}
    for one in timing.entries:
        origin, place = timing.laid.origin, places[one.id]
        assert one.start == moment_at(origin, place.start)
        assert one.end == moment_at(origin, place.end)
        assert (one.who, one.took) == (place.who, place.took)
        assert one.part == timing.laid.parts[one.id]


def test_latest_starts_are_asked_for_first_hands_and_for_the_first_round() -> None:
    latest = demo_week().timing.latest
    assert f"{PEBBLE}.centre.0.cook" in latest
    assert f"{PEBBLE}.centre.0.deposit" not in latest
    assert f"{PEBBLE}.piece.1.fill" in latest
    assert f"{PEBBLE}.piece.2.fill" not in latest
    assert f"{PEBBLE}.ganache.0.rest" not in latest


# 25 + 42 + 30 + 15 min, 6 h of thaw and 33 min of plating before 19:30: 11:05. The kitchen
# opens at 10:00 on Saturday, so that no plan has more than 65 min (worked by hand).
def test_the_pebbles_have_65_minutes_at_the_most() -> None:
    timing = demo_week().timing
    assert timing.latest[f"{PEBBLE}.dip.0.melt"] == at("Sat 11:05")
    assert 0 <= timing.spare["saturday dinner"] <= 65


def test_spare_time_is_the_least_of_an_order_plating_apart() -> None:
    timing = demo_week().timing
    starts = {one.id: one.start for one in timing.entries}
    plate = f"{PEBBLE}.piece.0.plate"
    assert timing.latest[plate] == starts[plate] == at("Sat 18:57")
    for order in ("saturday dinner", "domes to collect"):
        asked = [name for name in timing.latest if name.startswith(order)]
        assert timing.spare[order] == min(
            (timing.latest[name] - starts[name]).total_seconds() / 60
            for name in asked
            if name != plate
        )


def test_an_order_for_this_afternoon_does_not_stand() -> None:
    soon = replace(pebbles(), order=replace(pebbles().order, due=at("Tue 15:00")))
    timing = timing_of(kitchen(), [to_make(soon, {})], NOW)
    assert not timing.stands
    assert (timing.entries, timing.latest, timing.spare) == ((), {}, {})


# A sponge holds 14 days and would be baked once for both weeks; but flour for the second
# comes on Saturday, when the first domes have been collected for a day.
def test_what_cannot_be_made_at_once_for_two_orders_is_made_for_each() -> None:
    later = replace(
        domes(), order=replace(domes().order, key="next week", due=in_a_week())
    )
    wanted = [to_make(domes(), {}), to_make(later, {"sponge": at("Sat 10:00")})]
    timing = timing_of(kitchen(), wanted, NOW)
    assert timing.stands
    baked = {
        one.part.make.order.key: one.start
        for one in timing.entries
        if one.part.component
        and (one.part.component.key, one.part.step.key) == ("sponge", "mix")
    }
    assert baked["domes to collect"] < at("Fri 16:00")
    assert baked["next week"] >= at("Sat 10:00")


def test_where_making_it_for_each_does_not_help_either_it_says_why() -> None:
    soon = replace(domes(), order=replace(domes().order, due=at("Tue 15:00")))
    too = replace(soon, order=replace(soon.order, key="another"))
    timing = timing_of(kitchen(), [to_make(soon, {}), to_make(too, {})], NOW)
    assert not timing.stands
    assert timing.schedule.explain is not None
    assert timing.schedule.explain.conflict


def in_a_week() -> datetime:
    return domes().order.due + timedelta(days=7)


def test_a_plan_that_breaks_a_promise_does_not_stand() -> None:
    timing = demo_week().timing
    torn = replace(timing.schedule, steps=timing.schedule.steps[1:])
    broken = check(timing.laid.problem, torn)
    assert broken
    assert not replace(timing, broken=broken).stands
    assert not planned().stands
