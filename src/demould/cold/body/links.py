"""Through which openings heat passes: from cell to cell, and from body to body.

SI. Cells of one body meet across grid lines, cells of two bodies along the true outline
between them.
"""

from collections.abc import Sequence
from dataclasses import dataclass

import numpy as np

from demould.cold.body.cells import Cells, cells_at, innermost
from demould.cold.body.cut import Cut, Floats, Pieces, Whole
from demould.cold.body.profile import Profile

SHORTEST = 1e-3
TRUSTED = 1.25


@dataclass(frozen=True, slots=True, kw_only=True)
class Links:
    """Openings between two cells. All of shape (m,).

    `to_low` and `to_high` are the ways from a cell's centre to the opening. [m, m2]
    `radial` is how far it faces outward from the axis: 1, or along it: 0.
    """

    low: Whole
    high: Whole
    area: Floats
    to_low: Floats
    to_high: Floats
    radial: Floats


def grid_links(cells: Cells, cuts: Sequence[Cut], lean: Floats) -> list[Links]:
    """Openings between cells of one body in neighbouring grid cells.

    `lean` is how the outlines in each cell face, their areas times their normals.
    """
    grid, centre = cells.grid, cells.centre
    links, shortest = [], SHORTEST * grid.finest
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
                Links(
                    low=a,
                    high=b,
                    area=area[at],
                    to_low=to_low,
                    to_high=to_high,
                    radial=np.full(a.size, 1.0 - axis),
                )
            )
    return links


def seam_links(
    cells: Cells, q: int, profiles: Sequence[Profile], pieces: Pieces, lean: Floats
) -> Links:
    """Openings along the outline of body q into what it lies in or beside.

    Adds to `lean` how the outline faces in the cells on both sides.
    """
    step = cells.grid.tiny * pieces.outward
    inner = innermost(profiles, pieces.middle - step)
    outer = innermost(profiles, pieces.middle + step)
    kept = (inner == q) & (outer >= 0) & (outer < q)
    pieces = Pieces(*(field[kept] for field in pieces))
    step = step[kept]
    mine = cells_at(cells, pieces.middle - step, inner[kept])
    other = cells_at(cells, pieces.middle + step, outer[kept])
    to_mine = way(cells, pieces, mine)
    to_other = way(cells, pieces._replace(outward=-pieces.outward), other)
    for side in (mine, other):
        np.add.at(lean, side, pieces.area[:, None] * pieces.outward)
    turned = mine > other
    return Links(
        low=np.minimum(mine, other),
        high=np.maximum(mine, other),
        area=pieces.area,
        to_low=np.where(turned, to_other, to_mine),
        to_high=np.where(turned, to_mine, to_other),
        radial=pieces.outward[:, 0] ** 2,
    )


def joined(links: Sequence[Links]) -> Links:
    """All links, those between the same two cells made one."""
    low, high, area, to_low, to_high, radial = (
        np.concatenate([getattr(link, name) for link in links])
        for name in ("low", "high", "area", "to_low", "to_high", "radial")
    )
    pair = low * (high.max(initial=0) + 1) + high
    _, first, which = np.unique(pair, return_index=True, return_inverse=True)
    whole = np.bincount(which, area)
    return Links(
        low=low[first],
        high=high[first],
        area=np.asarray(whole, dtype=np.float64),
        to_low=np.bincount(which, area * to_low) / whole,
        to_high=np.bincount(which, area * to_high) / whole,
        radial=np.bincount(which, area * radial) / whole,
    )


def way(cells: Cells, pieces: Pieces, cell: Whole) -> Floats:
    """From cells' centres to pieces of outline, across them; at least a sliver's [m]."""
    ahead = ((pieces.middle - cells.centre[cell]) * pieces.outward).sum(axis=1)
    return np.asarray(np.maximum(ahead, SHORTEST * cells.grid.finest))


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
    return np.asarray(np.minimum(np.maximum(way, 1 / TRUSTED), TRUSTED))
