"""One thing that is not said, and how far the result moves with it."""

from dataclasses import dataclass
from typing import Literal

from demould.advice.gaps.worked import Ends, What
from demould.mise.figure import Figure, Line
from demould.mise.words import Words

Kind = Literal[
    "amount",
    "unit",
    "leaf",
    "make-up",
    "which",
    "unknown",
    "total",
    "called for",
    "temperature",
    "time",
    "mould",
    "size",
    "density",
    "figure",
    "used, not listed",
    "listed, not used",
]


@dataclass(frozen=True, slots=True, kw_only=True)
class Moved:
    """How far one number moves between the two ends of what is not said.

    `component` is its key, "" for the dessert. `unit` is pieces, %, g, h or
    money. `share` is
    the move as a share of what it is likely to be: what gaps are ranked by.
    """

    what: What
    component: str
    name: str
    likely: float
    low: float
    high: float
    unit: str
    share: float


def only(line: Line | None) -> tuple[Line, ...]:
    """That line, where there is one."""
    return () if line is None else (line,)


@dataclass(frozen=True, slots=True, kw_only=True)
class Gap:
    """One thing that is not said.

    `key` names it, the same for as long as it is open. `takes` is what is taken until
    it is, with its ends. `moves` are what moves with it, the most first. `asks` is the
    question that settles it. `figure` is the assumed one, where
    it is one; `lines` are those that an answer changes. `ends` are the dessert and its
    kitchen at both ends, where numbers can stand for them.
    """

    key: str
    kind: Kind
    says: Words
    takes: Words
    asks: Words
    moves: tuple[Moved, ...] = ()
    figure: Figure | None = None
    lines: tuple[Line, ...] = ()
    ends: Ends | None = None

    @property
    def line(self) -> Line | None:
        """The first line that an answer changes."""
        return self.lines[0] if self.lines else None

    @property
    def weight(self) -> float:
        """How far the result moves: the largest share of any number."""
        return max((one.share for one in self.moves), default=0.0)
