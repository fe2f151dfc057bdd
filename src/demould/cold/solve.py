"""How a piece's temperatures run, and what is read on the way.

SI, °C. Steps are as long as their own error allows (see `stage` for one step).
"""

from collections.abc import Callable, Sequence
from dataclasses import dataclass
from typing import NamedTuple

import numpy as np

from demould.cold.air import Air, Film, air_at, changes, checked_air
from demould.cold.cut import Floats
from demould.cold.lookup import State, enthalpy_at, ice_of, state_at
from demould.cold.mesh import Mesh
from demould.cold.stage import STAGE, Stage, System, step_of, system_of
from demould.matter.heat import Thermal

HEAT_SCALE_J_KG = 1e5
FIRST_STEP_S = 2.0


class Reading(NamedTuple):
    """One moment [°C, kg].

    `surface` is the mean of the piece's own surface, under its wall; `margin` the
    least any cell is above its freezing point, so no ice is left from 0 up.
    """

    core: float
    warmest: float
    surface: float
    margin: float
    ice: float


@dataclass(frozen=True, slots=True, kw_only=True)
class Accuracy:
    """How fine time is cut.

    `tolerance` bounds the first-order share of a step's heat, as a part of 100 kJ/kg;
    a `step` in seconds forces even steps instead.
    """

    tolerance: float = 0.004
    step: float | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class Run:
    """Everything read on the way, the start included. Arrays of shape (m,).

    `heat` is what has left piece and wall. [J] `residual` is the part of it that the
    change of stored heat does not explain. [-]
    """

    seconds: Floats
    core: Floats
    warmest: Floats
    surface: Floats
    margin: Floats
    ice: Floats
    heat: Floats
    residual: float
    solves: int


def run(
    mesh: Mesh,
    thermals: Sequence[Thermal],
    start_c: Sequence[float],
    air: Air,
    film: Film,
    *,
    until: float,
    done: Callable[[Reading], bool] = lambda _: False,
    accuracy: Accuracy = Accuracy(),
) -> Run:
    """Follow a piece until `done` or `until` [s].

    Parameters
    ----------
    thermals, start_c
        Table and temperature of each of the mesh's bodies. The wall starts as warm as
        the cell behind it.
    air
        [°C], or (seconds, °C) pairs, each held until the next.
    """
    checked_air(air)
    system = system_of(mesh, thermals, film)
    begin_c = np.array(start_c, dtype=np.float64)[mesh.body]
    content = enthalpy_at(thermals, mesh.body, begin_c)
    wall = begin_c[mesh.rim.cell]
    before = _stored(system, content, wall)
    seconds, heat, solves = 0.0, 0.0, 0
    rate = np.zeros_like(content)
    rows = [(seconds, heat, *_reading(system, content, wall))]
    step = FIRST_STEP_S if accuracy.step is None else accuracy.step
    for stop in changes(air, until):
        air_c = air_at(air, seconds)
        while seconds < stop and not done(Reading(*rows[-1][2:])):
            tried = min(step, stop - seconds)
            one, two = step_of(system, content, wall, rate, air_c, tried)
            solves += one.tries + two.tries
            wrong = _wrong(system, one, two, tried) / accuracy.tolerance
            agreed = one.agreed and two.agreed
            if accuracy.step is None:
                step = tried * min(2.0, max(0.3, 0.8 / max(wrong, 1e-12) ** 0.5))
                if tried > 1e-3 and (wrong > 2 or not agreed):
                    step = min(step, tried / 2)
                    continue
            content, wall, rate = two.content, two.wall, two.rate
            heat += tried * ((1 - STAGE) * one.leaving + STAGE * two.leaving)
            seconds = stop if stop - seconds <= tried else seconds + tried
            rows.append((seconds, heat, *_reading(system, content, wall)))
    table = np.array(rows).T
    change = before - _stored(system, content, wall)
    moved = max(abs(heat), abs(change))
    return Run(
        seconds=table[0],
        heat=table[1],
        core=table[2],
        warmest=table[3],
        surface=table[4],
        margin=table[5],
        ice=table[6],
        residual=abs(heat - change) / moved if moved > 1e-9 else 0.0,
        solves=solves,
    )


def _wrong(system: System, one: Stage, two: Stage, step: float) -> float:
    """What a first-order step would have had otherwise, as a part of 100 kJ/kg."""
    apart = STAGE * step * (two.rate - one.rate) / HEAT_SCALE_J_KG
    return float(np.sqrt(np.average(apart**2, weights=system.mass)))


def _stored(system: System, content: Floats, wall: Floats) -> float:
    in_wall = float((system.mesh.rim.wall_capacity * wall).sum())
    return float((system.mass * content).sum()) + in_wall


def _reading(system: System, content: Floats, wall: Floats) -> Reading:
    mesh, rim = system.mesh, system.mesh.rim
    state = state_at(system.table, content)
    core = float(mesh.core @ state.at_c)
    ice = ice_of(system.thermals, mesh.body, state.at_c)
    return Reading(
        core=core,
        warmest=max(core, float(state.at_c.max())),
        surface=float(np.average(_surface(system, state, wall), weights=rim.area)),
        margin=float((state.at_c - system.table.freezing_c).min()),
        ice=float((system.mass * ice).sum()),
    )


def _surface(system: System, state: State, wall: Floats) -> Floats:
    """Temperature of each rim piece, under its wall. [°C] Shape (p,)."""
    rim = system.mesh.rim
    within = state.at_c[rim.cell]
    way = rim.depth / (state.conductivity[rim.cell] * rim.area)
    return within + (wall - within) * way / (way + rim.wall_resistance / 2)
