"""When a run passes a temperature, read between its steps."""

from itertools import pairwise

import numpy as np

from demould.cold.body.cut import Floats

SAME = 1e-9


def passing(seconds: Floats, values: Floats, level: float) -> float | None:
    """When `values` first come to `level` from the side they start on, or None [s].

    0 where they start at it. Between steps values run along a monotone cubic (Fritsch
    and Butland, SIAM J. Sci. Stat. Comput. 5, 1984, 300-304), so a reading overshoots
    no step.
    """
    if abs(values[0] - level) < SAME:
        return 0.0
    side = 1.0 if values[0] > level else -1.0
    beyond = np.flatnonzero((values - level) * side <= 0)
    if not beyond.size:
        return None
    n = int(beyond[0]) - 1
    run = _run(seconds, values, n)
    low, high = 0.0, 1.0
    for _ in range(50):
        middle = (low + high) / 2
        if (_along(run, middle) - level) * side > 0:
            low = middle
        else:
            high = middle
    return float(seconds[n] + (seconds[n + 1] - seconds[n]) * (low + high) / 2)


def value_at(seconds: Floats, values: Floats, moment: float) -> float:
    """What `values` are at a moment of the run [their own unit]."""
    n = min(max(int(np.searchsorted(seconds, moment)) - 1, 0), seconds.size - 2)
    share = (moment - float(seconds[n])) / float(seconds[n + 1] - seconds[n])
    return _along(_run(seconds, values, n), share)


def _run(seconds: Floats, values: Floats, n: int) -> tuple[float, float, float, float]:
    """Value, rise and both end slopes (times its length) of step n."""
    near = slice(max(0, n - 1), n + 3)
    t, v = seconds[near].tolist(), values[near].tolist()
    step = [b - a for a, b in pairwise(t)]
    slope = [(b - a) / long for (a, b), long in zip(pairwise(v), step, strict=True)]
    at = n - near.start
    start, end = _bend(slope, step, at - 1, at), _bend(slope, step, at, at + 1)
    return v[at], v[at + 1] - v[at], start * step[at], end * step[at]


def _along(run: tuple[float, float, float, float], x: float) -> float:
    value, rise, start, end = run
    bow = x * (1 - x) * ((1 - x) * start - x * end)
    return value + x * x * (3 - 2 * x) * rise + bow


def _bend(slope: list[float], step: list[float], before: int, after: int) -> float:
    """Slope at a node between two steps: their weighted harmonic mean, 0 at a peak."""
    if before < 0 or after >= len(slope):
        return slope[max(before, 0)]
    a, b = slope[before], slope[after]
    if a * b <= 0:
        return 0.0
    share = (1 + step[after] / (step[before] + step[after])) / 3
    return a * b / (share * b + (1 - share) * a)
