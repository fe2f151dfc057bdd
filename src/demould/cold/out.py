"""How long a frozen piece may stand out of the cold while somebody works on it.

Its skin is warm within minutes and cools again in the freezer; what counts for the lot
is the temperature the piece evens out to.
"""

from dataclasses import dataclass

import numpy as np

from demould.cold.follow import Corner, follow
from demould.cold.piece import FrozenPiece, Place
from demould.cold.whole import even_c, start_heat_j
from demould.mise.figure import Estimate
from demould.mise.words import Words

FIRST_MIN = 5.0
"""The rate is that of the first so many minutes."""
LONGEST_MIN = 120.0


@dataclass(frozen=True, slots=True, kw_only=True)
class Out:
    """A piece standing in a room.

    Attributes
    ----------
    per_minute
        How fast the piece as a whole warms over the first five minutes. [°C/min]
    until
        Minutes until all of it, evened out, is at the limit; `LONGEST_MIN` at most.
    way
        (minutes, skin °C, evened °C) in the likely case, every minute of the first ten.
    """

    per_minute: Estimate
    until: Estimate
    limit_c: float
    way: tuple[tuple[float, float, float], ...]

    def lot(self, minutes_a_piece: float) -> int:
        """How many can be worked on before the first is at the limit; at least one."""
        return max(1, int(self.until.low / minutes_a_piece + 1e-9))


def out_of_the_cold(piece: FrozenPiece, place: Place, limit_c: float) -> Out:
    """Follow it at the three films of the place, until the limit.

    Raises
    ------
    ValueError
        If the piece starts at the limit or warmer, or the air is not warmer than it.
    """
    start = even_c(piece, start_heat_j(piece))
    if start >= limit_c:
        raise ValueError(
            f"the piece starts at {start:.1f} °C; a limit of {limit_c:g} °C is passed"
            " already"
        )
    films = (place.film_high, place.film_likely, place.film_low)
    ways = [_way(piece, place, film) for film in films]
    rates = [_at(way, FIRST_MIN) - start for way in ways]
    until = [_passes(way, limit_c) for way in ways]
    reason = Words(
        "how much air moves in the room (between {low:g} and {high:g} W/m2K)",
        low=place.film_low,
        high=place.film_high,
    )
    return Out(
        per_minute=Estimate(
            low=rates[2] / FIRST_MIN,
            likely=rates[1] / FIRST_MIN,
            high=rates[0] / FIRST_MIN,
            unit="°C/min",
            reason=reason,
        ),
        until=Estimate(
            low=until[0], likely=until[1], high=until[2], unit="min", reason=reason
        ),
        limit_c=limit_c,
        way=tuple(row for row in ways[1] if row[0] <= 2 * FIRST_MIN),
    )


def _way(
    piece: FrozenPiece, place: Place, film: float
) -> list[tuple[float, float, float]]:
    """(minutes, skin °C, evened °C), every minute."""
    corner = Corner(
        film=film,
        relative=place.humid.relative[1] if place.humid else 0.0,
        reach=place.humid.reach[1] if place.humid else 0.0,
    )
    run = follow(piece, place, corner, until=LONGEST_MIN * 60, done=lambda _: False).run
    held = start_heat_j(piece)
    return [
        (
            minute,
            float(np.interp(minute * 60, run.seconds, run.surface)),
            even_c(piece, held - float(np.interp(minute * 60, run.seconds, run.heat))),
        )
        for minute in np.arange(0, LONGEST_MIN + 1).tolist()
    ]


def _at(way: list[tuple[float, float, float]], minute: float) -> float:
    return float(np.interp(minute, [row[0] for row in way], [row[2] for row in way]))


def _passes(way: list[tuple[float, float, float]], limit_c: float) -> float:
    evened = [row[2] for row in way]
    if evened[-1] < limit_c:
        return LONGEST_MIN
    return float(np.interp(limit_c, evened, [row[0] for row in way]))
