"""Lines of one value through scattered points of a section."""

from collections.abc import Callable, Iterator, Mapping, Sequence

import numpy as np
from numpy.typing import NDArray
from scipy.spatial import Delaunay

from demould.sheets.drawing.picture import Point

Floats = NDArray[np.float64]
Edge = tuple[int, int]
NUDGE = 1e-9


def level_lines(
    points: Sequence[Point],
    values: Sequence[float],
    level: float,
    within: Callable[[float, float], bool],
) -> tuple[tuple[Point, ...], ...]:
    """Give the lines along which values are at a level, each a run of points.

    Straight between points in each triangle of a Delaunay net; triangles whose middle
    is not `within` the section are left out.
    """
    at, told = np.array(points), np.array(values)
    # A value right on the level would end a line at a point instead of an edge.
    told = np.where(np.abs(told - level) < NUDGE, level + NUDGE, told)
    crossed: dict[Edge, list[Edge]] = {}
    for corners in _triangles(at, within):
        cut = [edge for edge in _edges(corners) if _crosses(told, edge, level)]
        if len(cut) == 2:
            crossed.setdefault(cut[0], []).append(cut[1])
            crossed.setdefault(cut[1], []).append(cut[0])
    return tuple(
        tuple(_place(at, told, edge, level) for edge in chain)
        for chain in _chains(crossed)
    )


def _triangles(
    at: Floats, within: Callable[[float, float], bool]
) -> Iterator[tuple[int, int, int]]:
    for a, b, c in Delaunay(at).simplices.tolist():
        x, y = (at[a] + at[b] + at[c]) / 3
        if within(float(x), float(y)):
            yield a, b, c


def _edges(corners: tuple[int, int, int]) -> Iterator[Edge]:
    a, b, c = sorted(corners)
    yield from ((a, b), (b, c), (a, c))


def _crosses(values: Floats, edge: Edge, level: float) -> bool:
    return bool((values[edge[0]] > level) != (values[edge[1]] > level))


def _place(at: Floats, values: Floats, edge: Edge, level: float) -> Point:
    a, b = edge
    share = (level - values[a]) / (values[b] - values[a])
    x, y = at[a] + share * (at[b] - at[a])
    return float(x), float(y)


def _chains(crossed: Mapping[Edge, Sequence[Edge]]) -> Iterator[list[Edge]]:
    """Walk from every open end, then round what is closed."""
    left = dict(crossed)
    ends = [edge for edge, others in crossed.items() if len(others) == 1]
    for start in (*ends, *crossed):
        if start not in left:
            continue
        chain = [start]
        while True:
            left.pop(chain[-1], None)
            onward = [one for one in crossed[chain[-1]] if one in left]
            if not onward:
                break
            chain.append(onward[0])
        if len(chain) > 2 and start in crossed[chain[-1]]:
            chain.append(start)
        if len(chain) > 1:
            yield chain
