"""The earliest and the latest each step can begin and end, by waits and hours alone.

Hands, moulds and machines are left out, so no plan can be outside these limits, and
where they leave no room there is no plan, whatever else is bought or borrowed.
"""

from __future__ import annotations

from collections import defaultdict, deque
from dataclasses import dataclass, field
from typing import TYPE_CHECKING

from demould.plan.answer.schedule import Conflict, Explain
from demould.plan.problem.steps import (
    DUE,
    At,
    due_order,
    hands_needed,
    orders_of,
    roads,
)
from demould.plan.problem.telling import called, clock, minutes, moment
from demould.plan.problem.windows import Ranges, first_from, last_until, starts_attended

if TYPE_CHECKING:
    from collections.abc import Iterator, Mapping

    from demould.plan.answer.schedule import Kind
    from demould.plan.problem.steps import Lag, Problem, Step

Moment = tuple[str, At]
"""The start or the end of a step, or ``("due:o1", "start")``."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Bounds:
    """The first and the last minute of every moment that waits and hours allow."""

    earliest: Mapping[Moment, int]
    latest: Mapping[Moment, int]


@dataclass(frozen=True, slots=True, kw_only=True)
class _Reason:
    """Why a moment can not be sooner (or later), and the moment that hangs on."""

    kind: Kind
    id: str
    text: str
    other: Moment | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class _Link:
    """``t(after) >= t(before) + gap``."""

    before: Moment
    after: Moment
    gap: int
    kind: Kind
    id: str
    text: str


@dataclass(slots=True, kw_only=True)
class _Net:
    """All moments with their links and limits; limits tighten while it settles."""

    problem: Problem
    steps: dict[str, Step]
    leaving: dict[Moment, list[_Link]]
    reaching: dict[Moment, list[_Link]]
    ranges: dict[Moment, Ranges]
    earliest: dict[Moment, int] = field(default_factory=dict)
    latest: dict[Moment, int] = field(default_factory=dict)
    why_not_sooner: dict[Moment, list[_Reason]] = field(default_factory=dict)
    why_not_later: dict[Moment, list[_Reason]] = field(default_factory=dict)


def bounds(problem: Problem) -> Bounds | Explain:
    """Give the limits of every moment, or why some step has no room at all.

    Links are followed until nothing tightens any more (Bellman and Ford), and what
    is attended is moved on to the next, or back to the last, open hours.
    """
    net = _net(problem)
    waiting = deque(net.earliest)
    queued = set(waiting)
    while waiting:
        here = waiting.popleft()
        queued.discard(here)
        if not _round_into_hours(net, here) or net.earliest[here] > net.latest[here]:
            return _no_room(net, here)
        for touched in (*_push_later(net, here), *_push_sooner(net, here)):
            if touched not in queued:
                queued.add(touched)
                waiting.append(touched)
    return Bounds(earliest=net.earliest, latest=net.latest)


def _net(problem: Problem) -> _Net:
    net = _Net(
        problem=problem,
        steps={step.id: step for step in problem.steps},
        leaving=defaultdict(list),
        reaching=defaultdict(list),
        ranges={},
    )
    for order in problem.orders:
        due: Moment = (f"{DUE}{order.id}", "start")
        text = f"{order.id} is due {clock(problem, order.due)}"
        reason = [_Reason(kind="due", id=order.id, text=text)]
        net.earliest[due] = net.latest[due] = order.due
        net.why_not_sooner[due] = net.why_not_later[due] = reason
    for step in problem.steps:
        _place_step(net, step)
    for link in _links(net):
        net.leaving[link.before].append(link)
        net.reaching[link.after].append(link)
    return net


def _place_step(net: _Net, step: Step) -> None:
    start: Moment = (step.id, "start")
    end: Moment = (step.id, "end")
    for here in (start, end):
        net.earliest[here] = 0
        net.latest[here] = net.problem.horizon
        net.why_not_sooner[here] = []
        net.why_not_later[here] = []
    if step.earliest is not None and step.earliest > 0:
        at = clock(net.problem, step.earliest)
        text = f"{called(step)} can not begin before {at}"
        net.earliest[start] = step.earliest
        net.why_not_sooner[start] = [_Reason(kind="calendar", id=step.id, text=text)]
    for minute, reason in _last_ends(net.problem, step):
        if minute <= net.latest[end]:
            net.latest[end] = minute
            net.why_not_later[end] = [reason]
    _place_hours(net, step)


def _last_ends(problem: Problem, step: Step) -> Iterator[tuple[int, _Reason]]:
    if step.latest_end is not None:
        at = clock(problem, step.latest_end)
        text = f"{called(step)} must be done by {at}"
        yield step.latest_end, _Reason(kind="due", id=step.id, text=text)
    for order in orders_of(problem, step):
        if not order.soft_due:
            text = f"{order.id} is due {clock(problem, order.due)}"
            yield order.due, _Reason(kind="due", id=order.id, text=text)


def _place_hours(net: _Net, step: Step) -> None:
    """Note where the attended start and end may be, on the road that allows most."""
    ways = [
        (road.duration.min, hands_needed(net.problem, step, road))
        for road in roads(step)
    ]
    if step.attended == "none":
        return
    first, last = [*ways], [*ways]
    if step.attended == "ends":
        first = [(step.attend_start, hands) for _, hands in ways]
        last = [(step.attend_end, hands) for _, hands in ways]
    _allow(net, (step.id, "start"), step, first, shift=0)
    _allow(net, (step.id, "end"), step, last, shift=1)


def _allow(
    net: _Net, here: Moment, step: Step, ways: list[tuple[int, int]], *, shift: int
) -> None:
    """Allow a moment what any way allows; ``shift`` lengths after the part begins."""
    allowed: set[tuple[int, int]] = set()
    for length, hands in ways:
        found = starts_attended(net.problem, step, length, hands)
        if found is None:
            return
        allowed |= {(a + shift * length, b + shift * length) for a, b in found}
    net.ranges[here] = tuple(sorted(allowed))


def _links(net: _Net) -> Iterator[_Link]:
    for step in net.problem.steps:
        yield from _duration_links(step)
    for lag in net.problem.lags:
        yield from _lag_links(net, lag)
    for hold in net.problem.holds:
        yield _Link(
            before=_moment(hold.from_, hold.from_at),
            after=_moment(hold.to, hold.to_at),
            gap=0,
            kind="resource",
            id=hold.resource,
            text=f"{hold.resource} is given back after it is taken",
        )


def _duration_links(step: Step) -> Iterator[_Link]:
    start: Moment = (step.id, "start")
    end: Moment = (step.id, "end")
    least = min(road.duration.min for road in roads(step))
    yield _Link(
        before=start,
        after=end,
        gap=least,
        kind="lag",
        id=step.id,
        text=f"{called(step)} takes at least {minutes(least)}",
    )
    longest = [road.duration.max for road in roads(step)]
    bounded = [most for most in longest if most is not None]
    if len(bounded) == len(longest):
        yield _Link(
            before=end,
            after=start,
            gap=-max(bounded),
            kind="lag",
            id=step.id,
            text=f"{called(step)} takes at most {minutes(max(bounded))}",
        )


def _lag_links(net: _Net, lag: Lag) -> Iterator[_Link]:
    before = _moment(lag.from_, lag.from_at)
    after = _moment(lag.to, lag.to_at)
    first = moment(net.steps, lag.from_, lag.from_at)
    then = moment(net.steps, lag.to, lag.to_at)
    name = f"{lag.from_} -> {lag.to}"
    why = f" ({lag.why})" if lag.why else ""
    if lag.min is not None:
        text = f"{then} comes {_apart('at least', lag.min)} {first}{why}"
        yield _Link(
            before=before, after=after, gap=lag.min, kind="lag", id=name, text=text
        )
    if lag.max is not None:
        text = f"{then} comes {_apart('at most', lag.max)} {first}{why}"
        yield _Link(
            before=after, after=before, gap=-lag.max, kind="lag", id=name, text=text
        )


def _apart(how: str, gap: int) -> str:
    if gap == 0:
        return "not before" if how == "at least" else "not after"
    if gap < 0:
        turned = "at most" if how == "at least" else "at least"
        return f"{turned} {minutes(-gap)} before"
    return f"{how} {minutes(gap)} after"


def _moment(name: str, at: At) -> Moment:
    return (name, at) if due_order(name) is None else (name, "start")


def _round_into_hours(net: _Net, here: Moment) -> bool:
    """Move the limits of a moment into open hours; False where none are left."""
    ranges = net.ranges.get(here)
    if ranges is None:
        return True
    first = first_from(ranges, net.earliest[here])
    last = last_until(ranges, net.latest[here])
    step = net.steps[here[0]]
    closed = _Reason(
        kind="calendar",
        id=step.calendar or "people",
        text=f"{moment(net.steps, *here)} needs open hours and people",
    )
    if first is None or last is None:
        net.why_not_sooner[here].append(closed)
        return False
    if first > net.earliest[here]:
        net.earliest[here] = first
        net.why_not_sooner[here] = [*net.why_not_sooner[here], closed]
    if last < net.latest[here]:
        net.latest[here] = last
        net.why_not_later[here] = [*net.why_not_later[here], closed]
    return True


def _push_later(net: _Net, here: Moment) -> Iterator[Moment]:
    for link in net.leaving[here]:
        if net.earliest[here] + link.gap > net.earliest[link.after]:
            net.earliest[link.after] = net.earliest[here] + link.gap
            net.why_not_sooner[link.after] = [
                _Reason(kind=link.kind, id=link.id, text=link.text, other=here)
            ]
            yield link.after


def _push_sooner(net: _Net, here: Moment) -> Iterator[Moment]:
    for link in net.reaching[here]:
        if net.latest[here] - link.gap < net.latest[link.before]:
            net.latest[link.before] = net.latest[here] - link.gap
            net.why_not_later[link.before] = [
                _Reason(kind=link.kind, id=link.id, text=link.text, other=here)
            ]
            yield link.before


def _no_room(net: _Net, here: Moment) -> Explain:
    """Tell both chains of reasons that meet in a moment that has no minute left."""
    sooner = list(_chain(net.why_not_sooner, here))
    later = list(_chain(net.why_not_later, here))
    touched = dict.fromkeys([here, *(r.other for r in (*sooner, *later) if r.other)])
    names = dict.fromkeys(
        order
        for name, _ in touched
        if name in net.steps
        for order in net.steps[name].order
    )
    orders = [
        Conflict(kind="order", id=name, text=f"the order {name}") for name in names
    ]
    reasons = dict.fromkeys(
        Conflict(kind=reason.kind, id=reason.id, text=reason.text)
        for reason in (*reversed(sooner), *later)
    )
    return Explain(text=_clash(net, here), conflict=(*orders, *reasons))


def _chain(why: Mapping[Moment, list[_Reason]], here: Moment) -> Iterator[_Reason]:
    seen = {here}
    waiting = [here]
    while waiting:
        for reason in reversed(why[waiting.pop()]):
            yield reason
            if reason.other is not None and reason.other not in seen:
                seen.add(reason.other)
                waiting.append(reason.other)


def _clash(net: _Net, here: Moment) -> str:
    name = moment(net.steps, *here)
    first = clock(net.problem, net.earliest[here])
    last = clock(net.problem, net.latest[here])
    if net.earliest[here] > net.latest[here]:
        return f"{name} can not be before {first} and would have to be by {last}"
    return (
        f"{name} would be between {first} and {last}, and nobody is there for so long"
    )
