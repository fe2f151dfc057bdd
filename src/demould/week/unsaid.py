"""What nobody has said: amounts left open, and waits shorter than is likely."""

from collections.abc import Iterator
from dataclasses import dataclass

from demould.mise.dessert import Dessert
from demould.mise.folder import Folder
from demould.mise.words import Words


@dataclass(frozen=True, slots=True, kw_only=True)
class Unsaid:
    """One thing that is open, and the question that settles it."""

    says: Words
    asks: Words


def unsaid_of(folder: Folder) -> tuple[Unsaid, ...]:
    """Give every amount that is not said, over all desserts."""
    return tuple(one for dessert in folder.desserts for one in _amounts(dessert))


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
