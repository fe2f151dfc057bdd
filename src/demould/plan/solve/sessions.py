"""Fewer sessions: one is closed, and what was done in it finds another."""

from __future__ import annotations

from collections import defaultdict
from typing import TYPE_CHECKING

from demould.plan.answer.schedule import attended_parts
from demould.plan.solve.asked import windows_of
from demould.plan.solve.cpsat.closed import close
from demould.plan.solve.cpsat.combined import combined
from demould.plan.solve.cpsat.look import hint, look, model_of
from demould.plan.solve.near import near

if TYPE_CHECKING:
    from collections.abc import Collection, Mapping, Sequence

    from demould.plan.answer.schedule import Planned
    from demould.plan.problem.steps import Window
    from demould.plan.solve.asked import Asked
    from demould.plan.solve.cpsat.time import Time
    from demould.plan.solve.wish import Wish

    Session = tuple[str, Window]

A_CLOSING = 0.02
"""Deterministic seconds for closing one session, times how many orders move."""

MORE_ORDERS = (0, 4)
"""So many orders move beside those that are worked for in it."""

TOO_MANY = 250
"""More steps than these do not find another place together in so short a time."""


def steps_in(asked: Asked, places: Mapping[str, Planned]) -> dict[Session, set[str]]:
    """Give the steps somebody attends in each window that is worked in."""
    found: dict[Session, set[str]] = defaultdict(set)
    for name, place in places.items():
        step = asked.net.steps[name]
        for begin, until in attended_parts(step, place):
            for window in windows_of(asked.problem, step):
                if window.open < until and begin < window.close:
                    found[step.calendar or "", window].add(name)
    return found


def close_one(
    asked: Asked,
    places: Mapping[str, Planned],
    time: Time,
    until: float,
    wishes: Sequence[Wish],
    seed: int,
) -> dict[str, Planned] | None:
    """Give a plan with one session fewer, the least worked in first; None: none found."""
    used = steps_in(asked, places)
    unused = {
        (name, window)
        for name, windows in asked.problem.calendars.items()
        for window in windows
        if (name, window) not in used
    }
    for session in sorted(used, key=lambda one: (len(used[one]), one[1].open)):
        if used[session] & asked.past.keys():
            continue
        for more in MORE_ORDERS:
            if time.left <= until:
                return None
            free = _orders_in(asked, places, used[session], more)
            if len(free) > TOO_MANY and more:
                break
            found = _moved_out(
                asked, places, free, {session, *unused}, time, wishes, seed
            )
            if found is not None:
                return found
    return None


def _orders_in(
    asked: Asked, places: Mapping[str, Planned], names: Collection[str], more: int
) -> tuple[str, ...]:
    """Give all steps of the units the named ones are of, and of some near them."""
    of = {name: at for at, unit in enumerate(asked.units) for name in unit}
    units = list(dict.fromkeys(of[name] for name in asked.steps if name in names))
    others = [at for at in range(len(asked.units)) if at not in set(units)]
    rank: dict[int, int] = {}
    for unit in units if more else ():
        for place, other in enumerate(near(asked, unit, others, places)):
            rank[other] = min(place, rank.get(other, place))
    units += sorted(rank, key=lambda one: (rank[one], one))[:more]
    return tuple(name for unit in units for name in asked.units[unit])


def _moved_out(
    asked: Asked,
    places: Mapping[str, Planned],
    free: tuple[str, ...],
    closed: Collection[Session],
    time: Time,
    wishes: Sequence[Wish],
    seed: int,
) -> dict[str, Planned] | None:
    there = set(free)
    placed = {name: place for name, place in places.items() if name not in there}
    week = model_of(asked, free, placed)
    if week is None:
        return None
    close(week, closed)
    hint(week, places)
    cost = combined(week, [wish for wish in wishes if wish != "sessions"])
    seconds = A_CLOSING * (1 + len(free) / 100)
    seen = look(week, time, seconds, cost=cost, seed=seed, quick=True)
    return {**places, **seen.places} if seen.places else None
