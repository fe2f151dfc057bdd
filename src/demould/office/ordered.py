"""One order, worked out far enough to be bought for and costed."""

from collections.abc import Mapping
from dataclasses import dataclass, field
from datetime import datetime

from demould.amounts.counts.factors import Make
from demould.mise.dessert import Dessert
from demould.mise.order import Order


@dataclass(frozen=True, slots=True, kw_only=True)
class Ordered:
    """An order with what is made for it.

    `pieces` is what there will be, spares and what is frozen already included; `makes`
    is what is made of each component. `banked` are grams of a component left over from
    before, which go in first.
    """

    order: Order
    dessert: Dessert
    pieces: int
    makes: tuple[Make, ...]
    banked: Mapping[str, float] = field(default_factory=dict)


@dataclass(frozen=True, slots=True, kw_only=True)
class Begin:
    """When something is first needed: as planned, and the latest that still works."""

    planned: datetime | None = None
    latest: datetime | None = None


PLATE = ""
"""Stands for a component's key where something goes beside the piece as it is bought."""

Begins = Mapping[tuple[str, str], Begin]
"""By order and component (`PLATE`: at the pass)."""
