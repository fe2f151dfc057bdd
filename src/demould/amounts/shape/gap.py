"""How near two faces come."""

import math
from typing import NamedTuple

import numpy as np
from scipy.spatial import cKDTree

from demould.amounts.shape.body import ELLIPSE, RECTANGLE
from demould.amounts.shape.curve import Floats
from demould.amounts.shape.skin import Skin, points, ways

SPACING_MM = 2.0
LEAST_STEPS, MOST_STEPS = 24, 120
LOOKED_AT = 200
CANDIDATES = 12
ZOOMS = 6
SHRINK = 0.4
QUARTER, WHOLE = 0.25, 1.0


class Nearest(NamedTuple):
    """How near two faces come [mm], and where on the inner and the outer one, (3,)."""

    mm: float
    inner: Floats
    outer: Floats


def nearest(inner: Skin, outer: Skin) -> Nearest:
    """How near a body comes to the face round it, within 0.01 mm.

    Both stand on one axis: of ellipses and rectangles a quarter turn tells all. Points about 2 mm apart on both
    find where it is close; from the closest dozen the search narrows down on both faces
    at once, a third of the way each time.
    """
    even = {inner.outline, outer.outline} <= {ELLIPSE, RECTANGLE}
    turn = QUARTER if even else WHOLE
    mine, step = _grid(inner, turn)
    theirs, their_step = _grid(outer, turn)
    tree = cKDTree(points(outer, theirs[:, 0], theirs[:, 1]))
    away, which = tree.query(points(inner, mine[:, 0], mine[:, 1]))
    first = _apart_from_each_other(mine, away, step)
    where = np.hstack([mine[first], theirs[which[first]]])
    reach = np.concatenate([step, their_step])
    for _ in range(ZOOMS):
        where = _narrowed(inner, outer, where, reach)
        reach = reach * SHRINK
    from_, to = _both(inner, outer, where)
    gaps = np.linalg.norm(from_ - to, axis=1)
    best = int(np.argmin(gaps))
    return Nearest(float(gaps[best]), from_[best], to[best])


def _grid(skin: Skin, turn: float) -> tuple[Floats, Floats]:
    """Places on a part of a turn of a skin, (n, 2), and how far apart they are, (2,)."""
    longest = np.linalg.norm(np.diff(skin.meridian, axis=0), axis=1).sum()
    about = float(skin.meridian[:, :2].max()) * 2 * math.pi * turn
    up = _steps(float(longest))
    round_ = _steps(about)
    along = np.union1d(np.linspace(0, 1, up + 1), _corners(skin.meridian))
    around = np.linspace(0, turn, 2 * (round_ // 2) + 1)
    grid = np.stack(np.meshgrid(along, around, indexing="ij"), axis=-1)
    return grid.reshape(-1, 2), np.array([1 / up, turn / round_])


def _steps(mm: float) -> int:
    return int(min(MOST_STEPS, max(LEAST_STEPS, mm / SPACING_MM)))


def _corners(meridian: Floats) -> Floats:
    return ways(meridian) if len(meridian) <= 8 else ways(meridian)[[0, -2, -1]]


def _apart_from_each_other(mine: Floats, away: Floats, step: Floats) -> list[int]:
    """Choose the closest places, no two of them neighbours."""
    chosen: list[int] = []
    for index in np.argsort(away, kind="stable")[:LOOKED_AT]:
        near = np.abs(mine[chosen] - mine[index]) <= 1.5 * step if chosen else None
        if near is None or not near.all(axis=1).any():
            chosen.append(int(index))
    return chosen[:CANDIDATES]


_OFFSETS = np.stack(
    np.meshgrid(*[np.linspace(-1, 1, 5)] * 4, indexing="ij"), axis=-1
).reshape(-1, 4)


def _narrowed(inner: Skin, outer: Skin, where: Floats, reach: Floats) -> Floats:
    tried = where[:, None, :] + _OFFSETS * reach
    tried[..., ::2] = np.clip(tried[..., ::2], 0, 1)
    from_, to = _both(inner, outer, tried)
    best = np.linalg.norm(from_ - to, axis=-1).argmin(axis=1)
    return np.asarray(tried[np.arange(len(where)), best])


def _both(inner: Skin, outer: Skin, where: Floats) -> tuple[Floats, Floats]:
    return (
        points(inner, where[..., 0], where[..., 1]),
        points(outer, where[..., 2], where[..., 3]),
    )
