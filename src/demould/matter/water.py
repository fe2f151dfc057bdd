"""How much of a component's water is ice, and where freezing begins.

Temperatures in °C, masses in kg per kg of component, amounts in mol per kg.

Two ways of making the one input, `Wet`. `reference_a` is the ideal model that printed
freezing cases were computed with. `wet_of` is the tool's own, with water activity by
Norrish, nearest to measured freezing points of three candidates (depression in °C of
20 % and 40 % solutions; the whole table is in the tests):

=========  ============  ============  ==================  ====================
solute     measured      ideal         Norrish (taken)     hydration, sucrose 5
=========  ============  ============  ==================  ====================
sucrose    1.46, 4.4     1.35, 3.55    1.46, 4.32          1.44, 4.29
glucose    2.70, 7.9     2.55, 6.64    2.68, 7.54          -
ethanol    10.9, 29.3    9.6, 23.7     10.8, 30.2          -
NaCl 20 %  16.46         14.7 (i = 2)  15.7                -
=========  ============  ============  ==================  ====================

Hydration with one fitted number a solute is as near at these strengths, but leaves no
water at all in the serum of a deep-frozen piece (80 % sucrose), so it was not taken.
"""

import math
from dataclasses import dataclass
from typing import NamedTuple

import numpy as np
from numpy.typing import NDArray

from demould.larder.ingredient import Composition

Floats = NDArray[np.float64]

GAS_J_MOL_K = 8.314462618
WATER_KG_MOL = 0.01801528
MELTING_K = 273.15
MELTING_J_KG = 333.6e3
HEAT_CAPACITY_GAP_J_MOL_K = 38.1
SATURATED_SUGAR = 2.0
NEVER_C = -200.0
DEEPEST_C = -150.0
"""Colder than this nobody asks; nearly dry syrups would freeze there on paper."""
ROUNDING = 1e-14
_MELTING_J_MOL = MELTING_J_KG * WATER_KG_MOL


class Solute(NamedTuple):
    """What one constituent does to water.

    `kg_mol` is mass per mole of dissolved particles, `norrish` the constant K of
    Norrish 1966, `stop_c` where its freeze-concentrated serum stops giving ice.
    """

    kg_mol: float
    norrish: float
    stop_c: float


# K of sugars and polyols: Norrish, J. Food Technol. 1 (1966) 25-39, and Chirife et al.
# 1980, from memory. Stops: Slade and Levine 1991, from memory. Ethanol and salt: K (and
# 1.8 particles of salt) fitted here to the freezing points in the docstring above.
# Oligomers: what brings glucose syrup DE 40 to 430 g/mol beside its own sugars; their K
# is an estimate. Ash: what puts whole milk at -0.52 °C, half its lime being in casein.
SOLUTES: dict[str, Solute] = {
    "sucrose": Solute(0.3423, 6.47, -32.0),
    "glucose": Solute(0.18016, 2.25, -43.0),
    "fructose": Solute(0.18016, 2.25, -45.0),
    "lactose": Solute(0.3423, 10.2, -28.0),
    "maltose": Solute(0.3423, 4.54, -31.0),
    "trehalose": Solute(0.3423, 6.47, -32.0),
    "other_sugar": Solute(0.18016, 2.25, -42.0),
    "polyols": Solute(0.18217, 1.65, -44.0),
    "other_carb": Solute(0.780, 10.0, -20.0),
    "acid": Solute(0.19212, 6.17, -45.0),
    "alcohol": Solute(0.04607, 1.5, -100.0),
    "salt": Solute(0.05844 / 1.8, 1.6, -40.0),
    "ash": Solute(0.085, 1.6, -40.0),
}
SUGARS = (
    "sucrose",
    "glucose",
    "fructose",
    "lactose",
    "maltose",
    "trehalose",
    "other_sugar",
)
SALT_PER_SODIUM = 58.44 / 22.99


@dataclass(frozen=True, slots=True, kw_only=True)
class Wet:
    """What freezing needs to know of a component.

    Mass fractions sum to 1 within the rounding of a sheet; `carb` holds sugars,
    polyols, starch and acid, `fat` holds alcohol too (its heat is nearest). `air` is
    the share of the whole volume, not overrun.

    `particles` are dissolved moles per kg; `pull` is the sum of sqrt(K) times moles
    [mol/kg], 0 for an ideal solution; `bound` is water that never freezes; below
    `stop_c` no more ice grows. `heat_capacity_gap` is that between water and ice in
    the activity of ice; printed ideal cases leave it out. [J/(mol K)]
    """

    water: float
    protein: float
    fat: float
    carb: float
    fibre: float
    ash: float
    particles: float
    pull: float
    bound: float
    air: float
    stop_c: float = NEVER_C
    heat_capacity_gap: float = HEAT_CAPACITY_GAP_J_MOL_K

    def __post_init__(self) -> None:
        if not 0 <= self.air < 1:
            raise ValueError(
                f"an air share of {self.air:g}; it must be from 0 to under 1"
            )
        if min(self.water, self.protein, self.fat, self.carb, self.fibre) < 0:
            raise ValueError("a mass fraction below 0")

    @property
    def free_water(self) -> float:
        """Water that may freeze [kg/kg]."""
        return max(0.0, self.water - self.bound)


def reference_a(
    *,
    water: float,
    carb: float,
    carb_kg_mol: float,
    protein: float = 0.0,
    fat: float = 0.0,
    fibre: float = 0.0,
    ash: float = 0.0,
    ash_kg_mol: float = 0.06,
    air: float = 0.0,
) -> Wet:
    """Ideal Raoult solution, bound water 0.4 of the protein, ice without a stop.

    Mass fractions [kg/kg], effective molar masses [kg/mol], air as a share of volume.
    """
    return Wet(
        water=water,
        protein=protein,
        fat=fat,
        carb=carb,
        fibre=fibre,
        ash=ash,
        particles=carb / carb_kg_mol + ash / ash_kg_mol,
        pull=0.0,
        bound=0.4 * protein,
        air=air,
        heat_capacity_gap=0.0,
    )


def wet_of(composition: Composition, air: float = 0.0) -> Wet:
    """Give what freezes in a component from its composition. `air`: share of volume.

    Bound water is 0.30 of protein and fibre (gums are fibre); common practice, no
    source. Sugars dissolve up to 2 kg per kg of free water (sucrose at 20 °C, 66.7 %),
    the rest stays crystals; fat, starch and protein do not dissolve.
    """
    total = composition.total
    if total <= 0:
        raise ValueError("a composition of nothing; it must have a constituent")
    bound = min(composition.water, 0.3 * (composition.protein + composition.fibre))
    grams = _dissolved(composition, composition.water - bound)
    moles = {name: mass / SOLUTES[name].kg_mol for name, mass in grams.items()}
    return Wet(
        water=composition.water / total,
        protein=composition.protein / total,
        fat=(composition.fat + composition.alcohol) / total,
        carb=(
            composition.sugars
            + composition.polyols
            + composition.starch
            + composition.other_carb
            + composition.acid
        )
        / total,
        fibre=composition.fibre / total,
        ash=composition.ash / total,
        particles=sum(moles.values()) / total,
        pull=sum(math.sqrt(SOLUTES[s].norrish) * n for s, n in moles.items()) / total,
        bound=bound / total,
        air=air,
        stop_c=_stop_c(grams),
    )


def _dissolved(composition: Composition, free_water: float) -> dict[str, float]:
    """Grams of each solute in the free water of 100 g."""
    sugars = composition.sugars
    share = min(1.0, SATURATED_SUGAR * free_water / sugars) if sugars > 0 else 0.0
    salt = min(composition.ash, composition.sodium_mg / 1000 * SALT_PER_SODIUM)
    grams = {name: share * getattr(composition, name) for name in SUGARS}
    for name in ("polyols", "other_carb", "acid", "alcohol"):
        grams[name] = getattr(composition, name)
    return grams | {"salt": salt, "ash": composition.ash - salt}


def _stop_c(grams: dict[str, float]) -> float:
    total = sum(grams.values())
    if total <= 0:
        return NEVER_C
    return sum(mass * SOLUTES[name].stop_c for name, mass in grams.items()) / total


def ice_activity(
    at_c: Floats, gap_j_mol_k: float = HEAT_CAPACITY_GAP_J_MOL_K
) -> Floats:
    r"""Water activity of pure ice. [-] Shape of `at_c`, which is 0 °C or below.

    .. math:: \ln a = -\frac{L-\Delta c\,T_0}{R}\left(\frac1T-\frac1{T_0}\right)
              -\frac{\Delta c}{R}\ln\frac{T_0}{T}
    """
    kelvin = np.asarray(at_c, dtype=np.float64) + MELTING_K
    sloping = (_MELTING_J_MOL - gap_j_mol_k * MELTING_K) / GAS_J_MOL_K
    logarithm = -sloping * (1 / kelvin - 1 / MELTING_K)
    logarithm -= gap_j_mol_k / GAS_J_MOL_K * np.log(MELTING_K / kelvin)
    return np.asarray(np.exp(logarithm))


def serum_activity(wet: Wet, unfrozen: float) -> float:
    """Water activity when `unfrozen` of the free water is liquid [-] [kg/kg]."""
    water = unfrozen / WATER_KG_MOL
    moles = water + wet.particles
    return water / moles * math.exp(-((wet.pull / moles) ** 2))


def freezing_point_c(wet: Wet) -> float | None:
    """Temperature at which the first ice is stable, or None if nothing ever freezes.

    Newton in 1/T on the activity of ice, which is nearly straight there; to 1e-10 K.
    """
    if wet.free_water <= 0:
        return None
    wanted = math.log(serum_activity(wet, wet.free_water))
    gap = wet.heat_capacity_gap
    lowest = np.array(max(wet.stop_c, DEEPEST_C))
    if wanted <= math.log(float(ice_activity(lowest, gap))):
        return None
    inverse = 1 / MELTING_K - wanted * GAS_J_MOL_K / _MELTING_J_MOL
    sloping = (_MELTING_J_MOL - gap * MELTING_K) / GAS_J_MOL_K
    for _ in range(12):
        excess = -sloping * (inverse - 1 / MELTING_K) - wanted
        excess -= gap / GAS_J_MOL_K * math.log(MELTING_K * inverse)
        inverse += excess / (sloping + gap / GAS_J_MOL_K / inverse)
    point = 1 / inverse - MELTING_K
    return point if point > wet.stop_c else None


def ice_share(wet: Wet, at_c: Floats) -> Floats:
    """Kilograms of ice in a kilogram of component. Shape of `at_c`.

    Ice is what the serum cannot hold: its activity is that of ice. Never more than
    the free water, never growing below `stop_c`, 0 from the freezing point up.
    """
    at_c = np.asarray(at_c, dtype=np.float64)
    start = freezing_point_c(wet)
    if start is None:
        return np.zeros_like(at_c)
    held = np.clip(at_c, wet.stop_c, start)
    activity = ice_activity(held, wet.heat_capacity_gap)
    liquid = WATER_KG_MOL * (_moles_at(wet, activity) - wet.particles)
    return np.where(at_c < start, np.clip(wet.free_water - liquid, 0, None), 0.0)


def _moles_at(wet: Wet, activity: Floats) -> Floats:
    """Moles of water and solutes in serum of that activity, per kg of component.

    Newton from the ideal answer, which lies below: the curve is hollow downwards, so
    every step stays below and none overshoots.
    """
    if wet.particles <= 0:
        return np.zeros_like(activity)
    wanted = np.log(activity)
    moles = wet.particles / -np.expm1(wanted)
    for _ in range(25):
        water = moles - wet.particles
        excess = np.log(water / moles) - (wet.pull / moles) ** 2 - wanted
        slope = wet.particles / (moles * water) + 2 * wet.pull**2 / moles**3
        moles = moles - excess / slope
        if (np.abs(excess) < ROUNDING).all():
            break
    return moles
