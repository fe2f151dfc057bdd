"""What a body leaves in each cell of a grid: exact volumes, moments, openings.

SI. A grid has lines of constant radius and of constant height; its cells are rings of
rectangular section, or for an endless bar a metre of rectangular rod. All comes from
the outline by Green's theorem, so a cell's volume is that of the polygon turned, to
rounding, however the outline cuts it.
"""

from typing import NamedTuple

import numpy as np
from numpy.typing import NDArray

from demould.cold.body.profile import Profile
from demould.cold.compiled import compiled

Floats = NDArray[np.float64]
Whole = NDArray[np.intp]

NUDGE = 1e-9
SUMS = 7
AROUND = (0, 1, 2, 3, 6)


class Grid(NamedTuple):
    """Line positions, rising. [m] Shapes (nr + 1,) and (nz + 1,).

    `finest` is the shortest side of a cell [m]. `endless` grids are sections of a bar,
    reckoned for a metre of it.
    """

    r: Floats
    z: Floats
    finest: float
    endless: bool = False

    @property
    def tiny(self) -> float:
        """A length far under any cell and far over rounding [m]."""
        return NUDGE * self.finest

    def cell_of(self, points: Floats) -> tuple[Whole, Whole]:
        """Column and row of points (n, 2), those outside put into the nearest cell."""
        i = np.searchsorted(self.r, points[:, 0], side="right") - 1
        j = np.searchsorted(self.z, points[:, 1], side="right") - 1
        return (
            np.minimum(np.maximum(i, 0), self.r.size - 2),
            np.minimum(np.maximum(j, 0), self.z.size - 2),
        )


def grid_of(r: Floats, z: Floats, *, endless: bool = False) -> Grid:
    """Give the grid of these lines."""
    finest = float(min((r[1:] - r[:-1]).min(), (z[1:] - z[:-1]).min()))
    return Grid(r, z, finest, endless)


class Pieces(NamedTuple):
    """An outline cut at all grid lines: straight pieces, each within one cell.

    `start`, `end`, `outward` have shape (n, 2); `segment` says of which side of the
    outline, `first` and `last` from where to where on it, 0 to 1; `area` is the true
    one, turned or a metre long. [m2]
    """

    start: Floats
    end: Floats
    outward: Floats
    segment: Whole
    first: Floats
    last: Floats
    area: Floats

    @property
    def middle(self) -> Floats:
        """Shape (n, 2) [m]."""
        return np.asarray((self.start + self.end) / 2)


class Cut(NamedTuple):
    """One body in a grid.

    `moments` are sums over each cell, shape (7, nr, nz): over its volume of 1, z, z^2,
    r^2; over its section of 1 and z; over its volume of r. `upright` is the open area
    between two columns, (nr - 1, nz); `level` that between two rows, (nr, nz - 1). [m2]
    """

    moments: Floats
    upright: Floats
    level: Floats


def pieces_of(profile: Profile, grid: Grid, marks: Floats) -> Pieces:
    """Cut an outline at the grid's lines and at those `marks` (n, 2) that lie on it."""
    points = np.array(profile)
    segment, first, last = _split(points, grid.r, grid.z, marks, grid.tiny)
    a, run = points[:-1][segment], (points[1:] - points[:-1])[segment]
    start, end = a + first[:, None] * run, a + last[:, None] * run
    length = np.hypot(run[:, 0], run[:, 1])
    outward = np.stack([run[:, 1], -run[:, 0]], axis=1) / length[:, None]
    area = (last - first) * length
    if not grid.endless:
        area = area * np.pi * (start[:, 0] + end[:, 0])
    return Pieces(start, end, outward, segment, first, last, area)


def cut(profile: Profile, grid: Grid, pieces: Pieces) -> Cut:
    """Volumes, moments and openings of one body, by Green's theorem."""
    points, tiny = np.array(profile), grid.tiny
    i, j = grid.cell_of(pieces.middle - tiny * pieces.outward)
    power = 0 if grid.endless else 1
    moments, upright = _moments(points, grid.r, grid.z, pieces, i, j, power, tiny)
    return Cut(moments, upright, _level(points, grid.r, grid.z, power, tiny))


@compiled
def holds(points: Floats, r: float, z: float) -> bool:
    """Whether a point lies within an outline, closed by the axis where it is open."""
    odd = False
    for s in range(len(points) - 1):
        ar, az = points[s, 0], points[s, 1]
        br, bz = points[s + 1, 0], points[s + 1, 1]
        if (az <= z) != (bz <= z) and ar + (z - az) / (bz - az) * (br - ar) > r:
            odd = not odd
    return odd


@compiled
def _split(
    points: Floats, r: Floats, z: Floats, marks: Floats, tiny: float
) -> tuple[Whole, Floats, Floats]:
    """Sides of an outline between the lines and marks they cross: which, from, to."""
    sides = len(points) - 1
    most = sides * (r.size + z.size + 2) + sides + len(marks) * 4
    segment = np.empty(most, np.int64)
    first, last = np.empty(most), np.empty(most)
    shares = np.empty(r.size + z.size + len(marks) + 2)
    found = 0
    for s in range(sides):
        ar, az = points[s, 0], points[s, 1]
        dr, dz = points[s + 1, 0] - ar, points[s + 1, 1] - az
        length = np.hypot(dr, dz)
        shares[0], n = 0.0, 1
        for line in r:
            if (line - ar) * (line - ar - dr) < 0:
                shares[n] = (line - ar) / dr
                n += 1
        for line in z:
            if (line - az) * (line - az - dz) < 0:
                shares[n] = (line - az) / dz
                n += 1
        for m in range(len(marks)):
            mr, mz = marks[m, 0] - ar, marks[m, 1] - az
            if abs(mr * dz - mz * dr) <= tiny * length:
                along = (mr * dr + mz * dz) / length**2
                if 0 < along < 1:
                    shares[n] = along
                    n += 1
        shares[n] = 1.0
        _order(shares, n + 1)
        for m in range(n):
            if (shares[m + 1] - shares[m]) * length > tiny:
                segment[found] = s
                first[found], last[found] = shares[m], shares[m + 1]
                found += 1
    return segment[:found], first[:found], last[:found]


@compiled
def _order(values: Floats, count: int) -> None:
    """Put the first few in rising order: they are few and nearly so."""
    for n in range(1, count):
        value, m = values[n], n
        while m > 0 and values[m - 1] > value:
            values[m] = values[m - 1]
            m -= 1
        values[m] = value


@compiled
def _near(lines: Floats, at: float, tiny: float) -> bool:
    for line in lines:  # noqa: SIM110  # what is compiled has no any() of these
        if abs(line - at) <= tiny:
            return True
    return False


@compiled
def _moments(
    points: Floats,
    r: Floats,
    z: Floats,
    pieces: Pieces,
    column: Whole,
    row: Whole,
    power: int,
    tiny: float,
) -> tuple[Floats, Floats]:
    """Sum over cells, and openings between columns: outline, then upright lines."""
    nr, nz = r.size - 1, z.size - 1
    around = 2 * np.pi if power else 1.0
    p_of = np.array([power, power, power, power + 2, 0, 0, power + 1])
    q_of = np.array([0, 1, 2, 0, 0, 1, 0])
    sums = np.zeros((SUMS, nr, nz))
    for m in range(len(pieces.segment)):
        ar, az = pieces.start[m, 0], pieces.start[m, 1]
        br, bz = pieces.end[m, 0], pieces.end[m, 1]
        # A piece along an upright line closes no cell: the line itself already does.
        middle = (ar + br) / 2
        if abs(pieces.outward[m, 1]) <= NUDGE and _near(r, middle, tiny):
            continue
        for n in range(SUMS):
            p, q = p_of[n] + 1, q_of[n]
            half = middle**p * ((az + bz) / 2) ** q
            whole = ar**p * az**q + 4 * half + br**p * bz**q
            sums[n, column[m], row[m]] += (bz - az) * whole / 6
    upright = np.zeros((nr - 1, nz))
    for i in range(nr):
        right = _upright(points, r[i + 1] - tiny, z)
        left = _upright(points, r[i] + tiny, z)
        for n in range(SUMS):
            p, q = p_of[n] + 1, q_of[n]
            whole = around if n in AROUND else 1.0
            for j in range(nz):
                between = r[i + 1] ** p * right[q, j] - r[i] ** p * left[q, j]
                sums[n, i, j] = whole * (sums[n, i, j] + between) / p
        for j in range(nz):
            ring = around * r[i] ** power
            if i > 0:
                upright[i - 1, j] = max(min(upright[i - 1, j], ring * left[0, j]), 0.0)
            if i < nr - 1:
                upright[i, j] = around * r[i + 1] ** power * right[0, j]
    return sums, upright


@compiled
def _upright(points: Floats, line: float, z: Floats) -> Floats:
    """Integral of z^q over the inside part of an upright line, row by row; (3, nz)."""
    sums = np.zeros((3, z.size - 1))
    for s in range(len(points) - 1):
        ar, az = points[s, 0], points[s, 1]
        br, bz = points[s + 1, 0], points[s + 1, 1]
        if (ar <= line) != (br <= line):
            sign = 1.0 if ar <= line else -1.0
            at = az + (line - ar) / (br - ar) * (bz - az)
            for j in range(z.size - 1):
                if z[j + 1] > at:
                    low, high = max(z[j], at), z[j + 1]
                    sums[0, j] += sign * (high - low)
                    sums[1, j] += sign * (high**2 - low**2) / 2
                    sums[2, j] += sign * (high**3 - low**3) / 3
    return sums


@compiled
def _level(points: Floats, r: Floats, z: Floats, power: int, tiny: float) -> Floats:
    """Area of the inside part of the level between two rows, column by column."""
    areas = np.zeros((r.size - 1, z.size - 2))
    around = 2 * np.pi if power else 1.0
    for j in range(z.size - 2):
        below = _across(points, z[j + 1] - tiny, r, power)
        above = _across(points, z[j + 1] + tiny, r, power)
        for i in range(r.size - 1):
            areas[i, j] = around * max(min(below[i], above[i]), 0.0)
    return areas


@compiled
def _across(points: Floats, line: float, r: Floats, power: int) -> Floats:
    """Integral of r^power over the inside part of a level line, column by column."""
    sums = np.zeros(r.size - 1)
    for s in range(len(points) - 1):
        ar, az = points[s, 0], points[s, 1]
        br, bz = points[s + 1, 0], points[s + 1, 1]
        if (az <= line) != (bz <= line):
            sign = 1.0 if az <= line else -1.0
            at = ar + (line - az) / (bz - az) * (br - ar)
            for i in range(r.size - 1):
                if r[i] < at:
                    low, high = r[i], min(r[i + 1], at)
                    p = power + 1
                    sums[i] += sign * (high**p - low**p) / p
    return sums
