"""What a kitchen has: hours, people, moulds, tools, cold."""

from dataclasses import dataclass
from datetime import date, time
from decimal import Decimal

from demould.mise.figure import Figure, Line
from demould.mise.mould import Mould


@dataclass(frozen=True, slots=True, kw_only=True)
class Opening:
    """Open on these weekdays (Monday is 0) between two wall-clock times.

    `overtime` hours can be worked, and are the last to be.
    """

    weekdays: tuple[int, ...]
    opens: time
    closes: time
    overtime: bool = False
    line: Line | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class Away:
    """Not there on a day: all of it, or from one wall-clock time to another."""

    day: date
    from_: time | None = None
    to: time | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class Person:
    """One pair of hands. `wage` per hour, in the kitchen's money, where it is said.

    `can` are the things only some know how to do; a step may ask for one of them.
    """

    name: str
    wage: Figure | None = None
    can: tuple[str, ...] = ()
    away: tuple[Away, ...] = ()
    remarks: tuple[str, ...] = ()
    line: Line | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class Tool:
    """A tool that only one step can have at a time, and what it can take.

    `most` and `least` bound what is whipped, blended or cooked in it at once: `bowl`
    in ml, `fill` the share of it that may be full at the end, `least` in g.
    """

    key: str
    bowl: Figure | None = None
    fill: Figure | None = None
    least: Figure | None = None
    remarks: tuple[str, ...] = ()
    line: Line | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class Jug:
    """A dip jug, inside sizes in mm."""

    diameter: Figure
    height: Figure
    line: Line | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class Shelves:
    """So many shelves or levels of one size, in mm."""

    count: int
    length_mm: float
    width_mm: float


@dataclass(frozen=True, slots=True, kw_only=True)
class ColdPlace:
    """A cold place: its air, the kind that gives its film, what it takes at once.

    `load` is what it brings down in one go. [g] `shelves` is None where nobody said:
    then room is taken to be there. `film` is what a probe told of this very place, in
    W/m2K, and `humidity` what its air was found to have, in %; both win over the kind's.
    """

    key: str
    air: Figure
    kind: str
    load: Figure | None = None
    shelves: Shelves | None = None
    film: Figure | None = None
    humidity: Figure | None = None
    remarks: tuple[str, ...] = ()
    line: Line | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class Scale:
    """Weighs up to `most`, in steps of `step`, in g."""

    most: Figure
    step: Figure
    line: Line | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class Supplier:
    """Who brings things: on which weekdays (Monday is 0), how soon after a call.

    What is None is not said: any open day of the kitchen, by the kitchen's hour, called
    while the kitchen is open. An entry's own `lead` wins. `least` is money an order.
    """

    name: str
    weekdays: tuple[int, ...] | None = None
    by: time | None = None
    order_by: time | None = None
    lead: Figure | None = None
    least: Decimal | None = None
    remarks: tuple[str, ...] = ()
    line: Line | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class Packing:
    """What collected pieces are packed in: money each, how many pieces it takes.

    `desserts` are the keys of those it is for, () where for all.
    """

    name: str
    price: Decimal
    takes: int = 1
    desserts: tuple[str, ...] = ()
    line: Line | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class Draws:
    """What a tool or a cold place draws while it is used, in kW."""

    name: str
    kilowatts: Decimal
    line: Line | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class Kitchen:
    """One kitchen. `breakage` and `sure` are shares in %; `zone` an IANA name.

    What is called in arrives on an open day before `deliveries`. `height` is above the
    sea, in m. `cost_share` is what ingredients are of a price before `tax`.
    """

    name: str
    zone: str
    openings: tuple[Opening, ...] = ()
    people: tuple[Person, ...] = ()
    moulds: tuple[Mould, ...] = ()
    tools: tuple[Tool, ...] = ()
    jugs: tuple[Jug, ...] = ()
    cold: tuple[ColdPlace, ...] = ()
    scales: tuple[Scale, ...] = ()
    room: Figure | None = None
    room_humidity: Figure | None = None
    height: Figure | None = None
    breakage: Figure
    sure: Figure
    money: str = ""
    deliveries: time | None = None
    suppliers: tuple[Supplier, ...] = ()
    cost_share: Figure | None = None
    tax: Figure | None = None
    margin: Figure | None = None
    packing: tuple[Packing, ...] = ()
    energy: Decimal | None = None
    draws: tuple[Draws, ...] = ()
    line: Line | None = None
