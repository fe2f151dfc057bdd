"""How much colour is in a dip, a glaze or a spray."""

from collections.abc import Iterator
from dataclasses import dataclass

from demould.larder.usual import is_colouring
from demould.matter.grams import Find, batch, weighed_lines
from demould.mise.component import Component

COLOURED = ("thin dip", "mirror glaze", "velvet spray")


@dataclass(frozen=True, slots=True, kw_only=True)
class Colour:
    """Grams of one colour in grams of the whole as written; `share` is % of the whole."""

    what: str
    grams: float
    whole: float

    @property
    def share(self) -> float:
        """Colour in the whole [%]."""
        return 100 * self.grams / self.whole


def colours(component: Component, find: Find) -> Iterator[Colour]:
    """Give every colour of a dip, a glaze or a spray that has a weight."""
    if component.kind not in COLOURED:
        return
    whole = batch(component, find).value
    for line, grams in weighed_lines(component.formula, find):
        if is_colouring(line.what) and grams.value > 0:
            yield Colour(what=line.what, grams=grams.value, whole=whole)
