"""How long something takes in the cold: solves at the corners of what is unsure."""

import math
from collections.abc import Callable, Mapping
from dataclasses import dataclass, replace

import numpy as np

from demould.cold.corners import (
    corners,
    in_words,
    likely_corner,
    one_by_one,
    slow_in_words,
)
from demould.cold.follow import Corner, Followed, follow
from demould.cold.piece import FrozenPiece, Place
from demould.cold.run.reading import Reading
from demould.cold.run.readout import value_at
from demould.cold.run.solve import Run
from demould.mise.figure import Estimate
from demould.mise.words import Words

DAY_S = 24 * 3600.0
LONGEST_S = 7 * DAY_S
CURVE_STEPS = 24

Curve = tuple[tuple[float, float, float, float], ...]
End = tuple[float | None, float]
"""When a corner gets there [s], and the most water on it by then [kg]."""


@dataclass(frozen=True, slots=True, kw_only=True)
class AtBest:
    """Hours where all goes well, and likely, of a goal that may not be reached at all.

    `unless` names what would keep it from ever being reached.
    """

    low: float
    likely: float | None
    unless: Words


@dataclass(frozen=True, slots=True, kw_only=True)
class Wet:
    """Water that settled on a piece.

    `grams` is the most that lies there at once, `film_um` how deep it lies then, likely;
    `left_g` is what has not dried off again by the end, likely.
    """

    grams: Estimate
    film_um: float
    left_g: float


@dataclass(frozen=True, slots=True, kw_only=True)
class Wait:
    """How long, and how it goes on the way in the likely case.

    Attributes
    ----------
    hours
        None if it is not reached within a week in some corner.
    at_best
        Then the hours of the corners that do get there; None if none does.
    never
        Why not, where no corner gets there.
    remark
        What makes the figure less sure than its spread, if anything.
    curve
        (hours, core °C, mean surface °C, share of the ice there is at the coldest
        reading), two dozen even steps up to the end.
    heat_kj
        Taken from piece and mould by then; below 0 when it warms.
    residual
        Of the energy balance, as a part of the heat.
    warmest_air_c
        What the load brings the air to, if it is under a load.
    core_c
        What a probe in the middle of the core reads by then.
    wet
        Water that settled on it, where the place's air is known to hold some.
    alone
        Each cause with the hours it makes by itself at its slow end, the slowest first;
        None where it never gets there. Empty where the causes were solved roughly.
    """

    hours: Estimate | None
    at_best: AtBest | None = None
    never: Words | None = None
    remark: Words | None = None
    curve: Curve
    heat_kj: float
    residual: float
    warmest_air_c: float | None = None
    core_c: float
    wet: Wet | None = None
    alone: tuple[tuple[Words, float | None], ...] = ()


@dataclass(frozen=True, slots=True, kw_only=True)
class Goal:
    """What is waited for.

    Attributes
    ----------
    cooling
        Or warming.
    reachable
        Whether air so much off what is said [K] gets a piece there at all.
    done
        Whether a reading is past it, so that a solve may end.
    moment
        When a run came to it [s], or None.
    never
        What to say where it does not.
    """

    cooling: bool
    reachable: Callable[[float], bool]
    done: Callable[[Reading], bool]
    moment: Callable[[Run], float | None]
    never: Words


def wait(
    piece: FrozenPiece,
    place: Place,
    goal: Goal,
    remark: Words | None = None,
    *,
    in_full: bool = True,
) -> Wait:
    """Solve the likely case, both corners, and the slow end of each cause by itself.

    The quick corner has the high film, a start and air on the near side of the goal,
    light pieces and a strong machine, the slow one all the opposite; which way water
    in the pieces pulls is found out. A goal that the air itself hardly is beyond is
    followed for a day.

    `in_full` solves the causes by themselves as finely as the rest, to be told; else
    they are solved roughly, only to find the first reason.
    """
    middle = likely_corner(place)
    if not goal.reachable(0.0):
        day = follow(piece, place, middle, until=DAY_S, done=lambda _: False)
        return _unreached(day, goal.never)
    likely = follow(piece, place, middle, until=LONGEST_S, done=goal.done)
    at = goal.moment(likely.run)

    def end_of(corner: Corner, *, rough: bool = False) -> End:
        return _end_of(piece, place, goal, corner, likely, rough=rough)

    quick, slow = corners(piece, place, cooling=goal.cooling)
    beside = at if in_full else end_of(middle, rough=True)[0]
    wet_end = end_of(replace(middle, wetter=quick.wetter), rough=not in_full)[0]
    if (wet_end or math.inf) > (beside or math.inf):
        quick, slow = (
            replace(quick, wetter=slow.wetter),
            replace(slow, wetter=quick.wetter),
        )
    alone = one_by_one(middle, slow)
    sides = {"quick": quick, "slow": slow}
    if "damp" in alone:
        sides["wettest"] = one_by_one(middle, quick)["damp"]
    found = {name: end_of(corner) for name, corner in sides.items()}
    soon, late = found["quick"][0], found["slow"][0]
    if soon is None:
        return _unreached(likely, goal.never)
    causes = {
        cause: end_of(corner, rough=not in_full) for cause, corner in alone.items()
    }
    by_cause = {cause: moment for cause, (moment, _) in causes.items()}
    if in_full:
        found |= causes
    made_of = tuple(
        (in_words(cause, piece, place), moment and moment / 3600)
        for cause, moment in sorted(
            by_cause.items(), key=lambda one: -(one[1] or LONGEST_S)
        )
        if in_full
    )
    if at is None or late is None:
        unless = _unless(piece, place, alone, by_cause)
        best = AtBest(low=soon / 3600, likely=at and at / 3600, unless=unless)
        return _told(likely, at, at_best=best, remark=remark, alone=made_of)
    slowest = max(by_cause, key=lambda cause: by_cause[cause] or LONGEST_S)
    every = [at, *(moment for moment, _ in found.values() if moment is not None)]
    hours = Estimate(
        low=min(every) / 3600,
        likely=at / 3600,
        high=max(every) / 3600,
        unit="h",
        reason=in_words(slowest, piece, place),
    )
    waters = {name: water for name, (_, water) in found.items()}
    wet = _wet(piece, place, likely, at, waters) if place.humid else None
    return _told(likely, at, hours=hours, wet=wet, remark=remark, alone=made_of)


def _end_of(
    piece: FrozenPiece,
    place: Place,
    goal: Goal,
    corner: Corner,
    like: Followed,
    *,
    rough: bool,
) -> End:
    """When a corner gets there [s], and the water on it by then [kg]."""
    if not goal.reachable(corner.air_off_k):
        return None, 0.0
    done = follow(
        piece,
        place,
        corner,
        until=LONGEST_S,
        done=goal.done,
        like=like,
        rough=rough,
    )
    at = goal.moment(done.run)
    return at, _water(done.run, at)


def _water(run: Run, at: float | None) -> float:
    """The most water that lay on it until a moment [kg]."""
    until = run.seconds <= (math.inf if at is None else at)
    return max(0.0, float(run.water[until].max()))


def _wet(
    piece: FrozenPiece,
    place: Place,
    followed: Followed,
    at: float,
    waters: Mapping[str, float],
) -> Wet:
    likely = _water(followed.run, at)
    alone = {cause: w for cause, w in waters.items() if cause not in ("quick", "slow")}
    first = max(alone, key=lambda cause: abs(alone[cause] - likely), default="film")
    all_of = [likely, *waters.values()]
    return Wet(
        grams=Estimate(
            low=min(all_of) * 1000,
            likely=likely * 1000,
            high=max(all_of) * 1000,
            unit="g",
            reason=in_words("damp" if first == "wettest" else first, piece, place),
        ),
        film_um=likely * 1000 / followed.open_m2,
        left_g=max(0.0, float(np.interp(at, followed.run.seconds, followed.run.water)))
        * 1000,
    )


def _unless(
    piece: FrozenPiece,
    place: Place,
    alone: Mapping[str, Corner],
    found: Mapping[str, float | None],
) -> Words:
    for cause, at in found.items():
        if at is None:
            return slow_in_words(cause, piece, place, alone[cause])
    return Words("all that is unsure falls the slow way at once")


def _unreached(followed: Followed, never: Words) -> Wait:
    return _told(followed, None, never=never)


def _told(
    followed: Followed,
    at: float | None,
    *,
    hours: Estimate | None = None,
    at_best: AtBest | None = None,
    never: Words | None = None,
    remark: Words | None = None,
    wet: Wet | None = None,
    alone: tuple[tuple[Words, float | None], ...] = (),
) -> Wait:
    run = followed.run
    end = float(run.seconds[-1]) if at is None else at
    return Wait(
        hours=hours,
        at_best=at_best,
        never=never,
        remark=remark,
        wet=wet,
        alone=alone,
        curve=_curve(run, end),
        heat_kj=float(np.interp(end, run.seconds, run.heat)) / 1000,
        residual=run.residual,
        warmest_air_c=_warmest_air(followed),
        core_c=float(np.interp(end, run.seconds, run.core)),
    )


def _warmest_air(followed: Followed) -> float | None:
    if followed.warmed is None:
        return None
    return float(followed.warmed.air_c.max())


def _curve(likely: Run, end: float) -> Curve:
    most = max(float(likely.ice.max()), 1e-12)
    if likely.seconds.size < 2:
        core, skin, ice = likely.core[0], likely.surface[0], likely.ice[0]
        return ((0.0, float(core), float(skin), float(ice) / most),)
    return tuple(
        (
            moment / 3600,
            value_at(likely.seconds, likely.core, moment),
            value_at(likely.seconds, likely.surface, moment),
            value_at(likely.seconds, likely.ice, moment) / most,
        )
        for moment in (end * n / CURVE_STEPS for n in range(CURVE_STEPS + 1))
    )
