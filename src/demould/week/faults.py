"""What is wrong with a folder as a whole, though each of its lines can be read."""

from collections.abc import Iterator
from dataclasses import replace
from datetime import datetime

from demould.amounts.layers.fit import does_it_fit
from demould.matter.composition import composition
from demould.matter.grams import after_cooking, share
from demould.mise.component import Component
from demould.mise.dessert import Dessert
from demould.mise.figure import Line
from demould.mise.find import find_in
from demould.mise.folder import Folder
from demould.mise.order import Order
from demould.mise.problem import Problem
from demould.mise.words import Words
from demould.office.faults import faults_of as office_faults
from demould.plan.kitchen.clock import midnight_of, open_windows


def faults_of(folder: Folder, now: datetime) -> tuple[Problem, ...]:
    """Give all of it: what cannot be made, what does not fit, stock, orders never open for."""
    return (*unweighed(folder), *misfits_of(folder, now))


def unweighed(folder: Folder) -> tuple[Problem, ...]:
    """Give the components without one amount that can be weighed: nothing follows from them."""
    find = find_in(folder.larder)
    return tuple(
        _at(
            component,
            dessert,
            Words("nothing in the {part} has an amount", part=component.key),
            Words("Write an amount for at least one of its lines: 280 g cream"),
        )
        for dessert in folder.desserts
        for component in dessert.components
        if after_cooking(component, find).value <= 0
    )


def misfits_of(folder: Folder, now: datetime) -> tuple[Problem, ...]:
    """Give the faults that a draft must not have either, though it may lack amounts."""
    unfit = [
        problem
        for dessert in folder.desserts
        for problem in does_it_fit(dessert, folder.kitchen)
    ]
    return (
        *unfit,
        *_cooked_dry(folder),
        *office_faults(folder, now),
        *_nobody(folder),
        *_closed(folder, now),
    )


def _cooked_dry(folder: Folder) -> Iterator[Problem]:
    find = find_in(folder.larder)
    for dessert in folder.desserts:
        for component in dessert.components:
            if component.cooked_away is None:
                continue
            raw = replace(component, cooked_away=None)
            try:
                water = composition(raw, find, dessert.components).water
            except ValueError:
                continue
            away = 100 * share(component.cooked_away)
            if away > water:
                wrong = Words(
                    "{away:.3g} % of the {part} cooks away, and only {water:.3g} % of it"
                    " is water",
                    away=away,
                    part=component.key,
                    water=water,
                )
                remedy = Words(
                    "Weigh it before and after, and write what is gone as cooked away"
                )
                yield _at(component, dessert, wrong, remedy)


def _at(component: Component, dessert: Dessert, wrong: Words, remedy: Words) -> Problem:
    line = component.line or Line(f"desserts/{dessert.key}.yaml", 0, "")
    return Problem(line.file, line.number, line.column, wrong, remedy)


def _nobody(folder: Folder) -> Iterator[Problem]:
    if folder.orders and not folder.kitchen.people:
        yield Problem(
            "kitchen.yaml",
            0,
            0,
            Words("nobody is named who works there, and orders need hands"),
            Words("Write one name a line under people"),
        )


def _closed(folder: Folder, now: datetime) -> Iterator[Problem]:
    for order in folder.orders:
        origin = midnight_of(now, folder.kitchen.zone)
        if not open_windows(folder.kitchen, origin, now, order.due):
            yield _never_open(folder, order)


def _never_open(folder: Folder, order: Order) -> Problem:
    line = order.line or Line("orders.yaml", 0, "")
    hours = "no hours" if not folder.kitchen.openings else "no open hour left"
    return Problem(
        line.file,
        line.number,
        line.column,
        Words(
            "{order} is due {due:%a %Y-%m-%d %H:%M}, and the kitchen has {hours}"
            " before that",
            order=order.key,
            due=order.due,
            hours=hours,
        ),
        Words("Write the hours it is open in kitchen.yaml, or another due time"),
    )
