"""A problem laid out for the search: everything that many looks at it need, once."""

from __future__ import annotations

from collections import defaultdict
from dataclasses import dataclass
from typing import TYPE_CHECKING

from demould.plan.answer.schedule import Explain, Planned
from demould.plan.problem.steps import Lag, due_order, roads
from demould.plan.solve.lags import why_no_room
from demould.plan.solve.net import Limits, Moment, Net, moment_of, net_of, settle

if TYPE_CHECKING:
    from collections.abc import Iterable, Iterator, Mapping

    from demould.plan.problem.steps import Hold, Problem, Road, Step, Window


@dataclass(frozen=True, slots=True, kw_only=True)
class Asked:
    """A problem with its moments, its limits, and who uses what.

    ``past`` is what is over already; ``steps`` are those still to be placed. Lags and
    holds stand under each step they touch. ``units`` are steps that waits, holds or
    shared orders tie together, the first due first.
    """

    problem: Problem
    net: Net
    limits: Limits
    past: Mapping[str, Planned]
    steps: Mapping[str, Step]
    ways: Mapping[str, tuple[Road, ...]]
    lags: Mapping[str, tuple[Lag, ...]]
    holds: Mapping[str, tuple[tuple[Hold, int], ...]]
    users: Mapping[str, tuple[str, ...]]
    units: tuple[tuple[str, ...], ...]


def ask(problem: Problem) -> Asked | Explain:
    """Lay a problem out; or say why waits and hours alone leave some step no room."""
    net = net_of(problem)
    limits = settle(net)
    if limits.clash is not None:
        return why_no_room(net, limits)
    open_steps = {s.id: s for s in problem.steps if not _is_over(problem, s.id)}
    return Asked(
        problem=problem,
        net=net,
        limits=limits,
        past={s.id: _past(problem, s) for s in problem.steps if s.id not in open_steps},
        steps=open_steps,
        ways={step.id: _ways(problem, step) for step in problem.steps},
        lags=_by_step(problem),
        holds=_holds(problem, net),
        users=_users(problem),
        units=_units(problem, open_steps, limits),
    )


def _is_over(problem: Problem, name: str) -> bool:
    fact = problem.done.get(name)
    return fact is not None and fact.end is not None


def _past(problem: Problem, step: Step) -> Planned:
    fact = problem.done[step.id]
    took = fact.took or (step.either[0].name if step.either else None)
    return Planned(
        id=step.id,
        start=fact.start,
        end=fact.start if fact.end is None else fact.end,
        took=took,
        who=fact.who,
        segments=fact.segments,
    )


def _ways(problem: Problem, step: Step) -> tuple[Road, ...]:
    """Give the roads that are open: all, or the one a running step has taken."""
    fact = problem.done.get(step.id)
    every = roads(step)
    if fact is None or not step.either or fact.took is None:
        return every
    return tuple(road for road in every if road.name == fact.took)


def _by_step(problem: Problem) -> dict[str, tuple[Lag, ...]]:
    found: dict[str, list[Lag]] = defaultdict(list)
    for lag in problem.lags:
        found[lag.from_].append(lag)
        if lag.to != lag.from_:
            found[lag.to].append(lag)
    return {name: tuple(many) for name, many in found.items()}


def _holds(problem: Problem, net: Net) -> dict[str, tuple[tuple[Hold, int], ...]]:
    """Give the holds of each resource with the least minutes each can last."""
    found: dict[str, list[tuple[Hold, int]]] = defaultdict(list)
    for hold in problem.holds:
        begin = moment_of(hold.from_, hold.from_at)
        until = moment_of(hold.to, hold.to_at)
        found[hold.resource].append((hold, max(0, _apart(net, begin, until))))
    return {name: tuple(many) for name, many in found.items()}


def _apart(net: Net, begin: Moment, until: Moment) -> int:
    """Give the least minutes between two moments that waits alone ask for."""
    far = {begin: 0}
    waiting = [begin]
    while waiting:
        here = waiting.pop()
        for link in net.leaving[here]:
            there = link.after
            after = far[here] + link.gap
            if link.gap >= 0 and after > far.get(there, -1):
                if after > net.problem.horizon:
                    return 0
                far[there] = after
                waiting.append(there)
    return far.get(until, 0)


def _users(problem: Problem) -> dict[str, tuple[str, ...]]:
    found: dict[str, list[str]] = defaultdict(list)
    for step in problem.steps:
        names: set[str] = set()
        for road in roads(step):
            names |= {*road.uses, *road.attend_uses}
        for name in sorted(names):
            found[name].append(step.id)
    return {name: tuple(many) for name, many in found.items()}


def _units(
    problem: Problem, steps: Mapping[str, Step], limits: Limits
) -> tuple[tuple[str, ...], ...]:
    """Gather the steps that waits, holds or orders tie together, the first due first."""
    leader = {name: name for name in steps}

    def lead(name: str) -> str:
        while leader[name] != name:
            leader[name] = leader[leader[name]]
            name = leader[name]
        return name

    for names in _tied(problem):
        there = [name for name in names if name in steps]
        for name in there[1:]:
            leader[lead(name)] = lead(there[0])
    gathered: dict[str, list[str]] = defaultdict(list)
    for name in steps:
        gathered[lead(name)].append(name)
    dues = {order.id: order.due for order in problem.orders}

    def due(unit: list[str]) -> tuple[int, int]:
        known = [dues[order] for name in unit for order in steps[name].order]
        last = max(limits.last[name, "end"] for name in unit)
        return min(known, default=last), last

    return tuple(tuple(unit) for unit in sorted(gathered.values(), key=due))


def _tied(problem: Problem) -> Iterator[list[str]]:
    of_order: dict[str, list[str]] = defaultdict(list)
    for step in problem.steps:
        for order in step.order:
            of_order[order].append(step.id)
    yield from of_order.values()
    ties: tuple[Lag | Hold, ...] = (*problem.lags, *problem.holds)
    for tie in ties:
        if due_order(tie.from_) is None and due_order(tie.to) is None:
            yield [tie.from_, tie.to]


def windows_of(problem: Problem, step: Step) -> tuple[Window, ...]:
    """Give the windows of a step's calendar, none where it has none."""
    return () if step.calendar is None else problem.calendars[step.calendar]


def moments(names: Iterable[str]) -> list[Moment]:
    """Give the start and the end of each step."""
    return [(name, at) for name in names for at in ("start", "end")]
