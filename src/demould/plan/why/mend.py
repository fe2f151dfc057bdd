"""What would make room where there is no plan, each tried and judged before it is said."""

from __future__ import annotations

import time
from dataclasses import dataclass, replace
from typing import TYPE_CHECKING

from demould.plan.judge.check import check
from demould.plan.problem.steps import DUE, Window
from demould.plan.problem.telling import clock
from demould.plan.solve.cpsat.time import Time
from demould.plan.solve.feasible import feasible
from demould.plan.solve.search import solve
from demould.plan.why.subset import PEOPLE, facts_about, only

if TYPE_CHECKING:
    from collections.abc import Callable, Iterable, Iterator, Mapping

    from demould.plan.answer.schedule import Schedule
    from demould.plan.problem.steps import Problem
    from demould.plan.solve.wish import Wish
    from demould.plan.why.subset import Member

MOST_MORE = 8
"""Of nothing are more than so many more proposed."""

MOST_TRIES = 4
"""So many changes at most are planned with everything."""

A_TEST = 0.05
"""Deterministic seconds for testing whether a change ends the conflict."""

FIRST_PLAN: tuple[Wish, ...] = ("late_orders", "tardiness")
"""Wishes of the plan that shows a change to make room: a first one is enough."""

LEAST_S = 1.0
"""Seconds for the plan that shows a change to make room, however late it is."""

LONGEST_DAY_MIN = 180
HOUR = 60


@dataclass(frozen=True, slots=True, kw_only=True)
class Mend:
    """A change that makes room, the problem after it, and its judged plan."""

    text: str
    changes: tuple[Mapping[str, object], ...]
    problem: Problem
    plan: Schedule


@dataclass(frozen=True, slots=True)
class _Ladder:
    """One kind of change in growing sizes; the smallest that works is proposed."""

    sizes: tuple[int, ...]
    change: Callable[[int], Mapping[str, object]]
    tell: Callable[[int], str]


def mends(
    problem: Problem, conflict: tuple[Member, ...], *, seconds: float, most: int = 3
) -> tuple[Mend, ...]:
    """Give changes that make room, the cheapest kind first.

    More of a limit that meets, a longer day, a later due time, one order fewer. A size
    under which the conflict stays is no use, and that is soon shown on the conflict
    alone; the smallest that ends it is planned anew with everything, and judged.
    """
    found: list[Mend] = []
    began = time.monotonic()
    meets = only(problem, frozenset(conflict))
    tries = MOST_TRIES
    for ladder in _ladders(problem, conflict):
        left = seconds - (time.monotonic() - began)
        if len(found) == most or not tries or (found and left <= 0):
            break
        size = _ends_it(meets, ladder, seconds)
        if size is None:
            continue
        tries -= 1
        mend = _tried(problem, ladder, size, max(left, LEAST_S))
        if mend is not None:
            found.append(mend)
    return tuple(found)


def _ends_it(meets: Problem, ladder: _Ladder, seconds: float) -> int | None:
    """Give the smallest size that ends the conflict, if the largest does."""
    if not ladder.sizes:
        return None
    low, high = 0, len(ladder.sizes) - 1
    if not _has_plan(changed(meets, ladder.change(ladder.sizes[high])), seconds):
        return None
    while low < high:
        middle = (low + high) // 2
        if _has_plan(changed(meets, ladder.change(ladder.sizes[middle])), seconds):
            high = middle
        else:
            low = middle + 1
    return ladder.sizes[high]


def _has_plan(problem: Problem, seconds: float) -> bool:
    given = Time(seconds=max(seconds, LEAST_S), steady=False)
    return feasible(problem, given, A_TEST) == "feasible"


def _ladders(problem: Problem, conflict: tuple[Member, ...]) -> Iterator[_Ladder]:
    of_kind = {
        kind: [one.id for one in conflict if one.kind == kind]
        for kind in ("resource", "calendar", "order")
    }
    for name in of_kind["resource"]:
        if name != PEOPLE:
            yield _more_of(problem, name)
    for name in of_kind["calendar"]:
        yield from _longer_days(problem, name)
    for name in of_kind["order"]:
        yield _later(problem, name)
    for name in of_kind["order"] if len(problem.orders) > 1 else ():
        yield _without(name)


def _more_of(problem: Problem, name: str) -> _Ladder:
    kind, _, key = name.partition(":")
    has = next(one.capacity for one in problem.resources if one.name == name)
    unit = max(1, has // MOST_MORE) if kind == "cold" else 1

    def tell(size: int) -> str:
        if kind == "mould":
            return f"{size} more {key} mould{'' if size == 1 else 's'}"
        if kind == "cold":
            return f"room for {size} g more in the {key}"
        return f"{size} more of {key or name}"

    return _Ladder(
        sizes=tuple(unit * count for count in range(1, MOST_MORE + 1)),
        change=lambda size: {"op": "add_capacity", "resource": name, "amount": size},
        tell=tell,
    )


def _longer_days(problem: Problem, name: str) -> Iterator[_Ladder]:
    """Close later, or open sooner, as far as the days before and after leave room."""
    windows = problem.calendars[name]
    if not windows:
        return
    opens = [window.open for window in windows[1:]]
    closes = [window.close for window in windows[:-1]]
    for window, after in zip(windows, [*opens, problem.horizon], strict=True):
        yield _longer_day(problem, name, window.close, after - window.close, 1)
    for window, before in zip(windows, [0, *closes], strict=True):
        yield _longer_day(problem, name, window.open, window.open - before, -1)


def _longer_day(problem: Problem, name: str, at: int, room: int, way: int) -> _Ladder:
    def change(size: int) -> Mapping[str, object]:
        first, last = sorted((at, at + way * size))
        return {"op": "extend_window", "calendar": name, "from": first, "to": last}

    until = "open until" if way > 0 else "open from"
    return _Ladder(
        sizes=tuple(range(HOUR, min(LONGEST_DAY_MIN, room) + 1, HOUR)),
        change=change,
        tell=lambda size: f"{until} {clock(problem, at + way * size)}",
    )


def _later(problem: Problem, name: str) -> _Ladder:
    due = next(one.due for one in problem.orders if one.id == name)
    room = problem.horizon - due
    return _Ladder(
        sizes=tuple(size for size in (60, 120, 240, 480, 1440, 2880) if size <= room),
        change=lambda size: {"op": "move_due", "order": name, "minutes": size},
        tell=lambda size: f"{name} due {clock(problem, due + size)}",
    )


def _without(name: str) -> _Ladder:
    return _Ladder(
        sizes=(1,),
        change=lambda _: {"op": "drop_order", "order": name},
        tell=lambda _: f"without {name}",
    )


def _tried(problem: Problem, ladder: _Ladder, size: int, seconds: float) -> Mend | None:
    change = ladder.change(size)
    after = changed(problem, change)
    plan = solve(after, seconds=seconds, wishes=FIRST_PLAN, steady=False)
    if not plan.steps or check(after, plan):
        return None
    return Mend(text=ladder.tell(size), changes=(change,), problem=after, plan=plan)


def changed(problem: Problem, change: Mapping[str, object]) -> Problem:
    """Give the problem with one change, by its ``op`` in the neutral schema.

    Raises
    ------
    ValueError
        If the change is of no known kind.
    """
    match change:
        case {"op": "add_capacity", "resource": name, "amount": int(amount)}:
            resources = tuple(
                replace(
                    one,
                    capacity=one.capacity + amount,
                    profile=tuple(
                        replace(other, capacity=other.capacity + amount)
                        for other in one.profile
                    ),
                )
                if one.name == name
                else one
                for one in problem.resources
            )
            return replace(problem, resources=resources)
        case {
            "op": "extend_window",
            "calendar": str(name),
            "from": int(a),
            "to": int(b),
        }:
            return replace(
                problem,
                calendars={
                    **problem.calendars,
                    name: _joined((*problem.calendars[name], Window(open=a, close=b))),
                },
            )
        case {"op": "move_due", "order": name, "minutes": int(later)}:
            return replace(
                problem,
                orders=tuple(
                    replace(one, due=one.due + later) if one.id == name else one
                    for one in problem.orders
                ),
            )
        case {"op": "drop_order", "order": str(name)}:
            return _dropped(problem, name)
        case _:
            raise ValueError(f"no change is called {change.get('op')!r}")


def _joined(windows: Iterable[Window]) -> tuple[Window, ...]:
    """Join windows that touch or overlap: one stretch without a break."""
    joined: list[Window] = []
    for window in sorted(windows, key=lambda one: one.open):
        if joined and window.open <= joined[-1].close:
            close = max(joined[-1].close, window.close)
            joined[-1] = replace(joined[-1], close=close)
        else:
            joined.append(window)
    return tuple(joined)


def _dropped(problem: Problem, name: str) -> Problem:
    steps = []
    for step in problem.steps:
        others = tuple(order for order in step.order if order != name)
        if others or not step.order:
            steps.append(replace(step, order=others))
    there = {step.id for step in steps}
    there |= {f"{DUE}{one.id}" for one in problem.orders if one.id != name}
    return replace(
        problem,
        orders=tuple(one for one in problem.orders if one.id != name),
        steps=tuple(steps),
        done=facts_about(problem.done, steps),
        previous=facts_about(problem.previous, steps),
        lags=tuple(
            lag for lag in problem.lags if lag.from_ in there and lag.to in there
        ),
        holds=tuple(
            hold for hold in problem.holds if hold.from_ in there and hold.to in there
        ),
    )
