"""How much a mix weighs to the ml, and how much of it is air."""

from demould.larder.ingredient import Composition
from demould.larder.read import constituents
from demould.mise.figure import Figure, worked

ETHANOL_KG_M3 = 789.3
COLDEST_C, WARMEST_C = -40.0, 150.0


def mix_density(made_of: Composition, at_c: float = 20.0) -> float:
    """Density of a mix without air and without ice [g/ml].

    Volumes of the constituents add up, which leaves out that sugar and alcohol draw
    water closer: a 30 % sugar solution comes out 0.5 % light, spirit 3.5 %. Solid
    cocoa butter is denser than the liquid fat reckoned with. Sheets that do not add up
    to 100 g are taken as shares of what they add up to.

    Parameters
    ----------
    made_of
        Grams in 100 g.
    at_c
        From -40 to 150 °C; water is taken as liquid below 0 °C.

    References
    ----------
    .. [1] Y. Choi and M. R. Okos, Effects of temperature and composition on the thermal
       properties of foods, in Food Engineering and Process Applications 1, 1986.
    .. [2] Ethanol at 20 °C: CRC Handbook of Chemistry and Physics (from memory).
    """
    if not COLDEST_C <= at_c <= WARMEST_C:
        raise ValueError(f"densities are known from -40 to 150 °C, not at {at_c:g} °C")
    grams = {
        "water": made_of.water,
        "protein": made_of.protein,
        "fat": made_of.fat,
        "carbohydrate": made_of.sugars
        + made_of.polyols
        + made_of.erythritol
        + made_of.starch
        + made_of.other_carb
        + made_of.acid,
        "fibre": made_of.fibre,
        "ash": made_of.ash,
    }
    volume = made_of.alcohol / ETHANOL_KG_M3
    for name, mass in grams.items():
        line = constituents()[name].density
        volume += mass / (line.a + at_c * (line.b + at_c * line.c))
    total = sum(grams.values()) + made_of.alcohol
    if total <= 0:
        raise ValueError("a mix of nothing has no density")
    return total / volume / 1000


def overrun(base: Figure, whipped: Figure) -> Figure:
    """How much volume whipping adds. [%] 100 % doubles it; not to be mixed up with air."""
    value = 100 * (base.value / whipped.value - 1)
    rule = "density before / density whipped, less 1"
    return worked("overrun", value, "%", rule, base, whipped)


def air(base: Figure, whipped: Figure) -> Figure:
    """Share of the whipped volume that is air. [%] At 100 % overrun it is 50 %."""
    value = 100 * (1 - whipped.value / base.value)
    rule = "1 less density whipped / density before"
    return worked("air", value, "%", rule, base, whipped)
