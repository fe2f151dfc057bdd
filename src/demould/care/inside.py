"""Everything that goes into a dessert, with the place it goes in."""

from collections.abc import Iterator
from dataclasses import dataclass

from demould.larder.ingredient import Ingredient
from demould.larder.read import ingredient
from demould.mise.dessert import Dessert
from demould.mise.own_larder import Larder, Stocked

BESIDE = "on the plate"


@dataclass(frozen=True, slots=True, kw_only=True)
class Inside:
    """One ingredient in one place.

    `place` is a component's name or `BESIDE`; `key` the component's key, "" beside the
    piece. `ingredient` is None where nothing is called like what is written. `stocked`
    is the kitchen's own entry, `like` the row of the table that entry is like.
    """

    place: str
    key: str
    what: str
    ingredient: Ingredient | None
    stocked: Stocked | None = None
    like: Ingredient | None = None

    @property
    def name(self) -> str:
        """What it is called: as in the larder, or as it was written."""
        return self.ingredient.name if self.ingredient else self.what

    @property
    def asks(self) -> tuple[str, ...]:
        """What only a supplier can tell of such a thing, by the table."""
        told = self.like or self.ingredient
        return told.ask if told else ()


def inside(dessert: Dessert, larder: Larder) -> tuple[Inside, ...]:
    """Walk everything inside a dessert and beside it, its variant already in place.

    What is strained out counts: it has touched. What is made here from another entry
    brings that entry along.
    """
    return tuple(_walk(dessert, {one.key: one for one in larder}))


def _walk(dessert: Dessert, own: dict[str, Stocked]) -> Iterator[Inside]:
    for component in dessert.components:
        for line in component.formula:
            if line.component is None:
                yield from _one(
                    component.name, component.key, line.what, line.ingredient, own
                )
    for plate in dessert.plate:
        if plate.component is None:
            yield from _one(BESIDE, "", plate.what, plate.what, own)


def _one(
    place: str, key: str, what: str, id_: str | None, own: dict[str, Stocked]
) -> Iterator[Inside]:
    stocked = own.get(id_) if id_ else None
    made_of = stocked.ingredient if stocked else None
    if made_of is None and id_ is not None:
        made_of = _in_table(id_)
    like = ingredient(stocked.like) if stocked and stocked.like else None
    yield Inside(
        place=place,
        key=key,
        what=what,
        ingredient=made_of,
        stocked=stocked,
        like=like,
    )
    if stocked is not None and stocked.made_from is not None:
        source = stocked.made_from.what
        yield from _one(place, key, source, source, own)


def _in_table(id_: str) -> Ingredient | None:
    try:
        return ingredient(id_)
    except KeyError:
        return None
