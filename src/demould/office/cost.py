"""What an order costs: ingredients, packing, hands; a piece made, a piece sold."""

import math
from collections.abc import Iterator
from dataclasses import dataclass
from decimal import Decimal

from demould.matter.grams import Find
from demould.mise.kitchen import Kitchen
from demould.mise.own_larder import Larder, Stocked
from demould.mise.words import Words
from demould.office.labour import Labour
from demould.office.money import exact, total
from demould.office.needs import as_bought, called, left_of, uses_of
from demould.office.ordered import PLATE, Ordered
from demould.office.packs import least_cost, price_a_bought_kg

LARGEST = 3
WATER = "water"


@dataclass(frozen=True, slots=True, kw_only=True)
class Line:
    """What one ingredient of one component costs: grams used up, as weighed out."""

    component: str
    ingredient: str
    grams: float
    money: Decimal


@dataclass(frozen=True, slots=True, kw_only=True)
class Cost:
    """What one order costs, nothing rounded.

    Attributes
    ----------
    made, sold
        Pieces made, spares with them, and pieces sold.
    lines
        Every ingredient that goes into the pieces.
    beside
        What goes beside them on the plate: sauce, groats.
    packing
        Boxes, 0 where there are none; None where it is collected and nobody says.
    labour
        Hands, out of the plan's steps.
    energy
        What tools and cold places draw, where the kitchen says what that costs.
    assumed
        What is not known, and how it was counted.
    """

    order: str
    name: str
    made: int
    sold: int
    lines: tuple[Line, ...]
    beside: tuple[Line, ...]
    packing: Decimal | None
    labour: Labour
    energy: Decimal | None
    assumed: tuple[Words, ...]

    @property
    def ingredients(self) -> Decimal:
        """Everything in the pieces."""
        return total([line.money for line in self.lines])

    @property
    def plates(self) -> Decimal:
        """Everything beside them."""
        return total([line.money for line in self.beside])

    @property
    def materials(self) -> Decimal:
        """In the pieces and beside them."""
        return self.ingredients + self.plates

    @property
    def whole(self) -> Decimal:
        """All of it; what nobody says counts nothing."""
        return (
            self.materials
            + (self.packing or Decimal(0))
            + (self.labour.money or Decimal(0))
            + (self.energy or Decimal(0))
        )

    @property
    def a_sold_piece(self) -> Decimal:
        """All of it by the pieces sold."""
        return self.whole / self.sold

    @property
    def labour_is_the_cost(self) -> bool:
        """Whether hands cost more than all that is bought."""
        bought = self.materials + (self.packing or Decimal(0))
        return self.labour.money is not None and self.labour.money > bought

    @property
    def of_components(self) -> tuple[tuple[str, Decimal], ...]:
        """What each component costs, in the order they are made."""
        found: dict[str, Decimal] = {}
        for line in (*self.lines, *self.beside):
            found[line.component] = found.get(line.component, Decimal(0)) + line.money
        return tuple(found.items())

    @property
    def largest(self) -> tuple[tuple[str, Decimal], ...]:
        """Give the three largest lines: ingredients over all components, hands, boxes."""
        found: dict[str, Decimal] = {}
        for line in (*self.lines, *self.beside):
            found[line.ingredient] = found.get(line.ingredient, Decimal(0)) + line.money
        if self.labour.money:
            found["hands"] = self.labour.money
        if self.packing:
            found["packing"] = self.packing
        if self.energy:
            found["energy"] = self.energy
        ranked = sorted(found.items(), key=lambda one: (-one[1], one[0]))
        return tuple(ranked[:LARGEST])


def cost_of(
    one: Ordered,
    kitchen: Kitchen,
    larder: Larder,
    find: Find,
    labour: Labour,
    *,
    energy: Decimal | None = None,
) -> Cost:
    """Cost one order with what is used up for it.

    What only stands in a jug goes back and is not charged; what else is left over is.
    What comes out of the bank was charged when it was made.
    """
    own = {stocked.key: stocked for stocked in larder}
    beside_keys = {plate.component for plate in one.dessert.plate} | {PLATE}
    inside = {layer.component for layer in one.dessert.layers} | {
        finish.component for finish in one.dessert.finish
    }
    names = {make.component: make.name for make in one.makes} | {PLATE: "on the plate"}
    lines: list[Line] = []
    beside: list[Line] = []
    unpriced: dict[str, float] = {}
    for use in uses_of(one, find):
        bought, times = as_bought(use.ingredient, own)
        stocked = own.get(bought)
        price = _price_a_kg(stocked, use.used * times) if stocked else None
        if price is None:
            if not _is_water(bought, stocked):
                name = called(bought, own, find)
                unpriced[name] = unpriced.get(name, 0.0) + use.used * times
            continue
        money = price * exact(use.used * times) / 1000
        line = Line(
            component=names[use.component],
            ingredient=use.ingredient,
            grams=use.used,
            money=money,
        )
        on_plate = use.component in beside_keys and use.component not in inside
        (beside if on_plate else lines).append(line)
    packing = packing_of(one, kitchen)
    return Cost(
        order=one.order.key,
        name=one.dessert.name,
        made=one.pieces,
        sold=one.order.pieces,
        lines=tuple(lines),
        beside=tuple(beside),
        packing=packing,
        labour=labour,
        energy=energy,
        assumed=tuple(_assumed(one, unpriced, labour, packing)),
    )


def packing_of(one: Ordered, kitchen: Kitchen) -> Decimal | None:
    """Give what the boxes of a collected order cost; 0 on plates, None where nobody says."""
    if one.order.ends != "collected":
        return Decimal(0)
    for box in kitchen.packing:
        if not box.desserts or one.dessert.key in box.desserts:
            return box.price * math.ceil(one.order.pieces / box.takes)
    return None


def _price_a_kg(stocked: Stocked, grams: float) -> Decimal | None:
    """Give money a kilo as it is bought, in such packs as so much would be bought in."""
    if stocked.price is not None:
        return price_a_bought_kg(stocked)
    packs = least_cost(grams, stocked)
    if not packs or any(one.price is None for one in packs):
        return None
    paid = total([one.price * one.count for one in packs if one.price is not None])
    return paid * 1000 / exact(sum(one.grams for one in packs))


def _is_water(name: str, stocked: Stocked | None) -> bool:
    return WATER in (name, stocked.like if stocked else None)


def _assumed(
    one: Ordered, unpriced: dict[str, float], labour: Labour, packing: Decimal | None
) -> Iterator[Words]:
    if unpriced:
        yield Words(
            "no price: {what}; counted as nothing",
            what=", ".join(f"{name} {grams:.0f} g" for name, grams in unpriced.items()),
        )
    if labour.wage is None:
        yield Words("no wage is written: hands are not in it")
    if packing is None:
        yield Words("nobody says what it is packed in: write packing in kitchen.yaml")
    for make in one.makes:
        left = left_of(make, one.banked.get(make.component, 0.0))
        if make.made == "as the jug needs" and left > 1:
            yield Words(
                "{name}: {left:.0f} g stay in the jug for next time, not charged",
                name=make.name,
                left=left,
            )
        elif make.made == "whole batches" and left > 1:
            yield Words(
                "{name}: whole batches are charged, {left:.0f} g are left over",
                name=make.name,
                left=left,
            )
    if one.banked or one.order.frozen:
        yield Words("what comes out of the freezer was paid for when it was made")
