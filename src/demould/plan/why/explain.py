"""Why there is no plan: what cannot all be kept, and what would make room."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

from demould.plan.answer.schedule import Conflict, Explain, Relaxation
from demould.plan.problem.telling import clock, minutes
from demould.plan.solve.lags import limits_of
from demould.plan.solve.search import solve
from demould.plan.why.mend import mends
from demould.plan.why.subset import PEOPLE, Member, members_of, only

if TYPE_CHECKING:
    from collections.abc import Callable, Iterable

    from demould.plan.answer.schedule import Kind
    from demould.plan.problem.steps import Lag, Problem

A_TEST = 0.5
"""The part of the time one test may take; nearly all of them need far less."""

UNKNOWN_TESTS = 4
"""After so many tests without an answer the rest is taken to be needed."""

KINDS: tuple[Kind, ...] = ("order", "resource", "calendar", "lag")
"""In this order members are taken away; `members_of` has them so too."""

NOTHING_FOUND = (
    "no plan was found in the time given, and nothing shows that there is none:"
    " give it more time"
)


def explain(problem: Problem, *, seconds: float = 2.0) -> Explain:
    """Give what in the problem cannot all be kept, and changes that make room.

    Each thing in the conflict is needed for it: without any one of them there is a
    plan. Where a test gives no answer in its share of `seconds` the thing is kept,
    and the text says that the conflict may have more in it than it needs.

    Raises
    ------
    ValueError
        If the problem refers to what it does not have.
    """
    conflict, sure = conflict_of(problem, seconds=seconds / 2)
    if not conflict:
        text = NOTHING_FOUND if not sure else "there is a plan: nothing is in the way"
        return Explain(text=text)
    found = mends(problem, conflict, seconds=seconds / 2)
    text = sentence(problem, conflict)
    if not sure:
        text += "; not all of it may be needed: some tests were stopped by the time"
    return Explain(
        text=text,
        conflict=tuple(
            Conflict(kind=one.kind, id=one.id, text=told(problem, one))
            for one in conflict
        ),
        relaxations=tuple(
            Relaxation(text=mend.text, changes=mend.changes) for mend in found
        ),
    )


@dataclass(slots=True)
class _Tests:
    """Tests whether some members leave no plan; `unknown` counts those unanswered."""

    problem: Problem
    seconds: float
    unknown: int = 0

    def no_plan(self, kept: Iterable[Member]) -> bool:
        if self.unknown >= UNKNOWN_TESTS:
            return False
        part = only(self.problem, frozenset(kept))
        status = solve(part, seconds=self.seconds, wishes=()).status
        self.unknown += status == "unknown"
        return status == "infeasible"


def conflict_of(problem: Problem, *, seconds: float) -> tuple[tuple[Member, ...], bool]:
    """Give an irreducible set that leaves no plan, and whether every test was answered.

    Orders are taken first, then limits, hours and waits, so that what is left speaks
    of as few orders as can be. Empty where there is a plan, or none was shown to be
    missing.
    """
    every = members_of(problem)
    tests = _Tests(problem, seconds * A_TEST)
    orders = tuple(one for one in every if one.kind == "order")
    first = _where_waits_clash(problem, every, orders)
    rest = _one_limit(every, tests.no_plan)
    meeting = _grown(rest, first, tests.no_plan)
    if meeting is None:
        return (), tests.unknown == 0
    kept = (*meeting, *rest)
    for kind in KINDS:
        asked = tuple(one for one in kept if one.kind == kind)
        others = tuple(one for one in kept if one.kind != kind)
        kept = (*others, *_fewest(others, asked, tests.no_plan))
    return tuple(sorted(kept, key=every.index)), not tests.unknown


def _where_waits_clash(
    problem: Problem, every: tuple[Member, ...], orders: tuple[Member, ...]
) -> tuple[Member, ...]:
    """Put the orders first whose waits alone leave no room."""
    found = limits_of(only(problem, frozenset(every)))
    named: set[str] = set()
    if isinstance(found, Explain):
        named = {one.id for one in found.conflict if one.kind == "order"}
    return tuple(sorted(orders, key=lambda one: one.id not in named))


def _one_limit(
    every: tuple[Member, ...], no_plan: Callable[[Iterable[Member]], bool]
) -> tuple[Member, ...]:
    """Give all but the orders, with no limit or one alone where that leaves no plan.

    What one limit shows is shown far sooner than by all of them together.
    """
    orders = tuple(one for one in every if one.kind == "order")
    limits = [one for one in every if one.kind == "resource"]
    rest = tuple(one for one in every if one.kind in ("calendar", "lag"))
    for few in ((), *((one,) for one in sorted(limits, key=_likely))):
        if no_plan((*orders, *few, *rest)):
            return (*few, *rest)
    return tuple(one for one in every if one.kind != "order")


def _likely(limit: Member) -> int:
    """Moulds run out first, then the cold, then hands, then tools."""
    kind = limit.id.partition(":")[0]
    usual = ("mould", "cold", "shelf", PEOPLE, "cooks")
    return usual.index(kind) if kind in usual else len(usual)


def _grown(
    rest: tuple[Member, ...],
    orders: tuple[Member, ...],
    no_plan: Callable[[Iterable[Member]], bool],
) -> tuple[Member, ...] | None:
    """Give orders that cannot all be, each found as the last straw of a growing few.

    Few orders have a plan quickly or none quickly; all at once may take long.
    """
    meeting: tuple[Member, ...] = ()
    while not (meeting and no_plan((*rest, *meeting))):
        for count in range(1, len(orders) + 1):
            if no_plan((*rest, *meeting, *orders[:count])):
                meeting = (*meeting, orders[count - 1])
                orders = orders[: count - 1]
                break
        else:
            return None
    return meeting


def _fewest(
    kept: tuple[Member, ...],
    asked: tuple[Member, ...],
    no_plan: Callable[[Iterable[Member]], bool],
) -> tuple[Member, ...]:
    """Give the fewest of `asked` that with `kept` still leave no plan, by halves."""
    if not asked or no_plan(kept):
        return ()
    if len(asked) == 1:
        return asked
    one, other = asked[: len(asked) // 2], asked[len(asked) // 2 :]
    later = _fewest((*kept, *one), other, no_plan)
    return (*_fewest((*kept, *later), one, no_plan), *later)


def sentence(problem: Problem, conflict: Iterable[Member]) -> str:
    """Say in one line what meets: whose orders, over what."""
    told_all = {one: told(problem, one) for one in conflict}
    orders = [one.id for one in told_all if one.kind == "order"]
    over = [
        text for one, text in told_all.items() if one.kind in ("resource", "calendar")
    ]
    waits = [text for one, text in told_all.items() if one.kind == "lag"]
    who = " and ".join(orders) or "what is to be done"
    what = "cannot all be kept" if len(orders) > 1 else "cannot be kept"
    reasons = [*over, *waits[: max(0, 3 - len(over))]] or [
        "its steps take longer than there is"
    ]
    return f"{who} {what}: {'; '.join(reasons)}"


def told(problem: Problem, member: Member) -> str:
    """Say one thing that is asked to be kept, for the cook."""
    match member.kind:
        case "order":
            due = next(one.due for one in problem.orders if one.id == member.id)
            return f"{member.id} is due {clock(problem, due)}"
        case "resource":
            return _limit(problem, member.id)
        case "calendar":
            return "open hours" if member.id == "open" else f"the hours of {member.id}"
        case _:
            return _wait(problem.lags[member.at])


def _limit(problem: Problem, name: str) -> str:
    if name == PEOPLE:
        people = [person.name for person in problem.people]
        return f"the hands of {' and '.join(people)}"
    has = next(one.capacity for one in problem.resources if one.name == name)
    kind, _, key = name.partition(":")
    match kind:
        case "mould" if key:
            return (
                f"there are {has} {key} moulds"
                if has != 1
                else f"there is 1 {key} mould"
            )
        case "cold" if key:
            return f"the {key} takes {has} g at once"
        case "shelf" if key:
            return f"the {key} has {has} shelf places"
        case "tool" if key:
            return f"there is {has} {key}"
        case _:
            return f"there is {has} of {name}"


def _wait(lag: Lag) -> str:
    """Give the cook's reason, and how long where it is more than one after another."""
    why = lag.why or f"{lag.to} after {lag.from_}"
    if lag.max is not None and lag.min is None:
        return f"{why} (at most {minutes(lag.max)})"
    return f"{why} (at least {minutes(lag.min)})" if lag.min and lag.min > 0 else why
