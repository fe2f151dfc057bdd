"""How fast a dip cools as pieces go in, when to warm it, and what the coat does meanwhile."""

from dataclasses import dataclass

from demould.amounts.finish.dip import InJug
from demould.amounts.layers.piece import coated
from demould.larder.fact import Fact
from demould.larder.read import bands
from demould.mise.dessert import Dessert, Dip
from demould.mise.figure import Estimate, Figure, worked
from demould.mise.mould import Mould
from demould.mise.words import Words

KIND = "thin dip"
THICK_MM = 1.0
"""A coat above this cracks (food science notes, common practice)."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Rewarm:
    """What happens in the jug while so many pieces are dipped.

    Attributes
    ----------
    heat
        What a piece takes out of the dip. [J]
    cools
        How much colder the first and the last piece of all make it, if it is never
        warmed: low is the first one at the least heat, high the last one at the most. [°C]
    window
        The dip's temperature: low, to work at, high. [°C]
    every
        Pieces of a full jug from the working temperature to the low end: at the most
        heat and at the least.
    marks
        After which pieces to warm it again, at the likely heat.
    film_at_low
        The coat at the low end of the window. [mm]
    thick_after
        The piece whose coat passes 1 mm if it is never warmed, None if none does.
    """

    heat: Estimate
    cools: Estimate
    window: Estimate
    every: tuple[int, int]
    marks: tuple[int, ...]
    film_at_low: Figure
    thick_after: int | None


def rewarm(dessert: Dessert, dip: Dip, mould: Mould, way: InJug, pieces: int) -> Rewarm:
    """Follow the jug from piece to piece.

    A piece takes heat by its coated area; the jug has less dip in it with each, and so
    cools faster. The coat thickens as the dip cools, as the usual films at both ends of
    the window tell: a curve through 0.6 mm at 34 and 1 mm at 30 °C.
    """
    heat, window = _heat(dessert, dip, mould), _window()
    heat_capacity = _fact("heat capacity").value / 1000
    first, last = way.melt.value, way.least.value + way.heel.value
    each = way.taken.value / pieces if pieces else 0.0

    def drop(joules: float, grams: float) -> float:
        return joules / (grams * heat_capacity)

    room = window.likely - window.low
    every = tuple(
        max(1, int(room / drop(joules, first))) for joules in (heat.high, heat.low)
    )
    marks, cooled = [], 0.0
    thick, unwarmed = None, 0.0
    film, grow = dip.film.value, _grows_by(window)
    for number in range(1, pieces + 1):
        step = drop(heat.likely, first - each * (number - 1))
        thicker = film * grow**unwarmed
        if thick is None and thicker > THICK_MM:
            thick = number
        unwarmed += step
        if cooled + step > room and number > 1:
            marks.append(number - 1)
            cooled = 0.0
        cooled += step
    return Rewarm(
        heat=heat,
        cools=Estimate(
            low=drop(heat.low, first),
            likely=drop(heat.likely, (first + last) / 2),
            high=drop(heat.high, last),
            unit="°C",
            reason=heat.reason,
        ),
        window=window,
        every=(every[0], every[1]),
        marks=tuple(marks),
        film_at_low=worked(
            "coat at the low end of the window",
            film * grow**room,
            "mm",
            "as the usual films at both ends of the window tell",
            dip.film,
        ),
        thick_after=thick,
    )


def _fact(quantity: str) -> Fact:
    band = bands(KIND)
    assert band is not None
    return band.more[quantity]


def _window() -> Estimate:
    warm = _fact("working temperature")
    return Estimate(
        low=warm.low,
        likely=warm.value,
        high=warm.high,
        unit="°C",
        reason=Words("usual for a thin coat"),
    )


def _grows_by(window: Estimate) -> float:
    """How many times thicker the coat is for each degree colder."""
    film = _fact("film")
    ratio: float = (film.high / film.low) ** (1 / (window.high - window.low))
    return ratio


def _heat(dessert: Dessert, dip: Dip, mould: Mould) -> Estimate:
    fact = _fact("heat taken")
    surface = coated(dessert, dip, mould).value
    return Estimate(
        low=fact.low * surface,
        likely=fact.value * surface,
        high=fact.high * surface,
        unit="J",
        reason=Words("how long it stays in and how the dip moves"),
    )


def lot_of(
    warms_c_a_minute: float, minutes_a_piece: float, spare_c: float | None = None
) -> int:
    """How many pieces may stand out together until the last of them is dipped."""
    spare = _fact("spare before soft").value if spare_c is None else spare_c
    return max(1, int(spare / (warms_c_a_minute * minutes_a_piece) + 1e-9))


def lots_of(pieces: int, each: int) -> tuple[int, ...]:
    """Part pieces into lots, full ones first."""
    full, rest = divmod(pieces, each)
    return (each,) * full + ((rest,) if rest else ())
