"""The earliest plate, against times worked out by hand."""

from dataclasses import replace
from functools import cache

from demould.demo import NOW
from demould.mise.method import Step
from demould.mise.order import Frozen
from demould.plan.kitchen.clock import moment_at
from demould.plan.kitchen.parts import ToMake
from demould.week.from_now import LOOK_AHEAD, Soonest, from_now, soonest
from demould.week.orders import makings_of
from demould.week.to_plan import to_make
from tests.demo_folder import demo_folder, order_of
from tests.week.demo_week import at, kitchen

WEDNESDAY = NOW.replace(day=18, hour=8, minute=0)


@cache
def pebbles() -> ToMake:
    """24 pebbles, no spares, centres and bases ready, everything in the house."""
    order = replace(
        order_of("river-pebble"),
        choices=("no spares",),
        frozen=(
            Frozen(pieces=24, component="centre"),
            Frozen(pieces=24, component="base"),
        ),
        due=WEDNESDAY + LOOK_AHEAD,
    )
    (making,) = makings_of(replace(demo_folder(), orders=(order,)), NOW)
    return to_make(making, {})


def without_blast(make: ToMake) -> ToMake:
    def slow(step: Step) -> Step:
        roads = tuple(road for road in step.roads if road.place != "blast")
        return replace(step, roads=roads)

    method = tuple(slow(step) for step in make.dessert.method)
    return replace(make, dessert=replace(make.dessert, method=method))


def piped(found: Soonest) -> object:
    fill = next(one for one in found.entries if one.id.endswith(".piece.1.fill"))
    return moment_at(found.laid.origin, fill.end)


# Steep 10, stands 20, mix 25: in the fridge at 08:55, rested at 20:55. Thursday set out
# 10, whip 5, two pipe 24 in 18: 08:33. Blast 2.5 h, demould 15, dip 39, 30 at -20,
# spray 15: in the fridge at 12:42, 6 h (worked by hand).
def test_by_the_blast_it_is_ready_to_plate_on_thursday_evening() -> None:
    found = soonest(kitchen(), (pebbles(),), WEDNESDAY)
    assert found.proven
    assert piped(found) == at("Thu 08:33")
    assert found.ready == at("Thu 18:42")
    # The kitchen closes at 17:00: 33 min of plating are done on Friday.
    assert found.over == at("Fri 08:33")
    assert [len(visit.leaves) for visit in found.visits][-1] == 0


# In the freezer from 08:33 to 20:33, out on Friday at 08:00; the dip is melted from
# 08:00 to 08:25, dipped to 09:04, 09:34, sprayed to 09:49, 6 h (worked by hand).
def test_in_the_upright_freezer_it_is_friday_afternoon() -> None:
    found = soonest(kitchen(), (without_blast(pebbles()),), WEDNESDAY)
    assert piped(found) == at("Thu 08:33")
    assert found.ready == at("Fri 15:49")


def test_each_visit_leaves_what_stands_and_what_is_kept() -> None:
    found = soonest(kitchen(), (pebbles(),), WEDNESDAY)
    first = found.visits[0]
    assert (first.start, first.hands_min) == (WEDNESDAY, 10 + 25 + 15)
    left = {
        one.part.component.key if one.part.component else "": (one.kept, one.until)
        for one in first.leaves
    }
    assert left["ganache"] == (False, at("Wed 20:55"))
    kept = [one for visit in found.visits for one in visit.leaves if one.kept]
    assert {one.part.step.key for one in kept} <= {"demould", "cool", "spray"}


def test_an_evening_longer_is_never_later() -> None:
    found = from_now(demo_folder(), replace(order_of("river-pebble"), key="n"), NOW)
    assert found.hours.over is not None
    assert found.evening.over is not None
    assert found.evening.over <= found.hours.over
