"""What a sheet says, before anybody prints it: on paper or in 80 columns."""

from dataclasses import dataclass
from typing import Literal

from demould.mise.figure import Known
from demould.mise.words import Words
from demould.sheets.drawing.picture import Picture

Text = str | Words


@dataclass(frozen=True, slots=True, kw_only=True)
class Cell:
    """One place of a table; `known` where it is a figure, `strong` where it matters."""

    text: Text
    known: Known | None = None
    strong: bool = False


@dataclass(frozen=True, slots=True, kw_only=True)
class Column:
    """A column: its head, how it is set, and its share of the width on paper."""

    head: Text = ""
    align: Literal["left", "right"] = "left"
    share: float = 1.0


@dataclass(frozen=True, slots=True, kw_only=True)
class Head:
    """The heading of a block, with a note set to the right."""

    text: Text
    note: Text = ""


@dataclass(frozen=True, slots=True, kw_only=True)
class Lines:
    """Plain lines, in the order read; `loud` ones cannot be overlooked."""

    lines: tuple[Text, ...]
    loud: bool = False


@dataclass(frozen=True, slots=True, kw_only=True)
class Table:
    """Rows under heads. `ticks` puts an empty box to tick before each row.

    A column with a head and no text in any row is one to write in.
    """

    columns: tuple[Column, ...]
    rows: tuple[tuple[Cell, ...], ...]
    ticks: bool = False

    def __post_init__(self) -> None:
        for number, row in enumerate(self.rows, start=1):
            if len(row) != len(self.columns):
                raise ValueError(
                    f"row {number} has {len(row)} cells under"
                    f" {len(self.columns)} columns"
                )


def columns_to_write_in(table: Table) -> tuple[bool, ...]:
    """Say of each column whether it has a head and nothing under it."""
    return tuple(
        bool(table.rows)
        and bool(str(column.head).strip())
        and not any(str(row[at].text).strip() for row in table.rows)
        for at, column in enumerate(table.columns)
    )


@dataclass(frozen=True, slots=True, kw_only=True)
class Blanks:
    """Labelled lines to fill in by hand: tare, lot, who, weighed."""

    labels: tuple[Text, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class Drawing:
    """A picture at its own size; text alone says what it shows."""

    picture: Picture


Block = Head | Lines | Table | Blanks | Drawing


@dataclass(frozen=True, slots=True, kw_only=True)
class Page:
    """One sheet. `key` names its file; `foot` stands on every leaf of it.

    `paper` is how A4 is used: `upright` and `across` in big type for the bench,
    `wall` close and in two columns, on one leaf where that can be read.
    """

    key: str
    title: Text
    note: Text = ""
    blocks: tuple[Block, ...]
    foot: tuple[Text, ...] = ()
    paper: Literal["upright", "across", "wall"] = "upright"
