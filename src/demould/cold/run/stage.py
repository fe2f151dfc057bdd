r"""One step of heat: two implicit stages over all cells of a system.

SI, °C. The unknown is each cell's heat content, so heat in equals heat out to rounding
whatever the step; :math:`T(H)` comes from the tables. Time goes by the two-stage
diagonally implicit scheme of Alexander (SIAM J. Numer. Anal. 14, 1977, 1006-1021),
second order and damping; each stage is solved by linearising :math:`H(T)` about the
last guess, taking the flows of the linear answer as true (quasi-enthalpy: Pham, Int. J.
Heat Mass Transfer 28, 1985, 2079-2084, from memory), until both temperatures agree.
The temperature of a cell is its mean, which lies off the one that flow sees where
temperature bows: by the heat that comes in along that way, as at the end of the last
stage (a deferred correction that makes even cells fourth order; docs/physics/cold.md).
Conductivity is that gathered over temperature between two cells, or from a cell to the
surface it ends at. A mould's wall is one node a rim piece, eliminated. Water that
settles on the outermost surface is linearised about its last temperature alike.
"""

from typing import NamedTuple

import numpy as np

from demould.cold.around.moist import latent, settling
from demould.cold.body.cut import Floats
from demould.cold.compiled import compiled
from demould.cold.run.band import solve_band
from demould.cold.run.lookup import SAME_K, State, conductivity_to, state_at
from demould.cold.run.system import System

STAGE = 1 - 0.5**0.5
AGREED_K = 0.02
ROUGHLY_AGREED_K = 1.0
TRIES = 6
TINY_K = 1e-3
INNER, END, LIMIT = 1 / 3, 2 / 3, 0.25
"""Shares of a bow that a cell's mean is off by, seen from its neighbour and from a seam
or surface; and how much of a temperature difference it may ever come to."""


class Weather(NamedTuple):
    """The air [°C], its relative humidity [-], and the film's convective part [W/(m2 K)].

    Dry air of which nothing is known has a `convective` part of 0.
    """

    air_c: float
    relative: float
    convective: float


class Now(NamedTuple):
    """What a piece holds at a moment.

    Of cells: heat content [J/kg], how fast it last changed [W/kg], the state it means,
    and what of the heat came in along r and along z [W/m3] (n, 2); of rim pieces:
    temperature of the piece's own surface and of the wall's middle [°C], water on it
    [kg/m2] and the temperature of the outermost surface [°C].
    """

    content: Floats
    rate: Floats
    state: State
    came: Floats
    under: Floats
    wall: Floats
    water: Floats
    skin: Floats


class Stage(NamedTuple):
    """An implicit stage: its end, rates of the rim's, heat leaving [W], how it went.

    `fault` is 0, or the first column of the balance that had no answer.
    """

    now: Now
    wall_rate: Floats
    water_rate: Floats
    leaving: float
    apart: float
    tries: int
    fault: int


class _Rim(NamedTuple):
    """Ways of heat at rim pieces, straight about the last temperatures.

    `within` from the cell to the wall's middle and `outside` on to the air [W/K]; the
    air as it is `felt` there [°C]; water `settling` and its `slope` [kg/(m2 s)]
    [kg/(m2 s K)].
    """

    within: Floats
    outside: Floats
    felt: Floats
    settling: Floats
    slope: Floats


@compiled
def step_of(
    system: System, now: Now, weather: Weather, step: float
) -> tuple[Stage, Stage]:
    """Take one step [s]; its end is that of the second stage."""
    part, rest = STAGE * step, (1 - STAGE) * step
    drying = now.water / step
    one = _solved(system, now, drying, weather, part)
    middle = Now(
        _moved(now.content, one.now.rate, rest),
        one.now.rate,
        one.now.state,
        one.now.came,
        one.now.under,
        _moved(now.wall, one.wall_rate, rest),
        _moved(now.water, one.water_rate, rest),
        one.now.skin,
    )
    return one, _solved(system, middle, drying, weather, part)


@compiled
def _moved(values: Floats, rate: Floats, by: float) -> Floats:
    moved = np.empty_like(values)
    for n in range(values.size):
        moved[n] = values[n] + by * rate[n]
    return moved


@compiled
def _solved(
    system: System, base: Now, drying: Floats, weather: Weather, dt: float
) -> Stage:
    """Find content = base + dt * rate(content). `drying`: what may leave [kg/(m2 s)]."""
    n, rim = base.content.size, system.rim
    p = rim.cell.size
    skin, under = base.skin, base.under
    guess = _moved(base.content, base.rate, dt)
    state = state_at(system.table, guess, base.state.row)
    at_c, band = np.empty(n), np.empty((n, system.width))
    wall, new_skin = np.empty(p), np.empty(p)
    wall_rate, water_rate = np.empty(p), np.empty(p)
    leaving, tries = 0.0, 0
    off, shy = _offsets(system, state, base)
    while True:
        ways = _rim(system, state, under, skin, drying, weather)
        link = _links(system, state)
        _balance(system, state, link, off, base, guess, dt, band, at_c)
        for m in range(p):
            kept = rim.wall_capacity[m] / dt
            whole = kept + ways.within[m] + ways.outside[m]
            given = kept * base.wall[m] + ways.outside[m] * ways.felt[m]
            through = ways.within[m] * (kept + ways.outside[m]) / whole
            band[rim.cell[m], 0] += through
            at_c[rim.cell[m]] += ways.within[m] * given / whole + through * shy[m]
        fault = solve_band(band, system.reach, at_c)
        tries += 1
        leaving, apart = 0.0, 0.0
        rate, came = _entering(system, link, off, at_c)
        under = np.empty(p)
        for m in range(p):
            cell, kept = rim.cell[m], rim.wall_capacity[m] / dt
            whole = kept + ways.within[m] + ways.outside[m]
            given = kept * base.wall[m] + ways.outside[m] * ways.felt[m]
            wall[m] = (given + ways.within[m] * (at_c[cell] - shy[m])) / whole
            into = ways.within[m] * (wall[m] - at_c[cell] + shy[m])
            out = ways.outside[m] * (wall[m] - ways.felt[m])
            rate[cell] += into / system.mass[cell]
            came[cell, 0] += into / system.volume[cell] * rim.radial[m]
            came[cell, 1] += into / system.volume[cell] * (1 - rim.radial[m])
            leaving += out
            under[m] = wall[m] - rim.half_wall[m] * into
            new_skin[m] = wall[m] - rim.half_wall[m] * out
            water_rate[m] = ways.settling[m] + ways.slope[m] * (new_skin[m] - skin[m])
            wall_rate[m] = (wall[m] - base.wall[m]) / dt
            if weather.convective > 0:
                apart = max(apart, abs(new_skin[m] - skin[m]) / 10)
        guess = _moved(base.content, rate, dt)
        state = state_at(system.table, guess, state.row)
        for j in range(n):
            apart = max(apart, abs(state.at_c[j] - at_c[j]))
        skin = new_skin.copy()
        if fault > 0 or apart < AGREED_K or tries == TRIES:
            break
    water = _moved(base.water, water_rate, dt)
    end = Now(guess, rate, state, came, under, wall, water, skin)
    return Stage(end, wall_rate, water_rate, leaving, apart, tries, fault)


@compiled
def _links(system: System, state: State) -> Floats:
    """How well each link conducts [W/K].

    Within a body by what is gathered between its two temperatures; between bodies
    through a seam, each side from its cell to the seam's own temperature.
    """
    table = system.table
    conducts = np.empty(system.low.size)
    for m in range(system.low.size):
        low, high = system.low[m], system.high[m]
        k, other = state.conductivity[low], state.conductivity[high]
        a, b = state.at_c[low], state.at_c[high]
        if table.first[low] != table.first[high]:
            near, far = k / system.to_low[m], other / system.to_high[m]
            seam_c = (near * a + far * b) / (near + far)
            k = conductivity_to(table, state, low, seam_c)
            other = conductivity_to(table, state, high, seam_c)
        elif abs(b - a) > SAME_K:
            k = (state.gathered[high] - state.gathered[low]) / (b - a)
            other = k
        conducts[m] = system.area[m] / (
            system.to_low[m] / k + system.to_high[m] / other
        )
    return conducts


@compiled
def _balance(
    system: System,
    state: State,
    link: Floats,
    off: Floats,
    base: Now,
    guess: Floats,
    dt: float,
    band: Floats,
    right: Floats,
) -> None:
    """Lay out the cells' balance, all but the rim: contents straight about a guess."""
    for j in range(right.size):
        for d in range(system.reach[j]):
            band[j, d] = 0.0
        holds = system.mass[j] / dt
        band[j, 0] = holds / state.warmth[j]
        right[j] = holds * (base.content[j] - guess[j]) + band[j, 0] * state.at_c[j]
    for m in range(link.size):
        low, high = system.low[m], system.high[m]
        band[low, 0] += link[m]
        band[high, 0] += link[m]
        band[low, high - low] -= link[m]
        right[low] -= link[m] * off[m]
        right[high] += link[m] * off[m]


@compiled
def _entering(
    system: System, link: Floats, off: Floats, at_c: Floats
) -> tuple[Floats, Floats]:
    """How fast links change the content of each cell [W/kg], and by which way [W/m3]."""
    entering, came = np.zeros(at_c.size), np.zeros((at_c.size, 2))
    for m in range(link.size):
        low, high = system.low[m], system.high[m]
        flow = link[m] * (at_c[high] - at_c[low] - off[m])
        entering[low] += flow
        entering[high] -= flow
        radial = flow * system.radial[m]
        came[low, 0] += radial
        came[high, 0] -= radial
        came[low, 1] += flow - radial
        came[high, 1] -= flow - radial
    for j in range(at_c.size):
        entering[j] /= system.mass[j]
        came[j, 0] /= system.volume[j]
        came[j, 1] /= system.volume[j]
    return entering, came


@compiled
def _offsets(system: System, state: State, base: Now) -> tuple[Floats, Floats]:
    """What mean temperatures are off by: differences over links, and cells at the rim.

    From a quadratic through a cell with the curvature of what came in, d / k: over a
    half cell of depth s the mean lies 2/3 s^2 d / k beyond the straight line from the
    end, and half of that between two like cells. [K]
    """
    rim, came = system.rim, base.came
    off, shy = np.empty(system.low.size), np.empty(rim.cell.size)
    for m in range(off.size):
        low, high, radial = system.low[m], system.high[m], system.radial[m]
        seam = system.table.first[low] != system.table.first[high]
        share = END if seam else INNER
        a = came[low, 0] * radial + came[low, 1] * (1 - radial)
        b = came[high, 0] * radial + came[high, 1] * (1 - radial)
        a *= system.to_low[m] ** 2 / state.conductivity[low]
        b *= system.to_high[m] ** 2 / state.conductivity[high]
        most = LIMIT * abs(state.at_c[high] - state.at_c[low])
        off[m] = max(min(share * (b - a), most), -most)
    for m in range(shy.size):
        cell, radial = rim.cell[m], rim.radial[m]
        a = came[cell, 0] * radial + came[cell, 1] * (1 - radial)
        a *= END * rim.depth[m] ** 2 / state.conductivity[cell]
        most = LIMIT * abs(base.wall[m] - state.at_c[cell])
        shy[m] = max(min(a, most), -most)
    return off, shy


@compiled
def _rim(
    system: System,
    state: State,
    under: Floats,
    skin: Floats,
    drying: Floats,
    weather: Weather,
) -> _Rim:
    """Straighten heat and water of the rim about the last temperatures there.

    No more water leaves than there is: then it leaves at that rate, whatever the skin.
    """
    rim, p = system.rim, skin.size
    ways = _Rim(*_five(p))
    for m in range(p):
        k = conductivity_to(system.table, state, rim.cell[m], under[m])
        ways.within[m] = 1 / (rim.depth[m] / (k * rim.area[m]) + rim.half_wall[m])
        outermost, felt = system.film[m], weather.air_c
        settles, slope = 0.0, 0.0
        if weather.convective > 0:
            h, air_c, damp = weather.convective, weather.air_c, weather.relative
            settles = settling(h, air_c, damp, skin[m])
            slope = (settling(h, air_c, damp, skin[m] + TINY_K) - settles) / TINY_K
            if settles < -drying[m]:
                settles, slope = -drying[m], 0.0
            heat = latent(skin[m]) * rim.outer_area[m]
            brought = heat * (settles - slope * skin[m])
            outermost -= heat * slope
            felt = (system.film[m] * air_c + brought) / outermost
        ways.outside[m] = outermost / (1 + rim.half_wall[m] * outermost)
        ways.felt[m] = felt
        ways.settling[m] = settles
        ways.slope[m] = slope
    return ways


@compiled
def _five(p: int) -> tuple[Floats, Floats, Floats, Floats, Floats]:
    return np.empty(p), np.empty(p), np.empty(p), np.empty(p), np.empty(p)
