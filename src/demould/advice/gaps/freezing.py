"""How far the freezing hours move with what is not said of the piece itself."""

from collections.abc import Iterable
from dataclasses import replace

from demould.advice.gaps.gap import Gap, Moved
from demould.advice.gaps.moves import DAY_H, NEWS
from demould.cold.freeze import likely_hours
from demould.cold.from_dessert import FROZEN_C, as_filled
from demould.cold.from_kitchen import to_freeze
from demould.cold.piece import FrozenPiece
from demould.cold.whole import heat_j, start_heat_j
from demould.matter.grams import Find
from demould.mise.dessert import Dessert
from demould.mise.kitchen import ColdPlace, Kitchen

MOST = 3
"""Freezing is worked out for so many gaps, those that move most by all else."""
TELLING = 0.01
"""A piece is another where the heat to take from it moves by this share or more."""
FREEZING_C = -10.0
"""A place of this air or colder freezes."""


def with_freezing(
    gaps: Iterable[Gap], dessert: Dessert, kitchen: Kitchen, find: Find
) -> tuple[Gap, ...]:
    """Give the gaps in their order, freezing hours with the first that change the piece.

    Every round of the moulds goes in at once, into the place that the method names
    first, else the kitchen's first that freezes; the likely case alone is followed, at
    each end. A gap changes the piece where the heat to be taken from it moves. Where no
    place freezes, or the piece cannot be drawn, all stays as it is.
    """
    place = place_to_freeze(dessert, kitchen)
    piece = _piece(dessert, kitchen, find)
    if place is None or piece is None:
        return tuple(gaps)
    likely: float | None = None
    done, left = [], MOST
    for gap in gaps:
        ends = _ends(gap, piece, find) if left else None
        if ends is None:
            done.append(gap)
            continue
        left -= 1
        if likely is None:
            likely = _hours(dessert, kitchen, place, piece)
        if likely is None:
            return tuple(gaps)
        low, high = (
            _hours(end_dessert, end_kitchen, place, end)
            for end_dessert, end_kitchen, end in ends
        )
        move = _moved(dessert, likely, low, high)
        done.append(replace(gap, moves=(*gap.moves, move)) if move else gap)
    return tuple(done)


def place_to_freeze(dessert: Dessert, kitchen: Kitchen) -> ColdPlace | None:
    """The place that freezes and is named first in the method; else the first of all."""
    freezers = {one.key: one for one in kitchen.cold if one.air.value <= FREEZING_C}
    named = (
        where
        for step in dessert.method
        for where in (*(road.place for road in step.roads), step.place)
    )
    first = next((freezers[one] for one in named if one in freezers), None)
    return first or next(iter(freezers.values()), None)


_End = tuple[Dessert, Kitchen, FrozenPiece]


def _ends(gap: Gap, likely: FrozenPiece, find: Find) -> tuple[_End, _End] | None:
    """Both ends where the piece is another at one of them; None where it is not."""
    if gap.ends is None or gap.kind == "time":
        return None
    below, above = gap.ends
    low = _piece(below.dessert, below.kitchen, find)
    high = _piece(above.dessert, above.kitchen, find)
    if low is None or high is None or low == high == likely:
        return None
    heats = [heat_to_freeze_j(piece) for piece in (likely, low, high)]
    if max(heats) - min(heats) < TELLING * heats[0]:
        return None
    return (below.dessert, below.kitchen, low), (above.dessert, above.kitchen, high)


def heat_to_freeze_j(piece: FrozenPiece) -> float:
    """What is to be taken from a piece to have all of it frozen [J]."""
    return start_heat_j(piece) - heat_j(piece, FROZEN_C)


def _piece(dessert: Dessert, kitchen: Kitchen, find: Find) -> FrozenPiece | None:
    try:
        return as_filled(dessert, kitchen, find)
    except (LookupError, ValueError):
        return None


def _hours(
    dessert: Dessert, kitchen: Kitchen, place: ColdPlace, piece: FrozenPiece
) -> float | None:
    cores = [step.core.value for step in dessert.method if step.core]
    target = cores[0] if cores else FROZEN_C
    return likely_hours(piece, to_freeze(dessert, kitchen, place), target)


def _moved(
    dessert: Dessert, likely: float, low: float | None, high: float | None
) -> Moved | None:
    """The move, where it is news and both ends freeze at all."""
    if low is None or high is None:
        return None
    span = max(likely, low, high) - min(likely, low, high)
    if span < NEWS * likely:
        return None
    return Moved(
        what="freezing",
        component="",
        name=dessert.name,
        likely=likely,
        low=low,
        high=high,
        unit="h",
        share=span / DAY_H,
    )
