"""A plan made better, a part of it at a time, the rest left where it is."""

from __future__ import annotations

import random
from dataclasses import dataclass, field
from typing import TYPE_CHECKING

from demould.plan.solve.cpsat.combined import combined
from demould.plan.solve.cpsat.look import hint, look, model_of
from demould.plan.solve.near import near

if TYPE_CHECKING:
    from collections.abc import Callable, Mapping, Sequence

    from demould.plan.answer.schedule import Planned
    from demould.plan.solve.asked import Asked
    from demould.plan.solve.cpsat.time import Time
    from demould.plan.solve.wish import Wish

A_LOOK = 0.012
"""Deterministic seconds for one part."""

Places = dict[str, "Planned"]


@dataclass(slots=True, kw_only=True)
class _Work:
    """The plan so far, and how large a part is taken up at a time."""

    asked: Asked
    places: Places
    random: random.Random
    size: dict[str, float] = field(default_factory=dict)


def improve(
    asked: Asked,
    places: Mapping[str, Planned],
    time: Time,
    wishes: Sequence[Wish],
    *,
    seed: int = 0,
    offer: Callable[[Mapping[str, Planned]], bool],
) -> Places:
    """Take up parts of a plan as long as there is time; give the better plan.

    ``offer`` is asked whether a plan is better than all before.
    """
    work = _Work(asked=asked, places=dict(places), random=random.Random(seed))
    kinds: dict[str, Callable[[_Work, int], set[str]]] = {
        "orders": _orders,
        "slice": _slice,
        "session": _session,
    }
    work.size = dict.fromkeys(kinds, 40.0)
    while time.left > 0:
        kind = work.random.choice(tuple(kinds))
        free = kinds[kind](work, round(work.size[kind]))
        if not free:
            continue
        placed = {n: p for n, p in work.places.items() if n not in free}
        names = tuple(name for name in asked.steps if name in free)
        week = model_of(asked, names, placed)
        if week is None:
            continue
        cost = combined(week, wishes)
        hint(week, work.places)
        seen = look(
            week, time, A_LOOK, cost=cost, seed=work.random.randrange(1000), quick=True
        )
        quick = seen.status == "optimal"
        work.size[kind] *= 1.1 if quick else 0.9
        work.size[kind] = min(max(work.size[kind], 20), len(asked.steps))
        if not seen.places:
            continue
        after = {**work.places, **seen.places}
        if offer(after):
            work.places = after
    return work.places


def _orders(work: _Work, size: int) -> set[str]:
    """Give some orders that meet."""
    units = range(len(work.asked.units))
    one = work.random.choice(units)
    others = near(work.asked, one, [u for u in units if u != one], work.places)
    free = set(work.asked.units[one])
    for other in others:
        if work.random.random() < 0.3:
            continue
        if len(free) + len(work.asked.units[other]) > size:
            break
        free |= {name for name in work.asked.units[other] if name in work.asked.steps}
    return free


def _slice(work: _Work, size: int) -> set[str]:
    """Give the steps about some minute."""
    names = tuple(work.asked.steps)
    middle = work.places[work.random.choice(names)].start
    by = sorted(names, key=lambda name: abs(work.places[name].start - middle))
    return set(by[:size])


def _session(work: _Work, size: int) -> set[str]:
    """Give the orders somebody works for in some session, whole."""
    asked = work.asked
    names = tuple(asked.steps)
    middle = work.places[work.random.choice(names)].start
    units = sorted(
        range(len(asked.units)),
        key=lambda unit: min(
            abs(work.places[name].start - middle) for name in asked.units[unit]
        ),
    )
    free: set[str] = set()
    for unit in units:
        if len(free) + len(asked.units[unit]) > size and free:
            break
        free |= set(asked.units[unit])
    return free
