"""What moves when one thing is changed: two weeks, and only where they differ."""

from collections.abc import Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass
from datetime import datetime

from demould.amounts.layers.wall import walls
from demould.matter.grams import Find
from demould.mise.dessert import component_of
from demould.mise.find import find_in
from demould.mise.folder import Folder
from demould.mise.kitchen import Kitchen
from demould.week.chilling import Chilling, chilling_of
from demould.week.costing import costs_of
from demould.week.making import Making
from demould.week.orders import makings_of
from demould.week.sections import planned
from demould.week.timing import Timing

NEWS = 1e-4
"""A change under a hundredth of a per cent is none."""

Value = float | datetime | None


@dataclass(frozen=True, slots=True)
class Thing:
    """What is looked at: of which order, under which heading, its name and unit."""

    order: str
    about: str
    name: str
    unit: str = ""


@dataclass(frozen=True, slots=True, kw_only=True)
class Move:
    """One thing in both weeks; None where one of them has no such thing."""

    thing: Thing
    before: Value
    after: Value


Measures = Mapping[Thing, Value]


def what_if(
    before: Folder, after: Folder, now: datetime, *, quick: bool = False
) -> tuple[Move, ...]:
    """Give all that moves from one folder to the other, in the order a cook asks.

    Both weeks are frozen and planned, which takes some seconds; `quick` looks at amounts
    only.

    Raises
    ------
    ValueError
        If a piece of the changed week cannot be: its faults say so in a cook's words.
    """
    kept: list[_Chilled] = []
    first = _measures(before, now, kept, quick=quick)
    second = _measures(after, now, kept, quick=quick)
    things = _in_order(dict.fromkeys([*first, *second]))
    return tuple(
        Move(thing=thing, before=first.get(thing), after=second.get(thing))
        for thing in things
        if _differ(first.get(thing), second.get(thing))
    )


def _in_order(things: Iterable[Thing]) -> list[Thing]:
    """Order by order, heading by heading, each where it first came."""
    things = tuple(things)
    orders = list(dict.fromkeys(thing.order for thing in things))
    heads = list(dict.fromkeys(thing.about for thing in things))
    return sorted(
        things,
        key=lambda thing: (orders.index(thing.order), heads.index(thing.about)),
    )


def _differ(one: Value, other: Value) -> bool:
    if isinstance(one, float | int) and isinstance(other, float | int):
        return abs(one - other) > NEWS * max(abs(one), abs(other))
    return one != other


@dataclass(frozen=True, slots=True)
class _Chilled:
    """What froze and thawed so long: a dessert in the places of a kitchen."""

    hangs_on: tuple[object, ...]
    found: tuple[tuple[Thing, Value], ...]


def _measures(
    folder: Folder, now: datetime, kept: list[_Chilled], *, quick: bool
) -> Measures:
    """Give every number of a folder's week that a cook acts on."""
    makings = makings_of(folder, now)
    found: dict[Thing, Value] = {}
    for making in makings:
        found.update(_amounts(making, folder.kitchen))
    for cost in costs_of(makings, folder, now):
        for name, money in (
            ("ingredients", cost.ingredients),
            ("all of it", cost.whole),
            ("a sold piece", cost.a_sold_piece),
        ):
            thing = Thing(cost.order, "cost", name, folder.kitchen.money or "units")
            found[thing] = float(money)
    if not quick:
        find = find_in(folder.larder)
        for making in makings:
            found.update(_kept_cold(making, folder, find, kept))
        found.update(plan_of(makings, planned(folder, makings, now)))
    return found


def _amounts(making: Making, kitchen: Kitchen) -> Iterator[tuple[Thing, Value]]:
    order, amounts = making.order.key, making.amounts
    yield Thing(order, "pieces", "to make"), amounts.made.value
    yield Thing(order, "pieces", "rounds"), float(amounts.rounds.count)
    for count in amounts.counts.each:
        yield Thing(order, "as written it gives", count.name), float(count.pieces)
    for make in amounts.makes:
        yield Thing(order, "factor", make.name, "x"), make.factor.value
    for make in amounts.makes:
        yield Thing(order, "to weigh", make.name, "g"), make.weigh.value
    for part in amounts.piece.parts:
        name = component_of(amounts.dessert, part.component).name
        yield Thing(order, "in a piece", name, "g"), part.grams.value
    yield Thing(order, "in a piece", "the whole piece", "g"), amounts.piece.whole.value
    for wall in walls(amounts.dessert, kitchen):
        if not wall.part.flush:
            name = component_of(amounts.dessert, wall.part.layer.component).name
            yield Thing(order, "least wall", name, "mm"), wall.least.value
    if amounts.jug is not None:
        wide = f"in the {amounts.jug.jug.diameter.value:g} mm jug"
        yield Thing(order, "to melt", wide, "g"), amounts.jug.melt.value
    for whip in amounts.whips:
        name = f"round {whip.round}"
        yield Thing(order, "in the bowl", name, "g"), whip.bowl.mass.value


def _kept_cold(
    making: Making, folder: Folder, find: Find, kept: list[_Chilled]
) -> tuple[tuple[Thing, Value], ...]:
    """Freeze and thaw only what is not as it was in the other week."""
    kitchen = folder.kitchen
    hangs_on = (
        making.order.key,
        making.amounts.dessert,
        kitchen.moulds,
        kitchen.cold,
        kitchen.room,
        folder.larder,
    )
    for one in kept:
        if one.hangs_on == hangs_on:
            return one.found
    found = tuple(cold_of(making, kitchen, find))
    kept.append(_Chilled(hangs_on, found))
    return found


def cold_of(
    making: Making, kitchen: Kitchen, find: Find
) -> Iterator[tuple[Thing, Value]]:
    """Give the hours to freeze and to thaw one order's pieces, place by place."""
    chilled: Chilling = chilling_of(
        making.amounts.dessert, kitchen, find, in_full=False
    )
    for about, places in (("freezes", chilled.freezing), ("thaws", chilled.thawing)):
        for place in places:
            name = f"{place.place.key} {place.how}".strip()
            hours = None if place.wait.hours is None else place.wait.hours.likely
            yield Thing(making.order.key, about, name, "h"), hours


def plan_of(makings: Sequence[Making], timing: Timing) -> Iterator[tuple[Thing, Value]]:
    """Give what each order has to spare, and the latest starts a cook asks about."""
    for making in makings:
        spare = timing.spare.get(making.order.key)
        minutes = None if spare is None else float(spare)
        yield Thing(making.order.key, "in the plan", "to spare", "min"), minutes
    for entry in timing.entries:
        part = entry.part
        order = part.make.order.key
        latest = timing.latest.get(entry.id)
        if latest is not None:
            made = "piece" if part.component is None else part.component.name
            name = f"{made}, {entry.id.rpartition('.')[2]}"
            yield Thing(order, "latest start", name), latest
