"""A page and the moment it is printed, as the data that the template reads."""

from collections.abc import Iterator
from datetime import datetime
from typing import Any, assert_never

from demould.counter.paper.signs import printable
from demould.mise.words import Words
from demould.sheets.page import (
    Blanks,
    Block,
    Cell,
    Column,
    Head,
    Lines,
    Page,
    Table,
    Text,
    columns_to_write_in,
)
from demould.sheets.plain import ASSUMED, MEANINGS, STRONG, signs_used

LAW = Words("Local food law and your own food-safety plan come first.")
PRINTED = Words("printed {when}")
WORDS = {name: Words(name) for name in ("page", "of", "to", "from", "down", "up")}
LONGEST_KEPT_WHOLE = 14
SIGNS_IN_A_LINE = {"upright": 78, "across": 118, "wall": 84}

Told = dict[str, Any]


def told(page: Page, printed: datetime, size_pt: float) -> Told:
    """Give everything the template prints, each text made of signs it can print."""
    when = f"{printed:%a} {printed.day} {printed:%b %Y, %H:%M}"
    return {
        "lang": "en",
        "size": size_pt,
        "paper": page.paper,
        "title": _said(page.title) or page.key,
        "note": _said(page.note),
        "foot": [*map(_said, page.foot), *_meanings(page)],
        "law": str(LAW),
        "printed": str(Words(PRINTED.template, when=when)),
        "words": {name: str(word) for name, word in WORDS.items()},
        "blocks": [_block(block, page) for block in page.blocks],
    }


def _meanings(page: Page) -> Iterator[str]:
    """Say what the signs mean that this page uses; a bench page has words for ``~``."""
    shown = (STRONG,) if page.paper != "wall" else (ASSUMED, STRONG)
    used = signs_used(page)
    yield from (f"{sign} {MEANINGS[sign]}" for sign in shown if sign in used)


def _said(text: Text) -> str:
    return printable(str(text))


def _block(block: Block, page: Page) -> Told:
    match block:
        case Head(text=text, note=note):
            return {"kind": "head", "text": _said(text), "note": _said(note)}
        case Lines(lines=lines, loud=loud):
            said = [_said(line) for line in lines]
            return {"kind": "lines", "lines": said, "loud": loud}
        case Blanks(labels=labels):
            return {"kind": "blanks", "labels": [_said(label) for label in labels]}
        case Table():
            return _table(block, page)
        case _:
            assert_never(block)


def _table(table: Table, page: Page) -> Told:
    rows = [[_cell(cell, page) for cell in row] for row in table.rows]
    write_in = columns_to_write_in(table)
    widths = _widths(table, rows, page)
    return {
        "kind": "table",
        "ticks": table.ticks,
        "columns": [
            {
                "head": _said(column.head),
                "align": column.align,
                "width": widths[at],
                "figures": any(row[at].known for row in table.rows),
                "write": write_in[at],
            }
            for at, column in enumerate(table.columns)
        ],
        "rows": rows,
    }


def _cell(cell: Cell, page: Page) -> Told:
    mark: str = cell.known or ""
    if page.paper == "wall":
        mark = ASSUMED if cell.known == "assumed" else ""
    return {
        "text": _said(cell.text),
        "mark": mark,
        "figure": cell.known is not None,
        "strong": cell.strong,
    }


def _widths(table: Table, rows: list[list[Told]], page: Page) -> list[float | None]:
    """Give each column its share of the width, or none to be as wide as its texts.

    Numbers and short texts are as wide as they are. Where those alone would fill the
    leaf, every column gets a share by its longest text.
    """
    longest = [
        max((len(row[at]["text"]) + len(row[at]["mark"]) for row in rows), default=0)
        for at in range(len(table.columns))
    ]
    write_in = columns_to_write_in(table)
    shares = [
        None if _kept(column, length) and not write_in[at] else column.share
        for at, (column, length) in enumerate(zip(table.columns, longest, strict=True))
    ]
    if page.paper != "wall" and all(share is None for share in shares):
        shares[:1] = [1.0]
    taken = sum(
        max(length, 4)
        for length, share in zip(longest, shares, strict=True)
        if share is None
    )
    if taken > 0.7 * (SIGNS_IN_A_LINE[page.paper] - 4 * table.ticks):
        return [float(min(max(length, 4), 30)) for length in longest]
    return shares


def _kept(column: Column, longest: int) -> bool:
    return column.align == "right" or longest <= LONGEST_KEPT_WHOLE
