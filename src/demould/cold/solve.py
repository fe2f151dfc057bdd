r"""How a piece's temperatures run: enthalpy in cut cells, two implicit stages a step.

SI, °C. The unknown is each cell's heat content, so heat in equals heat out to rounding
whatever the step; :math:`T(H)` comes from the tables. Time goes by the two-stage
diagonally implicit scheme of Alexander (SIAM J. Numer. Anal. 14, 1977, 1006-1021),
second order and damping; each stage is solved by linearising :math:`H(T)` about the
last guess, taking the flows of the linear answer as true (quasi-enthalpy: Pham, Int. J.
Heat Mass Transfer 28, 1985, 2079-2084, from memory), until both temperatures agree.
A mould's wall is one node a rim piece, eliminated.
"""

from collections.abc import Callable, Sequence
from dataclasses import dataclass
from typing import NamedTuple

import numpy as np
from scipy.linalg.lapack import dpbsv

from demould.cold.air import Air, Film, air_at, changes, checked_air
from demould.cold.cut import Floats, Whole
from demould.cold.lookup import Lookup, State, enthalpy_at, ice_of, lookup_of, state_at
from demould.cold.mesh import Mesh
from demould.matter.heat import Thermal

STAGE = 1 - 0.5**0.5
AGREED_K = 0.02
ROUGHLY_AGREED_K = 1.0
TRIES = 6
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


@dataclass(frozen=True, slots=True, kw_only=True)
class _Piece:
    """What stays the same through a run."""

    mesh: Mesh
    table: Lookup
    thermals: Sequence[Thermal]
    mass: Floats
    outside: Floats
    band: Whole
    rows: int


class _Answer(NamedTuple):
    """Of one linear solve: temperature, rate of heat content, wall temperature."""

    at_c: Floats
    rate: Floats
    wall: Floats


class _Stage(NamedTuple):
    """An implicit stage: content, its rate, wall, its rate, heat leaving [W]."""

    content: Floats
    rate: Floats
    wall: Floats
    wall_rate: Floats
    leaving: float
    tries: int
    agreed: bool


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
    piece = _piece(mesh, thermals, film)
    begin_c = np.array(start_c, dtype=np.float64)[mesh.body]
    content = enthalpy_at(thermals, mesh.body, begin_c)
    wall = begin_c[mesh.rim.cell]
    before = _stored(piece, content, wall)
    seconds, heat, solves = 0.0, 0.0, 0
    rate = np.zeros_like(content)
    rows = [(seconds, heat, *_reading(piece, content, wall))]
    step = FIRST_STEP_S if accuracy.step is None else accuracy.step
    for stop in changes(air, until):
        air_c = air_at(air, seconds)
        while seconds < stop and not done(Reading(*rows[-1][2:])):
            tried = min(step, stop - seconds)
            one, two = _step(piece, content, wall, rate, air_c, tried)
            solves += one.tries + two.tries
            wrong = _wrong(piece, one, two, tried) / accuracy.tolerance
            agreed = one.agreed and two.agreed
            if accuracy.step is None:
                step = tried * min(2.0, max(0.3, 0.8 / max(wrong, 1e-12) ** 0.5))
                if tried > 1e-3 and (wrong > 2 or not agreed):
                    step = min(step, tried / 2)
                    continue
            content, wall, rate = two.content, two.wall, two.rate
            heat += tried * ((1 - STAGE) * one.leaving + STAGE * two.leaving)
            seconds = stop if stop - seconds <= tried else seconds + tried
            rows.append((seconds, heat, *_reading(piece, content, wall)))
    table = np.array(rows).T
    change = before - _stored(piece, content, wall)
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


def _piece(mesh: Mesh, thermals: Sequence[Thermal], film: Film) -> _Piece:
    table = lookup_of(thermals, mesh.body)
    apart = mesh.links.high - mesh.links.low
    return _Piece(
        mesh=mesh,
        table=table,
        thermals=thermals,
        mass=mesh.volume * table.density,
        outside=_outside(mesh, film),
        band=apart * mesh.body.size + mesh.links.low,
        rows=int(apart.max(initial=0)) + 1,
    )


def _outside(mesh: Mesh, film: Film) -> Floats:
    """From the wall's middle (a bare surface) to the air [W/K]."""
    h = np.array([film.bottom, film.top, film.other])[mesh.rim.face]
    resistance = mesh.rim.wall_resistance / 2
    conductance = h * mesh.rim.outer_area
    return np.asarray(conductance / (1 + resistance * conductance))


def _step(
    piece: _Piece,
    content: Floats,
    wall: Floats,
    rate: Floats,
    air_c: float,
    step: float,
) -> tuple[_Stage, _Stage]:
    part = STAGE * step
    one = _solved(piece, content, wall, content + part * rate, air_c, part)
    middle = content + (1 - STAGE) * step * one.rate
    wall_middle = wall + (1 - STAGE) * step * one.wall_rate
    guess = middle + part * one.rate
    return one, _solved(piece, middle, wall_middle, guess, air_c, part)


def _solved(
    piece: _Piece,
    base: Floats,
    wall_base: Floats,
    guess: Floats,
    air_c: float,
    dt: float,
) -> _Stage:
    """Find content = base + dt * rate(content)."""
    state = state_at(piece.table, guess)
    tries, apart = 0, np.inf
    answer = _linear(piece, base, wall_base, guess, state, air_c, dt)
    while True:
        tries += 1
        guess = base + dt * answer.rate
        state = state_at(piece.table, guess)
        apart = float(np.abs(state.at_c - answer.at_c).max())
        if apart < AGREED_K or tries == TRIES:
            break
        answer = _linear(piece, base, wall_base, guess, state, air_c, dt)
    return _Stage(
        content=guess,
        rate=answer.rate,
        wall=answer.wall,
        wall_rate=(answer.wall - wall_base) / dt,
        leaving=float((piece.outside * (answer.wall - air_c)).sum()),
        tries=tries,
        agreed=apart < ROUGHLY_AGREED_K,
    )


def _linear(
    piece: _Piece,
    base: Floats,
    wall_base: Floats,
    guess: Floats,
    state: State,
    air_c: float,
    dt: float,
) -> _Answer:
    """Solve with content taken as guess + capacity * (temperature - its temperature)."""
    rim, links, n = piece.mesh.rim, piece.mesh.links, base.size
    k = state.conductivity
    link = links.area / (links.to_low / k[links.low] + links.to_high / k[links.high])
    within = 1 / (rim.depth / (k[rim.cell] * rim.area) + rim.wall_resistance / 2)
    kept = rim.wall_capacity / dt
    whole = kept + within + piece.outside
    given = (kept * wall_base + piece.outside * air_c) / whole
    through = within * (kept + piece.outside) / whole
    per_kelvin = piece.mass * state.capacity / dt
    matrix = np.zeros((piece.rows, n))
    matrix[0] = per_kelvin + np.bincount(rim.cell, through, minlength=n)
    matrix[0] += np.bincount(links.low, link, minlength=n)
    matrix[0] += np.bincount(links.high, link, minlength=n)
    matrix.ravel()[piece.band] = -link
    right = piece.mass / dt * (base - guess) + per_kelvin * state.at_c
    right += np.bincount(rim.cell, within * given, minlength=n)
    _, at_c, fault = dpbsv(matrix, right, lower=1)
    if fault:
        raise ArithmeticError(f"the cells' balance has no answer ({fault})")
    flow = link * (at_c[links.high] - at_c[links.low])
    wall = given + within * at_c[rim.cell] / whole
    entering = np.bincount(links.low, flow, minlength=n)
    entering -= np.bincount(links.high, flow, minlength=n)
    entering += np.bincount(rim.cell, within * (wall - at_c[rim.cell]), minlength=n)
    return _Answer(at_c, entering / piece.mass, wall)


def _wrong(piece: _Piece, one: _Stage, two: _Stage, step: float) -> float:
    """What a first-order step would have had otherwise, as a part of 100 kJ/kg."""
    apart = STAGE * step * (two.rate - one.rate) / HEAT_SCALE_J_KG
    return float(np.sqrt(np.average(apart**2, weights=piece.mass)))


def _stored(piece: _Piece, content: Floats, wall: Floats) -> float:
    in_wall = float((piece.mesh.rim.wall_capacity * wall).sum())
    return float((piece.mass * content).sum()) + in_wall


def _reading(piece: _Piece, content: Floats, wall: Floats) -> Reading:
    mesh, rim = piece.mesh, piece.mesh.rim
    state = state_at(piece.table, content)
    core = float(mesh.core @ state.at_c)
    ice = ice_of(piece.thermals, mesh.body, state.at_c)
    return Reading(
        core=core,
        warmest=max(core, float(state.at_c.max())),
        surface=float(np.average(_surface(piece, state, wall), weights=rim.area)),
        margin=float((state.at_c - piece.table.freezing_c).min()),
        ice=float((piece.mass * ice).sum()),
    )


def _surface(piece: _Piece, state: State, wall: Floats) -> Floats:
    """Temperature of each rim piece, under its wall. [°C] Shape (p,)."""
    rim = piece.mesh.rim
    within = state.at_c[rim.cell]
    way = rim.depth / (state.conductivity[rim.cell] * rim.area)
    return within + (wall - within) * way / (way + rim.wall_resistance / 2)
