"""All moments of a problem and the waits that link them, as numbers.

Hands, moulds and machines are left out. Each moment has a first and a last minute;
links are followed until nothing tightens any more (Bellman and Ford), and what is
attended is moved on to the next, or back to the last, open hours.
"""

from __future__ import annotations

from bisect import bisect_left, bisect_right
from collections import deque
from dataclasses import dataclass, field
from typing import TYPE_CHECKING

from demould.plan.problem.steps import (
    DUE,
    At,
    Hold,
    Lag,
    Step,
    due_order,
    hands_needed,
    orders_of,
    over,
    roads,
)
from demould.plan.problem.windows import Ranges, starts_attended

if TYPE_CHECKING:
    from collections.abc import Iterable, Iterator, Mapping

    from demould.plan.problem.steps import Problem

Moment = tuple[str, At]
"""The start or the end of a step, or ``("due:o1", "start")``."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Link:
    """``t(after) >= t(before) + gap``, by what the problem says; ``most``: its max."""

    before: Moment
    after: Moment
    gap: int
    by: Step | Lag | Hold
    most: bool = False


@dataclass(slots=True, kw_only=True)
class Net:
    """The moments of a problem, with limits by themselves and links between them."""

    problem: Problem
    steps: Mapping[str, Step]
    first: dict[Moment, int] = field(default_factory=dict)
    last: dict[Moment, int] = field(default_factory=dict)
    leaving: dict[Moment, list[Link]] = field(default_factory=dict)
    reaching: dict[Moment, list[Link]] = field(default_factory=dict)
    ranges: dict[Moment, Ranges] = field(default_factory=dict)


@dataclass(slots=True, kw_only=True)
class Limits:
    """The first and the last minute of every moment, and what brought them there.

    A moment that is not in ``sooner`` (or ``later``) has the limit it has by itself.
    ``clash`` is a moment that has no minute left.
    """

    first: dict[Moment, int]
    last: dict[Moment, int]
    sooner: dict[Moment, Link] = field(default_factory=dict)
    later: dict[Moment, Link] = field(default_factory=dict)
    clash: Moment | None = None


def net_of(problem: Problem) -> Net:
    """Lay out the moments and links of a problem."""
    net = Net(problem=problem, steps={step.id: step for step in problem.steps})
    for order in problem.orders:
        _add(net, (f"{DUE}{order.id}", "start"), order.due, order.due)
    for step in problem.steps:
        _place(net, step)
    for link in _links(net):
        net.leaving[link.before].append(link)
        net.reaching[link.after].append(link)
    return net


def moment_of(name: str, at: At) -> Moment:
    """Give the key of a moment; a due time has only one."""
    return (name, at) if due_order(name) is None else (name, "start")


def _add(net: Net, here: Moment, first: int, last: int) -> None:
    net.first[here], net.last[here] = first, last
    net.leaving[here], net.reaching[here] = [], []


def _place(net: Net, step: Step) -> None:
    problem = net.problem
    now = problem.now or 0
    fact = problem.done.get(step.id)
    if fact is not None:
        _add(net, (step.id, "start"), fact.start, fact.start)
        if fact.end is not None:
            _add(net, (step.id, "end"), fact.end, fact.end)
            return
        _add(net, (step.id, "end"), *running_end(problem, step))
    else:
        first = max(now, step.earliest or 0)
        _add(net, (step.id, "start"), first, problem.horizon)
        _add(net, (step.id, "end"), now, problem.horizon)
    hard = [order.due for order in orders_of(problem, step) if not order.soft_due]
    if step.latest_end is not None:
        hard.append(step.latest_end)
    end: Moment = (step.id, "end")
    net.last[end] = min([net.last[end], *hard])
    _hours(net, step, began=fact is not None)


def running_end(problem: Problem, step: Step) -> tuple[int, int]:
    """Give the first and the last minute a running step may be over at."""
    fact, now = problem.done[step.id], problem.now or 0
    ways = [r for r in roads(step) if fact.took is None or r.name == fact.took]
    if step.interruptible:
        return now, problem.horizon
    least = fact.start + min(road.duration.min for road in ways)
    longest = [road.duration.max for road in ways]
    most = problem.horizon
    if None not in longest:
        most = fact.start + max(long for long in longest if long is not None)
    return max(now, least), max(now, most)


def _hours(net: Net, step: Step, *, began: bool) -> None:
    """Note where the attended start and end may be, on the road that allows most."""
    ways = [
        (road.duration.min, hands_needed(net.problem, step, road))
        for road in roads(step)
    ]
    if step.attended == "none" or (began and step.attended == "all"):
        return
    first, last = [*ways], [*ways]
    if step.interruptible:
        first = last = [(min(1, length), hands) for length, hands in ways]
    if step.attended == "ends":
        first = [(step.attend_start, hands) for _, hands in ways]
        last = [(step.attend_end, hands) for _, hands in ways]
    if not began:
        _allow(net, (step.id, "start"), step, first, shift=0)
    _allow(net, (step.id, "end"), step, last, shift=1)


def _allow(
    net: Net, here: Moment, step: Step, ways: list[tuple[int, int]], *, shift: int
) -> None:
    """Allow a moment what any way allows; ``shift`` lengths after the part begins."""
    allowed: set[tuple[int, int]] = set()
    for length, hands in ways:
        found = starts_attended(net.problem, step, length, hands)
        if found is None:
            return
        allowed |= {(a + shift * length, b + shift * length) for a, b in found}
    net.ranges[here] = _merged(allowed)


def _merged(ranges: Iterable[tuple[int, int]]) -> Ranges:
    merged: list[tuple[int, int]] = []
    for begin, until in sorted(ranges):
        if merged and begin <= merged[-1][1] + 1:
            merged[-1] = (merged[-1][0], max(merged[-1][1], until))
        else:
            merged.append((begin, until))
    return tuple(merged)


def _links(net: Net) -> Iterator[Link]:
    for step in net.problem.steps:
        if step.id not in net.problem.done:
            yield from _duration_links(step)
    for lag in net.problem.lags:
        yield from _lag_links(net.problem, lag)
    for hold in net.problem.holds:
        before = moment_of(hold.from_, hold.from_at)
        after = moment_of(hold.to, hold.to_at)
        if not (over(net.problem, *before) and over(net.problem, *after)):
            yield Link(before=before, after=after, gap=0, by=hold)


def _duration_links(step: Step) -> Iterator[Link]:
    start: Moment = (step.id, "start")
    end: Moment = (step.id, "end")
    ways = roads(step)
    least = min(road.duration.min for road in ways)
    yield Link(before=start, after=end, gap=least, by=step)
    longest = [road.duration.max for road in ways if road.duration.max is not None]
    if len(longest) == len(ways) and not step.interruptible:
        yield Link(before=end, after=start, gap=-max(longest), by=step, most=True)


def _lag_links(problem: Problem, lag: Lag) -> Iterator[Link]:
    before = moment_of(lag.from_, lag.from_at)
    after = moment_of(lag.to, lag.to_at)
    if over(problem, *before) and over(problem, *after):
        return
    if lag.min is not None:
        yield Link(before=before, after=after, gap=lag.min, by=lag)
    if lag.max is not None:
        yield Link(before=after, after=before, gap=-lag.max, by=lag, most=True)


def settle(
    net: Net,
    *,
    known: Limits | None = None,
    fixed: Mapping[Moment, int] | None = None,
    free: Iterable[Moment] | None = None,
) -> Limits:
    """Give the limits of all moments, or of the free ones beside those fixed.

    Parameters
    ----------
    known
        Limits to begin with; the moments' own where there are none.
    fixed
        The minute of each moment that is set.
    free
        The moments to settle; all where it is left out. What is neither free nor
        fixed is passed over.
    """
    limits = Limits(
        first=dict(net.first if known is None else known.first),
        last=dict(net.last if known is None else known.last),
    )
    walked = list(net.first if free is None else free)
    moving = set(walked)
    for here, minute in (fixed or {}).items():
        limits.first[here] = limits.last[here] = minute
    waiting = deque((*walked, *(fixed or ())))
    queued = set(waiting)
    while waiting:
        here = waiting.popleft()
        queued.discard(here)
        if here in moving and not _fits(net, limits, here):
            limits.clash = here
            return limits
        for touched in _push(net, limits, here, moving):
            if touched not in queued:
                queued.add(touched)
                waiting.append(touched)
    return limits


def _fits(net: Net, limits: Limits, here: Moment) -> bool:
    """Move the limits of a moment into open hours; False where none are left."""
    first, last = limits.first[here], limits.last[here]
    ranges = net.ranges.get(here)
    if ranges is not None:
        at = bisect_left(ranges, first, key=lambda pair: pair[1])
        before = bisect_right(ranges, last, key=lambda pair: pair[0]) - 1
        if at == len(ranges) or before < 0:
            return False
        first = limits.first[here] = max(first, ranges[at][0])
        last = limits.last[here] = min(last, ranges[before][1])
    return first <= last


def _push(
    net: Net, limits: Limits, here: Moment, moving: set[Moment]
) -> Iterator[Moment]:
    first, last = limits.first[here], limits.last[here]
    for link in net.leaving[here]:
        there = link.after
        if there in moving and first + link.gap > limits.first[there]:
            limits.first[there] = first + link.gap
            limits.sooner[there] = link
            yield there
    for link in net.reaching[here]:
        there = link.before
        if there in moving and last - link.gap < limits.last[there]:
            limits.last[there] = last - link.gap
            limits.later[there] = link
            yield there
