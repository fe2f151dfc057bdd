"""What no machine, shelf or tool can take, alone or all together."""

from __future__ import annotations

from typing import TYPE_CHECKING

from demould.plan.problem.steps import roads
from demould.plan.problem.telling import called, clock, minutes
from demould.plan.quick.limit import Limit, Over

if TYPE_CHECKING:
    from collections.abc import Iterator, Mapping

    from demould.plan.problem.steps import Problem, Resource, Road, Step
    from demould.plan.solve.net import Limits

KILOGRAM = 1000


def no_room(problem: Problem) -> Iterator[Limit]:
    """Give every step that no place can take, each road with what stands in its way."""
    most = {
        one.name: max([one.capacity, *(other.capacity for other in one.profile)])
        for one in problem.resources
    }
    for step in problem.steps:
        ways = [list(_too_much(road, most)) for road in roads(step)]
        if all(ways):
            told = "; ".join(dict.fromkeys(text for way in ways for _, text in way))
            yield Limit(
                over=_kind(ways[0][0][0]),
                id=ways[0][0][0],
                orders=step.order,
                text=f"{called(step)}: {told}",
                help="smaller rounds, or another place",
            )
    for hold in problem.holds:
        if hold.amount > most[hold.resource]:
            step = next(one for one in problem.steps if one.id == hold.from_)
            has = most[hold.resource]
            told = told_amounts(hold.resource, hold.amount, has)
            yield Limit(
                over=_kind(hold.resource),
                id=hold.resource,
                orders=step.order,
                text=f"{called(step)}: {told}",
                help="smaller rounds, or more of them",
            )


def _too_much(road: Road, most: Mapping[str, int]) -> Iterator[tuple[str, str]]:
    for uses in (road.uses, road.attend_uses):
        for name, amount in uses.items():
            if amount > most[name]:
                yield name, told_amounts(name, amount, most[name])


def _kind(name: str) -> Over:
    kind = name.partition(":")[0]
    if kind in ("cold", "shelf"):
        return "cold"
    return "mould" if kind == "mould" else "tool"


def told_amounts(name: str, wanted: int, has: int) -> str:
    """Say how much is wanted of a thing and how much there is."""
    kind, _, key = name.partition(":")
    match kind:
        case "cold" if key:
            return (
                f"{wanted / KILOGRAM:.1f} kg at once, and the {key} takes"
                f" {has / KILOGRAM:.1f} kg"
            )
        case "shelf" if key:
            return f"{wanted} shelves at once, and the {key} has {has}"
        case "mould" if key:
            return f"{wanted} {key} moulds at once, and there are {has}"
        case _ if has == 0:
            return f"there is no {key or name}"
        case _:
            return f"{wanted} of {key or name} at once, and there are {has}"


def too_long_in_all(problem: Problem, limits: Limits) -> Iterator[Limit]:
    """Give what is wanted for more hours than there are before the last moment.

    Counted is only what has to be used whatever road is taken.
    """
    for resource in problem.resources:
        if resource.capacity and not resource.profile:
            limit = _full(problem, limits, resource)
            if limit is not None:
                yield limit


def _full(problem: Problem, limits: Limits, resource: Resource) -> Limit | None:
    taken = [
        (limits.last[step.id, "end"], _least(step, resource.name), step)
        for step in problem.steps
    ]
    users = sorted(
        (one for one in taken if one[1]), key=lambda one: (one[0], one[2].id)
    )
    total, orders = 0, list[str]()
    for count, (until, amount, step) in enumerate(users, start=1):
        total += amount
        orders += step.order
        first = min(limits.first[one[2].id, "start"] for one in users[:count])
        has = resource.capacity * (until - first)
        if total > has:
            return Limit(
                over=_kind(resource.name),
                id=resource.name,
                orders=tuple(dict.fromkeys(orders)),
                text=_told_full(problem, resource, total, first, until),
                help="fewer pieces, a later day, or one more of it",
            )
    return None


def _least(step: Step, name: str) -> int:
    """Give the least of capacity times minutes the step takes of a thing."""
    return min(road.uses.get(name, 0) * road.duration.min for road in roads(step))


def _told_full(
    problem: Problem, resource: Resource, total: int, first: int, until: int
) -> str:
    key = resource.name.partition(":")[2] or resource.name
    wanted = total // max(1, resource.capacity)
    between = f"between {clock(problem, first)} and {clock(problem, until)}"
    return f"the {key} would be taken for {minutes(wanted)} {between}: there is less"
