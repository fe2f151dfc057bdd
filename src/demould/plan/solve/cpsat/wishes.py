"""What a plan is wished to be, as sums for the solver to make small."""

from __future__ import annotations

from collections.abc import Callable, Iterator, Mapping
from typing import Literal

from ortools.sat.python import cp_model

from demould.plan.problem.steps import Window, orders_of, strictest_due
from demould.plan.solve.cpsat.week import Doing, Part, Sum, Week, in_one_window

SOON_MIN = 120
"""A longest wait up to this [min] is for something that does not keep."""

SOON_WEIGHT = 10
"""A minute of such a wait counts as much as this many minutes of starting early."""

Wish = Literal[
    "late_orders",
    "tardiness",
    "margins_missed",
    "sessions",
    "overtime",
    "freshness",
    "tidy",
]
"""What to make small. ``tidy``: all early, so that nothing floats, no short wait long."""

DEFAULT_WISHES: tuple[Wish, ...] = (
    "late_orders",
    "tardiness",
    "margins_missed",
    "sessions",
    "overtime",
    "freshness",
    "tidy",
)


def _late_orders(week: Week) -> Sum:
    late: list[cp_model.IntVar] = []
    for order in week.problem.orders:
        if order.soft_due:
            late.append(week.model.new_bool_var(f"{order.id} is late"))
            for doing in _done_for(week, order.id):
                week.model.add(doing.end <= order.due).only_enforce_if(~late[-1])
    return sum(late)


def _tardiness(week: Week) -> Sum:
    past: list[cp_model.IntVar] = []
    for order in week.problem.orders:
        if order.soft_due:
            past.append(week.model.new_int_var(0, week.problem.horizon, ""))
            for doing in _done_for(week, order.id):
                week.model.add(past[-1] >= doing.end - order.due)
    return sum(past)


def _done_for(week: Week, order: str) -> Iterator[Doing]:
    return (doing for doing in week.doings.values() if order in doing.step.order)


def _margins_missed(week: Week) -> Sum:
    missed: list[Sum] = []
    for doing in week.doings.values():
        if doing.step.margin:
            kept = week.model.new_int_var(0, doing.step.margin, "")
            _keep_margin(week, doing, kept)
            missed.append(doing.step.margin - kept)
    return sum(missed)


def _keep_margin(week: Week, doing: Doing, kept: cp_model.IntVar) -> None:
    """Let the margin kept be no more than the spare time; see `schedule.spare`."""
    step = doing.step
    quickest = doing.start + sum(
        road.duration.min * taken for road, taken in doing.took
    )
    week.model.add(kept <= week.problem.horizon - quickest)
    for lag in week.problem.lags:
        if lag.from_ == step.id and lag.from_at == "end" and lag.min is not None:
            week.model.add(kept <= week.at(lag.to, lag.to_at) - lag.min - quickest)
    if step.latest_end is not None:
        week.model.add(kept <= step.latest_end - quickest)
    for order in orders_of(week.problem, step):
        timely = week.model.new_bool_var("")
        week.model.add(kept <= order.due - quickest).only_enforce_if(timely)
        week.model.add(kept == 0).only_enforce_if(~timely)


def _sessions(week: Week) -> Sum:
    worked = []
    for session, parts in _parts_in_sessions(week).items():
        used = week.model.new_bool_var(f"somebody works in {session}")
        for _, inside in parts:
            week.model.add_implication(inside, used)
        worked.append(used)
    return sum(worked)


def _overtime(week: Week) -> Sum:
    if not any(w.overtime for many in week.problem.calendars.values() for w in many):
        return 0
    worked = []
    for (_, window), parts in _parts_in_sessions(week).items():
        if window.overtime:
            for part, inside in parts:
                length = week.model.new_int_var(0, window.close - window.open, "")
                week.model.add(length >= part.size).only_enforce_if(inside)
                worked.append(length)
    return sum(worked)


def _parts_in_sessions(
    week: Week,
) -> dict[tuple[str, Window], list[tuple[Part, cp_model.IntVar]]]:
    """Give the parts that may be in each window; unknowns are made the first time."""
    if not week.sessions:
        for doing in week.doings.values():
            name = doing.step.calendar
            if name is not None:
                for part in doing.parts:
                    windows = week.problem.calendars[name]
                    chosen = in_one_window(week, part, windows, [True])
                    for window, inside in chosen:
                        week.sessions.setdefault((name, window), []).append(
                            (part, inside)
                        )
    return week.sessions


def _freshness(week: Week) -> Sum:
    return sum(
        doing.step.fresh
        * ((strictest_due(week.problem, doing.step) or 0) - doing.start)
        for doing in week.doings.values()
        if doing.step.fresh
    )


def _tidy(week: Week) -> Sum:
    """Everything early, but what is used up soon made only just before."""
    early = sum(doing.start + doing.end for doing in week.doings.values())
    return early + SOON_WEIGHT * sum(_soon(week))


def _soon(week: Week) -> Iterator[Sum]:
    """Give the waits that may only be short: a whipped ganache to its filling."""
    for lag in week.problem.lags:
        if lag.max is not None and 0 < lag.max <= SOON_MIN:
            yield week.at(lag.to, lag.to_at) - week.at(lag.from_, lag.from_at)


COSTS: Mapping[Wish, Callable[[Week], Sum]] = {
    "late_orders": _late_orders,
    "tardiness": _tardiness,
    "margins_missed": _margins_missed,
    "sessions": _sessions,
    "overtime": _overtime,
    "freshness": _freshness,
    "tidy": _tidy,
}
