"""Every order of a folder with its amounts, its variant in place."""

from collections.abc import Iterable, Iterator
from dataclasses import replace
from datetime import datetime
from zoneinfo import ZoneInfo

from demould.mise.dessert import Dessert
from demould.mise.find import find_in
from demould.mise.folder import Folder, dessert_of
from demould.mise.order import Order
from demould.mise.variant import as_variant
from demould.office.bank import Allotted, Wanted, allot
from demould.office.buying import arrivals_of
from demould.plan.kitchen.parts import ToMake
from demould.week.making import Making, making_of
from demould.week.office import needs_of_all
from demould.week.to_plan import to_make


def makings_of(folder: Folder, now: datetime) -> tuple[Making, ...]:
    """Work out every order's amounts, by due time, less what the freezer has."""
    if not folder.bank.lots:
        return tuple(_makings(folder, Allotted()))
    return tuple(_makings(folder, allotted_of(folder, now)))


def allotted_of(folder: Folder, now: datetime) -> Allotted:
    """Part what is in the freezer over all orders and the counter, as on a day."""
    wanted = [
        Wanted(
            order=making.order,
            dessert=making.amounts.dessert,
            pieces=making.amounts.pieces,
            grams={make.component: make.need.value for make in making.amounts.makes},
        )
        for making in _makings(folder, Allotted())
    ]
    today = now.astimezone(ZoneInfo(folder.kitchen.zone)).date()
    return allot(folder.bank, wanted, folder.desserts, today)


def _makings(folder: Folder, allotted: Allotted) -> Iterator[Making]:
    find = find_in(folder.larder)
    for order in sorted(folder.orders, key=lambda order: order.due):
        found = allotted.frozen.get(order.key, ())
        with_frozen = replace(order, frozen=(*order.frozen, *found))
        making = making_of(with_frozen, ordered(folder, order), folder.kitchen, find)
        yield replace(making, banked=allotted.grams.get(order.key, {}))


def with_order(folder: Folder, order: Order) -> Folder:
    """Give the folder with one more order, or another in the place of one so called."""
    others = tuple(one for one in folder.orders if one.key != order.key)
    return replace(folder, orders=(*others, order))


def wanted(
    folder: Folder, makings: Iterable[Making], now: datetime
) -> tuple[ToMake, ...]:
    """Give what is to be planned, from what is in the house or can be called now."""
    makings = tuple(makings)
    find = find_in(folder.larder)
    needs = needs_of_all(makings, folder, find)
    arrivals = arrivals_of(needs, folder.kitchen, now)
    return tuple(
        to_make(making, arrivals.get(making.order.key, {})) for making in makings
    )


def ordered(folder: Folder, order: Order) -> Dessert:
    """Give the dessert of an order, its variant in place."""
    own = (stocked.key for stocked in folder.larder)
    return as_variant(dessert_of(folder, order.dessert), order.variant, own)
