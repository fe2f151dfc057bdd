"""A piece cut through with lines of one temperature, named beside it."""

from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from itertools import pairwise
from math import ceil, floor

import numpy as np

from demould.cold.body.cut import holds
from demould.cold.warmth import Warmth
from demould.mise.words import Words
from demould.sheets.drawing.labels import GUTTER_MM, Box, Note, labels
from demould.sheets.drawing.level_lines import level_lines
from demould.sheets.drawing.picture import (
    BOLD,
    FINE,
    PLAIN,
    Disc,
    Mark,
    Path,
    Picture,
    Point,
    Said,
)
from demould.sheets.drawing.ruler import HIGH_MM, LONG_MM, ruler

COLUMN_MM = 40.0
MARGIN_MM = 4.0
TITLE_MM, HEAD_MM = 4.4, 14.0
MOST_MM = 150.0
MOST_LINES = 8
STEPS = (0.2, 0.5, 1.0, 2.0, 5.0, 10.0, 20.0)
NEAR = 8
FLAT = 0.25
SKIN_STEPS = 20
"""Steps of the skin across half of the piece: about as long as its cells."""


@dataclass(frozen=True, slots=True, kw_only=True)
class _Mm:
    """A piece's warmth in millimetres."""

    outlines: tuple[tuple[Point, ...], ...]
    points: tuple[Point, ...]
    at_c: tuple[float, ...]
    heart: Point


def isotherms(
    key: str, title: str | Words, told: str | Words, piece: Warmth
) -> Picture:
    """Draw both halves, at full size where they go on the paper."""
    warmth = _in_mm(piece)
    whole = warmth.outlines[0]
    half, high = max(r for r, _ in whole), max(z for _, z in whole)
    shrunk = max(1, ceil(2 * half / MOST_MM))
    wide = 2 * half / shrunk + 2 * (GUTTER_MM + COLUMN_MM + MARGIN_MM)
    wide = max(wide, LONG_MM + 2 * MARGIN_MM)
    middle, foot = wide / 2, HEAD_MM + high / shrunk

    def paper(point: Point) -> Point:
        return middle + point[0] / shrunk, foot - point[1] / shrunk

    def drawn(points: Sequence[Point], width: float, *, dashed: bool = False) -> Path:
        return Path(points=tuple(map(paper, points)), width=width, dashed=dashed)

    marks: list[Mark] = [
        Said(text=str(title), at=(MARGIN_MM, 7.0), size=TITLE_MM, bold=True)
    ]
    notes: list[Note] = []
    for level, lines in _lines(warmth):
        marks += [drawn(line, FINE) for line in lines]
        right = [point for line in lines for point in line if point[0] > 0.2 * half]
        spots = tuple(map(paper, right or lines[0][:1]))
        notes.append(
            Note(text=f"{level:g} °C", spots=spots[:: max(1, len(spots) // 8)])
        )
    marks += [
        drawn(_round(outline), BOLD if n == 0 else PLAIN, dashed=n > 0)
        for n, outline in enumerate(warmth.outlines)
    ]
    core = _value(warmth, warmth.heart)
    marks.append(Disc(at=paper(warmth.heart), radius=0.9, width=0, solid=True))
    notes.append(
        Note(
            text=str(Words("core {at:.1f} °C", at=core)),
            spots=(paper(warmth.heart),),
            left=True,
        )
    )
    body = Box(
        left=middle - half / shrunk,
        top=HEAD_MM,
        right=middle + half / shrunk,
        bottom=foot,
    )
    placed = labels(notes, body, COLUMN_MM, top=HEAD_MM - 2)
    for label in placed:
        marks += label.marks
    below = max([foot, *(label.box.bottom for label in placed)]) + HIGH_MM
    marks += ruler(((wide - LONG_MM) / 2, below), shrunk)
    return Picture(
        key=key,
        title=title,
        told=told,
        width=wide,
        height=below + HIGH_MM,
        marks=tuple(marks),
    )


def _in_mm(piece: Warmth) -> _Mm:
    def mm(points: Iterable[Point]) -> tuple[Point, ...]:
        return tuple((1000 * r, 1000 * z) for r, z in points)

    (heart,) = mm([piece.heart])
    return _Mm(
        outlines=tuple(mm(one) for one in piece.outlines),
        points=mm(piece.points),
        at_c=piece.at_c,
        heart=heart,
    )


def levels(low: float, high: float) -> tuple[float, ...]:
    """Round temperatures between two, at most eight of them.

    >>> levels(-23.4, -17.9)
    (-23.0, -22.0, -21.0, -20.0, -19.0, -18.0)
    >>> levels(2.0, 2.0)
    ()
    """
    step = next(
        (one for one in STEPS if (high - low) / one <= MOST_LINES), 2 * STEPS[-1]
    )
    first, last = floor(low / step + 1e-9) + 1, ceil(high / step - 1e-9) - 1
    return tuple(n * step for n in range(first, last + 1))


def _lines(
    warmth: _Mm,
) -> Iterable[tuple[float, tuple[tuple[Point, ...], ...]]]:
    outline = np.array(warmth.outlines[0])

    def within(x: float, y: float) -> bool:
        return bool(holds(outline, abs(x), y))

    points, at_c = _both_halves(warmth)
    for level in levels(min(at_c), max(at_c)):
        lines = level_lines(points, at_c, level, within)
        if lines:
            yield level, lines


def _round(outline: Sequence[Point]) -> tuple[Point, ...]:
    """Right half up, left half down, closed."""
    left = [(-r, z) for r, z in reversed(outline)]
    return (*outline, *left, outline[0])


def _both_halves(warmth: _Mm) -> tuple[list[Point], list[float]]:
    """Middles of cells on either side, and points of the skin beyond them."""
    skin = [
        (r, z, _value(warmth, (r, z))) for r, z in _along(warmth.outlines[0]) if r >= 0
    ]
    right = [
        *((r, z, at) for (r, z), at in zip(warmth.points, warmth.at_c, strict=True)),
        *skin,
    ]
    both = {(round(s * r, 6), round(z, 6)): at for r, z, at in right for s in (1, -1)}
    return list(both), list(both.values())


def _along(outline: Sequence[Point]) -> Iterable[Point]:
    step = max(r for r, _ in outline) / SKIN_STEPS
    for (r0, z0), (r1, z1) in pairwise(outline):
        count = max(1, round(float(np.hypot(r1 - r0, z1 - z0)) / step))
        for n in range(count):
            share = n / count
            yield r0 + share * (r1 - r0), z0 + share * (z1 - z0)
    yield outline[-1]


def _value(warmth: _Mm, point: Point) -> float:
    """By a plane through the nearest cells, mirrored ones beside the axis too.

    Across cells that stand in one line the plane lies level, and beyond them it goes no
    further than they differ.
    """
    right = np.array(warmth.points)
    at = np.concatenate([right, right * (-1, 1)])
    values = np.tile(np.array(warmth.at_c), 2)
    near = np.argsort(np.hypot(*(at - point).T))[:NEAR]
    middle, mean = at[near].mean(axis=0), float(values[near].mean())
    slope = np.linalg.lstsq(at[near] - middle, values[near] - mean, rcond=FLAT)[0]
    low, high = float(values[near].min()), float(values[near].max())
    found = mean + float((np.array(point) - middle) @ slope)
    return min(max(found, 2 * low - high), 2 * high - low)
