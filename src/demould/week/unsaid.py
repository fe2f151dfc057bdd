"""What nobody has said: amounts left open, and centres that will show."""

from collections.abc import Iterator
from dataclasses import dataclass

from demould.advice.gaps.ranked import gaps_of
from demould.advice.gaps.told import moves_told
from demould.amounts.layers.wall import WANTED_MM, walls
from demould.mise.dessert import Dessert, component_of
from demould.mise.find import find_in
from demould.mise.folder import Folder
from demould.mise.kitchen import Kitchen
from demould.mise.words import Words


@dataclass(frozen=True, slots=True, kw_only=True)
class Unsaid:
    """One thing that is open, what is taken, what moves, the question that settles it."""

    says: Words
    asks: Words
    takes: Words | None = None
    moves: tuple[Words, ...] = ()


def unsaid_of(folder: Folder) -> tuple[Unsaid, ...]:
    """Give what is not said and every wall too thin, over all desserts.

    What is only assumed is told with the rest that is (`sure_of`).
    """
    return tuple(
        one
        for dessert in folder.desserts
        for one in (*_gaps(dessert, folder), *_walls(dessert, folder.kitchen))
    )


def _gaps(dessert: Dessert, folder: Folder) -> Iterator[Unsaid]:
    find = find_in(folder.larder)
    gaps = [
        gap
        for gap in gaps_of(dessert, folder.kitchen, find, folder.larder)
        if gap.figure is None and gap.kind != "time"
    ]
    if not gaps:
        return
    from demould.advice.gaps.freezing import with_freezing  # compiled, so only here

    for gap in with_freezing(gaps, dessert, folder.kitchen, find):
        yield Unsaid(
            says=Words("{dessert}, {says}", dessert=dessert.name, says=gap.says),
            asks=gap.asks,
            takes=gap.takes,
            moves=tuple(moves_told(gap)),
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
