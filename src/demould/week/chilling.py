"""How long a dessert freezes and thaws in this kitchen's own places."""

from collections.abc import Sequence
from dataclasses import dataclass, replace

from demould.cold.beside import LIMIT_C, finished_goods, warmest_goods
from demould.cold.freeze import freeze
from demould.cold.from_dessert import as_demoulded, as_filled
from demould.cold.from_kitchen import (
    COVERS,
    MEASURED_UNSURE_K,
    Cover,
    load_in_words,
    to_freeze,
    to_thaw,
)
from demould.cold.piece import FrozenPiece, Place
from demould.cold.probe import air_log
from demould.cold.probe_place import ProbePlace, probe_place
from demould.cold.thaw import thaw
from demould.cold.wait import Wait
from demould.cold.warmth import Warmth, warmth_at
from demould.larder.read import hold
from demould.matter.grams import Find
from demould.mise.dessert import Dessert, Glaze
from demould.mise.figure import Assumed, Figure
from demould.mise.kitchen import ColdPlace, Kitchen
from demould.mise.read_probe import ProbeLog
from demould.mise.words import Words

FREEZING_C = -10.0
BESIDE_KG = 1.0
THAW = "thaw"
"""The step of a method that puts pieces into the fridge."""


@dataclass(frozen=True, slots=True, kw_only=True)
class InPlace:
    """One wait in one cold place; `cover` is what is over the pieces where they thaw.

    `beside_c` is how warm a kilogram of finished pieces gets, uncovered beside a full
    round that goes in warm, where the place is cold enough to keep any.
    """

    place: ColdPlace
    wait: Wait
    cover: Cover | None = None
    beside_c: float | None = None

    @property
    def how(self) -> str:
        """The cover in words; nothing in a freezer."""
        return self.cover or ""


@dataclass(frozen=True, slots=True, kw_only=True)
class Chilling:
    """Freezing wherever it is cold enough, thawing open and in closed boxes.

    `load` says what the freezing hours are for, `probe` where a probe goes, `keeps` how
    long a thawed piece may be served, from the fridge door. [min]
    """

    load: Words
    probe: ProbePlace
    keeps: Figure
    freezing: tuple[InPlace, ...]
    thawing: tuple[InPlace, ...]


def chilling_of(
    dessert: Dessert,
    kitchen: Kitchen,
    find: Find,
    covers: Sequence[Cover] = ("open", "in closed boxes"),
    *,
    in_full: bool = True,
) -> Chilling:
    """Estimate both in every place there is: freezing for all moulds at once.

    Not `in_full` it costs less: the same hours, without each cause's own.
    """
    filled = as_filled(dessert, kitchen, find)
    bare = as_demoulded(dessert, kitchen, find)
    freezers = [place for place in kitchen.cold if place.air.value <= FREEZING_C]
    fridges = [place for place in kitchen.cold if place.air.value > 0]
    return Chilling(
        load=load_in_words(dessert, kitchen),
        probe=probe_place(filled),
        keeps=thawed_keeps(dessert),
        freezing=tuple(
            InPlace(
                place=place,
                wait=freeze(
                    filled, to_freeze(dessert, kitchen, place), in_full=in_full
                ),
                beside_c=_beside(filled, bare, to_freeze(dessert, kitchen, place)),
            )
            for place in freezers
        ),
        thawing=tuple(
            InPlace(
                place=place,
                cover=cover,
                wait=thaw(
                    bare, to_thaw(dessert, kitchen, place, cover), in_full=in_full
                ),
            )
            for place in fridges
            for cover in covers
        ),
    )


def in_logged_air(
    dessert: Dessert, kitchen: Kitchen, find: Find, place: ColdPlace, log: ProbeLog
) -> Chilling:
    """Estimate both in a place whose air was logged, from the log's first reading on.

    The log knows what the load did to the air; after its end the air stays.
    """
    air = air_log(log.seconds, log.at_c)
    there = chilling_of(dessert, replace(kitchen, cold=()), find)
    if place.air.value < 0:
        freezer = replace(to_freeze(dessert, kitchen, place), load=None)
        measured = replace(freezer, air_c=air, air_unsure_k=MEASURED_UNSURE_K)
        wait = freeze(as_filled(dessert, kitchen, find), measured)
        return replace(there, freezing=(InPlace(place=place, wait=wait),))
    bare = as_demoulded(dessert, kitchen, find)
    waits = []
    for cover in COVERS:
        fridge = to_thaw(dessert, kitchen, place, cover)
        measured = replace(fridge, air_c=air, air_unsure_k=MEASURED_UNSURE_K)
        waits.append(InPlace(place=place, cover=cover, wait=thaw(bare, measured)))
    return replace(there, thawing=tuple(waits))


def thawed_keeps(dessert: Dessert) -> Figure:
    """Give how long it may be served, from the fridge door [min]: as its method says.

    Where the method says nothing, what common practice gives its finish.
    """
    said = [step.hold for step in dessert.method if step.key == THAW and step.hold]
    if said:
        return said[-1]
    glazed = any(isinstance(one, Glaze) for one in dessert.finish)
    state = "thawed with glaze" if glazed else "thawed with velvet or dip"
    known = hold(state)
    if known is None or known.most is None:
        raise LookupError(f"the larder says nothing of what is {state}")
    return Figure(
        name="hold of a thawed piece",
        value=known.most.value,
        unit="min",
        origin=Assumed(
            low=known.most.low, high=known.most.high, source=known.most.source
        ),
    )


def _beside(filled: FrozenPiece, bare: FrozenPiece, place: Place) -> float | None:
    if place.load is None or place.load.machine.set_c >= LIMIT_C:
        return None
    goods = finished_goods(bare, place, BESIDE_KG)
    return warmest_goods(filled, place, goods, place.load.pieces)


def half_way(
    dessert: Dessert, kitchen: Kitchen, find: Find, chilling: Chilling
) -> tuple[tuple[InPlace, Warmth], ...]:
    """Give how warm the piece is all through, half way along each likely wait."""
    filled = as_filled(dessert, kitchen, find)
    bare = as_demoulded(dessert, kitchen, find)
    found = []
    for one in (*chilling.freezing, *chilling.thawing):
        seconds = 3600 * one.wait.curve[-1][0] / 2
        if seconds <= 0:
            continue
        if one.cover is None:
            piece, place = filled, to_freeze(dessert, kitchen, one.place)
        else:
            piece = bare
            place = to_thaw(dessert, kitchen, one.place, one.cover)
        found.append((one, warmth_at(piece, place, seconds)))
    return tuple(found)
