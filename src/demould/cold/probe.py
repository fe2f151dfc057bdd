r"""What a probe's log tells of a place: the film its air has over pieces as they lie.

SI, °C. The solver is run until its core follows the readings:

.. math:: \min_{\theta}\; \sum_i \left(\frac{T(t_i;\theta) - T_i}{\sigma}\right)^2
          + \left(\frac{s}{s_0}\right)^2,\qquad \theta = (\ln h,\ s)

with :math:`h` the film over a lone piece and :math:`s` how far along to the skin the tip
sits, held near 0 by what a tip may be off. The air is as logged, or as given: film and air
cannot both be told from one probe (they go together to 0.99).
"""

import math
from dataclasses import dataclass, replace

import numpy as np
from numpy.typing import NDArray

from demould.cold.around.air import Air
from demould.cold.body.cut import Floats
from demould.cold.corners import likely_corner
from demould.cold.follow import follow
from demould.cold.piece import FrozenPiece, Place
from demould.cold.probe_place import probe_place

SIGMA_K = 0.3
"""How well a probe reads."""
SKIP_S = 300.0
"""The first minutes are of the probe itself and the door."""
NEAR_AIR_K = 2.0
"""Within so much of the air a reading tells nothing of the film any more."""
LEAST = 5
ALIKE = 10.0
"""Readings this many in a row count as one: they err together."""
AIR_ENTRY_K = 0.2
SPREAD = (math.log(0.5), math.log(200.0))


@dataclass(frozen=True, slots=True, kw_only=True)
class Readings:
    """What was read: seconds from going in, °C in the piece, and the air.

    `air_c` is its log (s, °C) or one temperature; `air_unsure_k` how far it may be off:
    0 where it was logged at the pieces.
    """

    seconds: tuple[float, ...]
    at_c: tuple[float, ...]
    air_c: Air
    air_unsure_k: float = 0.0


@dataclass(frozen=True, slots=True, kw_only=True)
class Fit:
    """The film a log tells.

    Attributes
    ----------
    film
        Over a lone piece, radiation included. [W/(m2 K)]
    unsure
        One standard deviation, as a share of it: readings, place of the tip and air.
    by_air
        What one degree more in the air would make of the film, as a share; 0 if the
        air was logged.
    beside
        How far along to the skin the tip sits. [0 to 1]
    off_k
        Root mean square of what is left between readings and the run. [K]
    used
        How many readings told something.
    rows
        (s, read °C, reckoned °C) of every reading.
    """

    film: float
    unsure: float
    by_air: float
    beside: float
    off_k: float
    used: int
    rows: tuple[tuple[float, float, float], ...]


def fit_film(piece: FrozenPiece, place: Place, readings: Readings) -> Fit:
    """Find the film by least squares.

    The piece's core starts at the first reading.

    Raises
    ------
    ValueError
        If fewer than five readings are further than 2 K from the air, or no film from
        half to 200 W/(m2 K) follows them to within 3 K.
    """
    prior = probe_place(piece).share
    at = np.array(readings.seconds)
    read = np.array(readings.at_c)
    told = _telling(readings, at, read)
    if int(told.sum()) < LEAST:
        raise ValueError(
            f"only {int(told.sum())} readings are over {NEAR_AIR_K:g} °C away from the"
            " air and past the first 5 min: log from the door on, into the deep part"
        )

    def reckoned(theta: Floats, off_k: float = 0.0) -> Floats:
        return _reckoned(piece, place, readings, at, theta, off_k)

    def found(off_k: float = 0.0) -> tuple[Floats, Floats]:
        def misses(theta: Floats) -> Floats:
            apart = (reckoned(theta, off_k)[told] - read[told]) / SIGMA_K
            return np.append(apart, theta[1] / prior)

        start = np.array([math.log(place.film_likely), 0.1 * prior])
        low, high = SPREAD
        from scipy.optimize import least_squares  # half a second, for a fit alone

        solved = least_squares(
            misses,
            start,
            bounds=(np.array([low, 0.0]), np.array([high, 1.0])),
            diff_step=0.01,
            x_scale=np.array([0.3, prior]),
            xtol=1e-4,
            ftol=1e-5,
        )
        return solved.x, solved.jac

    theta, jac = found()
    every = reckoned(theta)
    off = every[told] - read[told]
    off_k = float(np.sqrt(np.mean(off**2)))
    if off_k > 10 * SIGMA_K:
        raise ValueError(
            f"no film follows these readings (they stay {off_k:.1f} °C apart): is it"
            " this dessert, this place, and the tip in the centre?"
        )
    scale = max(1.0, (off_k / SIGMA_K) ** 2) * ALIKE
    weight = jac.T @ jac / scale
    weight[1, 1] += (1 / prior) ** 2 * (1 - 1 / scale)
    by_readings = float(np.sqrt(np.linalg.inv(weight)[0, 0]))
    by_air = 0.0
    if readings.air_unsure_k > 0:
        by_air = float(np.exp(found(1.0)[0][0] - theta[0])) - 1
    unsure = math.hypot(by_readings, by_air * readings.air_unsure_k)
    return Fit(
        film=float(np.exp(theta[0])),
        unsure=unsure,
        by_air=by_air,
        beside=float(theta[1]),
        off_k=off_k,
        used=int(told.sum()),
        rows=tuple(zip(at.tolist(), read.tolist(), every.tolist(), strict=True)),
    )


def air_log(seconds: tuple[float, ...], air_c: tuple[float, ...]) -> Air:
    """Give a logged air as (s, °C) pairs, each held until it moves by 0.2 K."""
    entries = [(0.0, air_c[0])]
    for at, at_c in zip(seconds[1:], air_c[1:], strict=True):
        if abs(at_c - entries[-1][1]) >= AIR_ENTRY_K:
            entries.append((at, at_c))
    return tuple(entries)


def _from_first(piece: FrozenPiece, first_c: float, beside: float) -> FrozenPiece:
    """Start the core so that a tip so far beside it reads what it read first."""
    if not piece.inside:
        return replace(piece, body=replace(piece.body, start_c=first_c))
    share = min(beside, 0.9)
    core_c = (first_c - share * piece.body.start_c) / (1 - share)
    heart = replace(piece.inside[0], start_c=core_c)
    return replace(piece, inside=(heart, *piece.inside[1:]))


def _telling(readings: Readings, at: Floats, read: Floats) -> NDArray[np.bool_]:
    """Which readings are past the first minutes and not yet as the air is."""
    air = readings.air_c
    if isinstance(air, int | float):
        around = np.full(at.shape, float(air))
    else:
        times = np.array([since for since, _ in air])
        temperatures = np.array([at_c for _, at_c in air])
        around = temperatures[np.searchsorted(times, at, side="right") - 1]
    return np.asarray((at >= SKIP_S) & (np.abs(read - around) > NEAR_AIR_K))


def _reckoned(
    piece: FrozenPiece,
    place: Place,
    readings: Readings,
    at: Floats,
    theta: Floats,
    off_k: float,
) -> Floats:
    """What the probe would read at these moments [°C]."""
    started = _from_first(piece, readings.at_c[0], float(theta[1]))
    steady = replace(place, air_c=readings.air_c, load=None)
    corner = replace(
        likely_corner(steady), film=float(np.exp(theta[0])), air_off_k=off_k
    )
    run = follow(started, steady, corner, until=float(at[-1]), done=lambda _: False).run
    core = np.interp(at, run.seconds, run.core)
    skin = np.interp(at, run.seconds, run.surface)
    return np.asarray(core + theta[1] * (skin - core))
