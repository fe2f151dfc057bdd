"""All the instant looks at a problem, what weighs most first."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import replace
from typing import TYPE_CHECKING

from demould.plan.answer.schedule import Explain
from demould.plan.quick.chain import Chains
from demould.plan.quick.deliveries import comes_too_late
from demould.plan.quick.hands import nobody_can, too_few_hands
from demould.plan.quick.holds import ends_when_closed
from demould.plan.quick.limit import Limit
from demould.plan.quick.moulds import too_few
from demould.plan.quick.room import no_room, too_long_in_all
from demould.plan.solve.lags import limits_of
from demould.plan.solve.net import Limits

if TYPE_CHECKING:
    from demould.plan.problem.steps import Problem


def first_look(problem: Problem) -> tuple[Limit, ...]:
    """Give every limit that can be seen without a search; none proves nothing.

    Moulds first, then what no place or person can take, then hands and hours in all,
    then the waits. Each alone means that there is no plan.
    """
    chains = Chains(problem)
    found = [*no_room(problem), *nobody_can(problem)]
    limits = limits_of(problem)
    wide = _wide(problem) if isinstance(limits, Explain) else limits
    if not isinstance(wide, Explain):
        found += comes_too_late(problem, wide, chains)
        found += too_few(problem, wide, chains)
        found += too_long_in_all(problem, wide)
        found += [] if found else too_few_hands(problem, wide)
        held = None if found else ends_when_closed(problem, wide, chains)
        found += [held] if held else []
    if isinstance(limits, Explain) and not found:
        found.append(_waits(limits))
    return tuple(sorted(_each_once(found), key=_weight))


def _each_once(found: Iterable[Limit]) -> Iterable[Limit]:
    return {limit.text: limit for limit in found}.values()


def _wide(problem: Problem) -> Limits | Explain:
    """Give limits that are too wide where the true ones leave some step no room."""
    loose = _loose(problem)
    found = limits_of(loose)
    if not isinstance(found, Explain):
        return found
    steps = tuple(replace(step, earliest=None) for step in loose.steps)
    return limits_of(replace(loose, steps=steps))


def _loose(problem: Problem) -> Problem:
    """Give the problem open day and night, with no wait too long."""
    return replace(
        problem,
        people=(),
        calendars={},
        steps=tuple(
            replace(
                step,
                calendar=None,
                hands=None,
                skill=None,
                either=tuple(replace(road, hands=None) for road in step.either),
            )
            for step in problem.steps
        ),
        lags=tuple(replace(lag, max=None) for lag in problem.lags),
    )


def _waits(why: Explain) -> Limit:
    return Limit(
        over="wait",
        id=next((one.id for one in why.conflict if one.kind == "lag"), ""),
        orders=tuple(one.id for one in why.conflict if one.kind == "order"),
        text=why.text,
        help="begin sooner, another due time, or a quicker way",
    )


WEIGHT = ("mould", "cold", "tool", "hours", "hands", "delivery", "hold", "wait")


def _weight(limit: Limit) -> int:
    return WEIGHT.index(limit.over)
