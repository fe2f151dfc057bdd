"""The days of a plan: hours down, a column for each person, the cold beside."""

from collections.abc import Iterator, Mapping, Sequence
from datetime import datetime
from itertools import groupby

from demould.mise.kitchen import Kitchen
from demould.mise.words import Words
from demould.sheets.naming import doing, thing
from demould.sheets.page import Block, Cell, Column, Head, Table
from demould.sheets.times import clock, day_time
from demould.week.making import Making
from demould.week.timing import Entry, Timing

SHORT_WAIT_MIN = 45
"""A stand shorter than this needs no line of its own: somebody is near."""

Row = tuple[Cell, ...]
BLANK = Cell(text="")


def days(
    kitchen: Kitchen, makings: Sequence[Making], timing: Timing
) -> tuple[Block, ...]:
    """Give the plan as one table of all its days.

    A wait in the cold stands beside the work that it follows.
    """
    people = [person.name for person in kitchen.people]
    works = _by_moment((entry.start, entry) for entry in _works(timing))
    waits = _by_moment((_beside(timing, wait), wait) for wait in _waits(timing))
    dues = {making.order.due for making in makings}
    moments = sorted({*works, *waits, *dues})
    rows: list[Row] = []
    for day, at in groupby(moments, key=lambda moment: moment.date()):
        rows.append((Cell(text=f"{day:%a}"), *[BLANK] * (len(people) + 1)))
        for moment in at:
            here, cold = works.get(moment, []), waits.get(moment, [])
            if here or cold:
                rows.append(_row(timing, moment, here, cold, people))
            rows.extend(
                _due(making, len(people))
                for making in makings
                if making.order.due == moment
            )
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


def _works(timing: Timing) -> Iterator[Entry]:
    return (entry for entry in timing.entries if not entry.part.stands)


def _waits(timing: Timing) -> Iterator[Entry]:
    """Walk the waits that are news: what takes its place in the cold, or is long."""
    for entry in timing.entries:
        minutes = (entry.end - entry.start).total_seconds() / 60
        if entry.part.stands and (entry.took or minutes >= SHORT_WAIT_MIN):
            yield entry


def _by_moment(
    pairs: Iterator[tuple[datetime, Entry]],
) -> Mapping[datetime, list[Entry]]:
    found: dict[datetime, list[Entry]] = {}
    for moment, entry in pairs:
        found.setdefault(moment, []).append(entry)
    return found


def _beside(timing: Timing, wait: Entry) -> datetime:
    """Give the start of the work that ends where the wait begins, else its own."""
    before = [
        entry.start
        for entry in _works(timing)
        if entry.end == wait.start
        and entry.start.date() == wait.start.date()
        and entry.part.make.order.key == wait.part.make.order.key
        and entry.part.component == wait.part.component
        and _one_round(entry.part.round, wait.part.round)
    ]
    return max(before, default=wait.start)


def _one_round(work: int, wait: int) -> bool:
    """Whether they are of one round; round 0 is done once for all."""
    return work == wait or 0 in (work, wait)


def _row(
    timing: Timing,
    moment: datetime,
    works: list[Entry],
    waits: list[Entry],
    people: list[str],
) -> Row:
    hands = {name: _told(timing, entry) for entry in works for name in entry.who}
    names = [_named(timing, entry, works, waits) for entry in waits]
    cold = "; ".join(
        f"{name}{_wait(entry)}" for name, entry in zip(names, waits, strict=True)
    )
    return (
        Cell(text=clock(moment)),
        *(Cell(text=hands.get(name, "")) for name in people),
        Cell(text=cold),
    )


def _told(timing: Timing, entry: Entry) -> str:
    part = entry.part
    minutes = int((entry.end - entry.start).total_seconds() // 60)
    turn = f" {part.pieces}" if part.round and len(part.make.rounds) > 1 else ""
    what = doing(timing.laid, part)
    return f"{what}{turn} {minutes // 60}:{minutes % 60:02d}"


def _named(
    timing: Timing, wait: Entry, works: Sequence[Entry], waits: Sequence[Entry]
) -> str:
    """Name what waits, no longer than it takes to know it in its row."""
    if len(works) == len(waits) == 1:
        return ""
    component = wait.part.component
    if component is not None and works:
        alike = {
            entry.part.make.order.key
            for entry in (*works, *waits)
            if entry.part.component is not None
            and entry.part.component.key == component.key
        }
        if len(alike) == 1:
            return f"{component.key}: "
    return f"{thing(timing.laid, wait.part)}: "


def _wait(entry: Entry) -> str:
    place = entry.took or entry.part.step.place or entry.part.step.key
    same = entry.end.date() == entry.start.date()
    until = clock(entry.end) if same else day_time(entry.end)
    return f"{place} to {until}"


def _due(making: Making, people: int) -> Row:
    name = making.amounts.dessert.name
    said = f"{making.order.pieces} {name}: {making.order.ends}".upper()
    return (
        Cell(text=clock(making.order.due)),
        Cell(text=said, strong=True),
        *[BLANK] * people,
    )
