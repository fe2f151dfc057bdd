"""Steps: whose hands, how long, where it stands, what it needs first."""

from dataclasses import dataclass

from demould.mise.figure import Figure, Line


@dataclass(frozen=True, slots=True, kw_only=True)
class Hands:
    """Working minutes: a fixed part, and so much a piece ("15 min per 24").

    `per_portion` counts what is ordered (plates, slices), not what is made.
    `all_hands` is shared among everybody at work; otherwise one pair does it.
    """

    fixed: Figure | None = None
    per_piece: Figure | None = None
    per_portion: Figure | None = None
    all_hands: bool = False


@dataclass(frozen=True, slots=True, kw_only=True)
class Stand:
    """An unattended wait after the hands: at least, at most (None: no end)."""

    least: Figure
    most: Figure | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class Road:
    """One way to do a wait: this place, at least this long (blast 2.5 h, freezer 12 h)."""

    place: str
    least: Figure


@dataclass(frozen=True, slots=True, kw_only=True)
class Need:
    """Something that has to be ready: another component, up to a step of it, or all."""

    component: str
    step: str | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class Step:
    """One line of a method.

    A step has hands, or a stand, or both (hands first), or roads: places to choose
    from. `skill` is what whoever does it must know how to do. `each_round` is done once a filling of the moulds. `within` is the longest
    time from its end to the end of the next step; `hold` the longest to the use of
    what it made, from its end, or from the fridge door where it stands. `remarks` keeps every word not understood otherwise.
    """

    key: str
    hands: Hands | None = None
    stand: Stand | None = None
    roads: tuple[Road, ...] = ()
    place: str | None = None
    tools: tuple[str, ...] = ()
    needs: tuple[Need, ...] = ()
    each_round: bool = False
    skill: str | None = None
    within: Figure | None = None
    hold: Figure | None = None
    core: Figure | None = None
    remarks: tuple[str, ...] = ()
    line: Line | None = None


Method = tuple[Step, ...]
