"""What nobody has said: amounts left open, and centres that will show."""

from collections.abc import Iterator
from dataclasses import dataclass

from demould.amounts.layers.wall import WANTED_MM, walls
from demould.mise.dessert import Dessert, component_of
from demould.mise.folder import Folder
from demould.mise.kitchen import Kitchen
from demould.mise.words import Words


@dataclass(frozen=True, slots=True, kw_only=True)
class Unsaid:
    """One thing that is open, and the question that settles it."""

    says: Words
    asks: Words


def unsaid_of(folder: Folder) -> tuple[Unsaid, ...]:
    """Give every amount that is not said and every wall too thin, over all desserts."""
    return tuple(
        one
        for dessert in folder.desserts
        for one in (*_amounts(dessert), *_walls(dessert, folder.kitchen))
    )


def _walls(dessert: Dessert, kitchen: Kitchen) -> Iterator[Unsaid]:
    for wall in walls(dessert, kitchen):
        if not wall.will_show:
            continue
        yield Unsaid(
            says=Words(
                "{dessert}: {part} comes within {mm:.1f} mm of the face and will show",
                dessert=dessert.name,
                part=component_of(dessert, wall.part.layer.component).name,
                mm=wall.least.value,
            ),
            asks=Words(
                "can it stand elsewhere, or be smaller? {wanted:g} mm all round is the"
                " habit",
                wanted=WANTED_MM,
            ),
        )


def _amounts(dessert: Dessert) -> Iterator[Unsaid]:
    for component in dessert.components:
        for line in component.formula:
            if line.amount is None:
                yield Unsaid(
                    says=Words(
                        "{dessert}, {component}: {what} has no amount",
                        dessert=dessert.name,
                        component=component.name,
                        what=line.what,
                    ),
                    asks=Words("how many grams of {what}?", what=line.what),
                )
