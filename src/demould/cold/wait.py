"""How long something takes in the cold: solves at the corners of what is unsure."""

from collections.abc import Callable
from dataclasses import dataclass, replace

import numpy as np

from demould.cold.follow import Corner, Followed, follow
from demould.cold.piece import FrozenPiece, Place
from demould.cold.run.readout import value_at
from demould.cold.run.solve import Reading, Run
from demould.mise.figure import Estimate
from demould.mise.words import Words

DAY_S = 24 * 3600.0
LONGEST_S = 7 * DAY_S
CURVE_STEPS = 24
CAPACITY = (0.5, 1.5)
"""A machine may do half as much or half as much again as assumed."""
HEAVIER = (0.9, 1.1)
"""Whipped parts may weigh a tenth less or more: by density, and fat that sets in the
cold (6 to 15 % more heat from a mousse) is not counted elsewhere."""


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
        (hours, core °C, mean surface °C, share of the ice there is at the coldest
        reading), two dozen even steps up to the end.
    heat_kj
        Taken from piece and mould by then; below 0 when it warms.
    residual
        Of the energy balance, as a part of the heat.
    warmest_air_c
        What the load brings the air to, if it is under a load.
    """

    hours: Estimate | None
    never: Words | None = None
    remark: Words | None = None
    curve: tuple[tuple[float, float, float, float], ...]
    heat_kj: float
    residual: float
    warmest_air_c: float | None = None


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
    """Solve the likely case, both corners, and the slow end of each cause by itself.

    The quick corner has the high film, a start and air on the near side of the goal,
    light pieces and a strong machine, the slow one all the opposite. A goal that is
    not `reachable`, because the air itself hardly is there, is followed for a day.
    """

    def solved(corner: Corner, like: Followed | None = None) -> Followed:
        return follow(piece, place, corner, until=LONGEST_S, done=done, like=like)

    middle = Corner(film=place.film_likely)
    if not reachable:
        day = follow(piece, place, middle, until=DAY_S, done=lambda _: False)
        return _unreached(day, never)
    followed = solved(middle)
    likely = followed.run
    quick, slow = corners(piece, place, cooling=cooling)
    found = tuple(moment(solved(end, followed).run) for end in (quick, slow))
    (low, high), at = found, moment(likely)
    if low is None or at is None or high is None:
        return _unreached(followed, never)
    return Wait(
        hours=Estimate(
            low=low / 3600,
            likely=at / 3600,
            high=high / 3600,
            unit="h",
            reason=_reason(
                piece,
                place,
                {
                    name: moment(solved(corner, followed).run) or LONGEST_S
                    for name, corner in _one_by_one(middle, slow).items()
                },
            ),
        ),
        remark=remark,
        curve=_curve(likely, at),
        heat_kj=float(np.interp(at, likely.seconds, likely.heat)) / 1000,
        residual=likely.residual,
        warmest_air_c=_warmest_air(followed),
    )


def corners(
    piece: FrozenPiece, place: Place, *, cooling: bool
) -> tuple[Corner, Corner]:
    """Everything unsure at its quick end, and at its slow end."""
    to_warm = 1.0 if cooling else -1.0
    ends = (
        (place.film_high, -1.0, HEAVIER[0], CAPACITY[1]),
        (place.film_low, 1.0, HEAVIER[1], CAPACITY[0]),
    )
    quick, slow = (
        Corner(
            film=film,
            start_off_k=side * to_warm * piece.start_unsure_k,
            air_off_k=side * to_warm * place.air_unsure_k,
            heavier=heavier,
            capacity=capacity,
        )
        for film, side, heavier, capacity in ends
    )
    return quick, slow


def _one_by_one(middle: Corner, slow: Corner) -> dict[str, Corner]:
    """From each cause to the likely corner with only that one slow."""
    ways = {
        "film": replace(middle, film=slow.film),
        "start": replace(middle, start_off_k=slow.start_off_k),
        "air": replace(middle, air_off_k=slow.air_off_k),
        "heavier": replace(middle, heavier=slow.heavier),
        "capacity": replace(middle, capacity=slow.capacity),
    }
    return {name: corner for name, corner in ways.items() if corner != middle}


def _unreached(followed: Followed, never: Words) -> Wait:
    likely = followed.run
    return Wait(
        hours=None,
        never=never,
        curve=_curve(likely, float(likely.seconds[-1])),
        heat_kj=float(likely.heat[-1]) / 1000,
        residual=likely.residual,
        warmest_air_c=_warmest_air(followed),
    )


def _warmest_air(followed: Followed) -> float | None:
    if followed.warmed is None:
        return None
    return float(followed.warmed.air_c.max())


def _reason(piece: FrozenPiece, place: Place, found: dict[str, float]) -> Words:
    match max(found, key=lambda name: found[name], default="start"):
        case "film":
            return Words(
                "how much air moves over the pieces"
                " (between {low:g} and {high:g} W/m2K in this place)",
                low=place.film_low,
                high=place.film_high,
            )
        case "air":
            return Words(
                "how warm the air is at the pieces ({off:g} °C either way)",
                off=place.air_unsure_k,
            )
        case "heavier":
            return Words("how light it was whipped (a tenth heavier or lighter)")
        case "capacity":
            return Words("how much cold the machine makes (half as much either way)")
        case _:
            return Words(
                "how warm the pieces go in ({off:g} °C either way)",
                off=piece.start_unsure_k,
            )


def _curve(likely: Run, end: float) -> tuple[tuple[float, float, float, float], ...]:
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
