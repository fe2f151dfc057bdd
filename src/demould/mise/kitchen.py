"""What a kitchen has: hours, people, moulds, tools, cold."""

from dataclasses import dataclass
from datetime import time

from demould.mise.figure import Figure, Line
from demould.mise.mould import Mould


@dataclass(frozen=True, slots=True, kw_only=True)
class Opening:
    """Open on these weekdays (Monday is 0) between two wall-clock times."""

    weekdays: tuple[int, ...]
    opens: time
    closes: time
    line: Line | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class Person:
    """One pair of hands. `wage` per hour, in the kitchen's money, where it is said."""

    name: str
    wage: Figure | None = None
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
class ColdPlace:
    """A cold place: its air, the kind that gives its film, what it takes at once.

    `film` is what a probe told of this very place, in W/m2K; it wins over the kind's.
    """

    key: str
    air: Figure
    kind: str
    load: Figure | None = None
    film: Figure | None = None
    remarks: tuple[str, ...] = ()
    line: Line | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class Scale:
    """Weighs up to `most`, in steps of `step`, in g."""

    most: Figure
    step: Figure
    line: Line | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class Kitchen:
    """One kitchen. `breakage` and `sure` are shares in %; `zone` an IANA name.

    What is called in arrives on an open day before `deliveries`. `height` is above the
    sea, in m.
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
    line: Line | None = None
