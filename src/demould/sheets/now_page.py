"""I start now: the earliest plate, and what each visit leaves behind."""

from collections.abc import Iterator
from datetime import datetime

from demould.mise.words import Words
from demould.sheets.naming import thing
from demould.sheets.page import Block, Cell, Column, Head, Lines, Page, Table
from demould.sheets.times import clock, day_time, span
from demould.week.from_now import FromNow, Left, Soonest, Visit


def now_page(found: FromNow, now: datetime) -> Page:
    """Give the earliest plate first, then the visits."""
    making = found.making
    return Page(
        key="now",
        title=Words(
            "{n} {dessert}, begun {now}",
            n=making.order.pieces,
            dessert=making.amounts.dessert.name,
            now=day_time(now),
        ),
        note=Words("make {n}", n=making.amounts.pieces),
        blocks=(*_answer(found), *_visits(found.hours)),
    )


def _answer(found: FromNow) -> Iterator[Block]:
    hours, evening = found.hours, found.evening
    if hours.over is None:
        why = hours.limits[0].text if hours.limits else "no plan in the next 14 days"
        yield Lines(lines=(Words("NO PLATE: {why}", why=why),), loud=True)
        if hours.limits:
            helps = Words("What helps: {help}", help=hours.limits[0].help)
            yield Lines(lines=(helps,))
        return
    yield Lines(lines=(Words("ON THE PLATE {at}, by your hours.", at=_ready(hours)),))
    if evening.over is not None and evening.over < hours.over:
        text = Words("With somebody there until midnight: {at}.", at=_ready(evening))
        yield Lines(lines=(text,))
    if not hours.proven:
        yield Lines(lines=(Words("Sooner may be possible: the search was cut short."),))


def _ready(soonest: Soonest) -> Words:
    assert soonest.over is not None
    if soonest.ready is None or soonest.ready >= soonest.over:
        return Words("{at}", at=day_time(soonest.over))
    return Words(
        "{at} (ready to plate {ready})",
        at=day_time(soonest.over),
        ready=day_time(soonest.ready),
    )


def _visits(soonest: Soonest) -> Iterator[Block]:
    if not soonest.visits:
        return
    total = sum(visit.hands_min for visit in soonest.visits)
    count = len(soonest.visits)
    yield Head(
        text=Words("{n} visits", n=count) if count != 1 else Words("one visit"),
        note=Words("{span} of work", span=span(total)),
    )
    yield Table(
        columns=(
            Column(head=Words("there"), share=2),
            Column(head=Words("hands on"), align="right"),
            Column(head=Words("leaves behind"), share=4),
        ),
        rows=tuple(_row(soonest, visit) for visit in soonest.visits),
    )


def _row(soonest: Soonest, visit: Visit) -> tuple[Cell, ...]:
    left = "; ".join(str(_left(soonest, visit, one)) for one in visit.leaves)
    there = f"{day_time(visit.start)} - {clock(visit.end)}"
    return Cell(text=there), Cell(text=span(visit.hands_min)), Cell(text=left)


def _left(soonest: Soonest, visit: Visit, left: Left) -> Words:
    same = left.until.date() == visit.end.date()
    at = clock(left.until) if same else day_time(left.until)
    what = thing(soonest.laid, left.part)
    if left.kept:
        return Words("{what} kept for {at}", what=what, at=at)
    step = left.part.step
    place = step.place or step.key
    return Words("{what} {place} to {at}", what=what, place=place, at=at)
