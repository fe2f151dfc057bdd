"""What waits in the cold between two steps: frozen pieces, centres, bases, pots.

The plan does not reckon with it. It is worked out here, from the plan: from the end of
what puts a lot into the cold to the start of what takes it.
"""

import re
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass

from demould.mise.kitchen import ColdPlace, Kitchen
from demould.mise.method import Step
from demould.mise.words import Words
from demould.plan.judge.done import Done, minute_of
from demould.plan.kitchen.from_kitchen import Laid
from demould.plan.kitchen.limits import shape_of, shelves_for
from demould.plan.kitchen.parts import Part

STORES_C = -12.0
"""At or under this what is frozen is stored. Common practice, no source."""

BLAST = "blast chiller"
"""It brings down, it does not store: its levels are for the next load."""

HELD_AT = re.compile(r"(?:\bat|\bunder) (-\d+(?:\.\d+)?)\s*°C")


@dataclass(frozen=True, slots=True, kw_only=True)
class Stored:
    """So many pieces of one lot wait on so many shelves, in minutes of the plan."""

    place: str
    what: Words
    start: int
    end: int
    pieces: int
    shelves: int


def storage_of(kitchen: Kitchen) -> ColdPlace | None:
    """Give the first cold place that stores what is frozen, None where there is none."""
    return next((one for one in kitchen.cold if _stores(one)), None)


def _stores(place: ColdPlace) -> bool:
    return place.air.value <= STORES_C and place.kind != BLAST


def stored(kitchen: Kitchen, laid: Laid, done: Mapping[str, Done]) -> Iterator[Stored]:
    """Walk what waits between two steps; a lot gets smaller with each step it feeds."""
    for name, part in laid.parts.items():
        if name not in done:
            continue
        place = _kept_in(kitchen, laid, done, part)
        if place is None:
            continue
        shape = shape_of(kitchen, part.make.dessert, part.component)
        takers = list(_takers(laid, done, name))
        for begin, over, pieces in left_waiting(done[name].end, part.pieces, takers):
            shelves = shelves_for(place, shape, pieces)
            if shelves:
                yield Stored(
                    place=place.key,
                    what=_called(part),
                    start=begin,
                    end=over,
                    pieces=pieces,
                    shelves=shelves,
                )


def _called(part: Part) -> Words:
    name = part.component.name if part.component else part.make.dessert.name
    return Words("{name} after {step}", name=name, step=part.step.key)


def left_waiting(
    begin: int, made: int, takers: Sequence[tuple[int, int]]
) -> Iterator[tuple[int, int, int]]:
    """Walk (from, to, pieces): what is left till each of the `takers` (start, pieces).

    The last takes all that is left. Where fewer are made than are taken, the others are
    there already and are taken first: these wait as long as they can.

    >>> list(left_waiting(0, 27, [(60, 24), (90, 3)]))
    [(0, 60, 27), (60, 90, 3)]
    """
    takers = sorted(takers)
    left, given = made, 0
    for number, (over, pieces) in enumerate(takers, start=1):
        if over > begin and left > 0:
            yield begin, over, left
        begin, given = max(begin, over), given + pieces
        later = sum(takes for _, takes in takers[number:])
        left = min(made, max(made - given, later))


def _takers(
    laid: Laid, done: Mapping[str, Done], name: str
) -> Iterator[tuple[int, int]]:
    """Walk (start, pieces) of every step that comes after; a due time takes all."""
    for lag in laid.problem.lags:
        if lag.from_ != name or lag.min is None:
            continue
        if (lag.from_at, lag.to_at) != ("end", "start"):
            continue
        at = minute_of(laid.problem, done, lag.to, "start")
        if at is not None:
            taker = laid.parts.get(lag.to, laid.parts[name])
            yield at, taker.pieces


def _kept_in(
    kitchen: Kitchen, laid: Laid, done: Mapping[str, Done], part: Part
) -> ColdPlace | None:
    """Follow the method to the end of this line; None: it stands in no cold place."""
    kept = None
    method = part.component.method if part.component else part.make.dessert.method
    for step in method:
        named = _named(kitchen, laid, done, part, step)
        if named is not None:
            frozen = named.air.value <= STORES_C
            kept = storage_of(kitchen) if frozen and not _stores(named) else named
        elif step.hold and _held_frozen(step):
            kept = kept if kept and _stores(kept) else storage_of(kitchen)
        elif part.component and (step.tools or step.stand):
            kept = None
        if step is part.step:
            break
    return kept


def _named(
    kitchen: Kitchen, laid: Laid, done: Mapping[str, Done], part: Part, step: Step
) -> ColdPlace | None:
    """Find the cold place a line names, or the one its wait goes by in the plan."""
    key = step.place
    if step.roads:
        key = _road(laid, done, part, step)
    return next((one for one in kitchen.cold if one.key == key), None)


def _road(laid: Laid, done: Mapping[str, Done], part: Part, step: Step) -> str:
    """Give the road of its own round where it went by rounds, else of the first."""
    alike = [
        (one.round != part.round, done[name].road.name)
        for name, one in laid.parts.items()
        if name in done
        and one.stands
        and one.step is step
        and one.make is part.make
        and one.component is part.component
    ]
    return min(alike)[1] if alike else step.roads[0].place


def _held_frozen(step: Step) -> bool:
    said = (found for remark in step.remarks for found in HELD_AT.findall(remark))
    return any(float(degrees) <= STORES_C for degrees in said)
