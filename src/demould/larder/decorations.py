"""Colours, metals, leaves and flowers: where they may be on food, and what is said of them."""

from dataclasses import dataclass
from functools import cache
from typing import Literal, cast

from demould.larder.names import plain
from demould.larder.table import rows, several

Permit = Literal["yes", "limit", "ask", "no"]


@dataclass(frozen=True, slots=True, kw_only=True)
class Decoration:
    """One colour, metal, word or plant.

    `eu`, `uk` and `us` say whether it may be on food: ``limit`` with limits by food,
    ``ask`` only where it was grown for food.
    """

    name: str
    names: tuple[str, ...]
    kind: str
    eu: Permit
    uk: Permit
    us: Permit
    says: str
    source: str


@cache
def decorations() -> tuple[Decoration, ...]:
    """Every colour, metal, word and plant of the table."""
    return tuple(
        Decoration(
            name=row["name"],
            names=several(row["names"]),
            kind=row["kind"],
            eu=cast(Permit, row["eu"]),
            uk=cast(Permit, row["uk"]),
            us=cast(Permit, row["us"]),
            says=row["says"],
            source=row["source"],
        )
        for row in rows("decorations")
    )


def decorations_in(text: str) -> tuple[Decoration, ...]:
    """What of the table a text names, by whole words.

    >>> [one.name for one in decorations_in("white cocoa butter (E171)")]
    ['titanium dioxide']
    """
    said = f" {plain(text)} "
    return tuple(
        one
        for one in decorations()
        if any(f" {plain(name)} " in said for name in (one.name, *one.names))
    )
