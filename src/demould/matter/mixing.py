"""What temperature things have when they are mixed, melting fat and ice counted.

Heat content of each part by its make-up (Choi and Okos), plus the heat that melts the
fat of couverture that was not melted, as far as it melts at the end. Bowl and air take
nothing here: a cold bowl costs a kelvin or two more.
"""

from collections.abc import Sequence
from dataclasses import dataclass

import numpy as np

from demould.larder.ingredient import Composition
from demould.larder.read import melting_heat
from demould.matter.fat import solid_share
from demould.matter.heat import Floats, enthalpy
from demould.matter.water import wet_of
from demould.mise.figure import Estimate
from demould.mise.words import Words

COLDEST_C, WARMEST_C = -40.0, 150.0
NODES = 400
"""Heat is straight between so many temperatures: to 0.01 K."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Poured:
    """One part of a mix. `unmelted`: couverture in pieces, its fat still solid."""

    made_of: Composition
    grams: float
    at_c: float
    unmelted: bool = False

    def __post_init__(self) -> None:
        if self.grams <= 0:
            raise ValueError(f"{self.grams:g} g to mix; it must be more than 0")
        if not COLDEST_C <= self.at_c <= WARMEST_C:
            raise ValueError(
                f"a part at {self.at_c:g} °C; it must be from -40 to 150 °C"
            )


def mixed_c(parts: Sequence[Poured]) -> Estimate:
    """Temperature of the mix [°C].

    `low` counts the crystals of cold milk fat as well, which half a day in the fridge
    brings and the usual heat capacities of cream leave out.
    """
    if not parts:
        raise ValueError("nothing to mix; give at least one part")
    plain = _balance(parts, milk_fat=False)
    cold = _balance(parts, milk_fat=True)
    return Estimate(
        low=min(plain, cold),
        likely=plain,
        high=plain,
        unit="°C",
        reason=Words("half its fat is solid then and takes heat to melt"),
    )


def _balance(parts: Sequence[Poured], *, milk_fat: bool) -> float:
    """The one temperature at which no heat is over: heat content rises with it."""
    low = min(part.at_c for part in parts)
    high = max(part.at_c for part in parts)
    if high - low < 1e-9:
        return low
    at_c = np.linspace(low, high, NODES)
    given, has = 0.0, np.zeros(NODES)
    for part in parts:
        heat = _heat(part, np.append(at_c, part.at_c), milk_fat=milk_fat)
        has, given = has + heat[:-1], given + float(heat[-1])
    return float(np.interp(given, has, at_c))


def _heat(part: Poured, at_c: Floats, *, milk_fat: bool) -> Floats:
    """Heat content of one part at each temperature [J]."""
    content = enthalpy(wet_of(part.made_of), at_c) / 1000
    if part.unmelted:
        held = part.made_of.fat * _still_solid("cocoa butter", part.at_c, at_c)
        content = content - held / 100
    elif milk_fat:
        held = part.made_of.milk_fat * _still_solid("milk fat", part.at_c, at_c)
        content = content - held / 100
    return np.asarray(part.grams * content)


def _still_solid(fat: str, from_c: float, at_c: Floats) -> Floats:
    """Melting heat that crystals of `from_c` still hold back at `at_c` [J/g]."""
    left = np.minimum(solid_share(fat, np.array([from_c])), solid_share(fat, at_c))
    return np.asarray(left * melting_heat(fat).value)
