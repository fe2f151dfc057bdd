"""How often a mould, or a jug, can be filled before the last moment."""

from __future__ import annotations

from math import ceil
from typing import TYPE_CHECKING

from demould.plan.problem.telling import clock, minutes
from demould.plan.quick.chain import NEVER, Chains
from demould.plan.quick.limit import Limit

if TYPE_CHECKING:
    from collections.abc import Iterator, Sequence

    from demould.plan.problem.steps import Hold, Problem, Resource, Window
    from demould.plan.solve.net import Limits

MOST_TURNS = 2000


def too_few(problem: Problem, limits: Limits, chains: Chains) -> Iterator[Limit]:
    """Give every thing that is tied too often to come free in time.

    A turn is taken as quick as its quickest filling, hands and cold always free: what
    does not fit then fits nowhere.
    """
    for resource in problem.resources:
        holds = [hold for hold in problem.holds if hold.resource == resource.name]
        for part in (holds, _alone(resource, holds)):
            limit = _over(problem, limits, chains, resource, part)
            if limit is not None:
                yield limit
                break


def _alone(resource: Resource, holds: Sequence[Hold]) -> list[Hold]:
    """Give the holds of which no two can be at once."""
    return [hold for hold in holds if 2 * hold.amount > resource.capacity]


def _over(
    problem: Problem,
    limits: Limits,
    chains: Chains,
    resource: Resource,
    holds: Sequence[Hold],
) -> Limit | None:
    if not holds:
        return None
    first = min(limits.first[hold.from_, hold.from_at] for hold in holds)
    free = turns(chains, holds, first, limits)
    by_end = sorted(holds, key=lambda hold: limits.last[hold.to, hold.to_at])
    over = None
    for count, last in enumerate(by_end, start=1):
        until = limits.last[last.to, last.to_at]
        had = sum(end <= until for end in free)
        if had and _turns_wanted(resource, by_end[:count]) > had:
            over = _limit(problem, chains, resource, by_end[:count], free[:had], until)
    return over


def _turns_wanted(resource: Resource, holds: Sequence[Hold]) -> int:
    if len(_alone(resource, holds)) == len(holds):
        return len(holds)
    return ceil(sum(hold.amount for hold in holds) / max(1, resource.capacity))


def turns(
    chains: Chains, holds: Sequence[Hold], first: int, limits: Limits
) -> tuple[int, ...]:
    """Give when one thing is free again, turn after turn from `first`. [min]."""
    last = max(limits.last[hold.to, hold.to_at] for hold in holds)
    free: list[int] = []
    at = first
    while len(free) < MOST_TURNS:
        at = min(
            chains.soonest((hold.from_, hold.from_at), (hold.to, hold.to_at), at)
            for hold in holds
        )
        if at > last or at >= NEVER:
            break
        free.append(at)
    return tuple(free)


def _limit(
    problem: Problem,
    chains: Chains,
    resource: Resource,
    holds: Sequence[Hold],
    free: Sequence[int],
    until: int,
) -> Limit:
    kind, _, key = resource.name.partition(":")
    orders = tuple(
        dict.fromkeys(name for hold in holds for name in chains.steps[hold.from_].order)
    )
    wanted = _turns_wanted(resource, holds)
    things = f"{resource.capacity} {key} {kind}{'' if resource.capacity == 1 else 's'}"
    units = sum(hold.amount for hold in holds)
    more = ceil(units / len(free)) - resource.capacity
    helps = [f"{more} more {key} {kind}{'' if more == 1 else 's'}"] if more > 0 else []
    return Limit(
        over="mould" if kind == "mould" else "tool",
        id=resource.name,
        orders=orders,
        text=(
            f"{things if key else resource.name}: {wanted} rounds are needed and"
            f" {len(free)} can be out by {clock(problem, chains.open_until(until))}"
            f"{_pace(problem, chains, holds, free)}"
        ),
        help=", ".join([*helps, "fewer pieces", "or a later day"]),
    )


def _pace(
    problem: Problem, chains: Chains, holds: Sequence[Hold], free: Sequence[int]
) -> str:
    """Say how many rounds a day there are, and how long one ties a mould."""
    windows = [one for windows in problem.calendars.values() for one in windows]
    if not windows:
        return ""
    tied = min(
        chains.least((hold.from_, hold.from_at), (hold.to, hold.to_at))
        for hold in holds
    )
    days = len(
        {(one.open, one.close) for one in windows for at in free if _in(one, at)}
    )
    rate = len(free) / max(1, days)
    often = "about one round a day" if rate < 1.5 else f"about {rate:.0f} rounds a day"
    return f"; each ties a mould for {minutes(tied)} or more, {often}"


def _in(window: Window, minute: int) -> bool:
    return window.open < minute <= window.close
