"""How a piece's temperatures run, and what is read on the way.

SI, °C. Steps are as long as their own error allows (see `stage` for one step).
"""

from collections.abc import Callable, Sequence
from dataclasses import dataclass
from typing import NamedTuple

import numpy as np

from demould.cold.around.air import Air, Film, air_at, changes, checked_air
from demould.cold.body.cut import Floats
from demould.cold.body.mesh import Mesh
from demould.cold.compiled import compiled
from demould.cold.run.lookup import enthalpy_at, ice_at, state_at
from demould.cold.run.stage import ROUGHLY_AGREED_K, STAGE, Now, Stage, Weather, step_of
from demould.cold.run.system import System, system_of
from demould.matter.heat import Thermal

HEAT_SCALE_J_KG = 1e5
FIRST_STEP_S = 2.0


class Reading(NamedTuple):
    """One moment [°C, kg].

    `surface` is the mean of the piece's own surface, under its wall; `margin` the
    least any cell is above its freezing point, so no ice is left from 0 up; `skin` the
    mean of the outermost surface, `water` what has settled on it.
    """

    core: float
    warmest: float
    surface: float
    margin: float
    ice: float
    skin: float
    water: float


@dataclass(frozen=True, slots=True, kw_only=True)
class Accuracy:
    """How fine time is cut.

    `tolerance` bounds the first-order share of a step's heat, as a part of 100 kJ/kg;
    a `step` in seconds forces even steps instead.
    """

    tolerance: float = 0.004
    step: float | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class Damp:
    """Air with water in it: relative humidity [0 to 1], and h without radiation."""

    relative: float
    h_convective: float

    def __post_init__(self) -> None:
        if not 0 <= self.relative <= 1:
            raise ValueError("a relative humidity that is not from 0 to 1")
        if self.h_convective < 0:
            raise ValueError("a convective film below 0 W/(m2 K)")


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
    skin: Floats
    water: Floats
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
    damp: Damp | None = None,
) -> Run:
    """Follow a piece until `done` or `until` [s].

    Parameters
    ----------
    thermals, start_c
        Table and temperature of each of the mesh's bodies. The wall starts as warm as
        the cell behind it.
    air
        [°C], or (seconds, °C) pairs, each held until the next.
    damp
        Lets frost and dew settle on the outermost surface, and what settled dry off.

    Raises
    ------
    ArithmeticError
        If a table does not rise with temperature.
    """
    checked_air(air)
    system = system_of(mesh, thermals, film)
    now = _start(system, mesh, thermals, start_c)
    before = _stored(system, now)
    seconds, heat, solves = 0.0, 0.0, 0
    rows = [(seconds, heat, *_reading(system, now))]
    step = FIRST_STEP_S if accuracy.step is None else accuracy.step
    for stop in changes(air, until):
        weather = Weather(
            air_at(air, seconds),
            damp.relative if damp else 0.0,
            damp.h_convective if damp else 0.0,
        )
        while seconds < stop and not done(Reading(*rows[-1][2:])):
            tried = min(step, stop - seconds)
            one, two = _sound(step_of(system, now, weather, tried))
            solves += one.tries + two.tries
            if accuracy.step is None:
                wrong = _wrong(system, one, two, tried) / accuracy.tolerance
                step = tried * min(2.0, max(0.3, 0.8 / max(wrong, 1e-12) ** 0.5))
                agreed = max(one.apart, two.apart) < ROUGHLY_AGREED_K
                if tried > 1e-3 and (wrong > 2 or not agreed):
                    step = min(step, tried / 2)
                    continue
            now = two.now
            heat += tried * ((1 - STAGE) * one.leaving + STAGE * two.leaving)
            seconds = stop if stop - seconds <= tried else seconds + tried
            rows.append((seconds, heat, *_reading(system, now)))
    change = before - _stored(system, now)
    moved = max(abs(heat), abs(change))
    table = np.array(rows).T
    read = Reading(*table[2:])
    return Run(
        seconds=table[0],
        heat=table[1],
        **read._asdict(),
        residual=abs(heat - change) / moved if moved > 1e-9 else 0.0,
        solves=solves,
    )


def _start(
    system: System, mesh: Mesh, thermals: Sequence[Thermal], start_c: Sequence[float]
) -> Now:
    begin_c = np.array(start_c, dtype=np.float64)[mesh.body]
    content = enthalpy_at(thermals, mesh.body, begin_c)
    wall = begin_c[system.rim.cell]
    return Now(content, np.zeros_like(content), wall, np.zeros_like(wall), wall)


def _sound(stages: tuple[Stage, Stage]) -> tuple[Stage, Stage]:
    for stage in stages:
        if stage.fault:
            raise ArithmeticError(f"the cells' balance has no answer ({stage.fault})")
    return stages


@compiled
def _wrong(system: System, one: Stage, two: Stage, step: float) -> float:
    """What a first-order step would have had otherwise, as a part of 100 kJ/kg."""
    square, mass = 0.0, 0.0
    for n in range(system.mass.size):
        apart = STAGE * step * (two.now.rate[n] - one.now.rate[n]) / HEAT_SCALE_J_KG
        square += system.mass[n] * apart**2
        mass += system.mass[n]
    return float((square / mass) ** 0.5)


def _stored(system: System, now: Now) -> float:
    in_wall = (system.rim.wall_capacity * now.wall).sum()
    return float((system.mass * now.content).sum() + in_wall)


@compiled
def _reading(
    system: System, now: Now
) -> tuple[float, float, float, float, float, float, float]:
    rim, table = system.rim, system.table
    state = state_at(table, now.content)
    frozen = ice_at(table, now.content)
    core, warmest, margin, ice = 0.0, -np.inf, np.inf, 0.0
    for n in range(system.mass.size):
        core += system.core[n] * state.at_c[n]
        warmest = max(warmest, state.at_c[n])
        margin = min(margin, state.at_c[n] - table.freezing_c[n])
        ice += system.mass[n] * frozen[n]
    surface, skin, water, inner, outer = 0.0, 0.0, 0.0, 0.0, 0.0
    for m in range(rim.cell.size):
        within = state.at_c[rim.cell[m]]
        way = rim.depth[m] / (state.conductivity[rim.cell[m]] * rim.area[m])
        under = within + (now.wall[m] - within) * way / (way + rim.half_wall[m])
        surface += under * rim.area[m]
        skin += now.skin[m] * rim.outer_area[m]
        water += now.water[m] * rim.outer_area[m]
        inner += rim.area[m]
        outer += rim.outer_area[m]
    return core, max(core, warmest), surface / inner, margin, ice, skin / outer, water
