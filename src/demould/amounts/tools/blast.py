"""How often a machine that brings down so many grams at once has to run."""

import math

from demould.mise.figure import Figure, worked
from demould.mise.kitchen import ColdPlace
from demould.mise.words import Words


def frozen_g(pieces: int, inside: Figure) -> Figure:
    """What so many pieces weigh as they go in to freeze, without their finish [g]."""
    rule = Words("{n} pieces x {g:.1f} g", n=pieces, g=inside.value)
    return worked("goes in to freeze", pieces * inside.value, "g", rule, inside)


def cycles(grams: float, place: ColdPlace) -> int | None:
    """Runs of a cold place for so many grams; None where nobody said what it takes."""
    if place.load is None:
        return None
    return max(1, math.ceil(grams / place.load.value - 1e-9))
