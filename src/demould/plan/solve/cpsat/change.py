"""Changing a resource over between users that differ, for the solver."""

from __future__ import annotations

from dataclasses import dataclass
from itertools import combinations, permutations
from typing import TYPE_CHECKING

from demould.plan.problem.steps import change_min

if TYPE_CHECKING:
    from ortools.sat.python import cp_model

    from demould.plan.problem.steps import Changeover, Step
    from demould.plan.solve.cpsat.unknown import Sum, When
    from demould.plan.solve.cpsat.week import Week


@dataclass(frozen=True, slots=True, kw_only=True)
class _User:
    step: Step
    start: Sum
    end: Sum
    there: When
    free: bool


def change_over(week: Week, change: Changeover) -> None:
    """Leave the minutes a resource needs between one user and the next.

    Where a third user between two can not be quicker than changing over straight, it is
    enough to look at every two; else who follows whom is a round through them all.
    """
    users = list(_users(week, change.resource))
    if sum(user.free for user in users) == 0 or len(users) < 2:
        return
    if _straight_is_quickest(change, [user.step for user in users], week):
        _every_two(week, change, users)
    else:
        _one_round(week, change, users)


def _users(week: Week, resource: str) -> list[_User]:
    found = []
    for name in week.asked.users.get(resource, ()):
        doing = week.doings.get(name) or week.placed.get(name)
        for road, taken in () if doing is None else doing.took:
            if doing is not None and road.uses.get(resource, 0):
                found.append(
                    _User(
                        step=doing.step,
                        start=doing.start,
                        end=doing.end,
                        there=taken,
                        free=name in week.doings,
                    )
                )
    return found


def _straight_is_quickest(change: Changeover, steps: list[Step], week: Week) -> bool:
    kinds = {str(getattr(step, change.key)): step for step in steps}
    least: dict[str, int] = {}
    for step in steps:
        kind = str(getattr(step, change.key))
        quick = min(way.duration.min for way in week.asked.ways[step.id])
        least[kind] = min(quick, least.get(kind, quick))
    return all(
        change_min(change, kinds[one], kinds[other])
        <= change_min(change, kinds[one], kinds[mid])
        + least[mid]
        + change_min(change, kinds[mid], kinds[other])
        for one, mid, other in permutations(kinds, 3)
    )


def _every_two(week: Week, change: Changeover, users: list[_User]) -> None:
    model = week.model
    for one, other in combinations(users, 2):
        there, back = (
            change_min(change, one.step, other.step),
            change_min(change, other.step, one.step),
        )
        if not (there or back) or not (one.free or other.free):
            continue
        if one.step.id == other.step.id:
            continue
        first = model.new_bool_var("")
        both = [user.there for user in (one, other) if user.there is not True]
        model.add(other.start >= one.end + there).only_enforce_if(first, *both)
        model.add(one.start >= other.end + back).only_enforce_if(~first, *both)


def _one_round(week: Week, change: Changeover, users: list[_User]) -> None:
    """Let each user follow another; the round begins and ends outside them all."""
    model = week.model
    arcs: list[tuple[int, int, cp_model.LiteralT]] = []
    for number, user in enumerate(users, start=1):
        arcs.append((0, number, model.new_bool_var("")))
        arcs.append((number, 0, model.new_bool_var("")))
        if user.there is not True:
            arcs.append((number, number, ~user.there))
    for (here, one), (next_, other) in permutations(enumerate(users, start=1), 2):
        if one.step.id == other.step.id:
            continue
        follows = model.new_bool_var("")
        gap = change_min(change, one.step, other.step) if other.free or one.free else 0
        if one.free or other.free:
            model.add(other.start >= one.end + gap).only_enforce_if(follows)
        elif _starts_before(other, one):
            model.add(follows == 0)
        arcs.append((here, next_, follows))
    arcs.append((0, 0, model.new_bool_var("")))
    model.add_circuit(arcs)


def _starts_before(one: _User, other: _User) -> bool:
    both = isinstance(one.start, int) and isinstance(other.start, int)
    return both and one.start < other.start
