"""Only the next thing, for one person: what, when, what to set out now."""

from collections.abc import Iterator
from datetime import datetime

from demould.mise.words import Words
from demould.sheets.naming import doing, thing
from demould.sheets.page import Block, Cell, Column, Head, Lines, Page, Table
from demould.sheets.times import clock, day_time
from demould.week.agreed import Running
from demould.week.next_thing import Next
from demould.week.timing import Entry


def next_page(running: Running, found: Next, who: str | None, now: datetime) -> Page:
    """Give the next step big, what to set out, what comes after, what is running."""
    return Page(
        key="next",
        title=Words("next for {who}", who=who) if who else Words("next"),
        note=day_time(now),
        blocks=tuple(_blocks(running, found, now)),
    )


def _blocks(running: Running, found: Next, now: datetime) -> Iterator[Block]:
    if found.entry is None:
        yield Lines(lines=(Words("NOTHING MORE: all of it is done."),))
    else:
        yield Lines(lines=(_first(running, found.entry, now),))
        if found.set_out:
            things = "; ".join(str(one) for one in found.set_out)
            yield Lines(lines=(Words("Set out now: {things}.", things=things),))
        if found.then:
            then = ", ".join(
                f"{_at(one.start, now)} {_named(running, one)}" for one in found.then
            )
            yield Lines(lines=(Words("Then: {then}.", then=then),))
    if found.unsaid and running.done:
        last = ", ".join(_named(running, one) for one in found.unsaid[-3:])
        yield Lines(
            lines=(
                Words(
                    "Taken as done, though nobody has said so: {last}{more}.",
                    last=last,
                    more=" and more" if len(found.unsaid) > 3 else "",
                ),
            )
        )
    if found.running:
        yield Head(text=Words("running"))
        yield Table(
            columns=(Column(share=1.2), Column(share=3), Column(share=3)),
            rows=tuple(_wait(running, one, now) for one in found.running),
        )


def _first(running: Running, entry: Entry, now: datetime) -> Words:
    late = " (it was to begin then)" if entry.start < now else ""
    who = f", {' and '.join(entry.who)}" if entry.who else ""
    return Words(
        "{at}{late}  {what}, {minutes} min{who}",
        at=_at(entry.start, now),
        late=late,
        what=_named(running, entry).upper(),
        minutes=round((entry.end - entry.start).total_seconds() / 60),
        who=who,
    )


def _named(running: Running, entry: Entry) -> str:
    part = entry.part
    turn = f" {part.pieces}" if part.round and len(part.make.rounds) > 1 else ""
    return f"{doing(running.laid, part)}{turn}"


def _at(moment: datetime, now: datetime) -> str:
    return clock(moment) if moment.date() == now.date() else day_time(moment)


def _wait(running: Running, entry: Entry, now: datetime) -> tuple[Cell, ...]:
    place = entry.took or entry.part.step.place or entry.part.step.key
    return (
        Cell(text=Words("to {at}", at=_at(entry.end, now))),
        Cell(text=f"{entry.part.pieces} {thing(running.laid, entry.part)}"),
        Cell(text=Words("{place}, since {at}", place=place, at=_at(entry.start, now))),
    )
