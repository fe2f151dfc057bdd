"""Grams as they stand on a card."""

from dataclasses import dataclass

from demould.mise.figure import Figure, Line


@dataclass(frozen=True, slots=True, kw_only=True)
class FormulaLine:
    """One line: amount, ingredient, remark.

    `amount` is None where the card does not say; its unit is as written (g, ml, leaf).
    `ingredient` is the resolved id, the kitchen's own larder first, or None where
    nothing is called that. A line is known by its component and `ordinal`, from 1.
    `component` is the part of the same dessert that goes in instead of an ingredient.
    `strained_out` solids leave the mix again; `keeps` is how much liquid they hold,
    times their own weight; `made_up` liquids are topped up to the amount written, so
    that what the solids keep is an extra need.
    """

    ordinal: int
    amount: Figure | None
    what: str
    ingredient: str | None
    state: str = ""
    remarks: tuple[str, ...] = ()
    strained_out: bool = False
    made_up: bool = False
    component: str | None = None
    keeps: Figure | None = None
    line: Line | None = None


Formula = tuple[FormulaLine, ...]
