"""Lots: what came, what was made of what, and where it went."""

from dataclasses import dataclass
from datetime import date

from demould.mise.figure import Line


@dataclass(frozen=True, slots=True, kw_only=True)
class Came:
    """A delivery: an ingredient under its supplier's lot."""

    lot: str
    what: str
    on: date
    supplier: str = ""
    use_by: date | None = None
    line: Line | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class Made:
    """Something made of other lots: a component, a piece, a dip with old dip in it."""

    lot: str
    what: str
    on: date
    of: tuple[str, ...]
    use_by: date | None = None
    line: Line | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class Went:
    """A lot, or part of it, that went to an order or a guest."""

    lot: str
    to: str
    on: date
    how_much: str = ""
    line: Line | None = None


Entry = Came | Made | Went
Lots = tuple[Entry, ...]
