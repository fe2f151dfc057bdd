"""I am late: what moves, in one line first."""

from collections.abc import Iterator
from datetime import datetime, timedelta

from demould.mise.words import Words
from demould.plan.running.late import Late, Moved
from demould.sheets.naming import doing
from demould.sheets.page import Block, Cell, Column, Head, Lines, Page, Table
from demould.sheets.times import clock, day_time, span
from demould.week.agreed import Running


def late_page(running: Running, late: Late, now: datetime) -> Page:
    """Say whether anything moves, then what, or what gives."""
    return Page(
        key="late",
        title=Words(
            "{what}, {span} late",
            what=_named(running, late.step),
            span=span(late.minutes),
        ),
        note=Words("asked {now}", now=day_time(now)),
        blocks=tuple(_blocks(running, late)),
    )


def _blocks(running: Running, late: Late) -> Iterator[Block]:
    if late.why is not None:
        behind = tuple(_behind(running, name, late) for name in late.behind)
        if behind:
            yield Lines(lines=behind, loud=True)
        else:
            yield Lines(lines=(Words("IT GIVES: {why}", why=late.why.text),), loud=True)
        room = tuple(
            one.text
            for one in late.why.relaxations
            if not any(change["op"] == "drop_order" for change in one.changes)
        )
        if room:
            yield Lines(lines=(Words("What would make room, one of:"), *room))
    elif not [one for one in late.moved if one.step != late.step or one.who]:
        yield Lines(lines=(_nothing(late),))
    else:
        yield Lines(lines=(_some(late),))
        yield Head(text=Words("what moves"))
        yield Table(
            columns=(Column(share=1.4), Column(share=1.4), Column(share=4)),
            rows=tuple(_row(running, one) for one in late.moved),
        )
    yield Lines(lines=tuple(_limits(late)))
    yield from _remarks(running)


def _behind(running: Running, name: str, late: Late) -> Words:
    making = next(one for one in running.makings if one.order.key == name)
    ready = making.order.due + timedelta(minutes=late.behind[name])
    return Words(
        "IT GIVES: {dessert}, {ends} {due}, is {span} late: {ready}.",
        dessert=making.amounts.dessert.name,
        ends=making.order.ends,
        due=day_time(making.order.due),
        span=span(late.behind[name]),
        ready=day_time(ready),
    )


def _nothing(late: Late) -> Words:
    return Words("NOTHING ELSE MOVES: {at} is inside its spare time.", at=_at(late))


def _some(late: Late) -> Words:
    count = sum(
        one.step != late.step and (one.was != one.now or one.took is not None)
        for one in late.moved
    )
    if not count:
        return Words("NOTHING ELSE MOVES, but somebody else does it.")
    return Words(
        "EVERY ORDER STANDS: {n} {steps}{fewest}.",
        n=count,
        steps="other step moves" if count == 1 else "other steps move",
        fewest=", and fewer cannot" if late.fewest else "",
    )


def _at(late: Late) -> str:
    return day_time(late.begins)


def _row(running: Running, moved: Moved) -> tuple[Cell, ...]:
    same = moved.was.date() == moved.now.date()
    now = clock(moved.now) if same else day_time(moved.now)
    road = f", by the {moved.took}" if moved.took else ""
    who = f", by {' and '.join(moved.who)}" if moved.who else ""
    moves = moved.was != moved.now
    return (
        Cell(text=day_time(moved.was)),
        Cell(text=f"to {now}" if moves else "stays"),
        Cell(text=f"{_named(running, moved.step)}{road}{who}"),
    )


def _named(running: Running, name: str) -> str:
    part = running.laid.parts[name]
    turn = f" {part.pieces}" if part.round and len(part.make.rounds) > 1 else ""
    return f"{doing(running.laid, part)}{turn}"


def _limits(late: Late) -> Iterator[Words]:
    if late.nothing_up_to:
        yield Words("Up to {span} nothing else moves.", span=span(late.nothing_up_to))
    if late.stands_up_to is not None:
        yield Words("Up to {span} every order stands.", span=span(late.stands_up_to))


def _remarks(running: Running) -> Iterator[Block]:
    said: list[Words] = []
    if running.agreed_at is None:
        said.append(
            Words(
                "Nobody has agreed on a plan: taken is the one made now"
                " (demould plan FOLDER --agree keeps it)."
            )
        )
    elif running.changed:
        said.append(
            Words(
                "The kitchen's text has changed since the plan was agreed on {at}.",
                at=day_time(running.agreed_at),
            )
        )
    if running.fresh:
        said.append(
            Words("{n} steps are not in the agreed plan yet.", n=len(running.fresh))
        )
    if said:
        yield Lines(lines=tuple(said))
