"""What is unsaid: every open question, then every assumption, what moves most first."""

from collections.abc import Iterable, Iterator

from demould.mise.words import Words
from demould.sheets.page import Block, Cell, Column, Head, Lines, Page, Table
from demould.week.sure import Move, Sure
from demould.week.unsaid import Unsaid


def check_page(
    kitchen: str,
    sure: Sure,
    unsaid: tuple[Unsaid, ...],
    will_it: Iterable[Block] = (),
    made_of: Iterable[Block] = (),
) -> Page:
    """Give the page of a folder without faults.

    `will_it` is what speaks up, `made_of` the make-up of the components, at the end.
    """
    return Page(
        key="check",
        title=Words("{kitchen}: what is unsaid", kitchen=kitchen.upper()),
        blocks=tuple(_blocks(sure, unsaid, will_it)) + tuple(made_of),
    )


def _unsaid(one: Unsaid) -> tuple[Cell, ...]:
    """What is open; what is taken and what moves; the question."""
    taken = [str(words) for words in (one.takes, *one.moves) if words is not None]
    return Cell(text=one.says), Cell(text="; ".join(taken)), Cell(text=one.asks)


def _moved(move: Move) -> str:
    """What moves most, and what the money of a piece does."""
    return "; ".join(str(words) for words in (move.says, move.money) if words)


def _blocks(
    sure: Sure, unsaid: tuple[Unsaid, ...], will_it: Iterable[Block]
) -> Iterator[Block]:
    yield Lines(lines=(Words("Nothing that is written is wrong."),))
    if unsaid:
        yield Head(text=Words("not said"), note=Words("ask"))
        yield Table(
            columns=(Column(share=3), Column(share=2), Column(share=2)),
            rows=tuple(_unsaid(one) for one in unsaid),
        )
    yield from will_it
    yield Head(
        text=Words("assumed, what moves most first"),
        note=Words("{n} figures", n=len(sure.assumed)),
    )
    yield Table(
        columns=(Column(share=2), Column(share=3), Column(share=2)),
        rows=tuple(
            (
                Cell(text=f"{move.figure.name} {move.figure}", known="assumed"),
                Cell(text=_moved(move)),
                Cell(text=move.settled_by),
            )
            for move in sure.moves
        ),
    )
