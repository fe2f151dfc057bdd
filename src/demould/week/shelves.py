"""How many shelves of each cold place the plan takes, from when to when."""

from collections import Counter
from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from datetime import datetime
from itertools import pairwise

from demould.mise.kitchen import Kitchen
from demould.mise.words import Words
from demould.plan.judge.check import placed
from demould.plan.judge.taken import uses
from demould.plan.kitchen.clock import moment_at
from demould.plan.problem.steps import Resource
from demould.week.stored import Stored, stored
from demould.week.timing import Timing

SHELF = "shelf:"


@dataclass(frozen=True, slots=True, kw_only=True)
class Stretch:
    """So many shelves are taken from `start` to `end`."""

    start: datetime
    end: datetime
    taken: int


@dataclass(frozen=True, slots=True, kw_only=True)
class Lot:
    """So many pieces that wait between two steps, and the shelves they take."""

    what: Words
    start: datetime
    end: datetime
    pieces: int
    taken: int


@dataclass(frozen=True, slots=True, kw_only=True)
class Shelved:
    """One cold place: its shelves, and what the plan takes of them, in order of time.

    `hours` run without a gap from the first shelf taken to the last given back; none
    where nothing is put there. In them are the waits that the method writes with a
    place, and `lots`: what is stored between two steps, reckoned here (assumed). What
    else is kept there is not.
    """

    place: str
    has: int
    hours: tuple[Stretch, ...]
    lots: tuple[Lot, ...] = ()

    @property
    def over(self) -> tuple[Stretch, ...]:
        """Every stretch in which more are taken than there are."""
        return tuple(one for one in self.hours if one.taken > self.has)

    @property
    def most(self) -> int:
        """The most shelves taken at once."""
        return max((one.taken for one in self.hours), default=0)

    @property
    def fullest(self) -> tuple[Stretch, ...]:
        """Every stretch in which the most are taken."""
        return tuple(one for one in self.hours if one.taken == self.most)


def shelves_of(kitchen: Kitchen, timing: Timing) -> tuple[Shelved, ...]:
    """Give every cold place with shelves, in the kitchen's order."""
    laid = timing.laid
    done, _ = placed(laid.problem, timing.schedule)
    lots = tuple(stored(kitchen, laid, done))
    return tuple(
        _shelved(
            laid.origin,
            resource,
            [use[:3] for use in uses(laid.problem, done, resource.name)],
            [one for one in lots if SHELF + one.place == resource.name],
        )
        for resource in laid.problem.resources
        if resource.name.startswith(SHELF)
    )


def _shelved(
    origin: datetime,
    resource: Resource,
    waits: Sequence[tuple[int, int, int]],
    lots: Sequence[Stored],
) -> Shelved:
    between = [(one.start, one.end, one.shelves) for one in lots]
    return Shelved(
        place=resource.name.removeprefix(SHELF),
        has=resource.capacity,
        hours=tuple(
            Stretch(
                start=moment_at(origin, begin),
                end=moment_at(origin, over),
                taken=taken,
            )
            for begin, over, taken in levels((*waits, *between))
        ),
        lots=tuple(
            Lot(
                what=one.what,
                start=moment_at(origin, one.start),
                end=moment_at(origin, one.end),
                pieces=one.pieces,
                taken=one.shelves,
            )
            for one in lots
        ),
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
