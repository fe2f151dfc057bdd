r"""Sugar temperatures where water does not boil at 100 °C.

Pressure of the standard atmosphere [1]_, vapour pressure of water [2]_. A syrup of the
same strength boils lower by about as much as water does; by equal water activity
(:math:`p/p_{sat}` alike at both heights) a little lower still. Both are given.

References
----------
.. [1] ISO 2533:1975, Standard atmosphere, up to 11 km.
.. [2] W. Wagner and A. Pruss, J. Phys. Chem. Ref. Data 22 (1993) 783-787 (constants
   from memory, held against CoolProp in the tests).
"""

import math
from itertools import pairwise

from demould.larder.read import curve
from demould.mise.figure import Estimate
from demould.mise.words import Words

SEA_PA = 101_325.0
HIGHEST_M = 5000.0
_CRITICAL_K, _CRITICAL_PA = 647.096, 22.064e6
_WAGNER = (
    (1.0, -7.85951783),
    (1.5, 1.84408259),
    (3.0, -11.7866497),
    (3.5, 22.6807411),
    (4.0, -15.9618719),
    (7.5, 1.80122502),
)


def pressure_pa(height_m: float) -> float:
    """Air pressure at a height above the sea [Pa], -500 to 5000 m."""
    if not -500 <= height_m <= HIGHEST_M:
        raise ValueError(
            f"a kitchen {height_m:g} m above the sea; it must be from -500 to 5000 m"
        )
    return float(SEA_PA * (1 - 2.25577e-5 * height_m) ** 5.25588)


def vapour_pa(at_c: float) -> float:
    """Vapour pressure of water [Pa], 0 to 300 °C."""
    kelvin = at_c + 273.15
    left = 1 - kelvin / _CRITICAL_K
    total = sum(factor * left**power for power, factor in _WAGNER)
    return float(_CRITICAL_PA * math.exp(_CRITICAL_K / kelvin * total))


def boils_c(pressure: float) -> float:
    """Temperature at which water boils under a pressure [°C], 20 kPa to 2 MPa."""
    low, high = 0.0, 220.0
    for _ in range(60):
        middle = (low + high) / 2
        low, high = (middle, high) if vapour_pa(middle) < pressure else (low, middle)
    return (low + high) / 2


def water_boils_c(height_m: float) -> float:
    """Temperature at which water boils at a height [°C].

    >>> round(water_boils_c(1500))
    95
    """
    return boils_c(pressure_pa(height_m))


def cook_sugar_to(asked_c: float, water_c: float) -> Estimate:
    """What the thermometer shows when a syrup is where `asked_c` puts it at the sea.

    `water_c` is what the same thermometer shows in boiling water.

    Raises
    ------
    ValueError
        If either cannot be.
    """
    if not 100 <= asked_c <= 200:
        raise ValueError(f"sugar cooked to {asked_c:g} °C; it must be 100 to 200 °C")
    if not 80 <= water_c <= 102:
        raise ValueError(f"water that boils at {water_c:g} °C; it must be 80 to 102 °C")
    straight = asked_c - (100 - water_c)
    equal = boils_c(vapour_pa(water_c) * vapour_pa(asked_c) / SEA_PA)
    return Estimate(
        low=min(straight, equal),
        likely=straight,
        high=max(straight, equal),
        unit="°C",
        reason=Words("by equal strength of the syrup it is a little lower"),
    )


def solids_at(rise_k: float) -> float:
    """Sugar in a sucrose syrup that boils `rise_k` over water [%], up to 95 %.

    >>> round(solids_at(13.0))
    85
    """
    points = curve("sucrose syrup", "rise")
    for (lower, low), (upper, high) in pairwise(points):
        if low <= rise_k <= high:
            return lower + (upper - lower) * (rise_k - low) / (high - low)
    return points[0][0] if rise_k < 0 else points[-1][0]
