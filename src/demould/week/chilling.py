"""How long a dessert freezes and thaws in this kitchen's own places."""

from dataclasses import dataclass

from demould.cold.freeze import freeze
from demould.cold.from_dessert import as_demoulded, as_filled
from demould.cold.from_kitchen import COVERS, load_in_words, to_freeze, to_thaw
from demould.cold.thaw import thaw
from demould.cold.wait import Wait
from demould.matter.grams import Find
from demould.mise.dessert import Dessert
from demould.mise.kitchen import ColdPlace, Kitchen
from demould.mise.words import Words

FREEZING_C = -10.0


@dataclass(frozen=True, slots=True, kw_only=True)
class InPlace:
    """One wait in one cold place; `how` says what else matters: open, under a lid."""

    place: ColdPlace
    how: str
    wait: Wait


@dataclass(frozen=True, slots=True, kw_only=True)
class Chilling:
    """Freezing wherever it is cold enough, thawing open and in closed boxes.

    `load` says what the freezing hours are for.
    """

    load: Words
    freezing: tuple[InPlace, ...]
    thawing: tuple[InPlace, ...]


def chilling_of(dessert: Dessert, kitchen: Kitchen, find: Find) -> Chilling:
    """Estimate both in every place there is: freezing for all moulds at once."""
    filled = as_filled(dessert, kitchen, find)
    bare = as_demoulded(dessert, kitchen, find)
    freezers = [place for place in kitchen.cold if place.air.value <= FREEZING_C]
    fridges = [place for place in kitchen.cold if place.air.value > 0]
    return Chilling(
        load=load_in_words(dessert, kitchen),
        freezing=tuple(
            InPlace(
                place=place,
                how="",
                wait=freeze(filled, to_freeze(dessert, kitchen, place)),
            )
            for place in freezers
        ),
        thawing=tuple(
            InPlace(
                place=place,
                how=cover,
                wait=thaw(bare, to_thaw(dessert, kitchen, place, cover)),
            )
            for place in fridges
            for cover in COVERS
        ),
    )
