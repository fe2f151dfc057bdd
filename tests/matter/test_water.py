import math
from dataclasses import replace

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from demould.larder.ingredient import Composition
from demould.matter.water import (
    NEVER_C,
    WATER_KG_MOL,
    Wet,
    freezing_point_c,
    ice_activity,
    ice_share,
    reference_a,
    serum_activity,
    wet_of,
)

# Freezing point depression in K of 5, 10, 15, 20, 30 and 40 % w/w solutions: CRC
# Handbook of Chemistry and Physics, "Concentrative properties of aqueous solutions",
# figures from memory; fructose and glucose share a row. Salt ends at its eutectic.
DEPRESSION = {
    "sucrose": (0.29, 0.63, 1.01, 1.46, 2.64, 4.4),
    "glucose": (0.55, 1.16, 1.86, 2.70, 4.8, 7.9),
    "fructose": (0.55, 1.16, 1.86, 2.70, 4.8, 7.9),
    "alcohol": (2.09, 4.47, 7.36, 10.9, 20.5, 29.3),
    "salt": (3.05, 6.56, 10.89, 16.46),
}
STRENGTHS = (5.0, 10.0, 15.0, 20.0, 30.0, 40.0)
IDEAL_KG_MOL = {
    "sucrose": 0.3423,
    "glucose": 0.18016,
    "fructose": 0.18016,
    "alcohol": 0.04607,
    "salt": 0.05844 / 2,
}
# How far the taken constants are from the table at worst: sugars by the published
# Norrish constants, alcohol and salt by one constant fitted to these very rows.
WORST = {
    "sucrose": 0.02,
    "glucose": 0.05,
    "fructose": 0.05,
    "alcohol": 0.075,
    "salt": 0.05,
}


def solution(solute: str, percent: float) -> Composition:
    if solute == "salt":
        sodium = percent * 22.99 / 58.44 * 1000
        return Composition(water=100 - percent, ash=percent, sodium_mg=sodium)
    if solute == "alcohol":
        return Composition(water=100 - percent, alcohol=percent)
    return Composition(
        water=100 - percent,
        sucrose=percent if solute == "sucrose" else 0.0,
        glucose=percent if solute == "glucose" else 0.0,
        fructose=percent if solute == "fructose" else 0.0,
    )


def depression(wet: Wet) -> float:
    point = freezing_point_c(wet)
    assert point is not None
    return -point


@pytest.mark.parametrize("solute", DEPRESSION)
def test_measured_freezing_points_are_met_better_than_by_an_ideal_solution(
    solute: str,
) -> None:
    measured = DEPRESSION[solute]
    strengths = STRENGTHS[: len(measured)]
    taken = [depression(wet_of(solution(solute, p))) for p in strengths]
    ideal = [
        depression(
            reference_a(
                water=1 - p / 100, carb=p / 100, carb_kg_mol=IDEAL_KG_MOL[solute]
            )
        )
        for p in strengths
    ]
    off = [abs(t / m - 1) for t, m in zip(taken, measured, strict=True)]
    ideal_off = [abs(t / m - 1) for t, m in zip(ideal, measured, strict=True)]
    # Half a unit of the last printed digit where that is more than the model's worst.
    allowed = [max(WORST[solute], 0.005 / m) for m in measured]
    assert all(o <= a for o, a in zip(off, allowed, strict=True)), off
    assert max(off) < 0.6 * max(ideal_off)


def test_twelve_percent_sucrose_freezes_where_the_ice_cream_book_says() -> None:
    # Clarke, The Science of Ice Cream, RSC 2004, fig. 2.8: -0.77 °C, read to 0.01.
    assert depression(wet_of(solution("sucrose", 12))) == pytest.approx(0.77, abs=0.01)


def test_whole_milk_freezes_at_its_known_point() -> None:
    # Milk freezes at -0.52 to -0.53 °C (bulk milk reference point, EN ISO 5764, from
    # memory). Make-up: USDA SR26 01211. Ash was fitted to this: it guards the fit.
    milk = Composition(
        water=88.13, protein=3.15, fat=3.27, lactose=4.78, ash=0.67, sodium_mg=43
    )
    assert depression(wet_of(milk)) == pytest.approx(0.525, abs=0.01)


def test_glucose_syrup_pulls_like_its_mean_molar_mass() -> None:
    # DE 40 to 42 has a number average of about 430 g/mol dry (18016 / DE, common
    # practice); 2 % allows for the rounding of 430 itself. Make-up of the larder's row.
    syrup = Composition(water=20, glucose=15.2, maltose=11.2, other_carb=53.4, ash=0.2)
    assert 79.8 / 100 / wet_of(syrup).particles == pytest.approx(0.430, rel=0.02)


# Water activity of ice, with the heat capacity gap, as tables print it (from memory).
@pytest.mark.parametrize(
    ("at_c", "activity"),
    [
        (0, 1.0),
        (-5, 0.953),
        (-10, 0.907),
        (-15, 0.864),
        (-20, 0.823),
        (-25, 0.783),
        (-30, 0.745),
    ],
)
def test_activity_of_ice_is_the_printed_one(at_c: float, activity: float) -> None:
    assert ice_activity(np.array([at_c]))[0] == pytest.approx(activity, abs=6e-4)


# Saturated sucrose by hand, x_w exp(-6.47 x_s^2), three decimals: 0.847 at 67.4 %
# (25 °C), 0.853 at 66.7 % (20 °C). Measured values run from 0.843 to 0.86.
@pytest.mark.parametrize(("percent", "activity"), [(67.4, 0.847), (66.7, 0.853)])
def test_norrish_gives_the_activity_of_saturated_sucrose(
    percent: float, activity: float
) -> None:
    share = percent / 100
    ideal = reference_a(water=1 - share, carb=share, carb_kg_mol=0.3423)
    real = replace(ideal, pull=math.sqrt(6.47) * ideal.particles)
    assert serum_activity(real, 1 - share) == pytest.approx(activity, abs=6e-4)


def test_sugar_beyond_saturation_stays_crystals() -> None:
    # 66.7 % sucrose is saturated at 20 °C: 2 g a gram of water.
    saturated = wet_of(Composition(water=30, sucrose=60))
    with_crystals = wet_of(Composition(water=30, sucrose=60, fat=10))
    crystals = wet_of(Composition(water=30, sucrose=70))
    assert 100 * crystals.particles == pytest.approx(90 * saturated.particles)
    assert crystals.particles == pytest.approx(with_crystals.particles)


def test_the_ice_of_the_ideal_model_is_raoults() -> None:
    wet = reference_a(water=0.7, carb=0.3, carb_kg_mol=0.342)
    at_c = np.array([-10.0])
    activity = ice_activity(at_c, 0.0)[0]
    serum = WATER_KG_MOL * 0.3 / 0.342 * activity / (1 - activity)
    assert ice_share(wet, at_c)[0] == pytest.approx(0.7 - serum, rel=1e-12)


def test_pure_water_freezes_at_nought_and_wholly() -> None:
    wet = wet_of(Composition(water=100))
    assert freezing_point_c(wet) == pytest.approx(0, abs=1e-9)
    assert ice_share(wet, np.array([-0.001, 0.001])).tolist() == [1.0, 0.0]


def test_what_has_no_free_water_never_freezes() -> None:
    base = wet_of(Composition(water=2, protein=8, fat=34, sucrose=22, starch=30))
    assert freezing_point_c(base) is None
    assert ice_share(base, np.array([-40.0, 10.0])).tolist() == [0.0, 0.0]
    assert base.particles == 0


def test_a_serum_too_strong_to_freeze_above_its_stop_never_freezes() -> None:
    thick = wet_of(Composition(water=15, other_carb=85))
    assert freezing_point_c(thick) is None


def test_no_more_ice_grows_below_the_stop() -> None:
    wet = wet_of(solution("sucrose", 20))
    assert wet.stop_c == -32
    at_stop, below = ice_share(wet, np.array([-32.0, -45.0]))
    assert at_stop == below
    # Maximally concentrated sucrose serum is about 80 % (Slade and Levine 1991, from
    # memory); published values run from 75 to 82 %.
    assert 0.75 < 0.2 / (1 - at_stop) < 0.82


@given(
    sugar=st.floats(1, 45),
    fat=st.floats(0, 40),
    protein=st.floats(0, 10),
    at_c=st.floats(-40, 5),
)
def test_colder_means_more_ice_and_never_more_than_the_free_water(
    sugar: float, fat: float, protein: float, at_c: float
) -> None:
    wet = wet_of(
        Composition(
            water=100 - sugar - fat - protein, sucrose=sugar, fat=fat, protein=protein
        )
    )
    colder, warmer = ice_share(wet, np.array([at_c - 0.5, at_c]))
    assert 0 <= warmer <= colder <= wet.free_water


@given(sugar=st.floats(1, 30), more=st.floats(0.5, 10))
def test_more_sugar_freezes_colder(sugar: float, more: float) -> None:
    little = depression(wet_of(Composition(water=60, fructose=sugar)))
    assert depression(wet_of(Composition(water=60, fructose=sugar + more))) > little


def test_wrong_inputs_are_refused_in_words() -> None:
    with pytest.raises(ValueError, match=r"^a composition of nothing; it must have a"):
        wet_of(Composition())
    with pytest.raises(
        ValueError, match=r"^an air share of 1; it must be from 0 to under 1$"
    ):
        wet_of(Composition(water=100), air=1.0)
    with pytest.raises(ValueError, match=r"^a mass fraction below 0$"):
        reference_a(water=-0.1, carb=1.1, carb_kg_mol=0.3)


def test_without_solutes_there_is_no_stop() -> None:
    assert wet_of(Composition(water=50, fat=50)).stop_c == NEVER_C
