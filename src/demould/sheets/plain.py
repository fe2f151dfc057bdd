"""A page as text: for a screen of 80 columns, or to mail."""

import re
import textwrap
from collections.abc import Iterable, Iterator
from dataclasses import dataclass
from itertools import zip_longest
from typing import assert_never

from demould.mise.words import Words
from demould.sheets.page import (
    Blanks,
    Cell,
    Column,
    Drawing,
    Head,
    Lines,
    Page,
    Table,
    Text,
    columns_to_write_in,
)

ASSUMED = "~"
STRONG = "<"
MEANINGS = {
    ASSUMED: Words("hangs on an assumption"),
    STRONG: Words("look here first"),
}
GAP = "  "
TICK = "[ ] "
BLANK = "______"
LONGEST_KEPT_WHOLE = 22


def plain(page: Page, width: int = 80) -> str:
    """Write a page as lines of at most `width` signs, each line ended.

    Heads are capitals and loud lines begin with ``!!``. ``~`` stands behind a figure
    that hangs on an assumption, ``<`` behind what is strong; where they are used the
    foot says so. Only a word longer than its line, or in a table longer than 22
    signs, is ever broken.

    Raises
    ------
    ValueError
        `width` is under 20, where no table can be read.
    """
    if width < 20:
        raise ValueError(f"a page is {width} signs wide; it must be 20 or more")
    written = [*_across(_said(page.title), _said(page.note), width), "-" * width]
    margin = ""
    for place, block in enumerate(page.blocks):
        if isinstance(block, Head):
            written += [""] * (place > 0)
            written += _across(_said(block.text).upper(), _said(block.note), width)
            margin = GAP
        else:
            written += [margin + line for line in _block(block, width - len(margin))]
    used = _signs_used(page)
    means = [f"{sign} {why}" for sign, why in MEANINGS.items() if sign in used]
    foot = [*map(_said, page.foot), *means]
    if foot:
        written += ["-" * width, *_flow(foot, width)]
    return "".join(f"{line.rstrip()}\n" for line in written)


def _block(block: Lines | Table | Blanks | Drawing, width: int) -> Iterator[str]:
    match block:
        case Lines(lines=lines, loud=loud):
            for line in lines:
                yield from _wrap(_said(line), width, first="!! " if loud else "")
        case Table():
            yield from _table(block, width)
        case Blanks(labels=labels):
            yield from _flow((f"{_said(label)} {BLANK}" for label in labels), width)
        case Drawing(picture=picture):
            yield from _wrap(f"[{_said(picture.told)}]", width)
        case _:
            assert_never(block)


def _said(text: Text) -> str:
    # A no-break space holds a number and its unit together until the line is made.
    return re.sub(r"[^\S\xa0]+", " ", str(text)).strip()


def _wrap(text: str, width: int, first: str = "", hang: str = GAP) -> list[str]:
    lines = textwrap.wrap(
        " ".join(_words(text, width - len(first) - len(hang))),
        width,
        initial_indent=first,
        subsequent_indent=" " * len(first) + hang,
        break_on_hyphens=False,
    )
    return [line.replace("\xa0", " ") for line in lines] or [first]


def _words(text: str, room: int) -> list[str]:
    """Part a text at its spaces; what is held together only where it fits in `room`."""
    return [
        part
        for word in text.split(" ")
        for part in (word.split("\xa0") if len(word) > room else [word])
    ]


def _across(left: str, right: str, width: int) -> list[str]:
    if len(left) + len(GAP) + len(right) <= width:
        return [(left + right.rjust(width - len(left))).replace("\xa0", " ")]
    below = [line.rjust(width) for line in _wrap(right, width, hang="")]
    return [*_wrap(left, width), *(below if right else ())]


def _flow(parts: Iterable[str], width: int) -> Iterator[str]:
    held = ""
    for part in parts:
        together = f"{held}   {part}" if held else part
        if held and len(together) > width:
            yield from _wrap(held, width)
            together = part
        held = together
    yield from _wrap(held, width)


def _signs_used(page: Page) -> frozenset[str]:
    """Say which of `MEANINGS` stand somewhere on the page."""
    cells = (
        cell
        for block in page.blocks
        if isinstance(block, Table)
        for row in block.rows
        for cell in row
    )
    return frozenset(
        sign for cell in cells for sign in _marks(cell) if sign in MEANINGS
    )


def _marks(cell: Cell) -> str:
    assumed = ASSUMED if cell.known == "assumed" else ""
    return f"{assumed}\xa0{STRONG}" if cell.strong else assumed


@dataclass(frozen=True, slots=True, kw_only=True)
class _Set:
    """A column's texts ready to be set, and the widths it can have."""

    column: Column
    head: str
    texts: tuple[str, ...]

    @property
    def wide(self) -> int:
        return max(1, *map(len, (self.head, *self.texts)))

    @property
    def narrow(self) -> int:
        if self.column.align == "right":
            return max(1, _longest_word(self.head), *map(len, self.texts))
        words = max(map(_longest_word, (self.head, *self.texts)))
        return min(self.wide, max(12, min(words, LONGEST_KEPT_WHOLE) + len(GAP)))

    def lines(self, text: str, width: int) -> list[str]:
        if self.column.align == "right":
            return [line.rjust(width) for line in _wrap(text, width, hang="")]
        hang = GAP if width >= 12 else ""
        return [line.ljust(width) for line in _wrap(text, width, hang=hang)]


def _longest_word(text: str) -> int:
    return max(map(len, _words(text, LONGEST_KEPT_WHOLE)))


def _sets(table: Table) -> tuple[_Set, ...]:
    blank = columns_to_write_in(table)
    return tuple(
        _set(column, [row[at] for row in table.rows], BLANK if blank[at] else "")
        for at, column in enumerate(table.columns)
    )


def _set(column: Column, cells: list[Cell], blank: str) -> _Set:
    marks = [_marks(cell) for cell in cells]
    room = max(map(len, marks), default=0) if column.align == "right" else 0
    head = _said(column.head)
    return _Set(
        column=column,
        head=head + "\xa0" * room if head else "",
        texts=tuple(
            (_said(cell.text) or blank) + mark.ljust(room, "\xa0")
            for cell, mark in zip(cells, marks, strict=True)
        ),
    )


def _table(table: Table, width: int) -> Iterator[str]:
    sets = _sets(table)
    tick = TICK if table.ticks else ""
    widths = _widths(sets, width - len(tick))
    heads = [column.head for column in sets]
    rows = list(zip(*(column.texts for column in sets), strict=True))
    if widths is None:
        for row in rows:
            yield from _wrap(_in_a_line(heads, row), width, first=tick or "- ")
        return
    if any(heads):
        yield from _row(sets, heads, widths, " " * len(tick))
    for row in rows:
        yield from _row(sets, row, widths, tick)


def _widths(sets: tuple[_Set, ...], room: int) -> list[int] | None:
    """Give each column its width, the widest giving way first; none if none fits."""
    widths = [column.wide for column in sets]
    spare = room - len(GAP) * (len(sets) - 1)
    while sum(widths) > spare:
        yielding = [at for at, column in enumerate(sets) if widths[at] > column.narrow]
        if not yielding:
            return None
        widths[max(yielding, key=lambda at: widths[at])] -= 1
    return widths


def _row(
    sets: tuple[_Set, ...], texts: Iterable[str], widths: list[int], tick: str
) -> Iterator[str]:
    cells = [
        column.lines(text, width)
        for column, text, width in zip(sets, texts, widths, strict=True)
    ]
    for number, parts in enumerate(zip_longest(*cells)):
        shown = [
            part if part is not None else " " * width
            for part, width in zip(parts, widths, strict=True)
        ]
        yield (tick if number == 0 else " " * len(tick)) + GAP.join(shown)


def _in_a_line(heads: list[str], row: tuple[str, ...]) -> str:
    named = zip(heads, row, strict=True)
    return f"{GAP} ".join(
        f"{head} {text}".strip() for head, text in named if text.strip()
    )
