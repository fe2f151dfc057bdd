"""What temperature things have when they are mixed, melting fat and ice counted.

Heat content of each part by its make-up (Choi and Okos), plus the heat that melts the
fat of couverture that was not melted, as far as it melts at the end. Bowl and air take
nothing here: a cold bowl costs a kelvin or two more.
"""

from collections.abc import Sequence
from dataclasses import dataclass

import numpy as np

from demould.larder.ingredient import Composition
from demould.larder.read import curve, melting_heat
from demould.matter.heat import enthalpy
from demould.matter.water import wet_of
from demould.mise.figure import Estimate
from demould.mise.words import Words

COLDEST_C, WARMEST_C = -40.0, 150.0


@dataclass(frozen=True, slots=True, kw_only=True)
class Poured:
    """One part of a mix. `unmelted`: couverture in callets, its fat still solid."""

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
    given = sum(_heat(part, part.at_c, milk_fat=milk_fat) for part in parts)
    low = min(part.at_c for part in parts)
    high = max(part.at_c for part in parts)
    for _ in range(50):
        middle = (low + high) / 2
        has = sum(_heat(part, middle, milk_fat=milk_fat) for part in parts)
        low, high = (middle, high) if has < given else (low, middle)
    return (low + high) / 2


def _heat(part: Poured, at_c: float, *, milk_fat: bool) -> float:
    """Heat content of one part at a temperature [J]."""
    content = float(enthalpy(wet_of(part.made_of), np.array([at_c]))[0]) / 1000
    fat = part.made_of.fat / 100
    if part.unmelted:
        content -= fat * _still_solid("cocoa butter", part.at_c, at_c)
    elif milk_fat:
        share = part.made_of.milk_fat / 100
        content -= share * _still_solid("milk fat", part.at_c, at_c)
    return part.grams * content


def _still_solid(fat: str, from_c: float, at_c: float) -> float:
    """Melting heat that crystals of `from_c` still hold back at `at_c` [J/g]."""
    left = min(solid_share(fat, from_c), solid_share(fat, at_c))
    return left * melting_heat(fat).value


def solid_share(fat: str, at_c: float) -> float:
    """Share of a fat that is solid, up to 1."""
    points = curve(fat, "solid")
    return float(
        np.interp(at_c, [at for at, _ in points], [share for _, share in points]) / 100
    )
