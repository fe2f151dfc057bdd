"""Values that go with a temperature or a strength, point by point."""

from functools import cache

from demould.larder.fact import Fact
from demould.larder.table import by_name, facts

Points = tuple[tuple[float, float], ...]


@cache
def curve(name: str, what: str) -> Points:
    """The points of one curve, rising: ``cocoa butter`` and ``solid``, at °C, in %.

    >>> curve("sucrose syrup", "rise")[-1]
    (95.0, 30.0)
    """
    opening = f"{what} at "
    points = (
        (float(quantity.removeprefix(opening)), fact.value)
        for quantity, fact in facts(by_name("curves")[name]).items()
        if quantity.startswith(opening)
    )
    return tuple(sorted(points))


def melting_heat(fat: str) -> Fact:
    """Heat that melts the solid part of a fat [J/g]."""
    return facts(by_name("curves")[fat])["melting heat"]
