"""The days of a plan: hours down, a column for each person, the cold beside."""

from collections.abc import Iterator, Sequence
from datetime import datetime
from itertools import groupby

from demould.mise.kitchen import Kitchen
from demould.mise.words import Words
from demould.sheets.naming import doing
from demould.sheets.page import Block, Cell, Column, Head, Table
from demould.sheets.times import clock, day_time
from demould.week.making import Making
from demould.week.timing import Entry, Timing

SHORT_WAIT_MIN = 45
"""A stand shorter than this needs no line of its own: somebody is near."""

Row = tuple[Cell, ...]


def days(
    kitchen: Kitchen, makings: Sequence[Making], timing: Timing
) -> tuple[Block, ...]:
    """Give the plan as one table of all its days."""
    people = [person.name for person in kitchen.people]
    dues = {making.order.due for making in makings}
    moments = sorted({entry.start for entry in timing.entries} | dues)
    rows: list[Row] = []
    for _, at in groupby(moments, key=lambda moment: moment.date()):
        rows.extend(_day(makings, timing, list(at), people))
    return (
        Head(text=Words("the days")),
        Table(
            columns=(
                Column(align="right", share=1.3),
                *(Column(head=name, share=3) for name in people),
                Column(head=Words("cold"), share=2.2),
            ),
            rows=tuple(rows),
        ),
    )


def _day(
    makings: Sequence[Making],
    timing: Timing,
    moments: list[datetime],
    people: list[str],
) -> Iterator[Row]:
    first = True
    for moment in moments:
        shown = day_time(moment) if first else clock(moment)
        row = _row(timing, moment, people)
        if row is not None:
            yield (Cell(text=shown), *row)
            first = False
        for making in makings:
            if making.order.due == moment:
                yield _due(making, shown, len(people))
                first = False


def _row(timing: Timing, moment: datetime, people: list[str]) -> Row | None:
    here = [entry for entry in timing.entries if entry.start == moment]
    hands = {
        name: _told(timing, entry)
        for entry in here
        for name in entry.who
        if not entry.part.stands
    }
    cold = [_waits(entry) for entry in here if _is_news(entry)]
    if not hands and not cold:
        return None
    return (
        *(Cell(text=hands.get(name, "")) for name in people),
        Cell(text=", ".join(cold)),
    )


def _is_news(entry: Entry) -> bool:
    minutes = (entry.end - entry.start).total_seconds() / 60
    return entry.part.stands and (bool(entry.took) or minutes >= SHORT_WAIT_MIN)


def _told(timing: Timing, entry: Entry) -> str:
    part = entry.part
    minutes = int((entry.end - entry.start).total_seconds() // 60)
    turn = f" {part.pieces}" if part.round and len(part.make.rounds) > 1 else ""
    what = doing(timing.laid, part)
    return f"{what}{turn} {minutes // 60}:{minutes % 60:02d}"


def _waits(entry: Entry) -> str:
    place = entry.took or entry.part.step.place or entry.part.step.key
    same = entry.end.date() == entry.start.date()
    return f"{place} to {clock(entry.end) if same else day_time(entry.end)}"


def _due(making: Making, shown: str, people: int) -> Row:
    said = f"{making.order.pieces} {making.amounts.dessert.name}: {making.order.ends}".upper()
    return (
        Cell(text=shown),
        Cell(text=said, strong=True),
        *(Cell(text="") for _ in range(people)),
    )
