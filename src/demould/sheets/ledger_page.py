"""The ledger of grams: what is taken and where it goes, an order a table."""

from collections.abc import Iterator, Sequence
from itertools import groupby

from demould.mise.words import Words
from demould.sheets.page import Block, Cell, Column, Head, Lines, Page, Table
from demould.week.ledger import CLOSED_WITHIN_G, Entry, totals

_HEADS = ("taken", "before", "sold", "spares", "lost", "left", "strained")


def ledger_page(kitchen: str, entries: Sequence[Entry]) -> Page:
    """Give every entry, the sum of each order, and whether the ledger closes."""
    return Page(
        key="ledger",
        title=f"{kitchen}, where every gram goes",
        note=Words("g"),
        blocks=tuple(_blocks(entries)),
    )


def _blocks(entries: Sequence[Entry]) -> Iterator[Block]:
    for order, its in groupby(entries, lambda entry: entry.order):
        own = list(its)
        yield Head(text=order)
        yield Table(
            columns=(
                Column(share=2.4),
                *(Column(head=Words(head), align="right") for head in _HEADS),
            ),
            rows=tuple(_row(one) for one in [*own, totals(own, "together")]),
        )
    yield Lines(lines=tuple(_closed(entries)))


def _row(entry: Entry) -> tuple[Cell, ...]:
    grams = (
        entry.taken,
        entry.from_before,
        entry.sold,
        entry.spares,
        entry.lost,
        entry.left,
        entry.strained_out,
    )
    return (Cell(text=entry.name), *(Cell(text=f"{one:.0f}") for one in grams))


def _closed(entries: Sequence[Entry]) -> Iterator[Words]:
    open_ = [one for one in entries if abs(one.off) > CLOSED_WITHIN_G]
    if not open_:
        yield Words("closed: no component is 1 g off")
    for one in open_:
        yield Words("{name} is {off:.0f} g off", name=one.name, off=one.off)
