"""So many of a dessert, ready at a moment."""

from dataclasses import dataclass
from datetime import datetime
from decimal import Decimal
from typing import Literal

from demould.mise.figure import Figure, Line


@dataclass(frozen=True, slots=True, kw_only=True)
class Frozen:
    """What is in the freezer already: whole pieces, or so many of a component."""

    pieces: int
    component: str | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class Asked:
    """A request by its name in the larder's table, and for whom, as written."""

    request: str
    who: str = ""


@dataclass(frozen=True, slots=True, kw_only=True)
class Order:
    """One order.

    `due` is aware, in the kitchen's zone. `spares` is None where the kitchen's own
    breakage decides. `frozen` is made already, and counts. `price` is what one piece is
    sold at, tax with it. `choices` are the cook's lines under it (by hand, even rounds),
    `remarks` the words after each of them, "" where there are none. `requests` are what
    guests asked for.
    """

    key: str
    dessert: str
    variant: str | None = None
    pieces: int
    due: datetime
    ends: Literal["plates", "collected"] = "plates"
    spares: Figure | None = None
    frozen: tuple[Frozen, ...] = ()
    price: Decimal | None = None
    choices: tuple[str, ...] = ()
    remarks: tuple[str, ...] = ()
    requests: tuple[Asked, ...] = ()
    line: Line | None = None
