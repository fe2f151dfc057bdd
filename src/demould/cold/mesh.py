"""Where heat is kept and through which openings it passes: cut cells of a turned piece.

SI. Every grid cell that several bodies share is split into one cell a body, each with
its true volume, centre and openings; bodies meet along their true outline. Outside
surfaces end in `Rim` pieces, with the mould's wall on them where there is one.
"""

from collections.abc import Sequence
from dataclasses import dataclass
from itertools import pairwise
from typing import NamedTuple

import numpy as np

from demould.cold.cut import Cut, Floats, Grid, Pieces, Whole, cut, inside, pieces_of
from demould.cold.profile import Profile
from demould.cold.skin import Face, Rim, Wall, rim_of

CELLS = 300
CORE_CELLS = 12
LEAST = 1e-6
SHORTEST = 1e-3


@dataclass(frozen=True, slots=True, kw_only=True)
class Links:
    """Openings between two cells. All of shape (m,).

    `to_low` and `to_high` are the ways from a cell's centre to the opening. [m, m2]
    """

    low: Whole
    high: Whole
    area: Floats
    to_low: Floats
    to_high: Floats


@dataclass(frozen=True, slots=True, kw_only=True)
class Mesh:
    """Cells of a piece, in an order that keeps neighbours close.

    Attributes
    ----------
    body
        Which profile each cell belongs to. Shape (n,).
    volume, centre
        [m3] (n,), and (r, z) of the section's middle [m] (n, 2).
    core
        Weights that give the temperature in the middle of the core body. (n,)
    cell
        Largest side of a grid cell. [m]
    """

    body: Whole
    volume: Floats
    centre: Floats
    links: Links
    rim: Rim
    core: Floats
    cell: float


class _Cells(NamedTuple):
    """Numbers of cells by body, column and row; -1 where a body has none there."""

    number: Whole
    body: Whole
    column: Whole
    row: Whole


def mesh_of(
    profiles: Sequence[Profile],
    *,
    wall: Wall | None = None,
    open_faces: Sequence[Face] = (),
    cell: float | None = None,
) -> Mesh:
    """Cut a piece into cells.

    Parameters
    ----------
    profiles
        The piece, then what lies in it; each later one inside an earlier one or beside
        the others. The core is the middle of the second, of the first if alone.
    wall
        Mould outside every surface but the flat faces in `open_faces`.
    cell
        Side of a grid cell [m]; without it, what makes about 300 cells.
    """
    grid = _grid(profiles, cell)
    marks = np.array([point for profile in profiles for point in profile])
    pieces = [pieces_of(profile, grid, marks) for profile in profiles]
    cuts = _own_parts(profiles, grid, pieces)
    cells = _numbered(np.stack([part.moments[0] for part in cuts]), grid)
    moments = np.stack([part.moments for part in cuts], axis=1)
    moments = moments[:, cells.body, cells.column, cells.row]
    means = moments / moments[0]
    middle = np.stack([moments[0], moments[5]]) / moments[4]
    centre = _kept_in_cell(middle.T, grid, cells)
    outline = pieces[0]
    within = outline.middle - grid.tiny * outline.outward
    behind = _cells_at(within, _innermost(profiles, within), grid, cells, centre)
    lean = np.zeros_like(centre)
    np.add.at(lean, behind, outline.area[:, None] * outline.outward)
    seams = [
        _seams(q, profiles, grid, pieces[q], cells, centre, lean)
        for q in range(1, len(profiles))
    ]
    return Mesh(
        body=cells.body,
        volume=moments[0],
        centre=centre,
        links=_joined([*_grid_links(cuts, grid, cells, centre, lean), *seams]),
        rim=rim_of(
            profiles[0],
            outline,
            behind,
            _way(outline, outline.outward, centre[behind], grid),
            wall=wall,
            open_faces=open_faces,
        ),
        core=_core_weights(profiles[min(1, len(profiles) - 1)], means, cells.body),
        cell=float(max(np.diff(grid.r).max(), np.diff(grid.z).max())),
    )


def _grid(profiles: Sequence[Profile], cell: float | None) -> Grid:
    points = np.array(profiles[0])
    r, z = points.T
    section = float(np.sum(np.diff(z) * (r[1:] + r[:-1]) / 2))
    side = (section / CELLS) ** 0.5 if cell is None else cell
    return Grid(
        _lines(0.0, float(r.max()), side, _flats(profiles, 0)),
        _lines(float(z.min()), float(z.max()), side, _flats(profiles, 1)),
    )


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
        parent = int(_innermost(profiles[:q], point)[0])
        if parent < 0:
            raise ValueError(f"body {q} of the piece does not lie inside it")
        own[parent] = Cut(
            *(mine - its for mine, its in zip(own[parent], whole[q], strict=True))
        )
    return own


def _innermost(profiles: Sequence[Profile], points: Floats) -> Whole:
    """The last profile that holds each point, -1 outside all. Shape (n,)."""
    body = np.full(len(points), -1)
    for q, profile in enumerate(profiles):
        body[inside(profile, points)] = q
    return body


def _numbered(volumes: Floats, grid: Grid) -> _Cells:
    """Count off the cells that are there, along the shorter side of the grid."""
    rings = np.pi * np.outer(np.diff(grid.r**2), np.diff(grid.z))
    there = volumes > LEAST * rings
    if grid.r.size <= grid.z.size:
        row, column, body = np.nonzero(there.transpose(2, 1, 0))
    else:
        column, row, body = np.nonzero(there.transpose(1, 2, 0))
    number = np.full(volumes.shape, -1)
    number[body, column, row] = np.arange(body.size)
    return _Cells(number, body, column, row)


def _kept_in_cell(centre: Floats, grid: Grid, cells: _Cells) -> Floats:
    """Centres of slivers are differences of near equals: keep them in their cell."""
    r = np.clip(centre[:, 0], grid.r[cells.column], grid.r[cells.column + 1])
    z = np.clip(centre[:, 1], grid.z[cells.row], grid.z[cells.row + 1])
    return np.stack([r, z], axis=1)


def _cells_at(
    points: Floats, body: Whole, grid: Grid, cells: _Cells, centre: Floats
) -> Whole:
    """The cell of `body` at each point; where it is too small to count, the nearest."""
    found = cells.number[(body, *grid.cell_of(points))]
    for n in np.flatnonzero(found < 0):
        away = np.hypot(*(centre - points[n]).T)
        found[n] = np.argmin(np.where(cells.body == body[n], away, np.inf))
    return found


def _way(pieces: Pieces, outward: Floats, centre: Floats, grid: Grid) -> Floats:
    """From centres to the pieces, across them; slivers get a sliver's way [m]."""
    ahead = ((pieces.middle - centre) * outward).sum(axis=1)
    return np.asarray(np.maximum(ahead, _shortest(grid)))


def _shortest(grid: Grid) -> float:
    return SHORTEST * float(min(np.diff(grid.r).min(), np.diff(grid.z).min()))


def _grid_links(
    cuts: Sequence[Cut], grid: Grid, cells: _Cells, centre: Floats, lean: Floats
) -> list[Links]:
    """Openings between cells of one body in neighbouring grid cells."""
    links, shortest = [], _shortest(grid)
    for number, part in zip(cells.number, cuts, strict=True):
        for axis, area, lines in ((0, part.upright, grid.r), (1, part.level, grid.z)):
            low = number[:-1] if axis == 0 else number[:, :-1]
            high = number[1:] if axis == 0 else number[:, 1:]
            at = np.nonzero((low >= 0) & (high >= 0) & (area > 0))
            line = lines[1:-1][at[axis]]
            a, b = low[at], high[at]
            share = _slant(centre[b] - centre[a], lean[a] + lean[b], axis)
            to_low = np.maximum(line - centre[a, axis], shortest) * share
            to_high = np.maximum(centre[b, axis] - line, shortest) * share
            links.append(
                Links(low=a, high=b, area=area[at], to_low=to_low, to_high=to_high)
            )
    return links


def _slant(between: Floats, lean: Floats, axis: int) -> Floats:
    """How much longer than its share across the opening a way counts.

    The middles of cut cells do not face each other. Near a skin temperature changes
    along the skin's normal n: between the middles by n . between, through the opening
    by n's own part across it, and their ratio is the way that gives the true flow. A
    guess at the direction of a flow is not trusted beyond a quarter.
    """
    across, along = between[:, axis], (between * lean).sum(axis=1)
    facing = lean[:, axis]
    told = np.abs(facing) > 0.25 * np.hypot(*lean.T)
    told &= across > 0
    way = np.divide(along, facing * across, where=told, out=np.ones_like(along))
    return np.asarray(np.clip(way, 0.8, 1.25))


def _seams(
    q: int,
    profiles: Sequence[Profile],
    grid: Grid,
    pieces: Pieces,
    cells: _Cells,
    centre: Floats,
    lean: Floats,
) -> Links:
    """Openings along the outline of body q into what it lies in or beside.

    Adds to `lean` how the outline leans in the cells on both sides.
    """
    step = grid.tiny * pieces.outward
    inner = _innermost(profiles, pieces.middle - step)
    outer = _innermost(profiles, pieces.middle + step)
    kept = (inner == q) & (outer >= 0) & (outer < q)
    pieces = Pieces(*(field[kept] for field in pieces))
    step = step[kept]
    mine = _cells_at(pieces.middle - step, inner[kept], grid, cells, centre)
    other = _cells_at(pieces.middle + step, outer[kept], grid, cells, centre)
    to_mine = _way(pieces, pieces.outward, centre[mine], grid)
    to_other = _way(pieces, -pieces.outward, centre[other], grid)
    for side in (mine, other):
        np.add.at(lean, side, pieces.area[:, None] * pieces.outward)
    turned = mine > other
    return Links(
        low=np.minimum(mine, other),
        high=np.maximum(mine, other),
        area=pieces.area,
        to_low=np.where(turned, to_other, to_mine),
        to_high=np.where(turned, to_mine, to_other),
    )


def _joined(links: Sequence[Links]) -> Links:
    """All links, those between the same two cells made one."""
    low, high, area, to_low, to_high = (
        np.concatenate([getattr(link, name) for link in links])
        for name in ("low", "high", "area", "to_low", "to_high")
    )
    pairs, which = np.unique(np.stack([low, high]), axis=1, return_inverse=True)
    whole = np.bincount(which, area)
    return Links(
        low=pairs[0],
        high=pairs[1],
        area=np.asarray(whole, dtype=np.float64),
        to_low=np.bincount(which, area * to_low) / whole,
        to_high=np.bincount(which, area * to_high) / whole,
    )


def _core_weights(core: Profile, means: Floats, body: Whole) -> Floats:
    """Weights of a smooth bowl through the cells nearest to the middle of the core.

    Fitted are 1, z, z^2 and r^2 to the cells' means of just these, so that a bowl is
    read exactly; with too few cells the least bent fit is taken.
    """
    middle = (core[0][1] + core[-1][1]) / 2
    mine = np.flatnonzero(body == body.max(initial=0, where=body <= 1))
    z, z2, r2 = means[1:4, mine]
    away = z2 - 2 * z * middle + middle**2
    distance = away + r2
    # Cells as far as the last come too, or top and bottom would not count alike.
    limit = np.sort(distance)[:CORE_CELLS][-1] * (1 + 1e-9)
    near = np.flatnonzero(distance <= limit)
    bowl = np.stack([z - middle, away, r2])[:, near]
    span = np.abs(bowl).max(axis=1, keepdims=True)
    bowl /= np.where(span > 0, span, 1.0)
    mean = bowl.mean(axis=1, keepdims=True)
    slopes = np.linalg.pinv((bowl - mean).T, rcond=1e-9)
    weights = np.zeros(body.size)
    weights[mine[near]] = 1 / near.size - mean[:, 0] @ slopes
    return weights
