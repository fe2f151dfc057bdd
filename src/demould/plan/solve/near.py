"""Which orders stand in each other's way."""

from __future__ import annotations

from collections import Counter
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from collections.abc import Iterable, Mapping

    from demould.plan.answer.schedule import Planned
    from demould.plan.solve.asked import Asked


def near(
    asked: Asked, unit: int, others: Iterable[int], placed: Mapping[str, Planned]
) -> list[int]:
    """Give the other units, those that share most with this one at its time first.

    What there is little of counts more: two that want the only mould meet more than
    two that want one of thirty shelves.
    """
    wants = _wants(asked, asked.units[unit])
    first = min(asked.limits.first[name, "start"] for name in asked.units[unit])
    last = max(asked.limits.last[name, "end"] for name in asked.units[unit])
    middle = _middle(asked, unit, placed)

    def score(other: int) -> tuple[float, float]:
        names = [name for name in asked.units[other] if name in placed]
        if not any(
            placed[name].start < last and placed[name].end > first for name in names
        ):
            return 0.0, 0.0
        shared = _wants(asked, asked.units[other])
        meets = sum(min(share, shared[name]) for name, share in wants.items())
        return -meets, abs(_middle(asked, other, placed) - middle)

    return sorted(others, key=score)


def _wants(asked: Asked, names: Iterable[str]) -> Counter[str]:
    """Give how much of all there is of each resource some steps and holds take."""
    there = set(names)
    capacity = {one.name: max(1, one.capacity) for one in asked.problem.resources}
    wants: Counter[str] = Counter()
    for name in there:
        for road in asked.ways[name][:1]:
            for uses in (road.uses, road.attend_uses):
                for resource, amount in uses.items():
                    wants[resource] += amount / capacity[resource]  # type: ignore[assignment]
    for resource, many in asked.holds.items():
        for hold, _ in many:
            if hold.from_ in there:
                wants[resource] += 10 * hold.amount / capacity[resource]  # type: ignore[assignment]
    return wants


def _middle(asked: Asked, unit: int, placed: Mapping[str, Planned]) -> float:
    ends = [
        placed[name].end if name in placed else asked.limits.last[name, "end"]
        for name in asked.units[unit]
    ]
    return sum(ends) / len(ends)
