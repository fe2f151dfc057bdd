"""What orders cost, what to charge, and what another number would mean."""

from collections.abc import Iterable, Sequence
from dataclasses import dataclass, replace
from datetime import datetime
from decimal import Decimal

from demould.mise.find import find_in
from demould.mise.folder import Folder
from demould.office.cost import Cost, cost_of
from demould.office.energy import energy_of
from demould.office.labour import labour_of
from demould.office.price import (
    USUAL_SHARE,
    Price,
    percent,
    price_as_sold,
    price_from_margin,
    price_from_share,
)
from demould.plan.kitchen.from_kitchen import Laid, lay_out
from demould.week.making import Making, making_of
from demould.week.office import ordered_of
from demould.week.to_plan import to_make

SIZES = (24, 50, 200)


@dataclass(frozen=True, slots=True, kw_only=True)
class Costing:
    """One order's cost with its prices.

    `new` is what it would cost with nothing of it in the freezer: prices go by that.
    `sold_at` is the price the order names, None where it names none; `margin` is None
    where no margin is wished for. `sizes` are costs of the same dessert alone, for
    other numbers, and `one_more` what a piece more adds to this order.
    """

    cost: Cost
    new: Cost
    share: Decimal
    tax: Decimal
    from_share: Price
    from_margin: Price | None
    sold_at: Price | None
    sizes: tuple[Cost, ...] = ()
    one_more: Decimal | None = None


def costs_of(
    makings: Sequence[Making], folder: Folder, now: datetime, laid: Laid | None = None
) -> tuple[Cost, ...]:
    """Cost all orders together, what they share parted; without a plan, laid out only."""
    makings = tuple(makings)
    if laid is None:
        laid = lay_out(folder.kitchen, [to_make(one, {}) for one in makings], now)
    find = find_in(folder.larder)
    pieces = {making.order.key: making.amounts.pieces for making in makings}
    labour = labour_of(laid, folder.kitchen, pieces)
    energy = energy_of(laid, folder.kitchen, pieces)
    return tuple(
        cost_of(
            ordered_of(making),
            folder.kitchen,
            folder.larder,
            find,
            labour[making.order.key],
            energy=energy[making.order.key],
        )
        for making in makings
    )


def costings_of(
    makings: Sequence[Making],
    folder: Folder,
    now: datetime,
    laid: Laid | None = None,
    *,
    share: Decimal | None = None,
    margin: Decimal | None = None,
    tax: Decimal | None = None,
    sizes: Iterable[int] = SIZES,
) -> tuple[Costing, ...]:
    """Cost and price all orders; what is None is the kitchen's own setting."""
    kitchen, sizes = folder.kitchen, tuple(sizes)
    costs = costs_of(makings, folder, now, laid)
    share = percent(kitchen.cost_share, USUAL_SHARE) if share is None else share
    tax = percent(kitchen.tax, Decimal(0)) if tax is None else tax
    if margin is None and kitchen.margin is not None:
        margin = percent(kitchen.margin, Decimal(0))
    found = []
    for making, cost in zip(makings, costs, strict=True):
        frozen = making.order.frozen or making.banked
        new = cost_at(making, cost.sold, folder, now) if frozen else cost
        sold_at = making.order.price
        found.append(
            Costing(
                cost=cost,
                new=new,
                share=share,
                tax=tax,
                from_share=price_from_share(new, share, tax),
                from_margin=None
                if margin is None
                else price_from_margin(new, margin, tax),
                sold_at=None if sold_at is None else price_as_sold(new, sold_at, tax),
                sizes=tuple(cost_at(making, n, folder, now) for n in sizes),
                one_more=_one_more(making, folder, now) if sizes else None,
            )
        )
    return tuple(found)


def cost_at(making: Making, pieces: int, folder: Folder, now: datetime) -> Cost:
    """Cost the same dessert alone for another number, nothing of it in the freezer."""
    order = replace(making.order, pieces=pieces, frozen=())
    if making.order.spares is not None:
        spare = making.order.spares
        value = round(spare.value * pieces / making.order.pieces)
        order = replace(order, spares=replace(spare, value=value))
    other = making_of(
        order, making.amounts.dessert, folder.kitchen, find_in(folder.larder)
    )
    return costs_of((other,), folder, now)[0]


def _one_more(making: Making, folder: Folder, now: datetime) -> Decimal:
    sold = making.order.pieces
    more, less = (cost_at(making, n, folder, now) for n in (sold + 1, sold))
    return more.whole - less.whole
