"""What the office needs of the week: orders with what is made, and when it begins."""

from collections.abc import Iterable
from datetime import datetime

from demould.matter.grams import Find
from demould.mise.component import Component
from demould.mise.dessert import Dessert
from demould.mise.folder import Folder
from demould.mise.method import Step
from demould.office.bank import Allotted
from demould.office.buying import Buying, buying_of
from demould.office.needs import Need, needs_of
from demould.office.ordered import PLATE, Begin, Ordered
from demould.office.use_up import UseUp, use_up_of
from demould.plan.kitchen.clock import moment_at
from demould.week.making import Making
from demould.week.timing import Timing


def ordered_of(making: Making) -> Ordered:
    """Give an order's amounts as the office takes them."""
    return Ordered(
        order=making.order,
        dessert=making.amounts.dessert,
        pieces=making.amounts.pieces,
        makes=making.amounts.makes,
        banked=making.banked,
    )


def needs_of_all(
    makings: Iterable[Making], folder: Folder, find: Find
) -> tuple[Need, ...]:
    """Give what all orders need of everything bought."""
    return needs_of(map(ordered_of, makings), folder.larder, find)


def buying_of_week(
    folder: Folder,
    makings: Iterable[Making],
    timing: Timing | None,
    now: datetime,
    find: Find,
) -> Buying:
    """Set the needs against the stock; without a plan nothing says by when."""
    makings = tuple(makings)
    begins = begins_of(makings, timing) if timing and timing.stands else {}
    return buying_of(needs_of_all(makings, folder, find), folder.kitchen, begins, now)


def use_up_of_week(
    folder: Folder,
    makings: Iterable[Making],
    buying: Buying,
    bank: Allotted,
    find: Find,
) -> tuple[UseUp, ...]:
    """Give what the week leaves over that does not keep, and what it fits into."""
    makings = tuple(makings)
    return use_up_of(
        needs_of_all(makings, folder, find),
        buying.calls,
        folder.larder,
        bank.shelves,
        folder.desserts,
        [making.order.dessert for making in makings],
        find,
    )


def begins_of(
    makings: Iterable[Making], timing: Timing
) -> dict[tuple[str, str], Begin]:
    """Give when each component of each order is begun, as planned and at the latest.

    A component without steps of its own begins with the step of the piece that is
    called like it or needs it; what goes beside the piece as it is bought, with the
    last.
    """
    laid = timing.laid
    orders = {step.id: step.order for step in laid.problem.steps}
    starts = {
        step.id: moment_at(laid.origin, step.start) for step in timing.schedule.steps
    }
    own: dict[tuple[str, str], Begin] = {}
    steps: dict[tuple[str, str], Begin] = {}
    for name, part in laid.parts.items():
        begin = Begin(planned=starts.get(name), latest=timing.latest.get(name))
        for order in orders[name]:
            if part.component is not None:
                key = order, part.component.key
                own[key] = _earlier(own.get(key), begin)
            else:
                key = order, part.step.key
                steps[key] = _earlier(steps.get(key), begin)
    found: dict[tuple[str, str], Begin] = {}
    for making in makings:
        dessert, order = making.amounts.dessert, making.order.key
        for component in dessert.components:
            at = _step_that_takes(dessert, component)
            key = order, component.key
            if key in own:
                found[key] = own[key]
            elif at is not None and (order, at.key) in steps:
                found[key] = steps[order, at.key]
        if dessert.method and (order, dessert.method[-1].key) in steps:
            found[order, PLATE] = steps[order, dessert.method[-1].key]
    return found


def _step_that_takes(dessert: Dessert, component: Component) -> Step | None:
    naming = (
        step
        for step in dessert.method
        if step.key == component.key
        or any(need.component == component.key for need in step.needs)
    )
    return next(naming, dessert.method[0] if dessert.method else None)


def _earlier(one: Begin | None, other: Begin) -> Begin:
    if one is None:
        return other
    planned = [begin.planned for begin in (one, other) if begin.planned]
    latest = [begin.latest for begin in (one, other) if begin.latest]
    return Begin(planned=min(planned, default=None), latest=min(latest, default=None))
