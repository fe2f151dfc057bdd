"""How soft what is served frozen is: how much of its water is ice, and when to take it out.

Only free water counts, what proteins and fibre hold apart. The windows are the trade's,
for what is served at -14 to -10 °C: common practice, no source.
"""

import re
from dataclasses import dataclass, replace
from typing import Literal

import numpy as np

from demould.cold.follow import Corner, follow
from demould.cold.piece import FrozenPiece, Part, Place
from demould.cold.run.readout import passing
from demould.matter.water import Wet, freezing_point_c, ice_share, wet_of
from demould.mise.component import Component
from demould.mise.figure import Estimate
from demould.mise.words import Words

Feel = Literal["runs", "soft", "to scoop or slice", "firm", "too hard"]
WINDOWS: tuple[tuple[float, Feel], ...] = (
    (0.30, "runs"),
    (0.55, "soft"),
    (0.65, "to scoop or slice"),
    (0.75, "firm"),
)
"""Up to which share of ice it feels how; above the last it is too hard."""
SERVED = (0.55, 0.65)
_PIECES = re.compile(
    r"\b(candied|caramel|caramelised|dice|diced|chopped|crushed|roasted|toasted)\b",
    re.IGNORECASE,
)
COLDEST_C = -40.0
LONGEST_S = 6 * 3600.0


@dataclass(frozen=True, slots=True, kw_only=True)
class Softness:
    """One component frozen: at each temperature its ice, as a share of its free water.

    `starts_c` is its first ice, None if nothing freezes. `serve_c` are the coldest and
    the warmest °C between which it can be scooped or sliced, None if there are none.
    """

    component: str
    starts_c: float | None
    shares: tuple[tuple[float, float], ...]
    serve_c: tuple[float, float] | None


def softness(part: Part, at: tuple[float, ...]) -> Softness:
    """Tell one component's ice at these temperatures [°C]."""
    wet = wet_of(part.made_of, part.air)
    starts = freezing_point_c(wet)
    found = frozen_share(wet, np.array(at)) if starts is not None else [0.0] * len(at)
    return Softness(
        component=part.name,
        starts_c=starts,
        shares=tuple(
            (each, float(share)) for each, share in zip(at, found, strict=True)
        ),
        serve_c=None if starts is None else _served_between(wet),
    )


def without_pieces(component: Component) -> Component:
    """Leave out what is folded in as pieces: its sugar stays in it and softens nothing.

    Told by the words of its line; where all lines have such words, none is left out.
    """
    smooth = tuple(
        line
        for line in component.formula
        if not _PIECES.search(" ".join((line.what, line.state, *line.remarks)))
    )
    return replace(component, formula=smooth or component.formula)


def frozen_share(wet: Wet, at_c: np.ndarray) -> np.ndarray:
    """Ice over free water [-]; shape of `at_c`."""
    if wet.free_water <= 0:
        return np.zeros(np.shape(at_c))
    return np.asarray(ice_share(wet, at_c) / wet.free_water)


def feel(share: float) -> Feel:
    """How a share of ice feels under a spoon or a knife.

    >>> feel(0.6), feel(0.8)
    ('to scoop or slice', 'too hard')
    """
    for most, how in WINDOWS:
        if share <= most:
            return how
    return "too hard"


def minutes_to_serve(piece: FrozenPiece, place: Place) -> Estimate | None:
    """Minutes out of the freezer until its body's middle is no longer too firm.

    Until the core is as warm as the colder end of what its body is served at, in this
    place, at its three films; None if it has no such window or never gets there.
    """
    served = _served_between(wet_of(piece.body.made_of, piece.body.air))
    if served is None:
        return None
    found: list[float] = []
    for film in (place.film_high, place.film_likely, place.film_low):
        run = follow(
            piece,
            place,
            Corner(film=film),
            until=LONGEST_S,
            done=lambda reading: reading.core >= served[0],
        ).run
        at = (
            0.0
            if run.core[0] >= served[0]
            else passing(run.seconds, run.core, served[0])
        )
        if at is None:
            return None
        found.append(at / 60)
    return Estimate(
        low=found[0],
        likely=found[1],
        high=found[2],
        unit="min",
        reason=Words(
            "how much air moves there (between {low:g} and {high:g} W/m2K)",
            low=place.film_low,
            high=place.film_high,
        ),
    )


def _served_between(wet: Wet) -> tuple[float, float] | None:
    at = np.linspace(COLDEST_C, 0, 1601)
    share = frozen_share(wet, at)
    least, most = SERVED
    if share[0] < least:
        return None
    coldest = at[share <= most][0] if share[0] > most else COLDEST_C
    warmest = at[share >= least][-1]
    return (float(coldest), float(warmest)) if coldest < warmest else None
