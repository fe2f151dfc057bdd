"""A page and the moment it is printed, as the data that the template reads."""

from collections.abc import Iterator
from dataclasses import replace
from datetime import datetime
from typing import Any, assert_never

from demould.counter.paper.signs import printable
from demould.mise.words import Words
from demould.sheets.drawing.picture import Picture
from demould.sheets.drawing.picture import Said as Drawn
from demould.sheets.drawing.svg import svg_of
from demould.sheets.page import (
    Blanks,
    Block,
    Cell,
    Drawing,
    Head,
    Lines,
    Page,
    Table,
    Text,
    columns_to_write_in,
)
from demould.sheets.plain import ASSUMED, MEANINGS, STRONG

LAW = Words("Local food law and your own food-safety plan come first.")
PRINTED = Words("printed {when}")
WORDS = {name: Words(name) for name in ("page", "of", "to", "from", "down", "up")}
LONGEST_KEPT_WHOLE = 14
LONGEST_HEAD = 16
LEAST_SHARE = 6
BESIDE = {"upright": 8, "across": 8, "wall": 3}
ROOM_FOR_KEPT = {"upright": 70, "across": 105, "wall": 75}

Told = dict[str, Any]


def told(page: Page, printed: datetime, size_pt: float) -> Told:
    """Give everything the template prints, each text made of signs it can print."""
    blocks = [_block(block, page) for block in page.blocks]
    when = f"{printed:%a} {printed.day} {printed:%b %Y, %H:%M}"
    return {
        "lang": "en",
        "size": size_pt,
        "paper": page.paper,
        "title": _said(page.title) or _said(page.key) or "sheet",
        "note": _said(page.note),
        "foot": [_said(text) for text in page.foot],
        "under": [str(LAW), *_meanings(blocks)],
        "printed": str(Words(PRINTED.template, when=when)),
        "words": {name: str(word) for name, word in WORDS.items()},
        "blocks": blocks,
    }


def _meanings(blocks: list[Told]) -> Iterator[str]:
    cells = [cell for block in blocks for row in block.get("rows", ()) for cell in row]
    used = {cell["mark"] for cell in cells}
    used |= {STRONG for cell in cells if cell["strong"]}
    yield from (f"{sign} {why}" for sign, why in MEANINGS.items() if sign in used)


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
        case Drawing(picture=picture):
            return _drawing(picture)
        case _:
            assert_never(block)


def _drawing(picture: Picture) -> Told:
    marks = tuple(
        replace(mark, text=printable(mark.text)) if isinstance(mark, Drawn) else mark
        for mark in picture.marks
    )
    return {
        "kind": "drawing",
        "svg": svg_of(replace(picture, marks=marks)),
        "width": picture.width,
        "told": _said(picture.told),
    }


def _table(table: Table, page: Page) -> Told:
    shares = _shares(table, page)
    close = shares is None
    widths = shares or tuple(min(max(4, wide), 30) for wide in _longest(table))
    write_in = columns_to_write_in(table)
    return {
        "kind": "table",
        "ticks": table.ticks,
        "close": close,
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
        "rows": [
            [_cell(cell, signs=close or page.paper == "wall") for cell in row]
            for row in table.rows
        ],
    }


def _cell(cell: Cell, *, signs: bool) -> Told:
    sign = ASSUMED if cell.known == "assumed" else ""
    return {
        "text": _said(cell.text),
        "mark": sign if signs else cell.known or "",
        "figure": cell.known is not None,
        "strong": cell.strong,
    }


def _longest(table: Table) -> tuple[int, ...]:
    """Give each column's longest text in signs; a head is set smaller, and may wrap."""
    return tuple(
        max(
            [min(round(0.8 * len(_said(column.head))), LONGEST_HEAD)]
            + [len(_said(row[at].text)) for row in table.rows]
        )
        for at, column in enumerate(table.columns)
    )


def _shares(table: Table, page: Page) -> tuple[float | None, ...] | None:
    """Give each column its share of the width, or none to be as wide as its texts.

    Numbers and short texts are as wide as they are. Where those alone would fill the
    leaf there are no shares: the table is set close, by its longest texts.
    """
    longest = _longest(table)
    write_in = columns_to_write_in(table)
    kept = [
        (column.align == "right" or length <= LONGEST_KEPT_WHOLE) and not blank
        for column, length, blank in zip(table.columns, longest, write_in, strict=True)
    ]
    signs = sum(
        length + 2 + BESIDE[page.paper] * any(row[at].known for row in table.rows)
        if kept[at]
        else LEAST_SHARE
        for at, length in enumerate(longest)
    )
    if signs > ROOM_FOR_KEPT[page.paper]:
        return None
    if kept and all(kept) and page.paper != "wall":
        kept[0] = False
    return tuple(
        None if whole else column.share
        for column, whole in zip(table.columns, kept, strict=True)
    )
