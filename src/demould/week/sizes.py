"""10, 50, 500: the same plan at each size, and what breaks first."""

from collections.abc import Iterable, Iterator
from dataclasses import dataclass, replace
from datetime import datetime

from demould.mise.folder import Folder
from demould.mise.order import Order
from demould.plan.kitchen.from_kitchen import lay_out
from demould.plan.problem.steps import Problem
from demould.plan.quick.limit import Limit
from demould.plan.quick.look import first_look
from demould.plan.solve.search import solve
from demould.plan.why.conflict import conflict_of
from demould.plan.why.explain import sentence
from demould.week.making import Making
from demould.week.orders import makings_of, wanted, with_order

PLAN_S = 2.0
WHY_S = 1.0
PLENTY = 1_000_000


@dataclass(frozen=True, slots=True, kw_only=True)
class Size:
    """One size: what it asks for, whether it stands, and what stops it, in order.

    `moulds` would make it one round; `frozen_kg` goes through the cold. `stands` is
    None where time ran out.
    """

    making: Making
    moulds: int
    whips: int
    frozen_kg: float
    stands: bool | None
    stops: tuple[str, ...]


def sizes_of(
    folder: Folder, order: Order, pieces: Iterable[int], now: datetime
) -> tuple[Size, ...]:
    """Work an order out at each number of pieces, beside all others."""
    return tuple(_size(folder, replace(order, pieces=number), now) for number in pieces)


def _size(folder: Folder, order: Order, now: datetime) -> Size:
    asked = with_order(folder, order)
    makings = makings_of(asked, now)
    making = next(one for one in makings if one.order.key == order.key)
    makes = wanted(asked, makings, now)
    make = next(one for one in makes if one.order.key == order.key)
    problem = lay_out(asked.kitchen, makes, now).problem
    stops = tuple(_stops(problem))
    stands: bool | None = not stops
    if not stops:
        status = solve(problem, seconds=PLAN_S, wishes=()).status
        if status == "infeasible":
            problem = lay_out(asked.kitchen, makes, now, share=False).problem
            status = solve(problem, seconds=PLAN_S, wishes=()).status
        stands = {"infeasible": False, "unknown": None}.get(status, True)
        if stands is False:
            conflict, _ = conflict_of(problem, seconds=WHY_S)
            stops = (sentence(problem, conflict),)
    rounds = making.amounts.rounds
    each = next(one for one in asked.kitchen.moulds if one.key == rounds.mould)
    return Size(
        making=making,
        moulds=-(-sum(rounds.each) // each.cavities_each),
        whips=sum(whip.bowl.goes for whip in making.amounts.whips) or rounds.count,
        frozen_kg=make.piece_g * sum(make.rounds) / 1000,
        stands=stands,
        stops=stops,
    )


def _stops(problem: Problem) -> Iterator[str]:
    """Walk the limits that can be seen, each kind once, and what is behind the first."""
    found = first_look(problem)
    kinds: dict[str, Limit] = {}
    for limit in found:
        kinds.setdefault(limit.over, limit)
    for limit in kinds.values():
        yield limit.text
    if len(kinds) == 1 and found[0].over in ("mould", "cold", "tool"):
        for limit in first_look(_with_plenty(problem, found[0].id))[:1]:
            yield limit.text


def _with_plenty(problem: Problem, name: str) -> Problem:
    resources = tuple(
        replace(one, capacity=PLENTY, profile=()) if one.name == name else one
        for one in problem.resources
    )
    return replace(problem, resources=resources)
