r"""Water in the air, and how fast it settles on a cold skin or leaves it.

SI, °C. Air is an ideal mixture at 1013.25 hPa. Vapour follows heat by the analogy of
Chilton and Colburn (Ind. Eng. Chem. 26, 1934, 1183-1187, from memory), which knows only
the convective part of a film: radiation carries no water.
"""

import math

from demould.cold.compiled import compiled

MELTING_K = 273.15
VAPOUR_J_KG_K = 461.5
AIR_J_KG_K = 287.05
AIR_HEAT_J_KG_K = 1006.0
PRESSURE_PA = 101325.0
LEWIS_FACTOR = 0.89
FROST_J_KG = 2.834e6
DEW_J_KG = 2.5e6
# Magnus: WMO-No. 8, annex 4.B (over water printed there, over ice from memory).
E0_PA = 611.2
WATER_A, WATER_B = 17.62, 243.12
ICE_A, ICE_B = 22.46, 272.62


@compiled
def saturation_pa(at_c: float) -> float:
    """Vapour pressure over ice below 0 °C, over water from 0 °C up [Pa].

    Within 0.5 % from -40 to 50 °C; a surface under frost or dew has this one.
    """
    if at_c < 0:
        return E0_PA * math.exp(ICE_A * at_c / (ICE_B + at_c))
    return E0_PA * math.exp(WATER_A * at_c / (WATER_B + at_c))


@compiled
def over_water_pa(at_c: float) -> float:
    """Vapour pressure over water, below 0 °C too: what a relative humidity is of [Pa]."""
    return E0_PA * math.exp(WATER_A * at_c / (WATER_B + at_c))


@compiled
def vapour_density(pressure_pa: float, at_c: float) -> float:
    """Kilograms of vapour in a cubic metre at that vapour pressure."""
    return pressure_pa / (VAPOUR_J_KG_K * (at_c + MELTING_K))


@compiled
def vapour_in_air(air_c: float, relative: float) -> float:
    """Kilograms of vapour in a cubic metre of air; `relative` humidity from 0 to 1."""
    return vapour_density(relative * over_water_pa(air_c), air_c)


@compiled
def vapour_transfer(h_convective: float, air_c: float, skin_c: float) -> float:
    """How fast vapour crosses the film [m/s]; h without radiation [W/(m2 K)].

    The air's heat capacity is taken half way between air and skin.
    """
    middle_k = (air_c + skin_c) / 2 + MELTING_K
    heat = PRESSURE_PA / (AIR_J_KG_K * middle_k) * AIR_HEAT_J_KG_K
    return h_convective / (heat * LEWIS_FACTOR)


@compiled
def settling(
    h_convective: float, air_c: float, relative: float, skin_c: float
) -> float:
    """Water settling on a wet or frosted skin, negative when it leaves [kg/(m2 s)]."""
    over_skin = vapour_density(saturation_pa(skin_c), skin_c)
    gap = vapour_in_air(air_c, relative) - over_skin
    return vapour_transfer(h_convective, air_c, skin_c) * gap


@compiled
def latent(skin_c: float) -> float:
    """Heat a kilogram brings as it settles: frost below 0 °C, dew above [J/kg]."""
    return FROST_J_KG if skin_c < 0 else DEW_J_KG


def settling_point_c(air_c: float, relative: float) -> float | None:
    """Give the skin temperature under which water settles: dew or frost point.

    Over ice where it lies below 0 °C. None for air without water.

    Raises
    ------
    ValueError
        If the relative humidity is not from 0 to 1.
    """
    if not 0 <= relative <= 1:
        raise ValueError(f"a relative humidity of {relative:g}; it must be from 0 to 1")
    if relative == 0:
        return None
    share = math.log(relative * over_water_pa(air_c) / E0_PA)
    a, b = (WATER_A, WATER_B) if share >= 0 else (ICE_A, ICE_B)
    return b * share / (a - share)
