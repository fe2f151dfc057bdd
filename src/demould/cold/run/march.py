"""Step after step: as long as their own error allows, or all alike."""

from typing import NamedTuple

from demould.cold.body.cut import Floats
from demould.cold.compiled import compiled
from demould.cold.run.reading import reading_of
from demould.cold.run.stage import ROUGHLY_AGREED_K, STAGE, Now, Stage, Weather, step_of
from demould.cold.run.system import System

HEAT_SCALE_J_KG = 1e5
SHORTEST_S = 1e-3
LONGER, SHORTER, WARY = 2.0, 0.3, 0.8
"""How much longer or shorter than the last a step may be, and the share of what its
error would allow that is taken."""


class Pace(NamedTuple):
    """How steps are chosen: by `tolerance` (see `solve.Accuracy`), or all alike at 0."""

    tolerance: float
    step: float


class Marched(NamedTuple):
    """Where a march ended, the rows it filled, the next step, how it went.

    `solves` counts balances solved; `fault` is 0, or the column without an answer.
    """

    now: Now
    rows: int
    pace: Pace
    solves: int
    fault: int


@compiled
def march(
    system: System, now: Now, weather: Weather, pace: Pace, stop: float, rows: Floats
) -> Marched:
    """Go on from the first of `rows` until all are filled or `stop` [s] is reached.

    A row is seconds, heat that has left [J] and the fields of `reading.Reading`.
    """
    row, solves, fault = 0, 0, 0
    step = pace.step
    while row + 1 < rows.shape[0] and rows[row, 0] < stop and fault == 0:
        seconds = rows[row, 0]
        tried = min(step, stop - seconds)
        one, two = step_of(system, now, weather, tried)
        solves += one.tries + two.tries
        fault = max(one.fault, two.fault)
        if pace.tolerance > 0:
            wrong = max(_wrong(system, one, two, tried) / pace.tolerance, 1e-12)
            step = tried * min(LONGER, max(SHORTER, WARY / wrong**0.5))
            agreed = max(one.apart, two.apart) < ROUGHLY_AGREED_K
            if tried > SHORTEST_S and (wrong > 2 or not agreed):
                step = min(step, tried / 2)
                continue
        now = two.now
        leaving = (1 - STAGE) * one.leaving + STAGE * two.leaving
        row += 1
        rows[row, 0] = stop if stop - seconds <= tried else seconds + tried
        rows[row, 1] = rows[row - 1, 1] + tried * leaving
        rows[row, 2:] = reading_of(system, now)
    return Marched(now, row, Pace(pace.tolerance, step), solves, fault)


@compiled
def _wrong(system: System, one: Stage, two: Stage, step: float) -> float:
    """What a first-order step would have had otherwise, as a part of 100 kJ/kg."""
    square, mass = 0.0, 0.0
    for n in range(system.mass.size):
        apart = STAGE * step * (two.now.rate[n] - one.now.rate[n]) / HEAT_SCALE_J_KG
        square += system.mass[n] * apart**2
        mass += system.mass[n]
    return float((square / mass) ** 0.5)
