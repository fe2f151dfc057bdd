"""Water that settles on a piece out of the cold: how much, how soon, what avoids it.

°C, relative humidity as a part of 1, W/(m2 K) without radiation. Over a skin below
0 °C it is frost, and what it settles at is the frost point.
"""

from collections.abc import Sequence
from dataclasses import dataclass
from itertools import pairwise
from typing import Literal

from demould.cold.around.moist import (
    over_water_pa,
    saturation_pa,
    settling,
    settling_point_c,
)

VISIBLE_UM = 5.0
"""From here a matt finish looks wet. An estimate, between 2 and 10."""
PARTS = 200


@dataclass(frozen=True, slots=True, kw_only=True)
class Sweat:
    """What settles on a skin in a room.

    Attributes
    ----------
    point_c, point
        Skins colder than this catch water; whether it is a dew or a frost point.
    grams_m2, film_um
        What lies there at the end; 1 g/m2 is a film of 1 micrometre.
    visible_min
        Minutes until a film can be seen, None if it does not come to that.
    driest
        The relative humidity this room may have with nothing settling at first.
    coolest_c
        Or the room this cool, at its humidity. None where any room is dry.
    """

    point_c: float | None
    point: Literal["dew", "frost"]
    grams_m2: float
    film_um: float
    visible_min: float | None
    driest: float
    coolest_c: float | None


def sweat(
    room_c: float,
    relative: float,
    skin: Sequence[tuple[float, float]],
    h_convective: float,
) -> Sweat:
    """Follow the water on a skin.

    Parameters
    ----------
    skin
        (minutes, °C), rising minutes, straight between them. The last is the end.
    h_convective
        Still room air 4 to 8. [W/(m2 K)] Water that settled dries off again once the
        skin is warm enough; what runs off is not counted.
    """
    at, water, visible = skin[0][0], 0.0, None
    for minute, at_c, span_min in _parts(skin):
        water += settling(h_convective, room_c, relative, at_c) * span_min * 60e3
        water = max(0.0, water)
        if visible is None and water >= VISIBLE_UM:
            visible = minute + span_min / 2 - at
    point = settling_point_c(room_c, relative)
    coldest = min(at_c for _, at_c in skin)
    return Sweat(
        point_c=point,
        point="frost" if point is not None and point < 0 else "dew",
        grams_m2=water,
        film_um=water,
        visible_min=visible,
        driest=min(1.0, saturation_pa(coldest) / over_water_pa(room_c)),
        coolest_c=_room_that_is_dry(relative, coldest),
    )


def kept_at(skin_c: float, minutes: float) -> tuple[tuple[float, float], ...]:
    """A skin that stays as cold as it is: more water than in truth."""
    return ((0.0, skin_c), (minutes, skin_c))


def _parts(
    skin: Sequence[tuple[float, float]],
) -> Sequence[tuple[float, float, float]]:
    """Middles of short spans: (minute, °C, minutes of the span)."""
    spans = []
    for (start, from_c), (end, to_c) in pairwise(skin):
        for n in range(PARTS):
            share = (n + 0.5) / PARTS
            spans.append(
                (
                    start + share * (end - start),
                    from_c + share * (to_c - from_c),
                    (end - start) / PARTS,
                )
            )
    return spans


def _room_that_is_dry(relative: float, skin_c: float) -> float | None:
    """The warmest room of that humidity over whose dew point the skin lies."""
    if relative <= 0 or saturation_pa(skin_c) <= 0:
        return None
    low, high = skin_c, 60.0
    if relative * over_water_pa(high) <= saturation_pa(skin_c):
        return None
    for _ in range(50):
        middle = (low + high) / 2
        dry = relative * over_water_pa(middle) <= saturation_pa(skin_c)
        low, high = (middle, high) if dry else (low, middle)
    return low
