"""What is wrong with a folder as a whole, though each of its lines can be read."""

from collections.abc import Iterator
from datetime import datetime

from demould.amounts.layers.fit import does_it_fit
from demould.mise.figure import Line
from demould.mise.folder import Folder
from demould.mise.order import Order
from demould.mise.problem import Problem
from demould.mise.words import Words
from demould.office.faults import faults_of as office_faults
from demould.plan.kitchen.clock import midnight_of, open_windows


def faults_of(folder: Folder, now: datetime) -> tuple[Problem, ...]:
    """Give what does not fit its mould, what is wrong with stock, orders never open for."""
    unfit = [
        problem
        for dessert in folder.desserts
        for problem in does_it_fit(dessert, folder.kitchen)
    ]
    return (*unfit, *office_faults(folder, now), *_closed(folder, now))


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
