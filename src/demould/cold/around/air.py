"""What air is around a piece, and how well it takes or gives heat."""

from collections.abc import Sequence
from dataclasses import dataclass

Air = float | tuple[tuple[float, float], ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class Film:
    """Heat transfer to the air on the outermost surface, with radiation [W/(m2 K)].

    0 insulates. `bottom` and `top` are the flat ends, `other` all else.
    """

    bottom: float
    top: float
    other: float

    def __post_init__(self) -> None:
        if min(self.bottom, self.top, self.other) < 0:
            raise ValueError("a film below 0 W/(m2 K)")


def even_film(h: float) -> Film:
    """The same all round [W/(m2 K)]."""
    return Film(bottom=h, top=h, other=h)


def air_at(air: Air, seconds: float) -> float:
    """Air temperature just after a moment [°C]."""
    if isinstance(air, int | float):
        return float(air)
    past = [at_c for since, at_c in air if since <= seconds]
    return past[-1]


def coldest_and_warmest(air: Air) -> tuple[float, float]:
    """Both ends of an air over all its time [°C]."""
    if isinstance(air, int | float):
        return float(air), float(air)
    every = [at_c for _, at_c in air]
    return min(every), max(every)


def changes(air: Air, until: float) -> Sequence[float]:
    """Moments after the start at which the air jumps, and the end [s]."""
    if isinstance(air, int | float):
        return (until,)
    return (*(since for since, _ in air if 0 < since < until), until)


def checked_air(air: Air) -> Air:
    """Give the air back, or say what is wrong with it.

    Raises
    ------
    ValueError
        If a list of (seconds, °C) does not begin at 0 s and go forward.
    """
    if isinstance(air, int | float):
        return air
    times = [since for since, _ in air]
    if not times or times[0] > 0 or sorted(set(times)) != times:
        raise ValueError("air over time must begin at 0 s and go forward")
    return air
