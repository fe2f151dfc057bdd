"""Every order of a folder with its amounts, its variant in place."""

from demould.mise.dessert import Dessert
from demould.mise.find import find_in
from demould.mise.folder import Folder, dessert_of
from demould.mise.order import Order
from demould.mise.variant import as_variant
from demould.week.making import Making, making_of


def makings_of(folder: Folder) -> tuple[Making, ...]:
    """Work out every order's amounts, by due time."""
    find = find_in(folder.larder)
    return tuple(
        making_of(order, ordered(folder, order), folder.kitchen, find)
        for order in sorted(folder.orders, key=lambda order: order.due)
    )


def ordered(folder: Folder, order: Order) -> Dessert:
    """Give the dessert of an order, its variant in place."""
    own = (stocked.key for stocked in folder.larder)
    return as_variant(dessert_of(folder, order.dessert), order.variant, own)
