"""Holds and waits against closed days: which moment has no minute left."""

from __future__ import annotations

from collections import deque
from itertools import pairwise
from typing import TYPE_CHECKING

from demould.plan.problem.steps import due_order, roads
from demould.plan.problem.telling import clock, minutes, moment
from demould.plan.problem.windows import Ranges, common
from demould.plan.quick.limit import Limit

if TYPE_CHECKING:
    from collections.abc import Iterator

    from demould.plan.problem.steps import At, Problem
    from demould.plan.quick.chain import Chains, Moment
    from demould.plan.solve.net import Limits

MOST_LOOKS = 20_000
FAR = 1 << 40

Link = tuple["Moment", "Moment", int, int, str]
"""From, to, least and most minutes between them, and the cook's reason."""


def ends_when_closed(problem: Problem, limits: Limits, chains: Chains) -> Limit | None:
    """Give the first wait whose end can only fall where nobody is there.

    Every moment starts with all the open minutes it may have, and each wait takes from
    both its ends what the other end does not allow, until nothing changes.
    """
    left = _where(limits, chains)
    links = list(_links(problem))
    touching: dict[Moment, list[Link]] = {}
    for link in links:
        touching.setdefault(link[0], []).append(link)
        touching.setdefault(link[1], []).append(link)
    waiting = deque(links)
    queued = set(range(len(links)))
    number = {id(link): at for at, link in enumerate(links)}
    looks = 0
    cut: dict[Moment, Link] = {}
    while waiting and looks < MOST_LOOKS:
        link = waiting.popleft()
        queued.discard(number[id(link)])
        looks += 1
        early, late, least, most, _ = link
        for here, there, low, high in (
            (early, late, least, most),
            (late, early, -most, -least),
        ):
            kept = common(left[there], _moved(left[here], low, high))
            if kept == left[there]:
                continue
            if not kept:
                return _limit(problem, chains, link, left, cut)
            left[there], cut[there] = kept, link
            for other in touching[there]:
                if number[id(other)] not in queued:
                    queued.add(number[id(other)])
                    waiting.append(other)
    return None


def _moved(ranges: Ranges, low: int, high: int) -> Ranges:
    """Give where a moment can be that lies so much after one in the ranges."""
    moved: list[tuple[int, int]] = []
    for begin, over in ((a + low, b + high) for a, b in ranges):
        if moved and begin <= moved[-1][1] + 1:
            moved[-1] = moved[-1][0], max(moved[-1][1], over)
        else:
            moved.append((begin, over))
    return tuple(moved)


def _where(limits: Limits, chains: Chains) -> dict[Moment, Ranges]:
    found: dict[Moment, Ranges] = {}
    for here, first in limits.first.items():
        all_of_it = ((first, limits.last[here]),)
        ranges = chains.ranges.get(here)
        found[here] = all_of_it if ranges is None else common(ranges, all_of_it)
    return found


def _links(problem: Problem) -> Iterator[Link]:
    for step in problem.steps:
        ways = [road.duration for road in roads(step)]
        most = [way.max for way in ways]
        yield (
            (step.id, "start"),
            (step.id, "end"),
            min(way.min for way in ways),
            FAR if None in most else max(one for one in most if one is not None),
            "",
        )
    for lag in problem.lags:
        yield (
            _at(lag.from_, lag.from_at),
            _at(lag.to, lag.to_at),
            -FAR if lag.min is None else lag.min,
            FAR if lag.max is None else lag.max,
            lag.why,
        )


def _at(name: str, at: At) -> Moment:
    return (name, at) if due_order(name) is None else (name, "start")


def _limit(
    problem: Problem,
    chains: Chains,
    link: Link,
    left: dict[Moment, Ranges],
    cut: dict[Moment, Link],
) -> Limit:
    early, late, _, most, why = link
    steps = dict(chains.steps)
    orders = tuple(
        dict.fromkeys(
            name
            for here, _ in (early, late)
            if here in steps
            for name in steps[here].order
        )
    )
    before, then = left[early], left[late]
    wait = f"{moment(steps, *early)} and {moment(steps, *late)}"
    text = why or f"between {wait}"
    if before and then and due_order(late[0]) is not None:
        text += (
            f": nobody is there {_next(problem, then, before, most)}, at the latest"
            f" until {clock(problem, before[-1][1])}"
        )
    elif before and then:
        text += (
            f": {moment(steps, *early)} is {clock(problem, before[-1][1])} at the"
            f" latest, {moment(steps, *late)} {_next(problem, then, before, most)} at"
            " the earliest"
        )
    reasons = [cut[here][4] for here in (early, late) if here in cut]
    because = [one for one in dict.fromkeys(reasons) if one and one != why]
    if because:
        text += f" ({'; '.join(because)})"
    closed = _closed_between(problem, before, then)
    if closed:
        text += f"; {closed}"
    return Limit(
        over="hold",
        id=f"{early[0]} -> {late[0]}",
        orders=orders,
        text=text,
        help="begin later or earlier, another due time, or open hours on that day",
    )


def _next(problem: Problem, then: Ranges, before: Ranges, most: int) -> str:
    """Give the first open minute that comes too late for the hold."""
    late = [begin for begin, _ in then if most < FAR and begin > before[-1][1] + most]
    return clock(problem, min(late, default=then[0][0]))


def _closed_between(problem: Problem, before: Ranges, then: Ranges) -> str:
    """Say between which hours the kitchen is closed, where that is what matters."""
    if not before or not then:
        return ""
    edges = sorted(
        (window.open, window.close)
        for windows in problem.calendars.values()
        for window in windows
    )
    last, first = before[-1][1], then[-1][1]
    for (_, close), (opens, _) in pairwise(edges):
        if close < opens and last <= close + 1 and opens <= first + 1:
            return (
                f"closed from {clock(problem, close)} to {clock(problem, opens)},"
                f" {minutes(opens - close)}"
            )
    return ""
