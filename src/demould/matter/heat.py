"""How much heat a component holds and how well it conducts, from its make-up.

Temperatures in °C, everything else SI. Enthalpy counts from liquid at 0 °C.

Constituents after Choi and Okos 1986 (the larder's table); a mixture has no heat of
mixing, air weighs nothing. Fat melts without latent heat unless it is asked for: that of
a mousse adds some 6 to 15 % to what must be drawn from it.
"""

from collections.abc import Callable
from dataclasses import dataclass
from functools import cache
from typing import Literal

import numpy as np
from numpy.typing import NDArray

from demould.larder.fact import Quadratic
from demould.larder.read import constituents
from demould.matter.fat import Setting, bends_c, crystal_heat
from demould.matter.water import MELTING_J_KG, Wet, freezing_point_c, ice_share

Floats = NDArray[np.float64]
Property = Literal["conductivity", "density", "heat_capacity"]

AIR_CONDUCTIVITY = 0.024
DENSITY_AT_C = 8.0
COLDEST_C, WARMEST_C = -60.0, 60.0
EMT_TRIES = 30
ROUNDING = 1e-12
DRY = ("protein", "fat", "carbohydrate", "fibre", "ash")


@dataclass(frozen=True, slots=True, kw_only=True)
class Thermal:
    """One component as heat sees it: a table, straight between its nodes.

    Attributes
    ----------
    at_c
        Nodes, rising, one exactly at the freezing point. [°C] Shape (n,).
    enthalpy
        From liquid at 0 °C, rising. [J/kg] Shape (n,).
    conductivity
        With its air. [W/(m K)] Shape (n,).
    ice
        [kg/kg] Shape (n,).
    density
        With its air, held at its value at 8 °C: shapes stay, mass stays. [kg/m3]
    freezing_c
        First ice, None if nothing freezes down to -60 °C.
    """

    at_c: Floats
    enthalpy: Floats
    conductivity: Floats
    ice: Floats
    density: float
    freezing_c: float | None


def thermal(
    wet: Wet, mixing: str = "effective medium", setting: Setting = ()
) -> Thermal:
    """Tabulate a component between -60 and 60 °C. `mixing` is a key of `MIXINGS`.

    Fat in `setting` gives off its melting heat as it sets, and has a node wherever its
    solid share bends (see `fat.setting_fat`).

    About 120 nodes, close together under the freezing point, where enthalpy is steep:
    the straight line between nodes keeps within 0.1 % of the heat of freezing.
    """
    freezing = freezing_point_c(wet)
    if freezing is not None and freezing <= COLDEST_C:
        freezing = None
    at_c = _nodes(freezing, wet.stop_c, bends_c(setting))
    ice = ice_share(wet, at_c)
    content = _content(wet, at_c, ice)
    for kind, held in setting:
        content = content - held * crystal_heat(kind, at_c)
    return Thermal(
        at_c=at_c,
        enthalpy=content,
        conductivity=_conducts(wet, at_c, ice, mixing),
        ice=ice,
        density=density(wet),
        freezing_c=freezing,
    )


def _nodes(freezing: float | None, stop: float, bends: list[float]) -> Floats:
    evenly = np.union1d(np.linspace(COLDEST_C, WARMEST_C, 25), bends)
    if freezing is None:
        return evenly
    below = freezing - np.geomspace(0.02, freezing - COLDEST_C, 90)
    extra = [freezing, *([stop] if stop > COLDEST_C else [])]
    # Two nodes closer than 1e-6 K would make a slope of rounding errors.
    rounded = np.unique(np.concatenate([evenly[evenly > freezing], below, extra]))
    return np.asarray(rounded[np.append(np.diff(rounded) > 1e-6, True)])


def enthalpy(wet: Wet, at_c: Floats) -> Floats:
    """Heat content from liquid at 0 °C. [J/kg] Shape of `at_c`."""
    at_c = np.asarray(at_c, dtype=np.float64)
    return _content(wet, at_c, ice_share(wet, at_c))


def _content(wet: Wet, at_c: Floats, ice: Floats) -> Floats:
    content = sum(
        (share * _heat(name, at_c) for name, share in _dry(wet).items()),
        start=(wet.water - ice) * _heat("water", at_c),
    )
    return np.asarray(content + ice * (_heat("ice", at_c) - MELTING_J_KG))


def density(wet: Wet, at_c: float = DENSITY_AT_C) -> float:
    """Unfrozen density with its air [kg/m3]."""
    shares = {"water": wet.water, **_dry(wet)}
    at = np.array(at_c)
    volume = sum(
        share / float(_value("density", name, at)) for name, share in shares.items()
    )
    return (1 - wet.air) / volume


def conductivity(wet: Wet, at_c: Floats, mixing: str = "effective medium") -> Floats:
    """Conductivity with its air. [W/(m K)] Shape of `at_c`.

    Volume shares hold at temperature, ice among them; air after Maxwell and Eucken as
    bubbles in the rest.
    """
    at_c = np.asarray(at_c, dtype=np.float64)
    return _conducts(wet, at_c, ice_share(wet, at_c), mixing)


def _conducts(wet: Wet, at_c: Floats, ice: Floats, mixing: str) -> Floats:
    shares = {
        "water": wet.water - ice,
        "ice": ice,
        **{name: np.full_like(at_c, share) for name, share in _dry(wet).items()},
    }
    volumes = np.array([m / _value("density", n, at_c) for n, m in shares.items()])
    volumes /= volumes.sum(axis=0)
    each = np.array([_value("conductivity", name, at_c) for name in shares])
    return _with_air(MIXINGS[mixing](volumes, each), wet.air)


def _parallel(volumes: Floats, each: Floats) -> Floats:
    return np.asarray((volumes * each).sum(axis=0))


def _series(volumes: Floats, each: Floats) -> Floats:
    return np.asarray(1 / (volumes / each).sum(axis=0))


def _geometric(volumes: Floats, each: Floats) -> Floats:
    return np.asarray(np.exp((volumes * np.log(each)).sum(axis=0)))


def _effective_medium(volumes: Floats, each: Floats) -> Floats:
    r"""Root of :math:`\sum v_i (k_i - k) / (k_i + 2 k) = 0`, between series and parallel."""
    # The sum falls and is hollow upwards: from below Newton never passes the root.
    k = _series(volumes, each)
    for _ in range(EMT_TRIES):
        whole = each + 2 * k
        gap = (volumes * (each - k) / whole).sum(axis=0)
        step = gap / (3 * volumes * each / whole**2).sum(axis=0)
        k = k + step
        if (step <= ROUNDING * k).all():
            break
    return np.asarray(k)


MIXINGS: dict[str, Callable[[Floats, Floats], Floats]] = {
    "parallel": _parallel,
    "effective medium": _effective_medium,
    "geometric": _geometric,
    "series": _series,
}


def _with_air(condensed: Floats, air: float) -> Floats:
    gap = condensed - AIR_CONDUCTIVITY
    whole = 2 * condensed + AIR_CONDUCTIVITY
    return np.asarray(condensed * (whole - 2 * air * gap) / (whole + air * gap))


def _dry(wet: Wet) -> dict[str, float]:
    return dict(
        zip(DRY, (wet.protein, wet.fat, wet.carb, wet.fibre, wet.ash), strict=True)
    )


@cache
def _line(name: str, what: Property) -> Quadratic:
    line: Quadratic = getattr(constituents()[name], what)
    return line


def _value(what: Property, name: str, at_c: Floats) -> Floats:
    line = _line(name, what)
    return np.asarray(line.a + at_c * (line.b + at_c * line.c))


def _heat(name: str, at_c: Floats) -> Floats:
    """Heat from 0 °C of one constituent [J/kg]."""
    line = _line(name, "heat_capacity")
    return np.asarray(at_c * (line.a + at_c * (line.b / 2 + at_c * line.c / 3)))
