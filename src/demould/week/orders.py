"""Every order of a folder with its amounts, its variant in place."""

from collections.abc import Iterable
from dataclasses import replace
from datetime import datetime

from demould.mise.dessert import Dessert
from demould.mise.find import find_in
from demould.mise.folder import Folder, dessert_of
from demould.mise.order import Order
from demould.mise.variant import as_variant
from demould.plan.kitchen.parts import ToMake
from demould.week.deliveries import arrivals_of
from demould.week.making import Making, making_of
from demould.week.to_plan import to_make


def makings_of(folder: Folder) -> tuple[Making, ...]:
    """Work out every order's amounts, by due time."""
    find = find_in(folder.larder)
    return tuple(
        making_of(order, ordered(folder, order), folder.kitchen, find)
        for order in sorted(folder.orders, key=lambda order: order.due)
    )


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
    arrivals = arrivals_of(makings, folder.larder, folder.kitchen, now, find)
    return tuple(to_make(making, arrivals[making.order.key]) for making in makings)


def ordered(folder: Folder, order: Order) -> Dessert:
    """Give the dessert of an order, its variant in place."""
    own = (stocked.key for stocked in folder.larder)
    return as_variant(dessert_of(folder, order.dessert), order.variant, own)
