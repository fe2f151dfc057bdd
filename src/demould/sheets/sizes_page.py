"""10, 50, 500: sizes side by side, and what breaks first."""

from collections.abc import Iterator, Sequence
from datetime import datetime

from demould.mise.words import Words
from demould.sheets.page import Block, Cell, Column, Head, Lines, Page, Table
from demould.sheets.times import day_time
from demould.week.sizes import Size


def sizes_page(sizes: Sequence[Size], now: datetime) -> Page:
    """Lay the sizes out, a row each, then the limits of those that do not stand."""
    first = sizes[0].making
    return Page(
        key="sizes",
        title=Words(
            "{dessert}, {ends} {due}",
            dessert=first.amounts.dessert.name,
            ends=first.order.ends,
            due=day_time(first.order.due),
        ),
        note=Words("asked {now}", now=day_time(now)),
        blocks=(_table(sizes), *_stops(sizes)),
    )


def _table(sizes: Sequence[Size]) -> Table:
    filler = sizes[0].making.amounts.makes[0].component
    heads = (
        Words("wanted"),
        Words("make"),
        Words("rounds"),
        Words("moulds for one round"),
        Words("{filler}, g", filler=filler),
        Words("whips"),
        Words("dip taken, g"),
        Words("to melt, g"),
        Words("frozen, kg"),
        Words("stands"),
    )
    return Table(
        columns=tuple(Column(head=head, align="right") for head in heads),
        rows=tuple(_row(size) for size in sizes),
    )


def _row(size: Size) -> tuple[Cell, ...]:
    amounts = size.making.amounts
    jug = amounts.jug
    said = {True: "yes", False: "NO", None: "not known"}[size.stands]
    return (
        Cell(text=str(size.making.order.pieces)),
        Cell(text=str(amounts.pieces)),
        Cell(text=str(amounts.rounds.count)),
        Cell(text=str(size.moulds)),
        Cell(text=f"{amounts.makes[0].weigh.value:.0f}"),
        Cell(text=str(size.whips)),
        Cell(text=f"{jug.taken.value:.0f}" if jug else ""),
        Cell(text=f"{jug.melt.value:.0f}" if jug else ""),
        Cell(text=f"{size.frozen_kg:.1f}"),
        Cell(text=said, strong=size.stands is not True),
    )


def _stops(sizes: Sequence[Size]) -> Iterator[Block]:
    for size in sizes:
        if size.stops:
            yield Head(
                text=Words("what stops {n}, first to last", n=size.making.order.pieces)
            )
            yield Lines(
                lines=tuple(
                    Words("{place}. {what}", place=place, what=what)
                    for place, what in enumerate(size.stops, start=1)
                )
            )
