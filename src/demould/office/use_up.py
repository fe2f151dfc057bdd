"""What should be used up, and what it fits into: first expiring first."""

from collections.abc import Iterable, Iterator
from dataclasses import dataclass
from datetime import date

from demould.matter.grams import Find, weighed_lines
from demould.mise.dessert import Dessert
from demould.mise.own_larder import Larder, Stocked
from demould.mise.words import Words
from demould.office.bank import Shelf
from demould.office.buying import Call
from demould.office.needs import Need
from demould.office.stock import in_house

SPECK_G = 1.0


@dataclass(frozen=True, slots=True, kw_only=True)
class Fit:
    """A dessert it goes into.

    `grams` is what the component takes of it as written; `this_week` whether it is
    made this week anyway.
    """

    dessert: str
    component: str
    grams: float
    this_week: bool


@dataclass(frozen=True, slots=True, kw_only=True)
class UseUp:
    """Something left over, until when it is good, and what it fits, the week's first."""

    what: str
    grams: float
    until: date | None
    fits: tuple[Fit, ...]
    caution: Words | None = None


def use_up_of(
    needs: Iterable[Need],
    calls: Iterable[Call],
    larder: Larder,
    shelves: Iterable[Shelf],
    desserts: Iterable[Dessert],
    ordered: Iterable[str],
    find: Find,
) -> tuple[UseUp, ...]:
    """Give what the week leaves over of what does not keep, and left-over dips and glazes.

    Left-over dip and glaze come first, then what is good for the shortest.
    """
    desserts, ordered = tuple(desserts), frozenset(ordered)
    bought = tuple(_left_of_stock(needs, calls, larder))
    found = [
        UseUp(
            what=stocked.key,
            grams=grams,
            until=until,
            fits=tuple(_fits(stocked.key, desserts, ordered, find)),
        )
        for stocked, grams, until in bought
    ]
    found.sort(key=lambda one: (one.until or date.max, one.what))
    return (*_left_over(shelves, desserts, ordered), *found)


def _left_of_stock(
    needs: Iterable[Need], calls: Iterable[Call], larder: Larder
) -> Iterator[tuple[Stocked, float, date]]:
    used = {need.name: need.used.value for need in needs}
    called = {call.need.name: call for call in calls}
    for stocked in larder:
        call = called.get(stocked.key)
        stock = in_house(stocked)
        until = call.good_until if call else stocked.use_by
        if call is not None:
            left = call.left.value
        else:
            left = stock.value - used.get(stocked.key, 0.0) if stock else 0.0
        if until is not None and left > SPECK_G:
            yield stocked, left, until


def _fits(
    key: str, desserts: tuple[Dessert, ...], ordered: frozenset[str], find: Find
) -> Iterator[Fit]:
    for dessert in sorted(desserts, key=lambda one: one.key not in ordered):
        for component in dessert.components:
            grams = sum(
                each.value
                for line, each in weighed_lines(component.formula, find)
                if line.ingredient == key
            )
            if grams:
                yield Fit(
                    dessert=dessert.name,
                    component=component.name,
                    grams=grams,
                    this_week=dessert.key in ordered,
                )


def _left_over(
    shelves: Iterable[Shelf], desserts: tuple[Dessert, ...], ordered: frozenset[str]
) -> Iterator[UseUp]:
    known = {one.key: one for one in desserts}
    for shelf in sorted(shelves, key=lambda one: one.good_until or date.max):
        dessert = known.get(shelf.lot.dessert)
        if not shelf.lot.grams or shelf.stays <= SPECK_G or dessert is None:
            continue
        component = next(
            one for one in dessert.components if one.key == shelf.lot.component
        )
        yield UseUp(
            what=f"{component.name} of {dessert.name}",
            grams=shelf.stays,
            until=shelf.good_until,
            fits=(
                Fit(
                    dessert=dessert.name,
                    component=component.name,
                    grams=shelf.stays,
                    this_week=dessert.key in ordered,
                ),
            ),
            caution=_carried(shelf),
        )


def _carried(shelf: Shelf) -> Words:
    """Say what may be in it that is not in its formula: pieces were held into it."""
    times = Words("; warmed {n} times already", n=shelf.lot.melted)
    return Words(
        "it has touched every part of the pieces it was on: it carries their allergens"
        " along{times}",
        times=times if shelf.lot.melted else "",
    )
