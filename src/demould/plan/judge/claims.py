"""What a plan costs, reckoned by the judge for itself."""

from __future__ import annotations

from typing import TYPE_CHECKING

from demould.plan.judge.done import Done, minute_of

if TYPE_CHECKING:
    from collections.abc import Iterable, Iterator, Mapping

    from demould.plan.problem.steps import Problem


def worth(problem: Problem, done: Mapping[str, Done]) -> dict[str, int]:
    """Give every cost of `Objective` by name, for a plan that keeps all promises."""
    late = [
        max((d.end for d in done.values() if order.id in d.step.order), default=0)
        - order.due
        for order in problem.orders
        if order.soft_due
    ]
    dues = {order.id: order.due for order in problem.orders}
    sessions = list(_sessions(problem, done.values()))
    return {
        "late_orders": sum(over > 0 for over in late),
        "tardiness": sum(over for over in late if over > 0),
        "margins_missed": sum(_missed(problem, done, d) for d in done.values()),
        "sessions": len({(name, opens) for name, opens, _, _ in sessions}),
        "overtime": sum(length for *_, length, overtime in sessions if overtime),
        "freshness": sum(
            d.step.fresh * (min(dues[name] for name in d.step.order) - d.start)
            for d in done.values()
            if d.step.fresh
        ),
    }


def _sessions(
    problem: Problem, done: Iterable[Done]
) -> Iterator[tuple[str, int, int, bool]]:
    """Give calendar, opening, attended minutes and overtime of every part."""
    for place in done:
        name = place.step.calendar
        windows = () if name is None else problem.calendars[name]
        for begin, over in place.parts:
            for window in windows:
                inside = min(over, window.close) - max(begin, window.open)
                if inside > 0:
                    yield name or "", window.open, inside, window.overtime


def _missed(problem: Problem, done: Mapping[str, Done], place: Done) -> int:
    """Give the spare minutes asked for after a step that are not there."""
    if not place.step.margin or place.over:
        return 0
    limits = [problem.horizon]
    for lag in problem.lags:
        after = minute_of(problem, done, lag.to, lag.to_at)
        leaves = (lag.from_, lag.from_at) == (place.step.id, "end")
        if leaves and lag.min is not None and after is not None:
            limits.append(after - lag.min)
    limits += [order.due for order in problem.orders if order.id in place.step.order]
    if place.step.latest_end is not None:
        limits.append(place.step.latest_end)
    spare = min(limits) - place.start - place.road.duration.min
    return place.step.margin - min(place.step.margin, max(0, spare))


def moved(problem: Problem, done: Mapping[str, Done]) -> tuple[str, ...]:
    """Name the open steps that begin at another minute, or go by another road."""
    found = []
    for name, place in done.items():
        agreed = problem.previous.get(name)
        if agreed is None or place.began:
            continue
        if agreed.start != place.start or agreed.took not in (None, place.road.name):
            found.append(name)
    return tuple(found)
