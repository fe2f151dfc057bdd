"""How many shelves of each cold place the plan takes, from when to when."""

from collections import Counter
from collections.abc import Iterable
from dataclasses import dataclass
from datetime import datetime
from itertools import pairwise

from demould.plan.judge.check import placed
from demould.plan.judge.taken import uses
from demould.plan.kitchen.clock import moment_at
from demould.week.timing import Timing

SHELF = "shelf:"


@dataclass(frozen=True, slots=True, kw_only=True)
class Stretch:
    """So many shelves are taken from `start` to `end`."""

    start: datetime
    end: datetime
    taken: int


@dataclass(frozen=True, slots=True, kw_only=True)
class Shelved:
    """One cold place: its shelves, and what the plan takes of them, in order of time.

    `hours` run without a gap from the first shelf taken to the last given back; none
    where the plan puts nothing there. Only waits that the method writes with a place
    are in them: not what waits for its next step, nor what else is kept there.
    """

    place: str
    has: int
    hours: tuple[Stretch, ...]

    @property
    def most(self) -> int:
        """The most shelves taken at once."""
        return max((one.taken for one in self.hours), default=0)

    @property
    def fullest(self) -> tuple[Stretch, ...]:
        """Every stretch in which the most are taken."""
        return tuple(one for one in self.hours if one.taken == self.most)


def shelves_of(timing: Timing) -> tuple[Shelved, ...]:
    """Give every cold place with shelves, in the kitchen's order."""
    problem = timing.laid.problem
    done, _ = placed(problem, timing.schedule)
    return tuple(
        Shelved(
            place=resource.name.removeprefix(SHELF),
            has=resource.capacity,
            hours=tuple(
                Stretch(
                    start=moment_at(timing.laid.origin, begin),
                    end=moment_at(timing.laid.origin, over),
                    taken=taken,
                )
                for begin, over, taken in levels(
                    use[:3] for use in uses(problem, done, resource.name)
                )
            ),
        )
        for resource in problem.resources
        if resource.name.startswith(SHELF)
    )


def levels(claims: Iterable[tuple[int, int, int]]) -> tuple[tuple[int, int, int], ...]:
    """Add up claims (from, to, amount) into stretches (from, to, total), half-open.

    >>> levels([(0, 60, 2), (30, 90, 1), (120, 150, 1)])
    ((0, 30, 2), (30, 60, 3), (60, 90, 1), (90, 120, 0), (120, 150, 1))
    """
    change: Counter[int] = Counter()
    for begin, over, amount in claims:
        change[begin] += amount
        change[over] -= amount
    edges = sorted(minute for minute, by in change.items() if by)
    found = []
    total = 0
    for begin, over in pairwise(edges):
        total += change[begin]
        found.append((begin, over, total))
    return tuple(found)
