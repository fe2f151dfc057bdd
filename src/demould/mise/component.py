"""One part of a dessert: what goes in, what is lost, how it is made."""

from dataclasses import dataclass
from typing import Literal

from demould.mise.figure import Figure, Line
from demould.mise.formula import Formula
from demould.mise.method import Method


@dataclass(frozen=True, slots=True, kw_only=True)
class Loss:
    """What sticks: a share of the batch first, then fixed grams, a batch or a whip."""

    share: Figure
    fixed: Figure | None = None
    once_a: Literal["batch", "whip"] = "batch"


@dataclass(frozen=True, slots=True, kw_only=True)
class Scaled:
    """Made by its own factor, to the gram."""


@dataclass(frozen=True, slots=True, kw_only=True)
class WholeBatches:
    """Made as written, once or more: a sheet of sponge, a pan of glaze."""


@dataclass(frozen=True, slots=True, kw_only=True)
class InSteps:
    """Made up to the next so many grams."""

    of: Figure


Making = Scaled | WholeBatches | InSteps


@dataclass(frozen=True, slots=True, kw_only=True)
class Tray:
    """The inside of a tray or frame, in mm."""

    length_mm: float
    width_mm: float


@dataclass(frozen=True, slots=True, kw_only=True)
class Sheet:
    """Baked or rolled flat, then cut: the tray, and the gap between cuts, in mm.

    `shifted` where discs may be cut in rows that stand between each other.
    """

    tray: Tray
    gap: Figure
    shifted: bool = False


@dataclass(frozen=True, slots=True, kw_only=True)
class Component:
    """A component of a dessert.

    `density` is un-aerated, `whipped` what goes into the piece where it is whipped.
    [g/ml] `cooked_away` is the share of the mixed mass that leaves in the pan or oven.
    `in_all` is the total that somebody wrote beside the formula. [g]
    `kind` picks its band (whipped ganache, pectin NH centre, mirror glaze ...).
    """

    key: str
    name: str
    kind: str
    formula: Formula
    density: Figure
    whipped: Figure | None = None
    cooked_away: Figure | None = None
    loss: Loss
    making: Making = Scaled()
    sheet: Sheet | None = None
    method: Method = ()
    in_all: Figure | None = None
    line: Line | None = None
