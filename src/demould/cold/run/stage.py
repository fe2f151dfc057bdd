r"""One step of heat: two implicit stages over all cells of a system.

SI, °C. The unknown is each cell's heat content, so heat in equals heat out to rounding
whatever the step; :math:`T(H)` comes from the tables. Time goes by the two-stage
diagonally implicit scheme of Alexander (SIAM J. Numer. Anal. 14, 1977, 1006-1021),
second order and damping; each stage is solved by linearising :math:`H(T)` about the
last guess, taking the flows of the linear answer as true (quasi-enthalpy: Pham, Int. J.
Heat Mass Transfer 28, 1985, 2079-2084, from memory), until both temperatures agree.
A mould's wall is one node a rim piece, eliminated. Water that settles on the outermost
surface is linearised about its last temperature alike.
"""

from typing import NamedTuple

import numpy as np

from demould.cold.around.moist import latent, settling
from demould.cold.body.cut import Floats
from demould.cold.compiled import compiled
from demould.cold.run.band import solve_band
from demould.cold.run.lookup import state_at
from demould.cold.run.system import System

STAGE = 1 - 0.5**0.5
AGREED_K = 0.02
ROUGHLY_AGREED_K = 1.0
TRIES = 6
TINY_K = 1e-3


class Weather(NamedTuple):
    """The air [°C], its relative humidity [-], and the film's convective part [W/(m2 K)].

    Dry air of which nothing is known has a `convective` part of 0.
    """

    air_c: float
    relative: float
    convective: float


class Now(NamedTuple):
    """What a piece holds at a moment.

    Of cells: heat content [J/kg] and how fast it last changed [W/kg]; of rim pieces:
    temperature of the wall's middle (of a bare surface) [°C], water on it [kg/m2] and
    the temperature of the outermost surface [°C].
    """

    content: Floats
    rate: Floats
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


class _Film(NamedTuple):
    """The way from the wall's middle to the air, straight about a skin's temperature.

    Conductance [W/K], the air as it is felt there [°C], water settling and its slope
    [kg/(m2 s)] [kg/(m2 s K)].
    """

    outside: Floats
    felt: Floats
    settling: Floats
    slope: Floats


@compiled
def step_of(
    system: System, now: Now, weather: Weather, step: float
) -> tuple[Stage, Stage]:
    """Take one step [s]; its end is that of the second stage."""
    part = STAGE * step
    guess = now.content + part * now.rate
    one = _solved(system, now, guess, now.water / step, weather, part)
    middle = Now(
        now.content + (1 - STAGE) * step * one.now.rate,
        one.now.rate,
        now.wall + (1 - STAGE) * step * one.wall_rate,
        now.water + (1 - STAGE) * step * one.water_rate,
        one.now.skin,
    )
    guess = middle.content + part * middle.rate
    return one, _solved(system, middle, guess, now.water / step, weather, part)


@compiled
def _solved(
    system: System,
    base: Now,
    guess: Floats,
    drying: Floats,
    weather: Weather,
    dt: float,
) -> Stage:
    """Find content = base + dt * rate(content). `drying`: what may leave [kg/(m2 s)]."""
    n, rim = base.content.size, system.rim
    skin = base.skin
    tries, apart, fault = 0, np.inf, 0
    state = state_at(system.table, guess)
    rate, wall, water_rate = base.rate, base.wall, drying
    leaving = 0.0
    while True:
        film = _film(system, skin, drying, weather)
        link = system.area / (
            system.to_low / state.conductivity[system.low]
            + system.to_high / state.conductivity[system.high]
        )
        within = 1 / (
            rim.depth / (state.conductivity[rim.cell] * rim.area) + rim.half_wall
        )
        kept = rim.wall_capacity / dt
        whole = kept + within + film.outside
        given = (kept * base.wall + film.outside * film.felt) / whole
        through = within * (kept + film.outside) / whole
        at_c = system.mass / dt * (base.content - guess)
        band = np.zeros((n, system.width))
        for j in range(n):
            band[j, 0] = system.mass[j] * state.capacity[j] / dt
            at_c[j] += band[j, 0] * state.at_c[j]
        for m in range(link.size):
            low, high = system.low[m], system.high[m]
            band[low, 0] += link[m]
            band[high, 0] += link[m]
            band[low, high - low] -= link[m]
        for m in range(rim.cell.size):
            band[rim.cell[m], 0] += through[m]
            at_c[rim.cell[m]] += within[m] * given[m]
        fault = solve_band(band, at_c)
        tries += 1
        wall = given + within * at_c[rim.cell] / whole
        rate = _entering(system, link, within, at_c, wall)
        new_skin = wall - rim.half_wall * film.outside * (wall - film.felt)
        water_rate = film.settling + film.slope * (new_skin - skin)
        leaving = (film.outside * (wall - film.felt)).sum()
        guess = base.content + dt * rate
        state = state_at(system.table, guess)
        apart = np.abs(state.at_c - at_c).max()
        if weather.convective > 0:
            apart = max(apart, np.abs(new_skin - skin).max() / 10)
        skin = new_skin
        if fault > 0 or apart < AGREED_K or tries == TRIES:
            break
    end = Now(guess, rate, wall, base.water + dt * water_rate, skin)
    wall_rate = (wall - base.wall) / dt
    return Stage(end, wall_rate, water_rate, leaving, apart, tries, fault)


@compiled
def _entering(
    system: System, link: Floats, within: Floats, at_c: Floats, wall: Floats
) -> Floats:
    """How fast the content of each cell changes [W/kg]."""
    entering = np.zeros(at_c.size)
    for m in range(link.size):
        flow = link[m] * (at_c[system.high[m]] - at_c[system.low[m]])
        entering[system.low[m]] += flow
        entering[system.high[m]] -= flow
    for m in range(wall.size):
        cell = system.rim.cell[m]
        entering[cell] += within[m] * (wall[m] - at_c[cell])
    return entering / system.mass


@compiled
def _film(system: System, skin: Floats, drying: Floats, weather: Weather) -> _Film:
    """Straighten heat and water of the film about the skin's temperature.

    No more water leaves than there is: then it leaves at that rate, whatever the skin.
    """
    rim = system.rim
    outermost = system.film.copy()
    felt = np.full(skin.size, weather.air_c)
    settles, slope = np.zeros(skin.size), np.zeros(skin.size)
    if weather.convective > 0:
        for m in range(skin.size):
            h, air_c, damp = weather.convective, weather.air_c, weather.relative
            now = settling(h, air_c, damp, skin[m])
            beside = settling(h, air_c, damp, skin[m] + TINY_K)
            settles[m], slope[m] = now, (beside - now) / TINY_K
            if now < -drying[m]:
                settles[m], slope[m] = -drying[m], 0.0
            heat = latent(skin[m]) * rim.outer_area[m]
            dry = outermost[m]
            outermost[m] = dry - heat * slope[m]
            brought = heat * (settles[m] - slope[m] * skin[m])
            felt[m] = (dry * air_c + brought) / outermost[m]
    outside = outermost / (1 + rim.half_wall * outermost)
    return _Film(outside, felt, settles, slope)
