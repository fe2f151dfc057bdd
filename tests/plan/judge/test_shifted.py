"""Every single step of a good plan moved by one minute: what the judge says to it.

A shift that is let through must be one that a cook could make: the shifted plan, with its
costs worked out anew, is then compared promise by promise in plain arithmetic.
"""

from collections.abc import Callable
from dataclasses import replace

from demould.plan.answer.schedule import Schedule, moved_from, objective_of
from demould.plan.answer.schedule_json import schedule_from_json
from demould.plan.judge.check import check
from demould.plan.problem.steps import Problem, Step, due_order

UNIT = 5
"""Minutes of one unit in the cases."""


def shifted(asked: Problem, plan: Schedule, name: str, by: int) -> Schedule:
    steps = tuple(
        replace(place, start=place.start + by, end=place.end + by)
        if place.id == name
        else place
        for place in plan.steps
    )
    return replace(
        plan,
        steps=steps,
        objective=objective_of(asked, steps),
        moved=moved_from(asked, steps),
    )


def room(asked: Problem, plan: Schedule, step: Step, by: int) -> bool:
    """Say whether waits, hours, due time and resources leave room, by plain arithmetic."""
    at = {place.id: [place.start, place.end] for place in plan.steps}
    at[step.id] = [minute + by for minute in at[step.id]]
    dues = {order.id: order.due for order in asked.orders}

    def minute(name: str, end: str) -> int:
        order = due_order(name)
        return dues[order] if order is not None else at[name][end == "end"]

    for lag in asked.lags:
        apart = minute(lag.to, lag.to_at) - minute(lag.from_, lag.from_at)
        if apart < (lag.min if lag.min is not None else apart):
            return False
        if apart > (lag.max if lag.max is not None else apart):
            return False
    start, end = at[step.id]
    if start < 0 or end > min([asked.horizon, *(dues[name] for name in step.order)]):
        return False
    parts = {
        "all": [(start, end)],
        "ends": [(start, start + step.attend_start), (end - step.attend_end, end)],
        "none": [],
    }[step.attended]
    windows = asked.calendars[step.calendar] if step.calendar else None
    for begin, over in parts:
        if windows is None or begin == over:
            continue
        if not any(w.open <= begin and over <= w.close for w in windows):
            return False
    return all(
        used <= resource.capacity
        for resource in asked.resources
        for used in levels(asked, at, resource.name)
    )


def levels(asked: Problem, at: dict[str, list[int]], name: str) -> list[int]:
    """Give how much of a resource is taken in each unit of the horizon."""
    taken = [0] * (asked.horizon // UNIT + 1)

    def take(begin: int, over: int, amount: int) -> None:
        for unit in range(begin // UNIT, over // UNIT):
            if unit < len(taken):
                taken[unit] += amount

    for step in asked.steps:
        start, end = at[step.id]
        take(start, end + step.clean.get(name, 0), step.uses.get(name, 0))
        hands = step.attend_uses.get(name, 0)
        if step.attended == "all":
            take(start, end, hands)
        if step.attended == "ends":
            take(start, start + step.attend_start, hands)
            take(end - step.attend_end, end, hands)
    for hold in asked.holds:
        if hold.resource != name:
            continue
        begin = at[hold.from_][hold.from_at == "end"]
        take(begin, at[hold.to][hold.to_at == "end"], hold.amount)
    return taken


# 16 steps, each 5 min later and 5 min sooner: 32 shifts.
def test_a_shift_is_let_through_only_where_plain_arithmetic_finds_room(
    case: Callable[[str], Problem], small_2_plan: dict[str, object]
) -> None:
    asked = case("small-2.json")
    plan, faults = schedule_from_json(small_2_plan)
    assert faults == []
    assert plan is not None
    assert check(asked, plan) == ()
    rejected = 0
    for step in asked.steps:
        for by in (UNIT, -UNIT):
            found = check(asked, shifted(asked, plan, step.id, by))
            assert (found == ()) == room(asked, plan, step, by), (step.id, by, found)
            rejected += found != ()
    assert rejected == REJECTED


REJECTED = 25
"""Of 32; the others float: nothing asks for just that minute."""
