"""How sure a plan is: the same week worked off many times with other luck each time."""

from __future__ import annotations

from collections import Counter
from dataclasses import dataclass
from math import ceil
from random import Random
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from collections.abc import Iterable, Mapping, Sequence

    from demould.plan.running.bend import Bends, Bent

BREAKAGE = "breakage"
SHORT_OF_TIME = "waits"


@dataclass(frozen=True, slots=True, kw_only=True)
class Spread:
    """Minutes a step takes: between low and high, most often likely (a triangle)."""

    step: str
    low: float
    likely: float
    high: float


@dataclass(frozen=True, slots=True, kw_only=True)
class Breaks:
    """Pieces made and needed, and the share that breaks, between low and high."""

    order: str
    made: int
    needed: int
    low: float
    likely: float
    high: float


@dataclass(frozen=True, slots=True, kw_only=True)
class Tally:
    """Of so many weeks those in which every order stood, each order, and what decided.

    `decides` counts, over the weeks that failed, the step whose overrun weighed most,
    or ``breakage``.
    """

    weeks: int
    stood: int
    by_order: Mapping[str, int]
    decides: Mapping[str, int]


def sampled(
    bends: Bends,
    spreads: Sequence[Spread],
    breaks: Sequence[Breaks],
    weeks: Iterable[int],
    seed: int,
) -> Tally:
    """Work the weeks with these numbers off; the same number is always the same week.

    So any part of them can be worked off elsewhere, and the tallies added up.
    """
    orders = [order.id for order in bends.problem.orders]
    stood = count = 0
    by_order: Counter[str] = Counter(dict.fromkeys(orders, 0))
    decides: Counter[str] = Counter()
    for number in weeks:
        luck = Random(f"{seed}.{number}")
        takes = {one.step: _minutes(luck, one) for one in spreads}
        bent = bends.bend(takes)
        short = {one.order for one in breaks if _whole(luck, one) < one.needed}
        failed = {name for name in orders if _failed(bends, bent, name)}
        for name in orders:
            by_order[name] += name not in failed and name not in short
        if failed:
            decides[_decides(bends, bent, takes)] += 1
        elif short:
            decides[BREAKAGE] += 1
        stood += not failed and not short
        count += 1
    return Tally(weeks=count, stood=stood, by_order=by_order, decides=decides)


def together(tallies: Iterable[Tally]) -> Tally:
    """Add tallies of different weeks up."""
    weeks = stood = 0
    by_order: Counter[str] = Counter()
    decides: Counter[str] = Counter()
    for tally in tallies:
        weeks += tally.weeks
        stood += tally.stood
        by_order.update(tally.by_order)
        decides.update(tally.decides)
    return Tally(weeks=weeks, stood=stood, by_order=by_order, decides=decides)


def _minutes(luck: Random, spread: Spread) -> int:
    return ceil(luck.triangular(spread.low, spread.high, spread.likely) - 1e-9)


def _whole(luck: Random, breaks: Breaks) -> int:
    share = luck.triangular(breaks.low, breaks.high, breaks.likely)
    return sum(luck.random() >= share for _ in range(breaks.made))


def _failed(bends: Bends, bent: Bent, order: str) -> bool:
    if order in bent.late:
        return True
    mine = {step.id for step in bends.problem.steps if order in step.order}
    return any(name in mine for name in bent.broken)


def _decides(bends: Bends, bent: Bent, takes: Mapping[str, int]) -> str:
    """Give the step with the greatest overrun on the way to the one that failed."""
    ends = [
        (bent.end[step.id], step.id)
        for step in bends.problem.steps
        if step.id in bent.broken or any(name in bent.late for name in step.order)
    ]
    over: dict[str, int] = {}
    here: str | None = max(ends, default=(0, ""))[1]
    while here and here not in over:
        planned = bends.least_of(here)
        over[here] = takes.get(here, planned) - planned
        here = bent.pushed.get(here)
    longest = max(over, key=lambda name: over[name], default=SHORT_OF_TIME)
    return longest if over.get(longest, 0) > 0 else SHORT_OF_TIME
