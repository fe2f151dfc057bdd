"""Two weeks side by side: one thing changed, and only what differs."""

from collections.abc import Iterator, Sequence
from datetime import datetime
from itertools import groupby

from demould.mise.words import Words
from demould.sheets.page import Block, Cell, Column, Head, Lines, Page, Table
from demould.week.tried import Tried
from demould.week.what_if import Move, Thing, Value


def try_page(kitchen: str, change: Tried, moves: Sequence[Move]) -> Page:
    """Give what was changed and all that moves with it, by order and heading."""
    return Page(
        key="try",
        title=f"{kitchen}, one thing changed",
        note=Words("nothing is written"),
        blocks=tuple(_blocks(change, moves)),
    )


def _blocks(change: Tried, moves: Sequence[Move]) -> Iterator[Block]:
    yield Lines(
        lines=(
            Words(
                "{name}: {was} becomes {new}",
                name=change.name,
                was=change.was,
                new=change.new,
            ),
        )
    )
    if not moves:
        yield Lines(lines=(Words("Nothing in the week moves with it."),))
    for order, its in groupby(moves, lambda move: move.thing.order):
        yield Head(text=order)
        yield Table(
            columns=(
                Column(share=1.2),
                Column(share=2),
                Column(head=Words("before"), align="right"),
                Column(head=Words("after"), align="right"),
                Column(head=Words("moves"), align="right"),
            ),
            rows=tuple(_rows(list(its))),
        )


def _rows(moves: Sequence[Move]) -> Iterator[tuple[Cell, ...]]:
    about = ""
    for move in moves:
        head = move.thing.about if move.thing.about != about else ""
        about = move.thing.about
        yield (
            Cell(text=head),
            Cell(text=move.thing.name),
            Cell(text=_told(move.thing, move.before)),
            Cell(text=_told(move.thing, move.after)),
            Cell(text=_by(move)),
        )


def _told(thing: Thing, value: Value) -> str:
    if value is None:
        return "--"
    if isinstance(value, datetime):
        return f"{value:%a %H:%M}"
    return f"{_digits(thing, value)} {thing.unit}".strip()


def _digits(thing: Thing, value: float) -> str:
    if thing.unit == "x":
        return f"{value:.3f}"
    if thing.about == "cost":
        return f"{value:.2f}"
    if thing.unit in ("mm", "h") or (thing.unit == "g" and abs(value) < 100):
        return f"{value:.1f}"
    return f"{value:.0f}"


def _by(move: Move) -> str:
    one, other = move.before, move.after
    if isinstance(one, datetime) and isinstance(other, datetime):
        minutes = round((other - one).total_seconds() / 60)
        return f"{minutes:+d} min"
    if isinstance(one, float) and isinstance(other, float):
        sign = "+" if other >= one else "-"
        return sign + _digits(move.thing, abs(other - one))
    return ""


def shown(value: Value) -> float | str | None:
    """Give a value for programs: moments as text."""
    return value.isoformat() if isinstance(value, datetime) else value
