"""How a piece's temperatures run, and what is read on the way.

SI, °C. Steps are as long as their own error allows (see `stage` for one step).
"""

from collections.abc import Callable, Sequence
from dataclasses import dataclass

import numpy as np

from demould.cold.around.air import Air, Film, air_at, changes, checked_air
from demould.cold.body.cut import Floats
from demould.cold.body.mesh import Mesh
from demould.cold.run.lookup import enthalpy_at, state_at
from demould.cold.run.march import Pace, march
from demould.cold.run.reading import Reading, reading_of
from demould.cold.run.stage import Now, Weather
from demould.cold.run.system import System, system_of
from demould.matter.heat import Thermal

FIRST_STEP_S = 2.0
STRIDE = 4
"""Steps taken at once before it is asked whether the run is done."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Accuracy:
    """How fine time is cut.

    `tolerance` bounds the first-order share of a step's heat, as a part of 100 kJ/kg;
    a `step` in seconds forces even steps instead.
    """

    tolerance: float = 0.006
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
    change of stored heat does not explain. [-] `cells_c` is how warm each of the mesh's
    cells is at the end. Shape (n,).
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
    cells_c: Floats


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
    table, told, now, solves = _marched(system, now, air, until, done, accuracy, damp)
    change = before - _stored(system, now)
    heat = float(table[-1, 1])
    moved = max(abs(heat), abs(change))
    table = table[:told]
    read = Reading(*table.T[2:])
    return Run(
        seconds=table[:, 0].copy(),
        heat=table[:, 1].copy(),
        **read._asdict(),
        residual=abs(heat - change) / moved if moved > 1e-9 else 0.0,
        solves=solves,
        cells_c=now.state.at_c,
    )


def _marched(
    system: System,
    now: Now,
    air: Air,
    until: float,
    done: Callable[[Reading], bool],
    accuracy: Accuracy,
    damp: Damp | None,
) -> tuple[Floats, int, Now, int]:
    """Go on in strides of a few steps until one of them is `done` or all is over.

    Gives rows of seconds, heat and readings, and how many there are up to the one that
    is done, where the piece was after the last row, and balances solved.
    """
    first = np.array([[0.0, 0.0, *reading_of(system, now)]])
    filled, solves = [first], 0
    forced = accuracy.step is not None
    pace = Pace(0.0 if forced else accuracy.tolerance, accuracy.step or FIRST_STEP_S)
    told, over = 1, done(Reading(*first[0, 2:]))
    for stop in changes(air, until):
        weather = Weather(
            air_at(air, filled[-1][-1, 0]),
            damp.relative if damp else 0.0,
            damp.h_convective if damp else 0.0,
        )
        while filled[-1][-1, 0] < stop and not over:
            rows = np.empty((STRIDE + 1, first.shape[1]))
            rows[0] = filled[-1][-1]
            went = march(system, now, weather, pace, stop, rows)
            if went.fault:
                raise ArithmeticError(
                    f"the cells' balance has no answer ({went.fault})"
                )
            now, pace = went.now, went.pace
            solves += went.solves
            filled.append(rows[1 : went.rows + 1])
            for row in filled[-1]:
                told += 1
                over = done(Reading(*row[2:]))
                if over:
                    break
    return np.concatenate(filled), told, now, solves


def _start(
    system: System, mesh: Mesh, thermals: Sequence[Thermal], start_c: Sequence[float]
) -> Now:
    begin_c = np.array(start_c, dtype=np.float64)[mesh.body]
    content = enthalpy_at(thermals, mesh.body, begin_c)
    wall = begin_c[system.rim.cell]
    state = state_at(system.table, content, system.table.first)
    return Now(
        content,
        np.zeros_like(content),
        state,
        np.zeros((content.size, 2)),
        wall,
        wall,
        np.zeros_like(wall),
        wall,
    )


def _stored(system: System, now: Now) -> float:
    in_wall = (system.rim.wall_capacity * now.wall).sum()
    return float((system.mass * now.content).sum() + in_wall)
