"""A piece cut through its middle: the faces of its parts as lines in one plane.

Points are (across, up) in millimetres: across from the middle, up from the bottom of
the cavity. Faces are given on the right of the middle; the left is their mirror.
"""

from typing import Literal, NamedTuple

import numpy as np

from demould.amounts.layers.place import Placed
from demould.amounts.shape.curve import Floats
from demould.amounts.shape.skin import Skin, hole_of, skin_of, standing

Way = Literal["along", "across"]

LONGEST_ALONG_MM = 150.0
TRUE_WITHIN_MM = 0.02
STEP_MM = 0.5


class Gap(NamedTuple):
    """The least distance between two faces in the plane, and its two ends."""

    mm: float
    inner: tuple[float, float]
    outer: tuple[float, float]


def way_of(cavity: Skin) -> Way:
    """Cut lengthwise, but a long log or terrine across, as it is sliced."""
    long = 2 * float(cavity.meridian[:, 0].max())
    return "along" if long <= LONGEST_ALONG_MM or _round(cavity) else "across"


def _round(skin: Skin) -> bool:
    return bool(np.allclose(skin.meridian[:, 0], skin.meridian[:, 1]))


def face(skin: Skin, way: Way) -> Floats:
    """The right half of a body's faces in the plane, bottom to top, shape (n, 2)."""
    half = skin.meridian[:, 0 if way == "along" else 1]
    return _thinned(np.stack([half, skin.meridian[:, 2]], axis=1))


def part_face(part: Placed, way: Way) -> Floats:
    """The same of a part where it lies, closed at bottom and top."""
    skin = skin_of(part.shape, lidded=True)
    return face(standing(skin, part.at, turned_over=part.layer.turned_over), way)


def ellipse(
    middle: tuple[float, float], half_long: float, half_wide: float
) -> tuple[tuple[float, float], ...]:
    """An ellipse level with the paper, as straight lines within a hundredth of it."""
    turn = np.linspace(0, 2 * np.pi, 48, endpoint=False)
    x = middle[0] + half_long * np.cos(turn)
    y = middle[1] + half_wide * np.sin(turn)
    return tuple(zip(x.tolist(), y.tolist(), strict=True))


def part_hole(part: Placed, way: Way) -> Floats | None:
    """The face of a part's hole where it lies, None where it has none."""
    hole = hole_of(part.shape)
    if hole is None:
        return None
    return face(standing(hole, part.at, turned_over=part.layer.turned_over), way)


def both_sides(right: Floats) -> tuple[tuple[float, float], ...]:
    """The whole outline from the right half: up on the right, down on the left."""
    left = right[::-1] * (-1, 1)
    return tuple((float(x), float(z)) for x, z in np.vstack([right, left]))


def half_width(right: Floats, up: float) -> float:
    """How far a face is from the middle at a height; 0 above and below it."""
    order = right if right[0, 1] <= right[-1, 1] else right[::-1]
    if not order[0, 1] <= up <= order[-1, 1]:
        return 0.0
    return float(np.interp(up, order[:, 1], order[:, 0]))


def gap(inner: Floats, outer: Floats) -> Gap:
    """How near two faces come in the plane, within 0.1 mm."""
    mine, theirs = _dense(inner), _dense(outer)
    apart = np.hypot(
        mine[:, None, 0] - theirs[None, :, 0], mine[:, None, 1] - theirs[None, :, 1]
    )
    # Where faces run side by side, the end furthest out is easiest to see.
    near = np.argwhere(apart <= apart.min() + TRUE_WITHIN_MM)
    at, to = max(near, key=lambda pair: float(mine[pair[0], 0]))
    (x, z), (u, w) = mine[at], theirs[to]
    return Gap(float(apart[at, to]), (float(x), float(z)), (float(u), float(w)))


def _dense(line: Floats) -> Floats:
    """Points no further apart than `STEP_MM` along a line."""
    steps = np.linalg.norm(np.diff(line, axis=0), axis=1)
    way = np.concatenate([[0.0], np.cumsum(steps)])
    count = max(2, int(way[-1] / STEP_MM) + 1)
    at = np.union1d(way, np.linspace(0, way[-1], count))
    return np.stack([np.interp(at, way, line[:, axis]) for axis in (0, 1)], axis=1)


def _thinned(line: Floats) -> Floats:
    """Leave out points that lie on the way between their neighbours."""
    kept = [0]
    for end in range(2, len(line)):
        between = line[kept[-1] + 1 : end]
        if _off(between, line[kept[-1]], line[end]) > TRUE_WITHIN_MM:
            kept.append(end - 1)
    return line[[*kept, len(line) - 1]]


def _off(points: Floats, start: Floats, end: Floats) -> float:
    """The furthest of some points from the straight line between two."""
    along = end - start
    long = float(np.hypot(*along))
    away = points - start
    if long == 0:
        return float(np.linalg.norm(away, axis=1).max())
    return float(np.abs(away[:, 0] * along[1] - away[:, 1] * along[0]).max()) / long
