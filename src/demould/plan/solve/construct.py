"""A first plan, order by order, the first due first."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

from demould.plan.solve.cpsat.combined import combined
from demould.plan.solve.cpsat.look import Seen, look, model_of
from demould.plan.solve.near import near

if TYPE_CHECKING:
    from collections.abc import Mapping, Sequence

    from demould.plan.answer.schedule import Planned
    from demould.plan.solve.asked import Asked
    from demould.plan.solve.cpsat.time import Time
    from demould.plan.solve.wish import Wish

A_UNIT = 0.03
"""Deterministic seconds for the steps of one order; most need far less."""

RUINS = (1, 2, 4, 8)
"""So many orders are taken up again, one after the other, where one does not fit."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Built:
    """A plan of all steps, or the units that could not be placed together.

    ``impossible``: shown to have no plan, even with nothing else around.
    """

    places: Mapping[str, Planned] | None
    stuck: tuple[int, ...] = ()
    impossible: bool = False


def construct(
    asked: Asked, time: Time, wishes: Sequence[Wish], *, seed: int = 0
) -> Built:
    """Place one unit after the other; where one does not fit, take up others again."""
    placed: dict[str, Planned] = dict(asked.past)
    done: list[int] = []
    for number, unit in enumerate(asked.units):
        seen = _fit(asked, unit, placed, time, wishes, seed)
        if seen.places:
            placed |= seen.places
            done.append(number)
            continue
        if seen.status == "infeasible" and not done:
            return Built(places=None, stuck=(number,), impossible=True)
        again: tuple[int, ...] = (number,)
        for count in RUINS:
            again = (*near(asked, number, done, placed)[:count], number)
            seen = _together(asked, again, placed, time, wishes, seed)
            if seen.places:
                placed |= seen.places
                done.append(number)
                break
            if time.left <= 0:
                return Built(places=None, stuck=again)
            if seen.status == "infeasible" and len(again) == len(done) + 1:
                return Built(places=None, stuck=again, impossible=True)
        else:
            return Built(places=None, stuck=again)
    return Built(places=placed)


def _together(
    asked: Asked,
    units: tuple[int, ...],
    placed: Mapping[str, Planned],
    time: Time,
    wishes: Sequence[Wish],
    seed: int,
) -> Seen:
    free = tuple(name for unit in units for name in asked.units[unit])
    others = {name: place for name, place in placed.items() if name not in set(free)}
    return _fit(asked, free, others, time, wishes, seed, len(units))


def _fit(
    asked: Asked,
    free: tuple[str, ...],
    placed: Mapping[str, Planned],
    time: Time,
    wishes: Sequence[Wish],
    seed: int,
    many: int = 1,
) -> Seen:
    week = model_of(asked, free, placed)
    if week is None:
        return Seen(status="infeasible", places={})
    cost = combined(week, wishes)
    return look(week, time, A_UNIT * many, cost=cost, seed=seed, quick=True)
