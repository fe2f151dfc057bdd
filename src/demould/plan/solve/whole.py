"""All steps looked at together, one wish after the other, to proof where time allows."""

from __future__ import annotations

from dataclasses import dataclass, field
from typing import TYPE_CHECKING

from demould.plan.answer.schedule import objective_of
from demould.plan.solve.cpsat.costs import COSTS, moved
from demould.plan.solve.cpsat.look import Seen, hint, look, model_of

if TYPE_CHECKING:
    from collections.abc import Callable, Iterator, Mapping, Sequence

    from demould.plan.answer.schedule import Planned, Status
    from demould.plan.solve.asked import Asked
    from demould.plan.solve.cpsat.time import Time
    from demould.plan.solve.cpsat.unknown import Sum
    from demould.plan.solve.cpsat.week import Week
    from demould.plan.solve.wish import Wish

ALONE = 0.3
"""The part of each stage that one strategy has to itself, in steady time."""

FIRST = 0.6
"""The part of the time for a plan near the agreed one, before any plan will do."""

TIDYING = 0.05
"""The part of the time for ``tidy``, which is no promise and needs no proof."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Whole:
    """The places found, whether every wish is proven, and what no plan falls below."""

    status: Status
    places: Mapping[str, Planned]
    bound: Mapping[str, int] = field(default_factory=dict)


def whole(
    asked: Asked,
    time: Time,
    wishes: Sequence[Wish],
    *,
    places: Mapping[str, Planned] | None = None,
    near: Mapping[str, Planned] | None = None,
    workers: int = 2,
    seed: int = 0,
    tell: Callable[[Mapping[str, Planned]], None] | None = None,
) -> Whole:
    """Meet the wishes one after the other, each kept while the next is looked at.

    ``places`` is a plan to begin from, ``near`` one that perhaps holds no more.
    """
    week = model_of(asked, tuple(asked.steps), asked.past)
    if week is None:
        return Whole(status="infeasible", places={})
    if places or near:
        hint(week, places or near or {})
    found = dict(places or {})
    bound: dict[str, int] = {}
    stages = list(_stages(week, wishes))
    promises = sum(wish != "tidy" for wish, _, _ in stages)
    status: Status = "optimal"
    if not stages:
        seen = minimise(week, time, time.left, None, workers, seed)
        return Whole(status=seen.status, places={**asked.past, **seen.places})
    for number, (wish, cost, least) in enumerate(stages):
        share = time.left / max(1, promises - number)
        if not found and near:
            share = time.left * FIRST
        if wish == "tidy":
            share = time.left * TIDYING
        seen = minimise(week, time, share, cost, workers, seed)
        if not seen.places and not found:
            return Whole(status=seen.status, places={})
        if seen.places:
            found = {**asked.past, **seen.places}
            week.model.add(cost <= seen.value)
            if tell is not None:
                tell(found)
        if wish == "tidy":
            continue
        if seen.status != "optimal":
            status = "feasible"
        if seen.places:
            so_far = _past_part(asked, found, wish, seen.value)
            bound[wish] = so_far + max(least, seen.bound)
        elif seen.bound and not asked.past:
            bound[wish] = max(least, seen.bound)
    return Whole(status=status, places=found, bound=bound)


def _past_part(
    asked: Asked, found: Mapping[str, Planned], wish: str, value: int
) -> int:
    """Give what the past alone costs, which the model does not count."""
    if not asked.past or wish == "moved":
        return 0
    whole_cost: int = getattr(objective_of(asked.problem, found.values()), wish)
    return whole_cost - value


def _stages(week: Week, wishes: Sequence[Wish]) -> Iterator[tuple[str, Sum, int]]:
    """Give each cost that is not the same in every plan."""
    if week.asked.problem.previous:
        cost, least, _ = moved(week)
        if not isinstance(cost, int):
            yield "moved", cost, least
    for wish in wishes:
        cost, least, most = COSTS[wish](week)
        if least < most and not isinstance(cost, int):
            yield wish, cost, least


def minimise(
    week: Week, time: Time, seconds: float, cost: Sum | None, workers: int, seed: int
) -> Seen:
    """Make a cost small; in steady time one strategy tries before many take turns."""
    if not time.steady:
        return look(week, time, seconds, cost=cost, workers=workers, seed=seed)
    spent = time.spent
    alone = look(week, time, seconds * ALONE, cost=cost, seed=seed)
    if alone.status in ("optimal", "infeasible"):
        return alone
    rest = seconds - (time.spent - spent)
    joint = look(week, time, rest, cost=cost, workers=workers, seed=seed)
    if alone.status == "unknown" or joint.status in ("optimal", "infeasible"):
        return joint
    best = joint if joint.places and joint.value <= alone.value else alone
    return Seen(
        status=best.status,
        places=best.places,
        value=best.value,
        bound=max(alone.bound, joint.bound),
    )
