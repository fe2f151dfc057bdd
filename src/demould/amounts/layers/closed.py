"""Closed pieces: filled through a hole, or joined from two halves."""

import math
from dataclasses import dataclass

from demould.amounts.layers.piece import Piece, fillers_of
from demould.amounts.shape.body import has_corners
from demould.amounts.shape.section import box_mm
from demould.mise.dessert import Dessert, FromMould
from demould.mise.figure import Figure, worked
from demould.mise.mould import Mould
from demould.mise.shape import Shape
from demould.mise.words import Words


@dataclass(frozen=True, slots=True, kw_only=True)
class Closing:
    """How the filler of one closed piece goes in, in g.

    Attributes
    ----------
    goes
        What is filled in, go by go: into either half, or before the insert and after.
    rules
        What each go is, in a cook's words.
    """

    goes: tuple[Figure, ...]
    rules: tuple[Words, ...]


def slimmest_mm(shape: Shape) -> float:
    """The narrowest round opening that a body passes, its long side first [mm]."""
    _, middle, small = sorted(box_mm(shape), reverse=True)
    return math.hypot(middle, small) if has_corners(shape) else middle


def passes(shape: Shape, hole_mm: float) -> bool:
    """Whether a body passes a round hole, its long side first and the mould not bent."""
    return slimmest_mm(shape) < hole_mm


def closing(dessert: Dessert, mould: Mould, one: Piece) -> Closing | None:
    """Give the goes in which a closed piece is filled, None for an open mould.

    Halves take the same, the insert lies in one of them and stands out of it. Through
    a hole half of the filler goes in before the insert and the rest closes it; without
    an insert all of it goes in at once.
    """
    fillers = fillers_of(dessert)
    if not fillers or not (mould.halves or mould.hole):
        return None
    rest = next(part.grams for part in one.parts if part.how == "rest")
    has_insert = any(isinstance(layer.fill, FromMould) for layer in dessert.layers)
    if mould.halves:
        words = (Words("into one half, its insert in it"), Words("into the other half"))
    elif has_insert:
        words = (
            Words("through the hole, before the insert"),
            Words("after the insert, up to the hole: it closes the piece"),
        )
    else:
        return Closing(goes=(rest,), rules=(Words("through the hole"),))
    half = tuple(
        worked(rest.name, rest.value / 2, "g", "half of the filler", rest)
        for _ in words
    )
    return Closing(goes=half, rules=words)
