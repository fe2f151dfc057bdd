"""How late each thing may start, and after which moment there is no way back."""

from collections.abc import Iterator
from itertools import groupby

from demould.mise.words import Words
from demould.plan.kitchen.parts import Part
from demould.sheets.naming import doing, thing
from demould.sheets.page import Block, Cell, Column, Head, Lines, Table
from demould.sheets.times import clock, day_time
from demould.week.timing import Timing

HELD = "\xa0"
BETWEEN = f"{HELD}. "


def deadlines(timing: Timing) -> tuple[Block, ...]:
    """Give the latest starts in order of the clock, and each order's first one."""
    named = sorted(timing.latest, key=lambda name: timing.latest[name])
    if not named:
        return ()
    first: dict[str, str] = {}
    for name in named:
        first.setdefault(timing.laid.parts[name].make.order.key, name)
    return (
        Head(text=Words("latest starts")),
        Table(
            columns=(Column(share=0.5), Column(share=8)),
            rows=tuple(_days(timing, named)),
        ),
        Head(text=Words("no way back after")),
        Lines(
            lines=(
                *(_gone(timing, name) for name in first.values()),
                *_last_freezes(timing),
            )
        ),
    )


def _days(timing: Timing, named: list[str]) -> Iterator[tuple[Cell, ...]]:
    for day, names in groupby(named, key=lambda name: timing.latest[name].date()):
        said = [
            f"{_short(timing, name)} {clock(timing.latest[name])}" for name in names
        ]
        held = [one.replace(" ", HELD) for one in said]
        yield Cell(text=f"{day:%a}"), Cell(text=BETWEEN.join(held))


def _last_freezes(timing: Timing) -> Iterator[Words]:
    """Give, a line an order, the last freeze by each place: then only a quicker one."""
    for name, group in groupby(timing.last_by, key=lambda pair: pair[0]):
        ways = sorted((timing.last_by[pair], pair[1]) for pair in group)
        told = BETWEEN.join(
            f"{day_time(at)} by the {place}".replace(" ", HELD) for at, place in ways
        )
        part = timing.laid.parts[name]
        yield Words(
            "last freeze of {what}: {told}", what=_what(timing, part), told=told
        )


def _what(timing: Timing, part: Part) -> str:
    turn = f" {part.pieces}" if len(part.make.rounds) > 1 else ""
    return f"{thing(timing.laid, part)}{turn}"


def _gone(timing: Timing, name: str) -> Words:
    return Words(
        "{at} for {dessert}: {what}",
        at=day_time(timing.latest[name]),
        dessert=timing.laid.parts[name].make.dessert.name,
        what=_short(timing, name),
    )


def _short(timing: Timing, name: str) -> str:
    return doing(timing.laid, timing.laid.parts[name])
