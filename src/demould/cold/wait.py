"""How long something takes in the cold: solves at the corners of what is unsure."""

from collections.abc import Callable
from dataclasses import dataclass

import numpy as np

from demould.cold.piece import FrozenPiece, Place, follow
from demould.cold.readout import value_at
from demould.cold.solve import Reading, Run
from demould.mise.figure import Estimate
from demould.mise.words import Words

DAY_S = 24 * 3600.0
LONGEST_S = 7 * DAY_S
CURVE_STEPS = 24


@dataclass(frozen=True, slots=True, kw_only=True)
class Wait:
    """How long, and how it goes on the way in the likely case.

    Attributes
    ----------
    hours
        None if it is not reached within a week; `never` then says why.
    remark
        What makes the figure less sure than its spread, if anything.
    curve
        (hours, core °C, mean surface °C), two dozen even steps up to the end.
    heat_kj
        Taken from piece and mould by then; below 0 when it warms.
    residual
        Of the energy balance, as a part of the heat.
    """

    hours: Estimate | None
    never: Words | None = None
    remark: Words | None = None
    curve: tuple[tuple[float, float, float], ...]
    heat_kj: float
    residual: float


def wait(
    piece: FrozenPiece,
    place: Place,
    *,
    cooling: bool,
    reachable: bool,
    done: Callable[[Reading], bool],
    moment: Callable[[Run], float | None],
    never: Words,
    remark: Words | None = None,
) -> Wait:
    """Solve the likely case and both corners, and one more to tell film from start.

    The quick corner is the high film and a start on the near side of the goal, the
    slow one the low film and a start on the far side. A goal that is not `reachable`,
    because the air itself hardly is there, is followed for a day.
    """
    near = -piece.start_unsure_k if cooling else piece.start_unsure_k

    def solved(film_h: float, off_k: float) -> Run:
        return follow(
            piece, place, film_h=film_h, off_k=off_k, until=LONGEST_S, done=done
        )

    if not reachable:
        return _unreached(
            follow(
                piece,
                place,
                film_h=place.film_likely,
                off_k=0.0,
                until=DAY_S,
                done=lambda _: False,
            ),
            never,
        )
    likely = solved(place.film_likely, 0.0)
    corners = (
        moment(solved(place.film_high, near)),
        moment(likely),
        moment(solved(place.film_low, -near)),
    )
    low, middle, high = corners
    if low is None or middle is None or high is None:
        return _unreached(likely, never)
    by_film = moment(solved(place.film_low, 0.0))
    return Wait(
        hours=Estimate(
            low=low / 3600,
            likely=middle / 3600,
            high=high / 3600,
            unit="h",
            reason=_reason(piece, place, middle, by_film or high, high),
        ),
        remark=remark,
        curve=_curve(likely, middle),
        heat_kj=float(np.interp(middle, likely.seconds, likely.heat)) / 1000,
        residual=likely.residual,
    )


def _unreached(likely: Run, never: Words) -> Wait:
    return Wait(
        hours=None,
        never=never,
        curve=_curve(likely, float(likely.seconds[-1])),
        heat_kj=float(likely.heat[-1]) / 1000,
        residual=likely.residual,
    )


def _reason(
    piece: FrozenPiece, place: Place, likely: float, by_film: float, high: float
) -> Words:
    if by_film - likely >= high - by_film:
        return Words(
            "how much air moves over the pieces"
            " (between {low:g} and {high:g} W/m2K in this place)",
            low=place.film_low,
            high=place.film_high,
        )
    return Words(
        "how warm the pieces go in ({off:g} °C either way)", off=piece.start_unsure_k
    )


def _curve(likely: Run, end: float) -> tuple[tuple[float, float, float], ...]:
    if likely.seconds.size < 2:
        return ((0.0, float(likely.core[0]), float(likely.surface[0])),)
    return tuple(
        (
            moment / 3600,
            value_at(likely.seconds, likely.core, moment),
            value_at(likely.seconds, likely.surface, moment),
        )
        for moment in (end * n / CURVE_STEPS for n in range(CURVE_STEPS + 1))
    )
