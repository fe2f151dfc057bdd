"""How sweet a constituent is and how it keeps water from freezing, by the trade's scale."""

from functools import cache

from demould.larder.fact import Fact
from demould.larder.table import by_name, facts


@cache
def scale(part: str) -> dict[str, Fact]:
    """``sweetness`` and ``antifreeze`` of a constituent, sucrose 100; empty for others.

    Numbers of the trade for the eye, never for physics.

    >>> scale("glucose")["antifreeze"].value, scale("water")
    (190.0, {})
    """
    return facts(by_name("sweetness").get(part, ()))
