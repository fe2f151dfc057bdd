"""How sure is Saturday: weeks in a hundred, and what decides."""

from collections.abc import Iterator, Sequence
from datetime import datetime

from demould.mise.figure import Assumed
from demould.mise.words import Words
from demould.plan.kitchen.from_kitchen import Laid
from demould.plan.running.sampled import BREAKAGE, SHORT_OF_TIME, Tally
from demould.sheets.naming import doing
from demould.sheets.page import Block, Cell, Column, Head, Lines, Page, Table
from demould.sheets.times import day_time
from demould.week.how_sure import FREEZES, HANDS
from demould.week.making import Making

MOST_SHOWN = 5


def sure_page(
    makings: Sequence[Making], laid: Laid, tally: Tally, now: datetime
) -> Page:
    """Give the share of weeks in which everything stands, then order by order."""
    return Page(
        key="sure",
        title=Words("how sure it is"),
        note=Words("asked {now}", now=day_time(now)),
        blocks=(
            Lines(lines=(stands(tally),)),
            _orders(makings, tally),
            *_decides(laid, tally),
            Lines(lines=tuple(_assumed())),
        ),
    )


def stands(tally: Tally) -> Words:
    """Say in one line in how many weeks of a hundred every order stands."""
    return Words(
        "EVERY ORDER STANDS in {n} weeks of 100, with the luck of {weeks} such weeks.",
        n=_hundredths(tally.stood, tally.weeks),
        weeks=tally.weeks,
    )


def _hundredths(count: int, weeks: int) -> int:
    """Round down but for none at all: 100 of 100 is said where it is so."""
    return 100 * count // weeks if weeks else 0


def _orders(makings: Sequence[Making], tally: Tally) -> Table:
    rows = tuple(
        (
            Cell(text=str(_hundredths(tally.by_order[making.order.key], tally.weeks))),
            Cell(
                text=Words(
                    "{n} {dessert}, {ends} {due}",
                    n=making.order.pieces,
                    dessert=making.amounts.dessert.name,
                    ends=making.order.ends,
                    due=day_time(making.order.due),
                )
            ),
        )
        for making in makings
    )
    columns = (Column(align="right", share=0.4), Column(share=6))
    return Table(columns=columns, rows=rows)


def _decides(laid: Laid, tally: Tally) -> Iterator[Block]:
    failed = tally.weeks - tally.stood
    if not failed:
        return
    yield Head(
        text=Words("what decides"), note=Words("of {n} weeks that fail", n=failed)
    )
    ranked = sorted(tally.decides.items(), key=lambda one: (-one[1], one[0]))
    yield Table(
        columns=(Column(align="right", share=0.4), Column(share=6)),
        rows=tuple(
            (Cell(text=str(count)), Cell(text=_named(laid, name)))
            for name, count in ranked[:MOST_SHOWN]
        ),
    )


def _named(laid: Laid, name: str) -> str | Words:
    if name == BREAKAGE:
        return Words("more pieces break than there are spares")
    if name == SHORT_OF_TIME:
        return Words("a wait ends too late, though every step keeps its minutes")
    part = laid.parts[name]
    return Words("{what} takes longer", what=doing(laid, part))


def _assumed() -> Iterator[Words]:
    for figure in (HANDS, FREEZES):
        origin = figure.origin
        assert isinstance(origin, Assumed)
        yield Words(
            "assumed: {name}: {low:g} to {high:g}, most often {likely:g}",
            name=figure.name,
            low=origin.low,
            high=origin.high,
            likely=figure.value,
        )
