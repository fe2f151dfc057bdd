"""What a note says, once it is read."""

from dataclasses import dataclass
from typing import Literal

from demould.mise.figure import Figure, Line

Use = Literal[
    "title",
    "part",
    "pieces",
    "amount",
    "ingredient",
    "state",
    "step",
    "total",
    "call",
    "mould",
    "joining",
    "remark",
]


@dataclass(frozen=True, slots=True, kw_only=True)
class Stretch:
    """A stretch of the note's text and what became of it.

    ``joining`` are small words and marks that hold the others together; ``remark`` is
    kept word for word because nobody understood it. `line` counts from 1.
    """

    start: int
    end: int
    text: str
    use: Use
    line: int


@dataclass(frozen=True, slots=True, kw_only=True)
class NotedLine:
    """An ingredient, with its amount where the note has one.

    `amount` in g, ml, %, or a counted unit; assumed between its ends where the note
    gives two. `what` is the English name, `written` the words of the note, `ingredient`
    the id or None where nobody knows it. `guessed` where the spelling was forgiven;
    `mentioned` where only the method speaks of it; `whole` is the number that was split.
    """

    what: str
    written: str
    ingredient: str | None
    amount: Figure | None = None
    no_unit: bool = False
    guessed: bool = False
    mentioned: bool = False
    steeped: bool = False
    whole: float | None = None
    states: tuple[str, ...] = ()
    remarks: tuple[str, ...] = ()
    line: Line | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class NotedStep:
    """Something to be done. `while_` is a time in words (``overnight``)."""

    action: str
    written: str
    at_c: Figure | None = None
    minutes: Figure | None = None
    while_: str = ""
    line: Line | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class NotedPart:
    """A part of the dessert. `kind` is one of the bands', or empty."""

    name: str
    kind: str
    lines: tuple[NotedLine, ...] = ()
    steps: tuple[NotedStep, ...] = ()
    total: Figure | None = None
    line: Line | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class Note:
    """A note as read: every word of it is in one of `stretches`.

    `mould` is what the note calls the mould; `calls` are parts spoken of as if they were there, with no formula of their own.
    `remarks` are what nobody understood, word for word.
    """

    text: str
    title: str
    language: str
    pieces: Figure | None
    parts: tuple[NotedPart, ...]
    calls: tuple[str, ...]
    stretches: tuple[Stretch, ...]
    mould: str = ""

    @property
    def remarks(self) -> tuple[str, ...]:
        """What nobody understood, word for word, in order."""
        return tuple(one.text for one in self.stretches if one.use == "remark")
