"""Why there is no plan: what cannot all be kept, and what would make room."""

from __future__ import annotations

import time
from typing import TYPE_CHECKING

from demould.plan.answer.schedule import Conflict, Explain, Relaxation
from demould.plan.problem.telling import clock, minutes
from demould.plan.solve.lags import limits_of
from demould.plan.why.conflict import conflict_of
from demould.plan.why.mend import mends
from demould.plan.why.subset import PEOPLE, Member

if TYPE_CHECKING:
    from collections.abc import Iterable

    from demould.plan.problem.steps import Lag, Problem

FOR_THE_CONFLICT = 0.7
"""The part of the time for what meets; the rest is for what makes room."""

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
    began = time.monotonic()
    conflict, sure = conflict_of(problem, seconds=seconds * FOR_THE_CONFLICT)
    if not conflict:
        text = NOTHING_FOUND if not sure else "there is a plan: nothing is in the way"
        return Explain(text=text)
    left = seconds - (time.monotonic() - began)
    found = mends(problem, conflict, seconds=left)
    clash = limits_of(problem)
    text = sentence(problem, conflict)
    if isinstance(clash, Explain):
        text = f"{text}; {clash.text}"
    if not sure:
        text += "; not all of it may be needed: some tests were stopped by the time"
    return Explain(
        text=text,
        conflict=tuple(
            Conflict(kind=one.kind, id=one.id, text=told(problem, one))
            for one in conflict
        ),
        relaxations=tuple(
            Relaxation(
                text=mend.text,
                changes=mend.changes,
                problem_after=mend.problem,
                plan_after=mend.plan,
            )
            for mend in found
        ),
    )


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
