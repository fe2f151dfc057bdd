"""How much of a fat is solid, and the heat its crystals have given off.

Shares and melting heats are the larder's, from memory of published figures. Crystals
come as soon as they may: real fat waits hours, so a quick freezer draws less.
"""

import numpy as np
from numpy.typing import NDArray

from demould.larder.ingredient import Composition
from demould.larder.read import curve, melting_heat

Floats = NDArray[np.float64]
KINDS = ("cocoa butter", "milk fat")

Setting = tuple[tuple[str, float], ...]
"""Kinds of fat that set in the cold, and kilograms of each in a kilogram."""


def setting_fat(composition: Composition) -> Setting:
    """What of a composition sets in the cold; fat of other origin does not count."""
    grams = (composition.cocoa_butter, composition.milk_fat)
    return tuple(
        (kind, held / composition.total)
        for kind, held in zip(KINDS, grams, strict=True)
        if held > 0
    )


def solid_share(fat: str, at_c: Floats) -> Floats:
    """Share of a fat that is solid, up to 1. Shape of `at_c`."""
    points = curve(fat, "solid")
    shares = np.interp(at_c, [at for at, _ in points], [share for _, share in points])
    return np.asarray(shares / 100)


def crystal_heat(fat: str, at_c: Floats) -> Floats:
    """Heat that its crystals have given off since all was melted [J/kg]."""
    return np.asarray(1000 * melting_heat(fat).value * solid_share(fat, at_c))


def bends_c(setting: Setting) -> list[float]:
    """Where the solid shares bend [°C]."""
    return [at for kind, _ in setting for at, _ in curve(kind, "solid")]
