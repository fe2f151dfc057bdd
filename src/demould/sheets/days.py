"""The days of a plan: hours down, a column for each person, the cold beside."""

from collections.abc import Iterator
from datetime import datetime
from itertools import groupby

from demould.mise.words import Words
from demould.sheets.page import Block, Cell, Column, Head, Table
from demould.sheets.times import clock, day_time
from demould.week.sections import Week
from demould.week.timing import Entry

SHORT_WAIT_MIN = 45
"""A stand shorter than this needs no line of its own: somebody is near."""


def days(week: Week) -> Iterator[Block]:
    """Give the plan as one table of all its days."""
    people = [person.name for person in week.kitchen.people]
    moments = sorted({entry.start for entry in week.timing.entries} | _dues(week))
    rows: list[tuple[Cell, ...]] = []
    for _, at in groupby(moments, key=lambda moment: moment.date()):
        rows.extend(_day(week, list(at), people))
    yield Head(text="the days")
    yield Table(
        columns=(
            Column(share=1.1),
            *(Column(head=name, share=3) for name in people),
            Column(head=Words("cold"), share=2.2),
        ),
        rows=tuple(rows),
    )


def _dues(week: Week) -> set[datetime]:
    return {making.order.due for making in week.makings}


def _day(
    week: Week, moments: list[datetime], people: list[str]
) -> Iterator[tuple[Cell, ...]]:
    first = True
    for moment in moments:
        row = _row(week, moment, people)
        if row is None:
            continue
        yield (Cell(text=day_time(moment) if first else f"    {clock(moment)}"), *row)
        first = False
        yield from _due_rows(week, moment, len(people))


def _row(week: Week, moment: datetime, people: list[str]) -> tuple[Cell, ...] | None:
    here = [entry for entry in week.timing.entries if entry.start == moment]
    hands = {
        name: _told(entry)
        for entry in here
        for name in entry.who
        if not entry.part.stands
    }
    cold = [_waits(entry) for entry in here if _is_news(entry)]
    due = any(making.order.due == moment for making in week.makings)
    if not hands and not cold and not due:
        return None
    return (
        *(Cell(text=hands.get(name, "")) for name in people),
        Cell(text=", ".join(cold)),
    )


def _is_news(entry: Entry) -> bool:
    minutes = (entry.end - entry.start).total_seconds() / 60
    return entry.part.stands and (bool(entry.took) or minutes >= SHORT_WAIT_MIN)


def _told(entry: Entry) -> str:
    part = entry.part
    minutes = int((entry.end - entry.start).total_seconds() // 60)
    what = part.component.key if part.component else part.make.dessert.name
    turn = f" {part.pieces}" if part.round and len(part.make.rounds) > 1 else ""
    return f"{part.step.key} {what}{turn} {minutes // 60}:{minutes % 60:02d}"


def _waits(entry: Entry) -> str:
    place = entry.took or entry.part.step.place or entry.part.step.key
    same = entry.end.date() == entry.start.date()
    return f"{place} to {clock(entry.end) if same else day_time(entry.end)}"


def _due_rows(week: Week, moment: datetime, people: int) -> Iterator[tuple[Cell, ...]]:
    for making in week.makings:
        if making.order.due == moment:
            said = f"{making.order.pieces} {making.dessert.name}: {making.order.ends}"
            blanks = (Cell(text="") for _ in range(people))
            yield (
                Cell(text=f"  > {clock(moment)}", strong=True),
                Cell(text=said.upper(), strong=True),
                *list(blanks)[:-1],
                Cell(text=""),
            )
