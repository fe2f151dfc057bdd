"""What a plan costs, as sums for the solver to make small."""

from __future__ import annotations

from typing import TYPE_CHECKING

from ortools.sat.python import cp_model

from demould.plan.problem.steps import orders_of, strictest_due
from demould.plan.solve.asked import windows_of
from demould.plan.solve.cpsat.hours import part_is_past

if TYPE_CHECKING:
    from collections.abc import Callable, Iterator, Mapping

    from demould.plan.problem.steps import Window
    from demould.plan.solve.cpsat.unknown import Doing, Part, Sum, When
    from demould.plan.solve.cpsat.week import Week
    from demould.plan.solve.wish import Wish

SOON_MIN = 120
"""A longest wait up to this [min] is for something that does not keep."""

SOON_WEIGHT = 10
"""A minute of such a wait counts as much as this many minutes of starting early."""

Cost = tuple["Sum", int, int]
"""A sum, and the least and the most it can be as far as can be said at once."""


def moved(week: Week) -> Cost:
    """Count the free steps that leave their agreed minute or road."""
    problem, found = week.asked.problem, []
    for name, doing in week.doings.items():
        agreed = problem.previous.get(name)
        if agreed is None or name in problem.done:
            continue
        stays = week.model.new_bool_var(f"{name} stays")
        week.model.add(doing.start == agreed.start).only_enforce_if(stays)
        for road, taken in doing.took:
            if agreed.took not in (None, road.name):
                week.model.add_bool_or(~stays, ~_literal(week, taken))
        found.append(1 - stays)
    return sum(found), 0, len(found)


def _literal(week: Week, taken: When) -> cp_model.IntVar:
    return week.model.new_constant(1) if isinstance(taken, bool) else taken


def _late_orders(week: Week) -> Cost:
    late: list[Sum] = []
    surely = 0
    for order in week.asked.problem.orders:
        ends = list(_ends(week, order.id)) if order.soft_due else []
        if not any(not isinstance(end, int) for end, _ in ends):
            continue
        if max(first for _, first in ends) > order.due:
            surely += 1
            continue
        is_late = week.model.new_bool_var(f"{order.id} is late")
        for end, _ in ends:
            week.model.add(end <= order.due).only_enforce_if(~is_late)
        late.append(is_late)
    return sum(late) + surely, surely, surely + len(late)


def _tardiness(week: Week) -> Cost:
    past: list[Sum] = []
    least = most = 0
    for order in week.asked.problem.orders:
        ends = list(_ends(week, order.id)) if order.soft_due else []
        if not any(not isinstance(end, int) for end, _ in ends):
            continue
        low = max(0, max(first for _, first in ends) - order.due)
        high = max(low, week.asked.problem.horizon - order.due)
        over = week.model.new_int_var(low, high, f"{order.id} is late by")
        for end, _ in ends:
            week.model.add(over >= end - order.due)
        past.append(over)
        least, most = least + low, most + high
    return sum(past), least, most


def _ends(week: Week, order: str) -> Iterator[tuple[Sum, int]]:
    """Give each end of an order's steps with the first minute it can be."""
    for doings in (week.doings, week.placed):
        for name, doing in doings.items():
            if order in doing.step.order:
                first = doing.end if isinstance(doing.end, int) else None
                yield (
                    doing.end,
                    week.limits.first[name, "end"] if first is None else first,
                )


def _margins_missed(week: Week) -> Cost:
    missed: list[Sum] = []
    most = 0
    for doing in _with_margins(week):
        kept = week.model.new_int_var(0, doing.step.margin, "")
        _keep_margin(week, doing, kept)
        missed.append(doing.step.margin - kept)
        most += doing.step.margin
    return sum(missed), 0, most


def _with_margins(week: Week) -> Iterator[Doing]:
    """Give the steps whose spare time the free steps decide upon."""
    seen: set[str] = set()
    for name in week.doings:
        lags = week.asked.lags.get(name, ())
        for one in (name, *(lag.from_ for lag in lags if lag.to == name)):
            doing = week.doings.get(one) or week.placed.get(one)
            if doing is None or one in seen or one in week.asked.past:
                continue
            seen.add(one)
            if doing.step.margin:
                yield doing


def _keep_margin(week: Week, doing: Doing, kept: cp_model.IntVar) -> None:
    """Let the margin kept be no more than the spare time; see `schedule.spare`."""
    step = doing.step
    quickest = doing.start + sum(
        road.duration.min * taken for road, taken in doing.took
    )
    week.model.add(kept <= week.asked.problem.horizon - quickest)
    for lag in week.asked.lags.get(step.id, ()):
        if lag.from_ == step.id and lag.from_at == "end" and lag.min is not None:
            after = week.at(lag.to, lag.to_at)
            if after is not None:
                week.model.add(kept <= after - lag.min - quickest)
    if step.latest_end is not None:
        week.model.add(kept <= step.latest_end - quickest)
    for order in orders_of(week.asked.problem, step):
        timely = week.model.new_bool_var("")
        week.model.add(kept <= order.due - quickest).only_enforce_if(timely)
        week.model.add(kept == 0).only_enforce_if(~timely)


def _sessions(week: Week) -> Cost:
    """Count the windows somebody works in, beyond those of the steps that are set."""
    found: dict[tuple[str, Window], list[tuple[Doing, Part]]] = {}
    for doing in week.doings.values():
        for part in doing.parts:
            for window in windows_of(week.asked.problem, doing.step):
                if window.open <= part.last and part.first < window.close:
                    key = (doing.step.calendar or "", window)
                    found.setdefault(key, []).append((doing, part))
    worked = _worked_in(week)
    used = []
    for key, parts in sorted(found.items(), key=lambda one: one[0][1].open):
        if (key[0], key[1].open) not in worked:
            used.append(_used(week, key[1], parts))
    return sum(used), 0, len(used)


def _worked_in(week: Week) -> set[tuple[str, int]]:
    return {
        (doing.step.calendar or "", window.open)
        for doing in week.placed.values()
        for part in doing.parts
        for window in windows_of(week.asked.problem, doing.step)
        if window.open < part.first + part.least and part.first < window.close
    }


def _used(
    week: Week, window: Window, parts: list[tuple[Doing, Part]]
) -> cp_model.IntVar:
    used = week.model.new_bool_var(f"somebody works from {window.open}")
    outside = cp_model.Domain.from_intervals(
        [[cp_model.INT_MIN, window.open - 1], [window.close, cp_model.INT_MAX]]
    )
    for doing, part in parts:
        if part_is_past(week.asked.problem, doing, part):
            if part.first + part.least > window.open:
                week.model.add(used == 1)
            continue
        there = [] if part.there is True else [part.there]
        week.model.add_linear_expression_in_domain(part.start, outside).only_enforce_if(
            ~used, *there
        )
    return used


def _overtime(week: Week) -> Cost:
    worked: list[Sum] = []
    most = 0
    for doing in week.doings.values():
        for part in doing.parts:
            for window in windows_of(week.asked.problem, doing.step):
                reached = window.open <= part.last and part.first < window.close
                if window.overtime and reached:
                    worked.append(_minutes_in(week, part, window))
                    most += window.close - window.open
    return sum(worked), 0, most


def _minutes_in(week: Week, part: Part, window: Window) -> cp_model.IntVar:
    length = week.model.new_int_var(0, window.close - window.open, "")
    inside = week.model.new_bool_var("")
    outside = cp_model.Domain.from_intervals(
        [[cp_model.INT_MIN, window.open - 1], [window.close, cp_model.INT_MAX]]
    )
    there = [] if part.there is True else [part.there]
    week.model.add_linear_expression_in_domain(part.start, outside).only_enforce_if(
        ~inside, *there
    )
    week.model.add(length >= part.size).only_enforce_if(inside)
    return length


def _freshness(week: Week) -> Cost:
    total: Sum = 0
    least = most = 0
    for name, doing in week.doings.items():
        weight = doing.step.fresh
        if weight:
            due = strictest_due(week.asked.problem, doing.step) or 0
            total += weight * (due - doing.start)
            least += weight * (due - week.limits.last[name, "start"])
            most += weight * (due - week.limits.first[name, "start"])
    return total, least, most


def _tidy(week: Week) -> Cost:
    """Everything early, but what is used up soon made only just before."""
    early = sum(doing.start + doing.end for doing in week.doings.values())
    soon = SOON_WEIGHT * sum(_soon(week))
    most = 2 * week.asked.problem.horizon * len(week.doings) * (1 + SOON_WEIGHT)
    return early + soon, 0, most


def _soon(week: Week) -> Iterator[Sum]:
    """Give the waits that may only be short: a whipped ganache to its filling."""
    for lag in week.asked.problem.lags:
        if lag.max is not None and 0 < lag.max <= SOON_MIN:
            if lag.from_ not in week.doings and lag.to not in week.doings:
                continue
            after, before = week.at(lag.to, lag.to_at), week.at(lag.from_, lag.from_at)
            if after is not None and before is not None:
                yield after - before


COSTS: Mapping[Wish, Callable[[Week], Cost]] = {
    "late_orders": _late_orders,
    "tardiness": _tardiness,
    "margins_missed": _margins_missed,
    "sessions": _sessions,
    "overtime": _overtime,
    "freshness": _freshness,
    "tidy": _tidy,
}
