"""The shelves of the cold by hour: what the plan takes, what is free."""

from collections.abc import Iterator
from datetime import datetime

from demould.mise.kitchen import Kitchen
from demould.mise.words import Words
from demould.sheets.page import Block, Cell, Column, Head, Lines, Page, Table
from demould.sheets.times import clock, day_time
from demould.week.shelves import Shelved, Stretch, shelves_of
from demould.week.stored import STORES_C, storage_of
from demould.week.timing import Timing


def fullest_rows(kitchen: Kitchen, timing: Timing) -> Iterator[tuple[Cell, ...]]:
    """Walk the cold places with shelves: the most that are taken at once, and when."""
    if not timing.stands:
        return
    name = "all orders"
    for shelved in shelves_of(kitchen, timing):
        yield (
            Cell(text=name),
            Cell(text=shelved.place),
            Cell(
                text=_fullest(shelved),
                known="assumed" if shelved.lots else None,
                strong=bool(shelved.over),
            ),
        )
        name = ""
    if not name:
        on_top = Words("(what else is kept there comes on top)")
        yield Cell(text=""), Cell(text=""), Cell(text=on_top)


def no_room(kitchen: Kitchen, timing: Timing) -> Iterator[Block]:
    """Say loudly where more is to stand than there are shelves, and from when."""
    if not timing.stands:
        return
    lines = tuple(
        Words(
            "NO ROOM in the {place}: {n} of {has} shelves, {start} to {end}",
            place=shelved.place,
            n=one.taken,
            has=shelved.has,
            start=day_time(one.start),
            end=_until(one),
        )
        for shelved in shelves_of(kitchen, timing)
        for one in shelved.over
    )
    if lines:
        yield Lines(lines=lines, loud=True)


def _fullest(shelved: Shelved) -> Words:
    if not shelved.hours:
        return Words("nothing planned takes any of {n} shelves", n=shelved.has)
    longest = max(shelved.fullest, key=lambda one: one.end - one.start)
    return Words(
        "{n} of {has} shelves at most, {start} to {end}{again}",
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
            *(block for one in shelves_of(kitchen, timing) for block in _place(one)),
            *no_room(kitchen, timing),
            Lines(
                lines=(
                    Words(
                        "taken: waits that the method writes with a place, and what is"
                        " stored between two steps. What is stored is reckoned here, not"
                        " written (assumed): each lot side by side on shelves of its own,"
                        " a pot on one, in the place it was in, what is frozen in the"
                        " freezer"
                    ),
                    *_without_freezer(kitchen),
                    Words(
                        "what else is kept there comes on top; nothing warm goes next to"
                        " finished pieces"
                    ),
                )
            ),
        ),
    )


def _without_freezer(kitchen: Kitchen) -> Iterator[Words]:
    if storage_of(kitchen) is None:
        yield Words(
            "no freezer is written at {c:g} °C or under: what is stored frozen is not"
            " counted",
            c=STORES_C,
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
                    text=_free(shelved.has - one.taken),
                    strong=one.taken == shelved.most or one.taken > shelved.has,
                ),
            )
            for one in shelved.hours
        ),
    )
    if shelved.lots:
        yield _stored(shelved)


def _free(left: int) -> str | Words:
    return str(left) if left >= 0 else Words("{n} too many", n=-left)


def _stored(shelved: Shelved) -> Table:
    return Table(
        columns=(
            Column(head=Words("of it stored"), share=3),
            Column(head=Words("from"), share=1.2),
            Column(head=Words("to"), share=1.2),
            Column(head=Words("for"), align="right", share=0.6),
            Column(head=Words("shelves"), align="right", share=0.8),
        ),
        rows=tuple(
            (
                Cell(text=one.what),
                Cell(text=day_time(one.start)),
                Cell(text=day_time(one.end)),
                Cell(text=str(one.pieces)),
                Cell(text=str(one.taken), known="assumed"),
            )
            for one in shelved.lots
        ),
    )
