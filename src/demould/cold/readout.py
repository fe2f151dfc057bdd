"""When a run passes a temperature, read between its steps."""

import numpy as np

from demould.cold.cut import Floats


def passing(seconds: Floats, values: Floats, level: float) -> float | None:
    """When `values` first come to `level` from the side they start on, or None [s].

    0 where they start at it. Between steps values run along a monotone cubic (Fritsch
    and Butland, SIAM J. Sci. Stat. Comput. 5, 1984, 300-304), so a reading overshoots
    no step.
    """
    if values[0] == level:
        return 0.0
    side = np.sign(values[0] - level)
    beyond = np.flatnonzero((values - level) * side <= 0)
    if not beyond.size:
        return None
    low, high = float(seconds[beyond[0] - 1]), float(seconds[beyond[0]])
    for _ in range(60):
        middle = (low + high) / 2
        ahead = (value_at(seconds, values, middle) - level) * side > 0
        low, high = (middle, high) if ahead else (low, middle)
    return (low + high) / 2


def value_at(seconds: Floats, values: Floats, moment: float) -> float:
    """What `values` are at a moment of the run [their own unit]."""
    n = int(np.clip(np.searchsorted(seconds, moment) - 1, 0, seconds.size - 2))
    near = slice(max(0, n - 1), n + 3)
    step, rise = np.diff(seconds[near]), np.diff(values[near])
    slope = rise / step
    at = n - near.start
    start = _bend(slope, step, at - 1, at)
    end = _bend(slope, step, at, at + 1)
    x = (moment - float(seconds[n])) / float(step[at])
    return float(
        values[n]
        + x * x * (3 - 2 * x) * rise[at]
        + step[at] * x * (1 - x) * ((1 - x) * start - x * end)
    )


def _bend(slope: Floats, step: Floats, before: int, after: int) -> float:
    """Slope at a node between two steps: their weighted harmonic mean, 0 at a peak."""
    if before < 0 or after >= slope.size:
        return float(slope[max(before, 0)])
    a, b = float(slope[before]), float(slope[after])
    if a * b <= 0:
        return 0.0
    share = (1 + step[after] / (step[before] + step[after])) / 3
    return float(a * b / (share * b + (1 - share) * a))
