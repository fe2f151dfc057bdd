"""Orders as the tree of ``orders.yaml``."""

from collections.abc import Iterable
from itertools import zip_longest

from demould.mise.order import Frozen, Order
from demould.mise.tree import Branch
from demould.mise.write_quantity import write_moment
from demould.mise.write_tree import block, branch, joined


def write_orders(orders: Iterable[Order]) -> Branch:
    """The canonical tree: what `read_orders` reads back to the same orders."""
    return branch((order.key, _order(order)) for order in orders)


def _order(order: Order) -> Branch:
    spares = f"{order.spares.value:g}" if order.spares else ""
    choices = zip_longest(order.choices, order.remarks, fillvalue="")
    return branch(
        (
            ("dessert", order.dessert),
            ("variant", order.variant or ""),
            ("pieces", str(order.pieces)),
            (order.ends, write_moment(order.due)),
            ("spares", spares),
            ("frozen", ", ".join(map(_frozen, order.frozen))),
            ("price", f"{order.price:f} a piece" if order.price else ""),
            ("choices", block(joined(choice) for choice in choices)),
            (
                "requests",
                block(joined((one.request, one.who)) for one in order.requests),
            ),
        )
    )


def _frozen(frozen: Frozen) -> str:
    return f"{frozen.pieces} {frozen.component or 'pieces'}"
