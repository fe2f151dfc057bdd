"""Many orders: a first plan in one walk, fewer sessions, then parts of it made better."""

from __future__ import annotations

from dataclasses import dataclass, field
from typing import TYPE_CHECKING

from demould.plan.answer.schedule import (
    Explain,
    moved_from,
    objective_of,
)
from demould.plan.solve.asked import ask
from demould.plan.solve.construct import construct
from demould.plan.solve.cpsat.look import look, model_of
from demould.plan.solve.cpsat.walk import Way, walk
from demould.plan.solve.harden import in_windows, on_time, with_margins
from demould.plan.solve.improve import improve
from demould.plan.solve.sessions import close_one, steps_in
from demould.plan.solve.wish import worth

if TYPE_CHECKING:
    from collections.abc import Callable, Mapping, Sequence

    from demould.plan.answer.schedule import Planned, Status
    from demould.plan.problem.steps import Problem
    from demould.plan.solve.asked import Asked
    from demould.plan.solve.cpsat.time import Time
    from demould.plan.solve.wish import Wish

A_WALK = 0.05
"""Deterministic seconds for a walk, and so many more for each thousand steps."""
A_WALK_MORE = 0.04

FOR_SESSIONS = 0.4
"""The part of the time in which fewer sessions are looked for."""

Places = dict[str, "Planned"]


@dataclass(slots=True, kw_only=True)
class _Best:
    """The best plan of a problem so far."""

    problem: Problem
    wishes: Sequence[Wish]
    tell: Callable[[Mapping[str, Planned]], None] | None
    places: Places = field(default_factory=dict)
    worth: tuple[int, ...] = ()

    def offer(self, places: Mapping[str, Planned]) -> bool:
        """Take a plan that is better than the best so far."""
        found = [*places.values()]
        moved = len(moved_from(self.problem, found))
        value = worth(objective_of(self.problem, found), moved, self.wishes)
        if self.places and value >= self.worth:
            return False
        self.places, self.worth = dict(places), value
        if self.tell is not None:
            self.tell(self.places)
        return True


def large(
    problem: Problem,
    time: Time,
    wishes: Sequence[Wish],
    *,
    workers: int = 2,
    seed: int = 0,
    tell: Callable[[Mapping[str, Planned]], None] | None = None,
    first: Time | None = None,
) -> tuple[Status, Places]:
    """Give a plan of many orders: whether there is one, and the best found in time.

    ``first`` is the time for the first plan, where it has less than there is in all.
    """
    best = _Best(problem=problem, wishes=wishes, tell=tell)
    started = _start(problem, first or time, wishes, workers, seed)
    if isinstance(started, str):
        return started, {}
    asked, places = started
    best.offer(places)
    if not any(best.worth):
        return "feasible", best.places
    if "sessions" in wishes:
        asked = _fewer_sessions(asked, best, time, wishes, seed)
        wishes = [wish for wish in wishes if wish != "sessions"]
    improve(asked, best.places, time, wishes, seed=seed, offer=best.offer)
    return "feasible", best.places


def _start(
    problem: Problem, time: Time, wishes: Sequence[Wish], workers: int, seed: int
) -> tuple[Asked, Places] | Status:
    """Give the hardest problem for which a plan is found at once, and that plan."""
    strict = on_time(problem) if "late_orders" in wishes else problem
    spared = with_margins(strict) if "margins_missed" in wishes else strict
    tried = dict.fromkeys(id(one) for one in (spared, strict, problem))
    for one in (spared, strict, problem):
        if tried.pop(id(one), 0) == 0:
            continue
        asked = ask(one)
        if isinstance(asked, Explain):
            continue
        last = one is problem
        status, places = _first(asked, time, wishes, workers, seed, thorough=last)
        if places:
            return asked, places
        if last:
            return status
    return "infeasible"


def _first(
    asked: Asked,
    time: Time,
    wishes: Sequence[Wish],
    workers: int,
    seed: int,
    *,
    thorough: bool,
) -> tuple[Status, Places]:
    """Give a first plan: in one walk, else order by order, else by all means."""
    long = _long(asked)
    ways: tuple[Way, ...] = ("late", "early")
    for way in ways:
        seen = walk(asked, time, long, way, seed=seed)
        if seen.places or seen.status == "infeasible":
            return seen.status, {**asked.past, **seen.places} if seen.places else {}
    built = construct(asked, time, wishes, seed=seed)
    if built.places is not None:
        return "feasible", dict(built.places)
    if built.impossible or not thorough:
        return "infeasible" if built.impossible else "unknown", {}
    week = model_of(asked, tuple(asked.steps), asked.past)
    if week is None:
        return "infeasible", {}
    seen = look(week, time, time.left, workers=workers, seed=seed)
    return seen.status, {**asked.past, **seen.places} if seen.places else {}


def _long(asked: Asked) -> float:
    return A_WALK + A_WALK_MORE * len(asked.steps) / 1000


def _fewer_sessions(
    asked: Asked, best: _Best, time: Time, wishes: Sequence[Wish], seed: int
) -> Asked:
    """Close sessions one by one; where none can be, walk anew in one fewer.

    Gives the problem with only the windows open that are worked in.
    """
    until = time.left * (1 - FOR_SESSIONS)
    places: Mapping[str, Planned] | None = best.places
    while places is not None:
        best.offer(places)
        places = close_one(asked, best.places, time, until, wishes, seed)
    fewer = _only_used(asked, best.places)
    while time.left > until:
        count = len(steps_in(asked, best.places)) - 1
        long = _long(asked)
        seen = walk(asked, time, long, "early", sessions=count, seed=seed)
        if not seen.places:
            break
        best.offer({**asked.past, **seen.places})
        fewer = _only_used(asked, best.places)
        fresher = walk(fewer, time, long, "late", seed=seed).places
        if not fresher:
            fresher = construct(fewer, time, wishes, seed=seed).places or {}
        if fresher:
            best.offer({**asked.past, **fresher})
    return fewer


def _only_used(asked: Asked, places: Mapping[str, Planned]) -> Asked:
    fewer = ask(in_windows(asked.problem, steps_in(asked, places).keys()))
    return asked if isinstance(fewer, Explain) else fewer
