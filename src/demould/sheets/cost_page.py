"""What orders cost: a line each on the week, the whole of it on a page."""

from collections.abc import Iterable, Iterator
from datetime import datetime
from decimal import Decimal

from demould.mise.kitchen import Kitchen
from demould.mise.words import Words
from demould.office.cost import Cost
from demould.office.labour import in_words
from demould.office.price import Price, verdict
from demould.sheets.office_words import money
from demould.sheets.page import Block, Cell, Column, Head, Lines, Page, Table
from demould.sheets.times import day_time
from demould.week.costing import Costing


def cost_blocks(costings: Iterable[Costing], kitchen: Kitchen) -> Iterator[Block]:
    """Give one line an order for the week, loud where it is sold under cost."""
    yield Head(
        text=Words("cost"),
        note=Words("in {money}, without tax", money=kitchen.money or "?"),
    )
    costings = tuple(costings)
    yield Table(
        columns=(Column(share=1.2), Column(share=6)),
        rows=tuple(
            (Cell(text=one.cost.name), Cell(text=_in_a_line(one.cost)))
            for one in costings
        ),
    )
    loud = [
        Words("{name}: {why}", name=one.cost.name, why=why)
        for one in costings
        if one.sold_at and (why := verdict(one.new, one.sold_at))
    ]
    if loud:
        yield Lines(lines=tuple(loud), loud=True)


def _in_a_line(cost: Cost) -> Words:
    beside = cost.plates / cost.sold
    packing = (cost.packing or Decimal(0)) / cost.sold
    return Words(
        "{sum} for {made} = {each} a sold piece{beside}{packing}; {hands}",
        sum=money(cost.ingredients),
        made=cost.made,
        each=money(cost.ingredients / cost.sold),
        beside=Words(", {money} beside it", money=money(beside)) if beside else "",
        packing=Words(", {money} packed", money=money(packing)) if packing else "",
        hands=_hands(cost),
    )


def _hands(cost: Cost) -> Words:
    if cost.labour.money is None:
        return in_words(cost.labour)
    each = money(cost.labour.money / cost.sold)
    if cost.labour_is_the_cost:
        return Words("labour {each} is the cost", each=each)
    return Words("labour {each}", each=each)


def cost_page(kitchen: Kitchen, costings: Iterable[Costing], now: datetime) -> Page:
    """Lay out what each order costs, what to charge, and what other numbers mean."""
    return Page(
        key="cost",
        title=Words("{kitchen}, cost and price", kitchen=kitchen.name.upper()),
        note=Words("drawn up {now}", now=day_time(now)),
        blocks=tuple(block for one in costings for block in _of_order(one)),
        foot=(
            Words(
                "in {money}; without tax unless it says so; rounded only for reading",
                money=kitchen.money or "?",
            ),
        ),
    )


def _of_order(one: Costing) -> Iterator[Block]:
    cost = one.cost
    yield Head(
        text=Words("{name}, {order}", name=cost.name, order=cost.order),
        note=Words("{made} made, {sold} sold", made=cost.made, sold=cost.sold),
    )
    yield Table(
        columns=(
            Column(share=3),
            Column(head=Words("in all"), align="right"),
            Column(head=Words("a piece made"), align="right"),
            Column(head=Words("a piece sold"), align="right"),
        ),
        rows=tuple(_rows(cost)),
    )
    largest = " . ".join(f"{name} {money(amount)}" for name, amount in cost.largest)
    lines = [Words("largest: {largest}", largest=largest)]
    if cost.labour_is_the_cost:
        lines.append(
            Words(
                "labour is the cost: {hands}, more than all that is bought",
                hands=in_words(cost.labour),
            )
        )
    yield Lines(lines=tuple(lines))
    yield from _prices(one)
    yield from _sizes(one)
    if cost.assumed:
        yield Lines(lines=cost.assumed)


def _rows(cost: Cost) -> Iterator[tuple[Cell, ...]]:
    beside = {line.component for line in cost.beside}
    for name, amount in cost.of_components:
        if name not in beside:
            yield _row(name, amount, cost)
    yield _row(Words("ingredients of the pieces"), cost.ingredients, cost, strong=True)
    for name, amount in cost.of_components:
        if name in beside:
            yield _row(Words("beside it: {name}", name=name), amount, cost)
    if cost.packing:
        yield _row(Words("packing"), cost.packing, cost)
    if cost.labour.money is not None:
        yield _row(in_words(cost.labour), cost.labour.money, cost)
    if cost.energy is not None:
        yield _row(Words("energy"), cost.energy, cost)
    yield _row(Words("all of it"), cost.whole, cost, strong=True)


def _row(
    name: Words | str, amount: Decimal, cost: Cost, *, strong: bool = False
) -> tuple[Cell, ...]:
    return (
        Cell(text=name, strong=strong),
        Cell(text=money(amount)),
        Cell(text=money(amount / cost.made)),
        Cell(text=money(amount / cost.sold)),
    )


def _prices(one: Costing) -> Iterator[Block]:
    prices = [
        price for price in (one.from_share, one.from_margin, one.sold_at) if price
    ]
    yield Table(
        columns=(
            Column(
                head=Words("price of a piece")
                if one.new is one.cost
                else Words("price of a piece, were all made new"),
                share=3,
            ),
            Column(head=Words("without tax"), align="right"),
            Column(
                head=Words("with {tax:f} %", tax=one.tax.normalize()), align="right"
            ),
            Column(head=Words("left of it"), align="right"),
        ),
        rows=tuple(_price(price, one.new) for price in prices),
    )
    loud = [
        Words("{rule}: {why}", rule=price.rule, why=why)
        for price in prices
        if (why := verdict(one.new, price))
    ]
    if loud:
        yield Lines(lines=tuple(loud), loud=True)


def _price(price: Price, cost: Cost) -> tuple[Cell, ...]:
    return (
        Cell(text=price.rule),
        Cell(text=money(price.net)),
        Cell(text=money(price.gross)),
        Cell(text=money(price.net - cost.a_sold_piece)),
    )


def _sizes(one: Costing) -> Iterator[Block]:
    if not one.sizes:
        return
    yield Table(
        columns=(
            Column(head=Words("sold, alone"), align="right"),
            Column(head=Words("made"), align="right"),
            Column(head=Words("bought, a piece"), align="right", share=1.3),
            Column(head=Words("hands, a piece"), align="right", share=1.3),
            Column(head=Words("all, a piece"), align="right", share=1.3),
            Column(head=Words("left at that share"), align="right", share=1.4),
        ),
        rows=tuple(_size(cost, one.share) for cost in one.sizes),
    )
    if one.one_more is not None:
        yield Lines(
            lines=(
                Words("one more piece sold adds {money}", money=money(one.one_more)),
            )
        )


def _size(cost: Cost, share: Decimal) -> tuple[Cell, ...]:
    net = cost.ingredients / cost.sold * 100 / share
    bought = (cost.materials + (cost.packing or Decimal(0))) / cost.sold
    hands = (cost.labour.money or Decimal(0)) / cost.sold
    return (
        Cell(text=str(cost.sold)),
        Cell(text=str(cost.made)),
        Cell(text=money(bought)),
        Cell(text=money(hands)),
        Cell(text=money(cost.a_sold_piece)),
        Cell(text=money(net - cost.a_sold_piece)),
    )
