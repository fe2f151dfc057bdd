"""What to call: today's lines for the week page, and the list to buy by."""

from collections.abc import Iterable, Iterator
from datetime import datetime

from demould.mise.figure import how_known
from demould.mise.kitchen import Kitchen
from demould.mise.words import Words
from demould.office.bank import Allotted
from demould.office.buying import Basket, Buying, Call
from demould.office.needs import Need
from demould.office.use_up import UseUp
from demould.sheets.bank_blocks import bank_blocks, use_up_blocks
from demould.sheets.office_words import day, lead, money, packs, weight, which
from demould.sheets.page import Block, Cell, Column, Head, Lines, Page, Table
from demould.sheets.times import day_time

NOTHING = Words("nothing is short: all that is needed is in the house")


def do_today(buying: Buying, now: datetime) -> Iterator[Block]:
    """Give what has to be called today, what comes too late, and what is asked."""
    today = buying.today(now)
    if not today and not buying.asks and not buying.unknown:
        return
    yield Head(text=Words("do today"))
    late = [call for call in today if call.too_late]
    if late:
        yield Lines(lines=tuple(_too_late(call) for call in late), loud=True)
    rows = [
        (Cell(text=Words("call") if number == 0 else ""), Cell(text=_today(call)))
        for number, call in enumerate(one for one in today if not one.too_late)
    ]
    rows += [
        (Cell(text=Words("ask") if number == 0 else ""), Cell(text=ask))
        for number, ask in enumerate((*buying.asks, *_unknown(buying)))
    ]
    if rows:
        yield Table(columns=(Column(share=0.5), Column(share=8)), rows=tuple(rows))


def _today(call: Call) -> Words:
    wait = call.stocked.lead or call.supplier.lead
    return Words(
        "{what}: {packs}{lead}{last}{why}",
        what=which(call),
        packs=packs(call),
        lead=Words(" ({lead})", lead=lead(wait)) if wait else "",
        last=_at_the_latest(call),
        why=Words("; {why}", why=call.remarks[0]) if call.only_to_melt else "",
    )


def _at_the_latest(call: Call) -> Words | str:
    if call.last is None:
        return ""
    if call.by is not None and call.last.date() == call.by.date():
        return Words(", by {last}, or it is too late", last=day_time(call.last))
    return Words(", at the latest {last}", last=day_time(call.last))


def _too_late(call: Call) -> Words:
    assert call.latest is not None
    return Words(
        "{what}: called now it comes {comes}, and is needed {latest} at the latest."
        " Borrow it, buy it over a counter, or take something else",
        what=which(call),
        comes=f"{day(call.comes)} {call.comes:%H:%M}",
        latest=day_time(call.latest),
    )


def _unknown(buying: Buying) -> Iterator[Words]:
    if buying.unknown:
        yield Words(
            "is it there? Not in larder.yaml: {what}", what=_listed(buying.unknown)
        )
    if buying.uncounted:
        yield Words(
            "is it there? Never counted: {what}", what=_listed(buying.uncounted)
        )


def _listed(needs: Iterable[Need]) -> str:
    return ", ".join(f"{need.name} {weight(need.have.value)}" for need in needs)


def call_page(
    kitchen: Kitchen,
    buying: Buying,
    bank: Allotted,
    use_up: Iterable[UseUp],
    now: datetime,
) -> Page:
    """Lay out the list to buy by: today first, then each supplier, then what is left."""
    return Page(
        key="buying-list",
        title=Words("{kitchen}, to call", kitchen=kitchen.name.upper()),
        note=Words("drawn up {now}", now=f"{day(now)} {now:%H:%M}"),
        blocks=tuple(_blocks(buying, bank, use_up, now)),
        foot=(_tax(kitchen),),
    )


def _tax(kitchen: Kitchen) -> Words:
    money_of = kitchen.money or "the kitchen's money"
    return Words("prices in {money}, without tax", money=money_of)


def _blocks(
    buying: Buying,
    bank: Allotted,
    use_up: Iterable[UseUp],
    now: datetime,
) -> Iterator[Block]:
    if not buying.calls:
        yield Lines(lines=(NOTHING,))
    late = [call for call in buying.calls if call.too_late]
    if late:
        yield Lines(lines=tuple(_too_late(call) for call in late), loud=True)
    for basket in buying.baskets:
        yield from _basket(basket, now)
    if buying.calls:
        yield Head(text=Words("left over, when all is made"))
        yield _left(buying.calls)
    rest = (*buying.asks, *_unknown(buying), *buying.seasons)
    if rest:
        yield Head(text=Words("ask"))
        yield Lines(lines=rest)
    yield from use_up_blocks(use_up)
    yield from bank_blocks(bank)


def _basket(basket: Basket, now: datetime) -> Iterator[Block]:
    supplier = basket.supplier
    yield Head(
        text=supplier.name or Words("no supplier named"),
        note=Words("{money} in all", money=money(basket.cost)) if basket.cost else "",
    )
    yield Table(
        columns=(
            Column(head=Words("what"), share=2.4),
            Column(head=Words("needed"), align="right", share=0.9),
            Column(head=Words("there"), align="right", share=0.8),
            Column(head=Words("buy"), share=1.2),
            Column(head=Words("money"), align="right", share=0.8),
            Column(head=Words("call by"), share=1.1),
            Column(head=Words("comes"), share=1.1),
        ),
        rows=tuple(_row(call, now) for call in basket.calls),
        ticks=True,
    )
    remarks = [
        Words("{what}: {remark}", what=call.need.name, remark=remark)
        for call in basket.calls
        for remark in call.remarks
    ]
    if basket.under is not None:
        remarks.append(
            Words(
                "{money} short of the least it comes for, {least}",
                money=money(basket.under),
                least=money(supplier.least),
            )
        )
    later = ", ".join(
        f"{call.need.name} {day_time(call.last)}"
        for call in basket.calls
        if call.last and call.last != call.by
    )
    if later:
        remarks.append(
            Words(
                "for this plan by the hour above; for any at the latest: {later}",
                later=later,
            )
        )
    if remarks:
        yield Lines(lines=tuple(remarks))


def _row(call: Call, now: datetime) -> tuple[Cell, ...]:
    today = call.by is not None and call.by.date() <= now.date()
    return (
        Cell(text=_named(call)),
        Cell(text=weight(call.need.have.value), known=how_known(call.need.have)),
        Cell(text=weight(call.stock.value)),
        Cell(text=packs(call)),
        Cell(text=money(call.cost)),
        Cell(text=_by(call), strong=today),
        Cell(text=day_time(call.comes)),
    )


def _named(call: Call) -> Words:
    whole = call.need.whole
    return Words(
        "{what}{gross}{count}",
        what=call.need.name,
        gross=Words(", gross") if call.stocked.trim else "",
        count=Words(", about {n:g}", n=whole.value) if whole else "",
    )


def _by(call: Call) -> Words | str:
    return Words("now") if call.by is None else day_time(call.by)


def _left(calls: Iterable[Call]) -> Table:
    return Table(
        columns=(Column(share=2), Column(align="right"), Column(share=2)),
        rows=tuple(
            (
                Cell(text=call.need.name),
                Cell(text=weight(call.left.value), known=how_known(call.left)),
                Cell(
                    text=Words("good until {day}", day=day(call.good_until))
                    if call.good_until
                    else ""
                ),
            )
            for call in calls
            if call.left.value > 0
        ),
    )
