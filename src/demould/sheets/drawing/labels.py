"""Names beside a drawing, in two columns, each tied to its place by a leader."""

from collections.abc import Sequence
from dataclasses import dataclass
from itertools import accumulate

import numpy as np
from scipy.optimize import isotonic_regression

from demould.sheets.drawing.lettering import ABOVE, BELOW, width_mm, wrapped
from demould.sheets.drawing.picture import FINE, Disc, Mark, Path, Point, Said

TEXT_MM = 3.2
LINE_MM = 4.0
APART_MM = 1.6
GUTTER_MM = 7.0
DOT_MM = 0.5
TOLD_APART_MM = 0.8


@dataclass(frozen=True, slots=True, kw_only=True)
class Note:
    """What to write, and where it belongs.

    `spots` are places that all serve; the first that no other leader runs by is taken.
    """

    text: str
    spots: tuple[Point, ...]
    left: bool = False


@dataclass(frozen=True, slots=True, kw_only=True)
class Box:
    """Room on the paper. [mm]."""

    left: float
    top: float
    right: float
    bottom: float


@dataclass(frozen=True, slots=True, kw_only=True)
class Label:
    """A note in its place: its lines, its room, and the leader from the spot to it."""

    lines: tuple[str, ...]
    box: Box
    leader: tuple[Point, ...]
    left: bool

    @property
    def marks(self) -> tuple[Mark, ...]:
        """What is drawn of it."""
        at = self.box.right if self.left else self.box.left
        said = (
            Said(
                text=line,
                at=(at, self.box.top + number * LINE_MM + ABOVE * TEXT_MM),
                size=TEXT_MM,
                anchor="end" if self.left else "start",
            )
            for number, line in enumerate(self.lines)
        )
        spot = Disc(at=self.leader[0], radius=DOT_MM, width=0, solid=True)
        return (Path(points=self.leader, width=FINE), spot, *said)


def labels(
    notes: Sequence[Note], body: Box, column_mm: float, *, top: float = 0.0
) -> tuple[Label, ...]:
    """Set the notes left and right of a body, none over another, no leader crossed.

    Parameters
    ----------
    notes
        On either side they keep the order of their spots from top to bottom.
    body
        What the leaders leave level before they turn to their label.
    column_mm
        How wide each column of text may be.
    top
        Above this nothing is written; where there is much to say it goes on below the
        body.
    """
    done: list[Label] = []
    for left in (True, False):
        side = [note for note in notes if note.left is left]
        done.extend(_column(_spotted(side), body, column_mm, top, left=left))
    return tuple(done)


def _spotted(notes: Sequence[Note]) -> list[tuple[Point, str]]:
    """Choose each note's spot so that no two leaders of a side share their way."""
    chosen: list[tuple[Point, str]] = []
    for note in sorted(notes, key=lambda one: len(one.spots)):
        taken = [spot[1] for spot, _ in chosen]
        spot = max(
            note.spots,
            key=lambda one: min(
                (min(abs(one[1] - y), TOLD_APART_MM) for y in taken), default=0.0
            ),
        )
        chosen.append((spot, note.text))
    return sorted(chosen, key=lambda one: one[0][1])


def _column(
    spotted: Sequence[tuple[Point, str]],
    body: Box,
    column_mm: float,
    top: float,
    *,
    left: bool,
) -> list[Label]:
    if not spotted:
        return []
    texts = [wrapped(text, TEXT_MM, column_mm) for _, text in spotted]
    heights = np.array([len(lines) * LINE_MM for lines in texts])
    starts = np.array(list(accumulate(heights + APART_MM, initial=0.0)))[:-1]
    wanted = np.array([spot[1] for spot, _ in spotted]) - heights / 2 - starts
    # As near to their spots as they go without changing places, by least squares.
    tops = np.maximum(isotonic_regression(wanted).x, top) + starts
    away = body.left - GUTTER_MM if left else body.right + GUTTER_MM
    turn = body.left if left else body.right
    return [
        _label(spot, lines, float(at), away, turn, left=left)
        for (spot, _), lines, at in zip(spotted, texts, tops, strict=True)
    ]


def _label(
    spot: Point,
    lines: tuple[str, ...],
    top: float,
    edge: float,
    turn: float,
    *,
    left: bool,
) -> Label:
    wide = max(width_mm(line, TEXT_MM) for line in lines)
    high = (len(lines) - 1) * LINE_MM + (ABOVE + BELOW) * TEXT_MM
    box = Box(
        left=edge - wide if left else edge,
        top=top,
        right=edge if left else edge + wide,
        bottom=top + high,
    )
    end = (edge + 1 if left else edge - 1, top + high / 2)
    return Label(lines=lines, box=box, leader=(spot, (turn, spot[1]), end), left=left)
