"""Which cells a piece has: a grid laid over it, each cell split among the bodies.

SI. Grid lines follow the flat sides of outlines where they can; a body's cells are what
it leaves of the grid's when what lies in it is taken away.
"""

from collections.abc import Sequence
from itertools import pairwise
from typing import NamedTuple

import numpy as np

from demould.cold.body.cut import (
    Cut,
    Floats,
    Grid,
    Pieces,
    Whole,
    cut,
    grid_of,
    holds,
    pieces_of,
)
from demould.cold.body.profile import Profile, closed, section_area
from demould.cold.compiled import compiled

CELLS = 170
LEAST = 1e-6


class Cells(NamedTuple):
    """All cells, in an order that keeps neighbours close.

    `number` finds a cell by body, column and row, -1 where a body has none there. Of
    each cell: its place in the grid, the sums of `cut.Cut` over it, shape (7, n),
    and the middle of its section, (r, z) [m] (n, 2).
    """

    grid: Grid
    number: Whole
    body: Whole
    column: Whole
    row: Whole
    moments: Floats
    centre: Floats


def cells_of(
    profiles: Sequence[Profile], cell: float | None, *, endless: bool
) -> tuple[Cells, list[Cut], list[Pieces]]:
    """Lay the grid; give the cells, and of each body its cut and its outline's pieces.

    `cell` is the side of a grid cell [m]; without it, what makes about 170 cells.
    `endless`: the profiles are sections of a bar.
    """
    grid = _grid(profiles, cell, endless=endless)
    marks = np.array([point for profile in profiles for point in profile])
    pieces = [pieces_of(profile, grid, marks) for profile in profiles]
    cuts = _own_parts(profiles, grid, pieces)
    number, body, column, row = _numbered(
        np.stack([part.moments[0] for part in cuts]), grid
    )
    moments = np.stack([part.moments for part in cuts], axis=1)[:, body, column, row]
    # Centres of slivers are differences of near equals: keep them in their cell.
    around = 1.0 if endless else 2 * np.pi
    r = moments[6 if endless else 0] / (around * moments[4])
    z = moments[5] / moments[4]
    r = np.minimum(np.maximum(r, grid.r[column]), grid.r[column + 1])
    z = np.minimum(np.maximum(z, grid.z[row]), grid.z[row + 1])
    centre = np.stack([r, z], axis=1)
    return Cells(grid, number, body, column, row, moments, centre), cuts, pieces


def innermost(profiles: Sequence[Profile], points: Floats) -> Whole:
    """The last profile that holds each point, -1 outside all. Shape (n,)."""
    body = np.full(len(points), -1)
    for q, profile in enumerate(profiles):
        _claimed(body, np.array(profile), points, q)
    return body


@compiled
def _claimed(body: Whole, outline: Floats, points: Floats, q: int) -> None:
    for n in range(len(points)):
        if holds(outline, points[n, 0], points[n, 1]):
            body[n] = q


def cells_at(cells: Cells, points: Floats, body: Whole) -> Whole:
    """The cell of `body` at each point; where it is too small to count, the nearest."""
    found = cells.number[(body, *cells.grid.cell_of(points))]
    for n in np.flatnonzero(found < 0):
        away = np.hypot(*(cells.centre - points[n]).T)
        found[n] = np.argmin(np.where(cells.body == body[n], away, np.inf))
    return found


def _grid(profiles: Sequence[Profile], cell: float | None, *, endless: bool) -> Grid:
    r, z = zip(*profiles[0], strict=True)
    wide, high = (cell, cell) if cell else _sides(profiles[0])
    return grid_of(
        _lines(min(r), max(r), wide, _flats(profiles, 0)),
        _lines(min(z), max(z), high, _flats(profiles, 1)),
        endless=endless,
    )


def _sides(profile: Profile) -> tuple[float, float]:
    """Sides of cells that make about as many as there should be; twice in the round.

    Flat and tall bodies get cells flat and tall, though less so: heat passes mostly the
    short way, and wants its cells there.
    """
    r, z = zip(*profile, strict=True)
    round_ = closed(profile)
    side = (section_area(profile) / (CELLS * (2 if round_ else 1))) ** 0.5
    across = (max(r) - min(r)) / (2 if round_ else 1)
    leaning = (across / ((max(z) - min(z)) / 2)) ** 0.25
    return side * leaning, side / leaning


def _flats(profiles: Sequence[Profile], axis: int) -> list[float]:
    """Where outlines run along grid lines: the grid does best to follow them."""
    return [
        a[axis]
        for profile in profiles
        for a, b in pairwise(profile)
        if abs(a[axis] - b[axis]) < 1e-9
    ]


def _lines(start: float, end: float, side: float, marks: Sequence[float]) -> Floats:
    """Grid lines from start to end through the marks, at most `side` apart."""
    kept = [start]
    for mark in sorted(marks):
        if mark - kept[-1] > side / 4 and end - mark > side / 4:
            kept.append(mark)
    parts = [
        np.linspace(a, b, max(1, int(np.ceil((b - a) / side - 1e-9))) + 1)[:-1]
        for a, b in zip(kept, [*kept[1:], end], strict=True)
    ]
    return np.append(np.concatenate(parts), end)


def _own_parts(
    profiles: Sequence[Profile], grid: Grid, pieces: Sequence[Pieces]
) -> list[Cut]:
    """What each body leaves of each cell when what lies in it is taken away."""
    whole = [cut(p, grid, part) for p, part in zip(profiles, pieces, strict=True)]
    own = list(whole)
    for q in range(1, len(profiles)):
        point = pieces[q].middle[:1] - grid.tiny * pieces[q].outward[:1]
        parent = int(innermost(profiles[:q], point)[0])
        if parent < 0:
            raise ValueError(f"body {q} of the piece does not lie inside it")
        own[parent] = Cut(
            *(mine - its for mine, its in zip(own[parent], whole[q], strict=True))
        )
    return own


def _numbered(volumes: Floats, grid: Grid) -> tuple[Whole, Whole, Whole, Whole]:
    """Count off the cells that are there, along the shorter side of the grid."""
    r, high = grid.r, grid.z[1:] - grid.z[:-1]
    wide = r[1:] - r[:-1] if grid.endless else np.pi * (r[1:] ** 2 - r[:-1] ** 2)
    rings = wide[:, None] * high
    there = volumes > LEAST * rings
    if grid.r.size <= grid.z.size:
        row, column, body = np.nonzero(there.transpose(2, 1, 0))
    else:
        column, row, body = np.nonzero(there.transpose(1, 2, 0))
    number = np.full(volumes.shape, -1)
    number[body, column, row] = np.arange(body.size)
    return number, body, column, row
