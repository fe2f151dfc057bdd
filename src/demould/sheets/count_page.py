"""One dessert's counts and factors, and every number down to the lines as written."""

from collections.abc import Iterator, Sequence
from typing import assert_never

from demould.mise.figure import (
    Assumed,
    Estimate,
    Figure,
    Line,
    Measured,
    Stated,
    Worked,
    how_known,
    unfold,
)
from demould.mise.words import Words
from demould.sheets.make_table import make_table
from demould.sheets.page import Block, Cell, Column, Head, Lines, Page, Table
from demould.sheets.times import grams
from demould.week.making import Amounts


def count_page(
    amounts: Amounts,
    *,
    asked: bool,
    holds: Sequence[Words] = (),
    finish: Sequence[Words] = (),
) -> Page:
    """Give the counts as written; where a number was asked for, the factors for it.

    `holds` and `finish` are what the kitchen and the finish say to that number.
    """
    return Page(
        key=f"count-{amounts.dessert.key}",
        title=amounts.dessert.name,
        note=Words("{n} pieces", n=amounts.pieces) if asked else "",
        blocks=tuple(_blocks(amounts, holds, finish, asked=asked)),
    )


def _blocks(
    amounts: Amounts,
    holds: Sequence[Words],
    finish: Sequence[Words],
    *,
    asked: bool,
) -> Iterator[Block]:
    yield Head(text=Words("as written it gives, pieces"))
    yield Table(
        columns=(
            Column(share=2.4),
            Column(head=Words("gives"), align="right"),
            Column(head=Words("between"), share=1.3),
            Column(head=Words("left over"), align="right"),
            Column(share=2),
        ),
        rows=tuple(
            (
                Cell(text=one.name),
                Cell(
                    text=str(one.pieces),
                    known=how_known(one.gives),
                    strong=one.weakest,
                ),
                Cell(text=_between(one.spread)),
                Cell(text=f"{grams(one.left_over.value)} g"),
                Cell(text=one.remark or ""),
            )
            for one in amounts.counts.each
        ),
    )
    first = amounts.counts.measure_first
    if first is not None:
        yield Lines(
            lines=(
                Words(
                    "measure first: {name}, assumed {figure}",
                    name=first.name,
                    figure=first,
                ),
            )
        )
    if asked:
        yield Head(text=Words("make"))
        yield make_table([amounts])
        if holds:
            yield Head(text=Words("what the kitchen holds"))
            yield Lines(lines=tuple(holds))
        if finish:
            yield Head(text=Words("the finish"))
            yield Lines(lines=tuple(finish))


def _between(spread: Estimate) -> str:
    if spread.low == spread.high:
        return ""
    return f"{spread.low:.0f} to {spread.high:.0f}"


def why_lines(amounts: Amounts, *, asked: bool) -> Iterator[str]:
    """Unfold every number of the page, a line a figure, deeper ones further in."""
    figures = [one.gives for one in amounts.counts.each]
    if asked:
        figures += [make.weigh for make in amounts.makes]
        figures += [amounts.jug.melt] if amounts.jug else []
    for figure in [*figures, amounts.piece.whole]:
        yield ""
        for depth, part in unfold(figure):
            yield f"{'  ' * depth}{_told(part)}"


def _told(figure: Figure) -> str:
    return f"{figure.name}: {grams_or_more(figure)}  {_whence(figure)}"


def grams_or_more(figure: Figure) -> str:
    """Give value and unit with the digits that tell something."""
    return f"{figure.value:.5g} {figure.unit}".strip()


def _whence(figure: Figure) -> str:
    match figure.origin:
        case Worked(rule=rule):
            return f"= {rule}"
        case Assumed(low=low, high=high, source=source, line=line):
            said = f"assumed, between {low:g} and {high:g}"
            return f"{said}{f' ({source})' if source else ''}{_at(line)}"
        case Measured(on=on, readings=readings, line=line):
            when = f" on {on}" if on else ""
            times = f", {readings} times" if readings > 1 else ""
            return f"measured{when}{times}{_at(line)}"
        case Stated(by=by, line=line):
            return f"stated{f' by {by}' if by else ''}{_at(line)}"
        case _:
            assert_never(figure.origin)


def _at(line: Line | None) -> str:
    if line is None:
        return ""
    return f'  {line.file}:{line.number} "{line.text.strip()}"'
