"""Temperatures said in a step or a finish, as cooks write them."""

import re
from typing import NamedTuple

from demould.mise.number import NUMBER, read_number
from demould.mise.problem import UnreadableError

_SAID = re.compile(
    rf"({NUMBER})\s*(?:°\s*C?)?(?:\s*(?:to|\u2013|-)\s*({NUMBER}))?\s*(?:°\s*C?|degrees)"
)


class Degrees(NamedTuple):
    """From `low` to `high` [°C]; both alike where one number was said."""

    low: float
    high: float


def degrees_in(text: str) -> tuple[Degrees, ...]:
    """Every temperature or range of them in a text, in the order said.

    >>> degrees_in("75 to 80 °C on the couverture, ends near 35 °C")
    (Degrees(low=75.0, high=80.0), Degrees(low=35.0, high=35.0))
    """
    return tuple(
        one for match in _SAID.finditer(text) if (one := _degrees(match)) is not None
    )


def _degrees(match: re.Match[str]) -> Degrees | None:
    try:
        first = float(read_number(match[1]))
        second = float(read_number(match[2])) if match[2] else first
    except UnreadableError:
        return None
    return Degrees(min(first, second), max(first, second))
