"""Can we? The answer to read out on the phone."""

from collections.abc import Iterator
from datetime import datetime

from demould.mise.words import Words
from demould.sheets.naming import doing
from demould.sheets.page import Block, Lines, Page
from demould.sheets.times import day_time
from demould.week.can import Can


def can_page(can: Can, now: datetime) -> Page:
    """Give yes or no first, then by when to say so, or what stops it."""
    order = can.making.order
    return Page(
        key="can",
        title=Words(
            "{n} {dessert}, {ends} {due}",
            n=order.pieces,
            dessert=can.making.amounts.dessert.name,
            ends=order.ends,
            due=day_time(order.due),
        ),
        note=Words("asked {now}", now=day_time(now)),
        blocks=tuple(_blocks(can)),
    )


def _blocks(can: Can) -> Iterator[Block]:
    match can.answer:
        case None:
            text = "NOT KNOWN: the time was too short to find a plan or to rule one out"
            yield Lines(lines=(Words(text),), loud=True)
        case True:
            yield Lines(lines=tuple(_yes(can)))
        case False:
            yield from _no(can)


def _yes(can: Can) -> Iterator[Words]:
    others = {0: "nothing else is ordered", 1: "the other order stands"}.get(
        can.beside, f"the {can.beside} other orders stand"
    )
    yield Words(
        "YES: {made} made in {rounds}, and {others}.",
        made=can.making.amounts.pieces,
        rounds=_rounds(can),
        others=others,
    )
    if can.say_by is not None:
        yield Words("Say so by {at}.", at=day_time(can.say_by))
    if can.then is not None:
        laid, name = can.then
        yield Words("First then: {what}.", what=doing(laid, laid.parts[name]))


def _rounds(can: Can) -> str:
    count = can.making.amounts.rounds.count
    return "1 round" if count == 1 else f"{count} rounds"


def _no(can: Can) -> Iterator[Block]:
    told = [limit.text for limit in can.limits]
    if can.why is not None:
        told.append(can.why.text)
    yield Lines(lines=(Words("NO: {why}", why=told[0]),), loud=True)
    helps = [can.limits[0].help] if can.limits else []
    yield Lines(
        lines=(
            *(Words("What helps: {help}", help=one) for one in helps),
            *(Words("Then: {what}", what=one) for one in told[1:]),
        )
    )
    if can.why is not None and can.why.relaxations:
        room = (one.text for one in can.why.relaxations)
        yield Lines(lines=(Words("What would make room, tried:"), *room))
