r"""One step of heat: two implicit stages over all cells of a system.

SI, °C. The unknown is each cell's heat content, so heat in equals heat out to rounding
whatever the step; :math:`T(H)` comes from the tables. Time goes by the two-stage
diagonally implicit scheme of Alexander (SIAM J. Numer. Anal. 14, 1977, 1006-1021),
second order and damping; each stage is solved by linearising :math:`H(T)` about the
last guess, taking the flows of the linear answer as true (quasi-enthalpy: Pham, Int. J.
Heat Mass Transfer 28, 1985, 2079-2084, from memory), until both temperatures agree.
A mould's wall is one node a rim piece, eliminated.
"""

from collections.abc import Sequence
from dataclasses import dataclass
from typing import NamedTuple

import numpy as np
from scipy.linalg.lapack import dpbsv

from demould.cold.air import Film
from demould.cold.cut import Floats, Whole
from demould.cold.lookup import Lookup, State, lookup_of, state_at
from demould.cold.mesh import Mesh
from demould.matter.heat import Thermal

STAGE = 1 - 0.5**0.5
AGREED_K = 0.02
ROUGHLY_AGREED_K = 1.0
TRIES = 6


@dataclass(frozen=True, slots=True, kw_only=True)
class System:
    """A piece in its film, as the steps see it: what stays the same through a run.

    `outside` is from the wall's middle (a bare surface) to the air [W/K]; `band` and
    `rows` say where a link stands in the banded matrix.
    """

    mesh: Mesh
    table: Lookup
    thermals: Sequence[Thermal]
    mass: Floats
    outside: Floats
    band: Whole
    rows: int


class Stage(NamedTuple):
    """An implicit stage: content, its rate, wall, its rate, heat leaving [W]."""

    content: Floats
    rate: Floats
    wall: Floats
    wall_rate: Floats
    leaving: float
    tries: int
    agreed: bool


class _Answer(NamedTuple):
    """Of one linear solve: temperature, rate of heat content, wall temperature."""

    at_c: Floats
    rate: Floats
    wall: Floats


def system_of(mesh: Mesh, thermals: Sequence[Thermal], film: Film) -> System:
    """Put a piece, its bodies' tables and its film together."""
    table = lookup_of(thermals, mesh.body)
    apart = mesh.links.high - mesh.links.low
    return System(
        mesh=mesh,
        table=table,
        thermals=thermals,
        mass=mesh.volume * table.density,
        outside=_outside(mesh, film),
        band=apart * mesh.body.size + mesh.links.low,
        rows=int(apart.max(initial=0)) + 1,
    )


def step_of(
    system: System,
    content: Floats,
    wall: Floats,
    rate: Floats,
    air_c: float,
    step: float,
) -> tuple[Stage, Stage]:
    """Take one step [s] in air of one temperature; its end is that of the second stage.

    `content`, `wall` and `rate` are of its start: heat content of the cells, warmth of
    the wall, and how fast the content last changed, which is where to look first.
    """
    part = STAGE * step
    one = _solved(system, content, wall, content + part * rate, air_c, part)
    middle = content + (1 - STAGE) * step * one.rate
    wall_middle = wall + (1 - STAGE) * step * one.wall_rate
    guess = middle + part * one.rate
    return one, _solved(system, middle, wall_middle, guess, air_c, part)


def _outside(mesh: Mesh, film: Film) -> Floats:
    """From the wall's middle (a bare surface) to the air [W/K]."""
    h = np.array([film.bottom, film.top, film.other])[mesh.rim.face]
    resistance = mesh.rim.wall_resistance / 2
    conductance = h * mesh.rim.outer_area
    return np.asarray(conductance / (1 + resistance * conductance))


def _solved(
    system: System,
    base: Floats,
    wall_base: Floats,
    guess: Floats,
    air_c: float,
    dt: float,
) -> Stage:
    """Find content = base + dt * rate(content)."""
    state = state_at(system.table, guess)
    tries, apart = 0, np.inf
    answer = _linear(system, base, wall_base, guess, state, air_c, dt)
    while True:
        tries += 1
        guess = base + dt * answer.rate
        state = state_at(system.table, guess)
        apart = float(np.abs(state.at_c - answer.at_c).max())
        if apart < AGREED_K or tries == TRIES:
            break
        answer = _linear(system, base, wall_base, guess, state, air_c, dt)
    return Stage(
        content=guess,
        rate=answer.rate,
        wall=answer.wall,
        wall_rate=(answer.wall - wall_base) / dt,
        leaving=float((system.outside * (answer.wall - air_c)).sum()),
        tries=tries,
        agreed=apart < ROUGHLY_AGREED_K,
    )


def _linear(
    system: System,
    base: Floats,
    wall_base: Floats,
    guess: Floats,
    state: State,
    air_c: float,
    dt: float,
) -> _Answer:
    """Solve with content taken as guess + capacity * (temperature - its temperature)."""
    rim, links, n = system.mesh.rim, system.mesh.links, base.size
    k = state.conductivity
    link = links.area / (links.to_low / k[links.low] + links.to_high / k[links.high])
    within = 1 / (rim.depth / (k[rim.cell] * rim.area) + rim.wall_resistance / 2)
    kept = rim.wall_capacity / dt
    whole = kept + within + system.outside
    given = (kept * wall_base + system.outside * air_c) / whole
    through = within * (kept + system.outside) / whole
    per_kelvin = system.mass * state.capacity / dt
    matrix = np.zeros((system.rows, n))
    matrix[0] = per_kelvin + np.bincount(rim.cell, through, minlength=n)
    matrix[0] += np.bincount(links.low, link, minlength=n)
    matrix[0] += np.bincount(links.high, link, minlength=n)
    matrix.ravel()[system.band] = -link
    right = system.mass / dt * (base - guess) + per_kelvin * state.at_c
    right += np.bincount(rim.cell, within * given, minlength=n)
    _, at_c, fault = dpbsv(matrix, right, lower=1)
    if fault:
        raise ArithmeticError(f"the cells' balance has no answer ({fault})")
    flow = link * (at_c[links.high] - at_c[links.low])
    wall = given + within * at_c[rim.cell] / whole
    entering = np.bincount(links.low, flow, minlength=n)
    entering -= np.bincount(links.high, flow, minlength=n)
    entering += np.bincount(rim.cell, within * (wall - at_c[rim.cell]), minlength=n)
    return _Answer(at_c, entering / system.mass, wall)
