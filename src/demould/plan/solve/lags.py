"""The earliest and the latest each step can begin and end, and why there is no room.

Hands, moulds and machines are left out, so no plan can be outside these limits, and
where they leave no room there is no plan, whatever else is bought or borrowed.
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

from demould.plan.answer.schedule import Conflict, Explain
from demould.plan.problem.steps import (
    Hold,
    Lag,
    Problem,
    Step,
    due_order,
    orders_of,
)
from demould.plan.problem.telling import called, clock, minutes, moment
from demould.plan.solve.net import Limits, Link, Moment, Net, net_of, settle

if TYPE_CHECKING:
    from collections.abc import Iterator, Mapping

    from demould.plan.answer.schedule import Kind


@dataclass(frozen=True, slots=True, kw_only=True)
class _Reason:
    """Why a moment can not be sooner (or later), and the moment that hangs on."""

    kind: Kind
    id: str
    text: str
    other: Moment | None = None


def why_no_room(net: Net, limits: Limits) -> Explain:
    """Tell both chains of reasons that meet in a moment that has no minute left.

    Raises
    ------
    ValueError
        If every moment has room.
    """
    here = limits.clash
    if here is None:
        raise ValueError("every moment has room: there is nothing to tell")
    sooner = list(_chain(net, limits, here, limits.sooner))
    later = list(_chain(net, limits, here, limits.later))
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
    return Explain(text=_clash(net, limits, here), conflict=(*orders, *reasons))


def limits_of(problem: Problem) -> Limits | Explain:
    """Give the limits of every moment, or why some step has no room at all."""
    net = net_of(problem)
    limits = settle(net)
    return limits if limits.clash is None else why_no_room(net, limits)


def _chain(
    net: Net, limits: Limits, here: Moment, links: Mapping[Moment, Link]
) -> Iterator[_Reason]:
    """Walk from a moment over what pushed it to what pushed that, and so on."""
    sooner = links is limits.sooner
    seen: set[Moment] = set()
    while here not in seen:
        seen.add(here)
        link = links.get(here)
        if _closed(net, limits, here, link, sooner=sooner):
            step = net.steps[here[0]]
            yield _Reason(
                kind="calendar",
                id=step.calendar or "people",
                text=f"{moment(dict(net.steps), *here)} needs open hours and people",
            )
        if link is None:
            yield from _own(net, here, sooner=sooner)
            return
        other = link.before if sooner else link.after
        yield _told(net, link, other)
        here = other


def _closed(
    net: Net, limits: Limits, here: Moment, link: Link | None, *, sooner: bool
) -> bool:
    """Say whether open hours, and not only what pushed it, moved a moment."""
    if here not in net.ranges:
        return False
    if here == limits.clash and limits.first[here] <= limits.last[here]:
        return sooner
    if link is None:
        own = net.first if sooner else net.last
        now = limits.first if sooner else limits.last
        return now[here] != own[here]
    if sooner:
        return limits.first[here] > limits.first[link.before] + link.gap
    return limits.last[here] < limits.last[link.after] - link.gap


def _own(net: Net, here: Moment, *, sooner: bool) -> Iterator[_Reason]:
    """Give the limit that a moment has by itself."""
    problem, (name, at) = net.problem, here
    order = due_order(name)
    if order is not None:
        yield _due(net, order)
        return
    step, first = net.steps[name], net.first[here]
    if name in problem.done:
        text = f"{called(step)} began {clock(problem, problem.done[name].start)}"
        yield _Reason(kind="calendar", id=name, text=text)
    elif sooner and first > 0:
        if step.earliest == first and at == "start":
            text = f"{called(step)} can not begin before {clock(problem, first)}"
        else:
            text = f"it is {clock(problem, first)} now"
        yield _Reason(kind="calendar", id=name, text=text)
    elif not sooner and net.last[here] < problem.horizon:
        last = net.last[here]
        for one in orders_of(problem, step):
            if not one.soft_due and one.due == last:
                yield _due(net, one.id)
                return
        text = f"{called(step)} must be done by {clock(problem, last)}"
        yield _Reason(kind="due", id=name, text=text)


def _due(net: Net, name: str) -> _Reason:
    due = next(order.due for order in net.problem.orders if order.id == name)
    return _Reason(kind="due", id=name, text=f"{name} is due {clock(net.problem, due)}")


def _told(net: Net, link: Link, other: Moment) -> _Reason:
    match link.by:
        case Step() as step:
            bound = "most" if link.most else "least"
            text = f"{called(step)} takes at {bound} {minutes(abs(link.gap))}"
            return _Reason(kind="lag", id=step.id, text=text, other=other)
        case Hold(resource=name):
            text = f"{name} is given back after it is taken"
            return _Reason(kind="resource", id=name, text=text, other=other)
        case Lag() as lag:
            steps = dict(net.steps)
            first = moment(steps, lag.from_, lag.from_at)
            then = moment(steps, lag.to, lag.to_at)
            how, gap = ("at most", -link.gap) if link.most else ("at least", link.gap)
            why = f" ({lag.why})" if lag.why else ""
            text = f"{then} comes {_apart(how, gap)} {first}{why}"
            name = f"{lag.from_} -> {lag.to}"
            return _Reason(kind="lag", id=name, text=text, other=other)


def _apart(how: str, gap: int) -> str:
    if gap == 0:
        return "not before" if how == "at least" else "not after"
    if gap < 0:
        turned = "at most" if how == "at least" else "at least"
        return f"{turned} {minutes(-gap)} before"
    return f"{how} {minutes(gap)} after"


def _clash(net: Net, limits: Limits, here: Moment) -> str:
    name = moment(dict(net.steps), *here)
    ring = _ring(net, limits, here)
    if ring:
        return f"{' and '.join(ring)} wait for each other in a ring, so none can begin"
    first = clock(net.problem, limits.first[here])
    last = clock(net.problem, limits.last[here])
    if limits.first[here] > limits.last[here]:
        return f"{name} can not be before {first} and would have to be by {last}"
    return (
        f"{name} would be between {first} and {last}, and nobody is there for so long"
    )


def _ring(net: Net, limits: Limits, here: Moment) -> list[str]:
    """Name the steps of a ring of waits that no minute can satisfy, if it is one."""
    path: list[Moment] = []
    while here in limits.sooner and here not in path:
        path.append(here)
        here = limits.sooner[here].before
    if here not in path:
        return []
    around = path[path.index(here) :]
    if sum(limits.sooner[one].gap for one in around) <= 0:
        return []
    return list(dict.fromkeys(called(net.steps[name]) for name, _ in reversed(around)))
