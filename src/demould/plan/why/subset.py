"""A problem with only some of its orders, limits, hours and waits."""

from __future__ import annotations

from dataclasses import dataclass, replace
from typing import TYPE_CHECKING

from demould.plan.problem.steps import DUE, Window

if TYPE_CHECKING:
    from collections.abc import Iterable, Iterator, Mapping

    from demould.plan.answer.schedule import Kind
    from demould.plan.problem.steps import Fact, Order, Problem, Step

PEOPLE = "people"

PLENTY = 1_000_000_000
"""More than any plan needs of anything."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Member:
    """One thing a problem asks to be kept; ``at`` is the place of a lag in its list."""

    kind: Kind
    id: str
    at: int = 0


def members_of(problem: Problem) -> tuple[Member, ...]:
    """Give everything that could be let go: orders, then limits, hours and waits."""
    return (
        *(Member(kind="order", id=order.id) for order in _by_due(problem)),
        *(Member(kind="resource", id=one.name) for one in problem.resources),
        *([Member(kind="resource", id=PEOPLE)] if problem.people else []),
        *(Member(kind="calendar", id=name) for name in problem.calendars),
        *(
            Member(kind="lag", id=f"{lag.from_} -> {lag.to}", at=number)
            for number, lag in enumerate(problem.lags)
        ),
    )


def _by_due(problem: Problem) -> list[Order]:
    return sorted(problem.orders, key=lambda order: order.due)


def only(problem: Problem, kept: frozenset[Member]) -> Problem:
    """Give the problem with nothing to keep but these; no spare time is asked for.

    A limit let go is there in plenty, hours let go are open without a break.
    """
    named = {kind: set[str]() for kind in ("order", "resource", "calendar")}
    for member in kept:
        named.setdefault(member.kind, set()).add(member.id)
    lags = {member.at for member in kept if member.kind == "lag"}
    steps = tuple(_steps(problem, named["order"]))
    there = {step.id for step in steps} | {f"{DUE}{name}" for name in named["order"]}
    found = replace(
        problem,
        done=facts_about(problem.done, steps),
        previous=facts_about(problem.previous, steps),
        orders=tuple(one for one in problem.orders if one.id in named["order"]),
        steps=steps,
        resources=tuple(
            one
            if one.name in named["resource"]
            else replace(one, capacity=PLENTY, profile=())
            for one in problem.resources
        ),
        calendars={
            name: windows
            if name in named["calendar"]
            else (Window(open=0, close=problem.horizon + 1),)
            for name, windows in problem.calendars.items()
        },
        lags=tuple(
            lag
            for number, lag in enumerate(problem.lags)
            if number in lags and lag.from_ in there and lag.to in there
        ),
        holds=tuple(
            hold for hold in problem.holds if hold.from_ in there and hold.to in there
        ),
    )
    return found if PEOPLE in named["resource"] else _with_any_hands(found)


def facts_about(facts: Mapping[str, Fact], steps: Iterable[Step]) -> dict[str, Fact]:
    """Give the facts about the steps that are left."""
    left = {step.id for step in steps}
    return {name: fact for name, fact in facts.items() if name in left}


def _steps(problem: Problem, orders: set[str]) -> Iterator[Step]:
    for step in problem.steps:
        mine = tuple(name for name in step.order if name in orders)
        if mine or not step.order:
            yield replace(step, order=mine, margin=0, fresh=0)


def _with_any_hands(problem: Problem) -> Problem:
    return replace(
        problem,
        people=(),
        steps=tuple(
            replace(
                step,
                hands=None,
                skill=None,
                either=tuple(replace(road, hands=None) for road in step.either),
            )
            for step in problem.steps
        ),
    )
