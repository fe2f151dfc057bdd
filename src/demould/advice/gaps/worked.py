"""A dessert in its kitchen with the numbers that come out."""

from collections.abc import Mapping
from dataclasses import dataclass
from typing import Literal

from demould.mise.dessert import Dessert
from demould.mise.kitchen import Kitchen

What = Literal["pieces", "dose", "fat", "grams", "hours", "cost", "freezing"]
"""`hours` are from the first hand to the plate, `freezing` those in the cold alone."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Point:
    """One number of a dessert that a cook acts on."""

    what: What
    component: str


Outcome = Mapping[Point, float]


@dataclass(frozen=True, slots=True, kw_only=True)
class Worked:
    """A dessert in its kitchen with what came out."""

    dessert: Dessert
    kitchen: Kitchen
    outcome: Outcome


Ends = tuple[Worked, Worked]
"""Worked out at the low and at the high end of what is not said."""
