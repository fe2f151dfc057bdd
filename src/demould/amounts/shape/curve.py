"""Straight ways and arcs, of which every body is put together, and sums along them."""

import math
from collections.abc import Sequence
from functools import cache
from typing import NamedTuple

import numpy as np
from numpy.typing import NDArray

Floats = NDArray[np.float64]

NODES_STRAIGHT, NODES_ARC = 8, 24
ARC_STEPS = 128


class Straight(NamedTuple):
    """From one point to another, 0 to 1 on the way."""

    start: tuple[float, ...]
    end: tuple[float, ...]


class Arc(NamedTuple):
    """Round `centre`: `cos` and `sin` are what an angle's cosine and sine add to it.

    From angle `first` to angle `last`.
    """

    centre: tuple[float, ...]
    cos: tuple[float, ...]
    sin: tuple[float, ...]
    first: float
    last: float


Curve = Straight | Arc


class Nodes(NamedTuple):
    """Places on a curve for a sum along it: points and their slopes (n, d), weights (n,)."""

    at: Floats
    slope: Floats
    weight: Floats


@cache
def _gauss(count: int) -> tuple[Floats, Floats]:
    where, weight = np.polynomial.legendre.leggauss(count)
    return (where + 1) / 2, weight / 2


def nodes(curve: Curve, low: float = 0.0, high: float = 1.0) -> Nodes:
    """Gauss's places on the part of a curve between two shares of its way.

    Sums of smooth things over at most a quarter turn are exact to 1e-12.
    """
    share, weight = _gauss(NODES_STRAIGHT if isinstance(curve, Straight) else NODES_ARC)
    way = low + (high - low) * share
    return Nodes(*_along(curve, way), weight * (high - low))


def _along(curve: Curve, way: Floats) -> tuple[Floats, Floats]:
    if isinstance(curve, Straight):
        start, end = np.array(curve.start), np.array(curve.end)
        at = start + way[:, None] * (end - start)
        return at, np.broadcast_to(end - start, at.shape)
    sweep = curve.last - curve.first
    turn = (curve.first + way * sweep)[:, None]
    cos, sin = np.array(curve.cos), np.array(curve.sin)
    at = np.array(curve.centre) + cos * np.cos(turn) + sin * np.sin(turn)
    return at, sweep * (sin * np.cos(turn) - cos * np.sin(turn))


def sampled(curve: Curve) -> Floats:
    """Points on a curve that straight ways between them follow, (n, d)."""
    steps = 2 if isinstance(curve, Straight) else ARC_STEPS
    return _along(curve, np.linspace(0.0, 1.0, steps))[0]


def points_at(curve: Curve, shares: Floats) -> Floats:
    """Points of a curve, (n, d)."""
    return _along(curve, shares)[0]


def point(curve: Curve, share: float) -> tuple[float, ...]:
    """One point of a curve."""
    if isinstance(curve, Straight):
        return tuple(
            low + share * (high - low)
            for low, high in zip(curve.start, curve.end, strict=True)
        )
    turn = curve.first + share * (curve.last - curve.first)
    cos, sin = math.cos(turn), math.sin(turn)
    return tuple(
        middle + a * cos + b * sin
        for middle, a, b in zip(curve.centre, curve.cos, curve.sin, strict=True)
    )


def share_where(curve: Curve, axis: int, value: float) -> float | None:
    """Share of the way where one coordinate has a value, None where it never does.

    The curve rises all along or not at all in that coordinate; of a level one the end.
    """
    if isinstance(curve, Straight):
        low, high = curve.start[axis], curve.end[axis]
        if low == high:
            return 1.0 if value == low else None
        share = (value - low) / (high - low)
        return share if -1e-12 <= share <= 1 + 1e-12 else None
    reach = math.hypot(curve.cos[axis], curve.sin[axis])
    lean = math.atan2(curve.sin[axis], curve.cos[axis])
    cos = (value - curve.centre[axis]) / reach
    if abs(cos) > 1 + 1e-12:
        return None
    turn = math.acos(max(-1.0, min(1.0, cos)))
    sweep = curve.last - curve.first
    for angle in (lean + turn, lean - turn):
        for whole in (-2 * math.pi, 0.0, 2 * math.pi):
            share = (angle + whole - curve.first) / sweep
            if -1e-9 <= share <= 1 + 1e-9:
                return min(1.0, max(0.0, share))
    return None


def most(curve: Curve, axis: int) -> float:
    """The largest value of one coordinate on a curve."""
    ends = [point(curve, share)[axis] for share in (0.0, 1.0)]
    if isinstance(curve, Arc):
        peak = math.atan2(curve.sin[axis], curve.cos[axis])
        sweep = curve.last - curve.first
        for whole in (-2 * math.pi, 0.0, 2 * math.pi):
            if 0 <= (peak + whole - curve.first) / sweep <= 1:
                reach = math.hypot(curve.cos[axis], curve.sin[axis])
                ends.append(curve.centre[axis] + reach)
    return max(ends)


def joined(curves: Sequence[tuple[Curve, float]]) -> Nodes:
    """Places for a sum along several curves, each up to a share of its way."""
    all_ = [nodes(curve, 0.0, last) for curve, last in curves]
    return Nodes(*(np.concatenate(parts) for parts in zip(*all_, strict=True)))
