"""What cannot all be kept: an irreducible set of orders, limits, hours and waits."""

from __future__ import annotations

from collections import defaultdict
from dataclasses import dataclass, field
from itertools import chain
from typing import TYPE_CHECKING

from demould.plan.answer.schedule import Explain
from demould.plan.problem.steps import roads
from demould.plan.solve.cpsat.time import Time
from demould.plan.solve.feasible import feasible
from demould.plan.solve.lags import limits_of
from demould.plan.why.subset import PEOPLE, Member, members_of, only

if TYPE_CHECKING:
    from collections.abc import Callable, Iterable, Sequence

    from demould.plan.problem.steps import Problem

A_TEST = 0.05
"""Deterministic seconds for one test; nearly all of them need far less."""

UNKNOWN_TESTS = 6
"""After so many tests without an answer the rest is taken to be needed."""

LONG_MIN = 60
"""Waits of at least this [min] are the first that are thought to be in the way."""

Group = tuple[Member, ...]


@dataclass(slots=True)
class _Tests:
    """Tests whether some members leave no plan; `unknown` counts those unanswered."""

    problem: Problem
    time: Time
    known: dict[frozenset[Member], bool] = field(default_factory=dict)
    unknown: int = 0

    def no_plan(self, kept: Iterable[Member]) -> bool:
        members = frozenset(kept)
        if members in self.known:
            return self.known[members]
        if self.unknown >= UNKNOWN_TESTS or self.time.left <= 0:
            self.unknown += 1
            return False
        status = feasible(only(self.problem, members), self.time, A_TEST)
        self.unknown += status == "unknown"
        self.known[members] = status == "infeasible"
        return self.known[members]


def conflict_of(problem: Problem, *, seconds: float) -> tuple[Group, bool]:
    """Give an irreducible set that leaves no plan, and whether every test was answered.

    One limit alone, with the orders that meet there, is tried first: what it shows is
    shown far sooner than by all of them together. Then orders, limits, hours and waits
    are taken away, so that what is left speaks of as few orders as can be. Empty where
    there is a plan, or none was shown to be missing.
    """
    every = members_of(problem)
    tests = _Tests(problem, Time(seconds=seconds, steady=False))
    kept = _meeting(problem, every, tests.no_plan)
    if kept is None:
        return (), tests.unknown == 0
    for kind in ("order", "resource", "calendar"):
        asked = [(one,) for one in kept if one.kind == kind]
        others = tuple(one for one in kept if one.kind != kind)
        found = _fewest(others, asked, tests.no_plan)
        kept = _touching(problem, (*others, *chain.from_iterable(found)))
    lags = [one for one in kept if one.kind == "lag"]
    others = tuple(one for one in kept if one.kind != "lag")
    long = [one for one in lags if (problem.lags[one.at].min or 0) >= LONG_MIN]
    if tests.no_plan((*others, *long)):
        lags = long
    alike = _fewest(others, _alike(problem, lags), tests.no_plan)
    each = [(one,) for group in alike for one in group]
    found = _fewest(others, each, tests.no_plan)
    kept = (*others, *chain.from_iterable(found))
    return tuple(sorted(kept, key=every.index)), not tests.unknown


def _meeting(
    problem: Problem, every: Group, no_plan: Callable[[Iterable[Member]], bool]
) -> Group | None:
    """Give orders that cannot all be, with one limit or none where that is enough."""
    orders = [one for one in every if one.kind == "order"]
    rest = [one for one in every if one.kind in ("calendar", "lag")]
    found = limits_of(only(problem, frozenset(every)))
    if isinstance(found, Explain):
        named = {one.id for one in found.conflict if one.kind == "order"}
        few = [one for one in orders if one.id in named]
        for some in (few, orders):
            kept = _touching(problem, (*some, *rest))
            if no_plan(kept):
                return kept
    limits = [one for one in every if one.kind == "resource"]
    for limit in sorted(limits, key=_likely):
        using = _using(problem, limit)
        kept = _touching(
            problem, (*(one for one in orders if one.id in using), limit, *rest)
        )
        if len(using) and no_plan(kept):
            return kept
    return every if no_plan(every) else None


def _using(problem: Problem, limit: Member) -> set[str]:
    """Name the orders whose steps take some of a limit."""
    held = {hold.from_ for hold in problem.holds if hold.resource == limit.id}
    using: set[str] = set()
    for step in problem.steps:
        takes = any(
            limit.id in road.uses or limit.id in road.attend_uses
            for road in roads(step)
        )
        if takes or step.id in held or limit.id == PEOPLE:
            using |= set(step.order)
    return using


def _touching(problem: Problem, members: Iterable[Member]) -> Group:
    """Leave out the waits of orders that are not among the members."""
    members = tuple(members)
    orders = {one.id for one in members if one.kind == "order"}
    gone = {
        step.id for step in problem.steps if step.order and not orders & set(step.order)
    }
    return tuple(
        one
        for one in members
        if one.kind != "lag"
        or not {problem.lags[one.at].from_, problem.lags[one.at].to} & gone
    )


def _likely(limit: Member) -> int:
    """Moulds run out first, then the cold, then hands, then tools."""
    kind = limit.id.partition(":")[0]
    usual = ("mould", "cold", "shelf", PEOPLE, "cooks")
    return usual.index(kind) if kind in usual else len(usual)


def _alike(problem: Problem, lags: Iterable[Member]) -> list[Group]:
    """Put waits together that are there for one reason."""
    found: dict[str, list[Member]] = defaultdict(list)
    for one in lags:
        found[problem.lags[one.at].why].append(one)
    return [tuple(group) for group in found.values()]


def _fewest(
    kept: Group, asked: Sequence[Group], no_plan: Callable[[Iterable[Member]], bool]
) -> Sequence[Group]:
    """Give the fewest of `asked` that with `kept` still leave no plan, by halves."""
    if not asked or no_plan(kept):
        return ()
    if len(asked) == 1:
        return asked
    one, other = asked[: len(asked) // 2], asked[len(asked) // 2 :]
    later = _fewest((*kept, *chain.from_iterable(one)), other, no_plan)
    with_later = (*kept, *chain.from_iterable(later))
    return (*_fewest(with_later, one, no_plan), *later)
