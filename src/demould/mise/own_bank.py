"""What is in the freezer already, and how many a counter should have."""

from dataclasses import dataclass
from datetime import date

from demould.mise.figure import Figure, Line


@dataclass(frozen=True, slots=True, kw_only=True)
class Lot:
    """So many pieces of a dessert or of a component, or so many grams of one.

    `component` is None for whole pieces. `keeps` is how long it is good in the
    freezer, None where the method says so. `melted` is how often it was warmed before.
    """

    dessert: str
    component: str | None = None
    variant: str | None = None
    pieces: int | None = None
    grams: Figure | None = None
    made: date
    keeps: Figure | None = None
    melted: int = 0
    line: Line | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class Par:
    """So many of a dessert a counter should have, and how many are there now."""

    dessert: str
    pieces: int
    there: int = 0
    line: Line | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class Bank:
    """The freezer's lots, and the counter's pars."""

    lots: tuple[Lot, ...] = ()
    pars: tuple[Par, ...] = ()
