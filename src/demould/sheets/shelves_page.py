"""The shelves of the cold by hour: what the plan takes, what is free."""

from collections.abc import Iterator
from datetime import datetime

from demould.mise.kitchen import Kitchen
from demould.mise.words import Words
from demould.sheets.page import Block, Cell, Column, Head, Lines, Page, Table
from demould.sheets.times import clock, day_time
from demould.week.shelves import Shelved, Stretch, shelves_of
from demould.week.timing import Timing


def fullest_rows(timing: Timing) -> Iterator[tuple[Cell, ...]]:
    """Walk the cold places with shelves: the most that are taken at once, and when."""
    if not timing.stands:
        return
    name = "all orders"
    for shelved in shelves_of(timing):
        yield Cell(text=name), Cell(text=shelved.place), Cell(text=_fullest(shelved))
        name = ""
    if not name:
        on_top = Words("(pieces waiting for their next step come on top)")
        yield Cell(text=""), Cell(text=""), Cell(text=on_top)


def _fullest(shelved: Shelved) -> Words:
    if not shelved.hours:
        return Words("no written wait takes any of {n} shelves", n=shelved.has)
    longest = max(shelved.fullest, key=lambda one: one.end - one.start)
    return Words(
        "waits: {n} of {has} shelves at most, {start} to {end}{again}",
        n=shelved.most,
        has=shelved.has,
        start=day_time(longest.start),
        end=_until(longest),
        again=Words(" and again") if len(shelved.fullest) > 1 else "",
    )


def _until(stretch: Stretch) -> str:
    same_day = stretch.start.date() == stretch.end.date()
    return clock(stretch.end) if same_day else day_time(stretch.end)


def shelves_page(kitchen: Kitchen, timing: Timing, now: datetime) -> Page:
    """Give each cold place with its shelves, taken and free, by hour."""
    return Page(
        key="shelves",
        title=Words("{kitchen}, the shelves", kitchen=kitchen.name.upper()),
        note=Words("drawn up {now}", now=day_time(now)),
        blocks=(
            *(block for one in shelves_of(timing) for block in _place(one)),
            Lines(
                lines=(
                    Words(
                        "only waits that the method writes with a place are counted:"
                        " pieces waiting for their next step, and what else is kept"
                        " there, come on top; nothing warm goes next to finished pieces"
                    ),
                )
            ),
        ),
    )


def _place(shelved: Shelved) -> Iterator[Block]:
    yield Head(
        text=Words("{place}", place=shelved.place),
        note=Words("{n} shelves", n=shelved.has),
    )
    if not shelved.hours:
        yield Lines(lines=(_fullest(shelved),))
        return
    yield Table(
        columns=(
            Column(head=Words("from")),
            Column(head=Words("to")),
            Column(head=Words("taken"), align="right"),
            Column(head=Words("free"), align="right"),
        ),
        rows=tuple(
            (
                Cell(text=day_time(one.start)),
                Cell(text=day_time(one.end)),
                Cell(text=str(one.taken)),
                Cell(
                    text=str(shelved.has - one.taken),
                    strong=one.taken == shelved.most,
                ),
            )
            for one in shelved.hours
        ),
    )
