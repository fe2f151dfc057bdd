"""The own film of a dip, from pieces weighed before and after."""

from collections.abc import Sequence
from dataclasses import dataclass

from demould.amounts.finish.dip import dip_of, film_from_weighing
from demould.amounts.layers.piece import coated
from demould.amounts.shape.volume import mould_of
from demould.mise.dessert import Dessert, component_of
from demould.mise.figure import Estimate, Figure, Measured
from demould.mise.kitchen import Kitchen
from demould.mise.words import Words


@dataclass(frozen=True, slots=True, kw_only=True)
class OwnFilm:
    """What the scale says of a dip, beside its card.

    `film` is over all pieces, `spread` from the thinnest to the thickest of them [mm];
    `each_g` is what a piece took on average.
    """

    dip: str
    pieces: int
    each_g: float
    film: Figure
    spread: Estimate
    card: Figure


def own_film(
    dessert: Dessert, kitchen: Kitchen, weighed: Sequence[tuple[float, float]]
) -> OwnFilm:
    """Work the film out from (before, after) [g] of each piece, after heavier.

    Raises
    ------
    ValueError
        If nothing was weighed, or the piece is not dipped.
    """
    dip = dip_of(dessert)
    if dip is None:
        raise ValueError(f"{dessert.name} has no dip, and so no film to weigh")
    if not weighed:
        raise ValueError("no piece was weighed")
    made = component_of(dessert, dip.component)
    surface = coated(dessert, dip, mould_of(kitchen, dessert.mould))

    def film(*some: tuple[float, float]) -> Figure:
        before, after = (sum(side) for side in zip(*some, strict=True))
        return film_from_weighing(
            _scale("before", before, len(some)),
            _scale("after", after, len(some)),
            len(some),
            surface,
            made.density,
        )

    whole = film(*weighed)
    singles = [film(one).value for one in weighed]
    return OwnFilm(
        dip=made.name,
        pieces=len(weighed),
        each_g=sum(after - before for before, after in weighed) / len(weighed),
        film=whole,
        spread=Estimate(
            low=min(*singles, whole.value),
            likely=whole.value,
            high=max(*singles, whole.value),
            unit="mm",
            reason=Words("from piece to piece"),
        ),
        card=dip.film,
    )


def _scale(when: str, grams: float, pieces: int) -> Figure:
    name = f"pieces {when} the dip"
    return Figure(name=name, value=grams, unit="g", origin=Measured(readings=pieces))
