"""A note as read: what it gives, what to ask first, what it does not say."""

from collections.abc import Iterator, Sequence

from demould.advice.gaps.gap import Gap
from demould.advice.gaps.questions import Question
from demould.advice.gaps.told import moves_told
from demould.amounts.counts.counts import Counts
from demould.matter.whole import Whole
from demould.mise.note.noted import Note
from demould.mise.words import Words
from demould.sheets.page import Block, Cell, Column, Head, Lines, Page, Table

FIRST = 10
"""Beside a week there is room for so many of the things that are not said."""


def note_page(
    note: Note,
    counts: Counts | None,
    gaps: Sequence[Gap],
    questions: Sequence[Question],
    whole: Sequence[Whole] = (),
    *,
    short: bool = False,
) -> Page:
    """Give the page of a note: counts None where nothing can be counted.

    `short` names only what moves most.
    """
    return Page(
        key="note",
        title=Words("{title}: as read", title=(note.title or "a note").upper()),
        blocks=tuple(
            _blocks(note, counts, gaps, questions, whole, FIRST if short else len(gaps))
        ),
    )


def _blocks(
    note: Note,
    counts: Counts | None,
    gaps: Sequence[Gap],
    questions: Sequence[Question],
    whole: Sequence[Whole],
    most: int,
) -> Iterator[Block]:
    if counts is not None:
        yield Head(
            text=Words("as written it gives, pieces"), note=Words("weakest marked <")
        )
        yield Table(columns=_COUNTS, rows=tuple(_counted(counts)))
        if counts.measure_first is not None:
            yield Lines(
                lines=(Words("measure first: {what}", what=counts.measure_first.name),)
            )
    if questions:
        yield Head(text=Words("ask first"), note=Words("--answer 1=..."))
        yield Table(columns=_ASKED, rows=tuple(_asked(one) for one in questions))
    if gaps:
        yield from gap_table(gaps, most)
    if whole:
        yield Head(text=Words("whole ones, as written"))
        yield Table(
            columns=(Column(share=2), Column(align="right"), Column(align="right")),
            rows=tuple(_whole(one) for one in whole),
        )
    if note.remarks:
        yield Head(text=Words("not understood, and kept"))
        yield Lines(lines=tuple(" ".join(one.split()) for one in note.remarks))


def gap_table(gaps: Sequence[Gap], most: int) -> Iterator[Block]:
    """Give what is not said, what moves most first."""
    yield Head(text=Words("not said"), note=Words("{n} things", n=len(gaps)))
    yield Table(columns=_UNSAID, rows=tuple(_row(gap) for gap in gaps[:most]))
    if len(gaps) > most:
        yield Lines(lines=(Words("and {n} that move less", n=len(gaps) - most),))


_COUNTS = (Column(share=2), Column(align="right"), Column(share=2))
_ASKED = (Column(align="right"), Column(share=3), Column(share=3))
_UNSAID = (Column(share=3), Column(share=3), Column(share=3))


def _whole(one: Whole) -> tuple[Cell, ...]:
    gross = Words("{grams:.0f} g gross", grams=one.gross.value) if one.gross else ""
    return (
        Cell(text=Words("{what}, {grams:.0f} g", what=one.what, grams=one.net.value)),
        Cell(text=gross),
        Cell(text=Words("about {n:.1f}", n=one.pieces.value)),
    )


def _counted(counts: Counts) -> Iterator[tuple[Cell, ...]]:
    for one in counts.each:
        spread = Words(
            "between {low:.0f} and {high:.0f}", low=one.spread.low, high=one.spread.high
        )
        yield (
            Cell(text=one.name),
            Cell(text=f"{one.pieces}", strong=one.weakest),
            Cell(text=spread if one.spread.low != one.spread.high else ""),
        )


def _asked(question: Question) -> tuple[Cell, ...]:
    return (
        Cell(text=f"{question.number}"),
        Cell(text=question.asks),
        Cell(text=_moves(question.gap, 2)),
    )


def _row(gap: Gap) -> tuple[Cell, ...]:
    return Cell(text=gap.says), Cell(text=gap.takes), Cell(text=_moves(gap, 1))


def _moves(gap: Gap, most: int) -> str:
    return "; ".join(str(words) for words in moves_told(gap, most))
