"""I am late, what now: what moves, what gives, and how much would have moved nothing."""

from collections.abc import Mapping
from dataclasses import dataclass, replace
from datetime import datetime

from demould.plan.answer.schedule import Explain, Planned, Schedule
from demould.plan.kitchen.clock import moment_at
from demould.plan.kitchen.from_kitchen import Laid
from demould.plan.problem.steps import Fact, Problem, due_order, exactly
from demould.plan.running.bend import Bends
from demould.plan.running.same_hands import by_the_same_hands
from demould.plan.solve.search import latest_start, solve
from demould.plan.why.explain import explain

PLAN_S = 2.0
WHY_S = 2.0
MOST_MIN = 7 * 24 * 60


@dataclass(frozen=True, slots=True, kw_only=True)
class Moved:
    """A step that is not as agreed: `took` where it goes another way, `who` by others."""

    step: str
    was: datetime
    now: datetime
    took: str | None = None
    who: tuple[str, ...] = ()


@dataclass(frozen=True, slots=True, kw_only=True)
class Late:
    """What becomes of a slip.

    `nothing_up_to` are the minutes within which no other step moves, `stands_up_to`
    those within which every order can still stand, None where it is not known. `moved`
    are the others that move. Where no plan is left `why` says what gives, and `behind`
    by how many minutes each order would be late, where that can be.
    """

    step: str
    minutes: int
    begins: datetime
    nothing_up_to: int
    stands_up_to: int | None
    moved: tuple[Moved, ...]
    schedule: Schedule | None
    fewest: bool
    why: Explain | None
    behind: Mapping[str, int]


def late(
    laid: Laid, agreed: Mapping[str, Planned], step: str, minutes: int, now: int
) -> Late:
    """Slip one step of an agreed plan by so many minutes, at `now` [min].

    What began before `now` is taken as done as it was agreed, unless the problem's own
    facts say otherwise. A running step ends later, one to come begins later. As few
    others as can be move, and roads that are quicker are tried.
    """
    problem = _with_facts(laid.problem, agreed, step, now)
    place = agreed[step]
    running = place.start < now
    begins = place.end + minutes if running else place.start + minutes
    free = _nothing_moves_up_to(problem, agreed, step, now)
    slipped = _slipped(problem, agreed, step, minutes, now)
    found: Schedule | None = None
    why = None
    behind: Mapping[str, int] = {}
    if minutes > free:
        found = solve(slipped, seconds=PLAN_S)
        if found.steps:
            found = by_the_same_hands(slipped, found, agreed)
        else:
            why = explain(replace(slipped, previous={}), seconds=WHY_S)
            found = None
            behind = _behind(slipped)
    return Late(
        step=step,
        minutes=minutes,
        begins=moment_at(laid.origin, begins),
        nothing_up_to=free,
        stands_up_to=None if running else _stands_up_to(problem, agreed, step),
        moved=tuple(_moved(laid, agreed, found, step)) if found else (),
        schedule=found,
        fewest=bool(found and found.status == "optimal"),
        why=why,
        behind=behind,
    )


def _behind(problem: Problem) -> Mapping[str, int]:
    """Give by how many minutes each order would be late, where due times may slip."""
    closes = [
        window.close for windows in problem.calendars.values() for window in windows
    ]
    soft = replace(
        problem,
        horizon=max([problem.horizon, *closes]),
        orders=tuple(replace(order, soft_due=True) for order in problem.orders),
        lags=tuple(lag for lag in problem.lags if due_order(lag.to) is None),
        previous={},
    )
    found = solve(soft, seconds=PLAN_S, wishes=("late_orders", "tardiness"))
    ends = {place.id: place.end for place in found.steps}
    late = {
        order.id: max(
            (ends[step.id] for step in problem.steps if order.id in step.order),
            default=order.due,
        )
        - order.due
        for order in problem.orders
        if ends
    }
    return {name: minutes for name, minutes in late.items() if minutes > 0}


def _with_facts(
    problem: Problem, agreed: Mapping[str, Planned], step: str, now: int
) -> Problem:
    done = dict(problem.done)
    held_up = _follows(problem, agreed, step)
    for name, place in agreed.items():
        if name in done or place.start >= now or name in held_up:
            continue
        end = place.end if place.end <= now and name != step else None
        done[name] = Fact(start=place.start, end=end, took=place.took, who=place.who)
    previous = {
        name: Fact(start=one.start, end=one.end, took=one.took, who=one.who)
        for name, one in agreed.items()
        if name != step
    }
    return replace(problem, now=now, done=done, previous=previous)


def _follows(
    problem: Problem, agreed: Mapping[str, Planned], step: str
) -> frozenset[str]:
    """Give the steps that cannot have begun while this one is not over."""
    bends = Bends(problem, agreed)
    after = {step}
    for other in bends.order:
        before = {early[0] for early, _ in bends.before_start[other.id]}
        if before & after and agreed[other.id].start >= agreed[step].end:
            after.add(other.id)
    return frozenset(after - {step})


def _slipped(
    problem: Problem, agreed: Mapping[str, Planned], step: str, minutes: int, now: int
) -> Problem:
    place = agreed[step]

    def later(name: str) -> Problem:
        steps = []
        for one in problem.steps:
            if one.id != name:
                steps.append(one)
            elif place.start < now:
                whole = exactly(place.end - place.start + minutes)
                roads = tuple(replace(road, duration=whole) for road in one.either)
                kept = one.duration and whole
                steps.append(replace(one, duration=kept, either=roads))
            else:
                steps.append(replace(one, earliest=place.start + minutes))
        return replace(problem, steps=tuple(steps))

    return later(step)


def _nothing_moves_up_to(
    problem: Problem, agreed: Mapping[str, Planned], step: str, now: int
) -> int:
    """Give the minutes a step can slip without moving anything else. [min]."""
    bends = Bends(problem, agreed)
    place = agreed[step]

    def still(minutes: int) -> bool:
        if place.start < now:
            bent = bends.bend({step: place.end - place.start + minutes})
        else:
            bent = bends.bend({}, {step: place.start + minutes})
        moved = any(
            bent.start[name] != other.start
            for name, other in agreed.items()
            if name != step
        )
        return not (moved or bent.late or bent.broken)

    low, high = 0, MOST_MIN
    while low < high:
        middle = (low + high + 1) // 2
        if still(middle):
            low = middle
        else:
            high = middle - 1
    return low


def _stands_up_to(
    problem: Problem, agreed: Mapping[str, Planned], step: str
) -> int | None:
    last = latest_start(replace(problem, previous={}), step, seconds=PLAN_S)
    return None if last is None else max(0, last - agreed[step].start)


def _moved(
    laid: Laid, agreed: Mapping[str, Planned], found: Schedule, step: str
) -> list[Moved]:
    moved = []
    for place in found.steps:
        before = agreed.get(place.id)
        if before is None or place.id in laid.problem.done:
            continue
        if place.id == step and set(place.who) == set(before.who):
            continue
        road = place.took if place.took != before.took else None
        who = place.who if set(place.who) != set(before.who) else ()
        if place.start != before.start or road is not None or who:
            moved.append(
                Moved(
                    step=place.id,
                    was=moment_at(laid.origin, before.start),
                    now=moment_at(laid.origin, place.start),
                    took=road,
                    who=who,
                )
            )
    return sorted(moved, key=lambda one: one.now)
