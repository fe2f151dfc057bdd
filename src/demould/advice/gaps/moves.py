"""How far pieces, set, fat, grams, hours and money move: worked out at both ends."""

from collections.abc import Iterator
from dataclasses import replace
from types import MappingProxyType

from demould.advice.gaps.gap import Moved
from demould.advice.gaps.worked import Outcome, Point, What, Worked
from demould.advice.money import Own, money_a_piece
from demould.amounts.counts.yields import yields
from demould.matter.composition import composition
from demould.matter.grams import Find, after_cooking
from demould.matter.setting import doses
from demould.mise.component import Component
from demould.mise.dessert import Dessert
from demould.mise.kitchen import Kitchen
from demould.mise.method import Method, Step

NEWS = 0.005
"""Under half a per cent a move is not news."""

_OF_COMPONENT: tuple[What, ...] = ("grams", "fat", "dose")
DAY_H = 24.0
_FAT_POINTS = 10.0
"""Fat is weighed in parts of a band this wide. [% of the whole]"""


def outcome_of(
    dessert: Dessert,
    kitchen: Kitchen,
    find: Find,
    before: Worked | None = None,
    own: Own = MappingProxyType({}),
) -> Outcome:
    """Every number that a cook acts on; no pieces where none can be made.

    `before` is the same dessert worked out with one thing different: what does not hang
    on that is taken from there. Money is of one piece, of what `own` has a price for.
    """
    found = _pieces(dessert, kitchen, find, before, own)
    same = {id(one) for one in before.dessert.components} if before else set()
    for component in dessert.components:
        if before is not None and id(component) in same:
            for what in _OF_COMPONENT:
                point = Point(what=what, component=component.key)
                if point in before.outcome:
                    found[point] = before.outcome[point]
        else:
            found.update(_made_of(component, dessert, find))
    found[Point(what="hours", component="")] = hours_of(dessert)
    return found


def _pieces(
    dessert: Dessert, kitchen: Kitchen, find: Find, before: Worked | None, own: Own
) -> dict[Point, float]:
    """Pieces of each component and the money of one; the method alone moves none."""
    if before is not None and kitchen is before.kitchen:
        was, now = (_but_methods(one) for one in (before.dessert, dessert))
        if was == now:
            return {
                point: value
                for point, value in before.outcome.items()
                if point.what in ("pieces", "cost")
            }
    found: dict[Point, float] = {}
    try:
        given = yields(dessert, kitchen, find)
        for one in given:
            found[Point(what="pieces", component=one.component)] = one.exact.value
        money = money_a_piece(dessert, given, find, own) if own else None
        if money is not None:
            found[Point(what="cost", component="")] = money
    except ValueError:
        found[Point(what="pieces", component="")] = 0.0
    return found


def _but_methods(dessert: Dessert) -> Dessert:
    return replace(
        dessert,
        method=(),
        components=tuple(replace(one, method=()) for one in dessert.components),
    )


def _made_of(
    component: Component, dessert: Dessert, find: Find
) -> Iterator[tuple[Point, float]]:
    key = component.key
    grams = after_cooking(component, find).value
    yield Point(what="grams", component=key), grams
    if grams <= 0:
        return
    try:
        made_of = composition(component, find, dessert.components)
    except ValueError:
        return
    yield Point(what="fat", component=key), made_of.fat
    for dose in doses(component, find, dessert.components):
        yield Point(what="dose", component=key), dose.to_judge.value


def hours_of(dessert: Dessert) -> float:
    """Hours from the first hand to the plate, one thing after the other [h].

    The component that takes longest, then the steps of the whole piece; work a piece
    counts once.
    """
    longest = max((_minutes(one.method) for one in dessert.components), default=0.0)
    return (longest + _minutes(dessert.method)) / 60


def _minutes(method: Method) -> float:
    return sum(map(_step_minutes, method))


def _step_minutes(step: Step) -> float:
    work = step.hands.fixed.value if step.hands and step.hands.fixed else 0.0
    stands = step.stand.least.value if step.stand else 0.0
    roads = min((road.least.value for road in step.roads), default=0.0)
    return work + stands + roads


def moved(
    dessert: Dessert, likely: Outcome, low: Outcome, high: Outcome
) -> tuple[Moved, ...]:
    """What differs between two ends, the most first; what is no news is left out."""
    names = {one.key: one.name for one in dessert.components}
    found = [
        Moved(
            what=point.what,
            component=point.component,
            name=names.get(point.component, dessert.name),
            likely=value,
            low=low.get(point, 0.0),
            high=high.get(point, 0.0),
            unit={"pieces": "pieces", "hours": "h", "grams": "g", "cost": "money"}.get(
                point.what, "%"
            ),
            share=_share(
                point, value, low.get(point, 0.0), high.get(point, 0.0), likely
            ),
        )
        for point, value in likely.items()
    ]
    news = [one for one in found if one.share >= NEWS]
    return tuple(sorted(news, key=lambda one: -one.share))


def _share(
    point: Point, value: float, low: float, high: float, likely: Outcome
) -> float:
    """A move as a share: of the pieces, of the dose, of a band of fat, of a day.

    Pieces count in full where the component is the weakest, else by how far it comes
    near to that; grams say little that pieces do not.
    """
    span = max(value, low, high) - min(value, low, high)
    match point.what:
        case "hours":
            return span / DAY_H
        case "fat":
            return span / _FAT_POINTS / 4
        case "grams":
            return 0.5 * span / value if value else 0.0
        case "pieces":
            weakest = min(
                (pieces for one, pieces in likely.items() if one.what == "pieces"),
                default=value,
            )
            here = min(low, value, high)
            near = 1.0 if here <= weakest else weakest / here
            return near * span / value if value else 0.0
        case _:
            return span / value if value else 0.0
