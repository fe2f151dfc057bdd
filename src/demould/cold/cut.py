"""What a turned body leaves in each cell of a grid: exact volumes, moments, openings.

SI. A grid has lines of constant radius and of constant height; its cells are rings of
rectangular section. All comes from the outline by Green's theorem, so a cell's volume
is that of the polygon turned, to rounding, however the outline cuts it.
"""

from typing import NamedTuple

import numpy as np
from numpy.typing import NDArray

from demould.cold.profile import Profile

Floats = NDArray[np.float64]
Whole = NDArray[np.intp]

NUDGE = 1e-9
# Powers (of r, of z) summed over a cell's volume: 1, z, z^2, r^2 make means. 1/r and z/r
# make those of the section, whose middle carries a cell's mean more truly than that of
# the ring: between rings r^2 is then passed on exactly.
MOMENTS = ((0, 0), (0, 1), (0, 2), (2, 0), (-1, 0), (-1, 1))


class Grid(NamedTuple):
    """Line positions, rising. [m] Shapes (nr + 1,) and (nz + 1,)."""

    r: Floats
    z: Floats

    @property
    def tiny(self) -> float:
        """A length far under any cell and far over rounding [m]."""
        return NUDGE * float(min(np.diff(self.r).min(), np.diff(self.z).min()))

    def cell_of(self, points: Floats) -> tuple[Whole, Whole]:
        """Column and row of points (n, 2), those outside put into the nearest cell."""
        i = np.searchsorted(self.r, points[:, 0], side="right") - 1
        j = np.searchsorted(self.z, points[:, 1], side="right") - 1
        return np.clip(i, 0, self.r.size - 2), np.clip(j, 0, self.z.size - 2)


class Pieces(NamedTuple):
    """An outline cut at all grid lines: straight pieces, each within one cell.

    `start`, `end`, `outward` have shape (n, 2); `segment` says of which side of the
    outline, `first` and `last` from where to where on it, 0 to 1.
    """

    start: Floats
    end: Floats
    outward: Floats
    segment: Whole
    first: Floats
    last: Floats

    @property
    def middle(self) -> Floats:
        """Shape (n, 2) [m]."""
        return np.asarray((self.start + self.end) / 2)

    @property
    def area(self) -> Floats:
        """Turned area. [m2] Shape (n,)."""
        length = np.hypot(*(self.end - self.start).T)
        return np.asarray(np.pi * (self.start[:, 0] + self.end[:, 0]) * length)


class Cut(NamedTuple):
    """One body in a grid.

    `moments` is the integral of each of `MOMENTS` over the volume, shape (6, nr, nz);
    `upright` the open area of the grid's cylinders between two columns, (nr - 1, nz);
    `level` that of its discs between two rows, (nr, nz - 1). [m2]
    """

    moments: Floats
    upright: Floats
    level: Floats


def pieces_of(profile: Profile, grid: Grid, marks: Floats) -> Pieces:
    """Cut an outline at the grid's lines and at those `marks` (n, 2) that lie on it."""
    points = np.array(profile)
    a, b = points[:-1], points[1:]
    run = b - a
    length = np.hypot(*run.T)
    with np.errstate(divide="ignore", invalid="ignore"):
        at_r = (grid.r[None, :] - a[:, :1]) / run[:, :1]
        at_z = (grid.z[None, :] - a[:, 1:]) / run[:, 1:]
    away = marks[None, :, :] - a[:, None, :]
    along = np.einsum("smx,sx->sm", away, run) / (length**2)[:, None]
    off = np.abs(away[..., 0] * run[:, None, 1] - away[..., 1] * run[:, None, 0])
    at_mark = np.where(off <= grid.tiny * length[:, None], along, np.nan)
    ends = np.tile([0.0, 1.0], (len(a), 1))
    shares = np.concatenate([ends, at_r, at_z, at_mark], axis=1)
    shares = np.sort(np.where((shares > 0) & (shares < 1), shares, ends[:, 1:]), axis=1)
    shares = np.concatenate([ends[:, :1], shares], axis=1)
    long_enough = np.diff(shares, axis=1) * length[:, None] > grid.tiny
    segment, step = np.nonzero(long_enough)
    first, last = shares[segment, step], shares[segment, step + 1]
    tangent = run[segment] / length[segment, None]
    return Pieces(
        start=a[segment] + first[:, None] * run[segment],
        end=a[segment] + last[:, None] * run[segment],
        outward=np.stack([tangent[:, 1], -tangent[:, 0]], axis=1),
        segment=segment,
        first=first,
        last=last,
    )


def cut(profile: Profile, grid: Grid, pieces: Pieces) -> Cut:
    """Volumes, moments and openings of one body, by Green's theorem."""
    points = np.array(profile)
    a, b = points[:-1], points[1:]
    nr, nz = grid.r.size - 1, grid.z.size - 1
    # A piece along an upright line closes no cell: the line itself already does.
    crossing = np.abs(grid.r[:, None] - pieces.middle[:, 0]).min(axis=0) > grid.tiny
    crossing |= np.abs(pieces.outward[:, 1]) > NUDGE
    pieces = Pieces(*(field[crossing] for field in pieces))
    i, j = grid.cell_of(pieces.middle - grid.tiny * pieces.outward)
    moments = np.zeros((len(MOMENTS), nr, nz))
    right = _upright_sums(a, b, grid.r[1:] - grid.tiny, grid.z)
    left = _upright_sums(a, b, grid.r[:-1] + grid.tiny, grid.z)
    for n, (p, q) in enumerate(MOMENTS):
        weight = 2 * np.pi / (p + 2)
        edge = grid.r[:, None] ** (p + 2)
        moments[n] = edge[1:] * right[q] - edge[:-1] * left[q]
        np.add.at(moments[n], (i, j), _along(pieces, p + 2, q))
        moments[n] *= weight
    around = 2 * np.pi * grid.r[1:-1, None]
    upright = around * np.minimum(right[0][:-1], left[0][1:])
    below = _level_areas(a, b, grid.r, grid.z[1:-1] - grid.tiny)
    above = _level_areas(a, b, grid.r, grid.z[1:-1] + grid.tiny)
    return Cut(moments, np.maximum(upright, 0), np.maximum(np.minimum(below, above), 0))


def inside(profile: Profile, points: Floats) -> NDArray[np.bool_]:
    """Whether points (n, 2) lie within an outline closed by its axis. Shape (n,)."""
    corners = np.array(profile)
    a, b = corners[:-1], corners[1:]
    r, z = points[:, :1], points[:, 1:]
    crosses = (a[:, 1] <= z) != (b[:, 1] <= z)
    share = (z - a[:, 1]) / np.where(a[:, 1] == b[:, 1], 1.0, b[:, 1] - a[:, 1])
    farther = a[:, 0] + share * (b[:, 0] - a[:, 0]) > r
    odd: NDArray[np.bool_] = np.count_nonzero(crosses & farther, axis=1) % 2 == 1
    return odd


def _along(pieces: Pieces, p: int, q: int) -> Floats:
    """Integral of r^p z^q dz along each piece, by Simpson (cubics exactly)."""
    rise = pieces.end[:, 1] - pieces.start[:, 1]
    ends = [pieces.start, pieces.middle, pieces.end]
    r0, r1, r2 = (x[:, 0] ** p * x[:, 1] ** q for x in ends)
    return np.asarray(rise * (r0 + 4 * r1 + r2) / 6)


def _crossings(a: Floats, b: Floats, lines: Floats) -> tuple[Floats, Floats]:
    """Where (and with what sign) sides cross lines of their first coordinate."""
    forth = (a[:, 0] <= lines[:, None]) & (b[:, 0] > lines[:, None])
    back = (a[:, 0] > lines[:, None]) & (b[:, 0] <= lines[:, None])
    run = np.where(a[:, 0] == b[:, 0], 1.0, b[:, 0] - a[:, 0])
    share = (lines[:, None] - a[:, 0]) / run
    return a[:, 1] + share * (b[:, 1] - a[:, 1]), forth * 1.0 - back * 1.0


def _upright_sums(a: Floats, b: Floats, lines: Floats, z: Floats) -> list[Floats]:
    """Integral of z^q over the inside part of upright lines, row by row; q = 0, 1, 2."""
    at, sign = _crossings(a, b, lines)
    beyond = sign[:, :, None] * (z > at[:, :, None])
    return [
        np.diff(
            (beyond * (z ** (q + 1) - at[:, :, None] ** (q + 1))).sum(axis=1), axis=1
        )
        / (q + 1)
        for q in range(3)
    ]


def _level_areas(a: Floats, b: Floats, r: Floats, lines: Floats) -> Floats:
    """Area of the inside part of discs at heights `lines`, column by column."""
    at, sign = _crossings(a[:, ::-1], b[:, ::-1], lines)
    beyond = -sign[:, :, None] * (r > at[:, :, None])
    from_outline = (beyond * (r**2 - at[:, :, None] ** 2)).sum(axis=1)
    from_axis = sign.sum(axis=1)[:, None] * r**2
    return np.asarray(np.pi * np.diff(from_outline + from_axis, axis=1).T)
