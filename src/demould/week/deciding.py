"""What only the cook can decide, each with the moment it has to be decided by."""

from collections.abc import Iterable, Iterator
from dataclasses import dataclass
from datetime import datetime

from demould.amounts.counts.spares import pieces_to_make
from demould.matter.grams import share
from demould.mise.kitchen import Kitchen
from demould.mise.words import Words
from demould.week.making import PROBE, Making, Whip
from demould.week.timing import Timing

BY_HAND = "by hand"


@dataclass(frozen=True, slots=True, kw_only=True)
class Decision:
    """A question with its answers, and by when; None where the plan does not say."""

    asks: Words
    answers: tuple[Words, ...]
    by: datetime | None


def decisions_of(
    makings: Iterable[Making], kitchen: Kitchen, timing: Timing
) -> tuple[Decision, ...]:
    """Give the open decisions, by order."""
    found: list[Decision] = []
    for making in makings:
        by = _first_filled(making, timing)
        found.extend(_rounds(making, by))
        found.extend(_probe(making, kitchen, by))
    return tuple(found)


def _first_filled(making: Making, timing: Timing) -> datetime | None:
    starts = (
        entry.start
        for entry in timing.entries
        if entry.part.make.order.key == making.order.key
        and entry.part.component is None
    )
    return min(starts, default=None)


def _rounds(making: Making, by: datetime | None) -> Iterator[Decision]:
    """A last round too small for the whisk: unless the cook has chosen already."""
    small = [whip for whip in making.amounts.whips if whip.bowl.verdict == "too little"]
    if not small or BY_HAND in making.order.choices:
        return
    last = small[-1]
    yield Decision(
        asks=Words(
            "{made} {dessert} in {cavities} cavities: the round of {few} is {mass:.0f} g,"
            " under the whisk's {least:.0f} g",
            made=making.amounts.pieces,
            dessert=making.amounts.dessert.name,
            cavities=making.amounts.rounds.cavities,
            few=last.pieces,
            mass=last.bowl.mass.value,
            least=last.bowl.least.value if last.bowl.least else 0.0,
        ),
        answers=tuple(_instead(making, last)),
        by=by,
    )


def _instead(making: Making, last: Whip) -> Iterator[Words]:
    yield Words("{few} by hand", few=last.pieces)
    if making.amounts.rounds.borrow:
        yield Words("borrow {n} mould, one round", n=making.amounts.rounds.borrow)
    turns = making.amounts.rounds
    if turns.count > 1 and making.order.pieces <= turns.cavities:
        yield Words("{n} and no spare", n=making.order.pieces)


def _probe(making: Making, kitchen: Kitchen, by: datetime | None) -> Iterator[Decision]:
    """A piece that the probe spoils leaves one fewer: what would make up for it.

    Nothing would have to where there are spares beyond what breakage asks for. Where
    the cook has chosen fewer, one more than those.
    """
    if PROBE in making.order.choices:
        return
    broken, sure = share(kitchen.breakage), share(kitchen.sure)
    enough = pieces_to_make(making.order.pieces, broken, sure)
    instead = min(making.amounts.pieces, enough) + 1
    if instead > making.amounts.pieces:
        yield Decision(
            asks=Words(
                "a piece of {dessert} for the probe? {made} becomes {instead}",
                dessert=making.amounts.dessert.name,
                made=making.amounts.pieces,
                instead=instead,
            ),
            answers=(),
            by=by,
        )
