"""Water where there must be none, and fat that has too little water."""

import re
from collections.abc import Iterator, Sequence

from demould.advice.bands.quantity import couverture
from demould.advice.clashes.clash import Clash, clash
from demould.advice.clashes.heat import said_of
from demould.larder.ingredient import Ingredient
from demould.larder.read import bands
from demould.matter.composition import composition
from demould.matter.grams import Find, weighed_lines
from demould.matter.inside import inside
from demould.mise.component import Component
from demould.mise.dessert import Dessert
from demould.mise.words import Words

FAT_KINDS = ("thin dip", "velvet spray")
WATERY = 10.0
"""Water in 100 g from which an ingredient seizes couverture [g]."""
SEIZES = (0.5, 15.0)
"""Water in 100 g between which couverture is stiff; more makes a ganache of it [g]."""
MOSTLY_FAT = 0.4
MOST_FAT = 45.0
WATER_FOR_FAT = 1.3
EMULSIONS = ("whipped ganache",)
_COLOUR = re.compile(r"\b(colou?r|colou?ring|dye)\b")
_IN_FAT = re.compile(r"\b(fat|oil|cocoa butter)\b")
_IN_WATER = re.compile(r"\b(water|gel|liquid|paste)\b")


def fat(dessert: Dessert, find: Find) -> Iterator[Clash]:
    """Every clash of water and fat in the dessert's components."""
    for component in dessert.components:
        yield from _water(component, dessert.components, find)
        yield from _colour(component, dessert.components, find)
        yield from _splits(component, dessert.components, find)


def _is_fat(component: Component, parts: Sequence[Component], find: Find) -> bool:
    """Whether fat is what it floats in: a dip, a spray, couverture with things in it."""
    band = bands(component.kind) if component.kind else None
    if band is not None and band.kind in FAT_KINDS:
        return True
    mix = inside(component, find, parts)
    total = sum(grams for _, grams in mix)
    chocolate = sum(grams for what, grams in mix if _melts(what))
    return total > 0 and chocolate / total >= MOSTLY_FAT


def _melts(what: Ingredient) -> bool:
    return couverture(what) > 0 or what.per_100g.cocoa_butter > 90


def _water(
    component: Component, parts: Sequence[Component], find: Find
) -> Iterator[Clash]:
    if not _is_fat(component, parts, find):
        return
    wet = composition(component, find, parts).water
    lines = [
        line.what
        for line, _ in weighed_lines(component.formula, find)
        if line.ingredient is not None
        and find(line.ingredient).per_100g.water >= WATERY
    ]
    if lines and SEIZES[0] <= wet <= SEIZES[1]:
        yield clash(
            component,
            Words(
                "{what} brings water into melted couverture: it seizes", what=lines[0]
            ),
            Words("leave it out, dry or dissolve it in fat; keep jug and tools dry"),
        )


def _colour(
    component: Component, parts: Sequence[Component], find: Find
) -> Iterator[Clash]:
    if not _is_fat(component, parts, find):
        return
    for line in component.formula:
        said = said_of(line)
        if not _COLOUR.search(said) or _IN_FAT.search(said.replace("fat-", "fat ")):
            continue
        wet = bool(_IN_WATER.search(said))
        says = (
            Words(
                "{what} is water-based: in fat it clots and seizes the mix",
                what=line.what,
            )
            if wet
            else Words("nobody says whether {what} is for fat", what=line.what)
        )
        do = Words("take a colour that dissolves in fat, weighed, with food labelling")
        yield clash(component, says, do, certain=wet)


def _splits(
    component: Component, parts: Sequence[Component], find: Find
) -> Iterator[Clash]:
    band = bands(component.kind) if component.kind else None
    if band is None or band.kind not in EMULSIONS:
        return
    made_of = composition(component, find, parts)
    least = made_of.fat / WATER_FOR_FAT
    if made_of.fat <= MOST_FAT and made_of.water >= least:
        return
    yield clash(
        component,
        Words(
            "{fat:.0f} % fat in {water:.0f} % water: it will split",
            fat=made_of.fat,
            water=made_of.water,
        ),
        Words("5 to 10 % milk or water more, blended in; end the mix at 32 to 45 °C"),
    )
