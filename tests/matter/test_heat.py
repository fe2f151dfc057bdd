import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from demould.larder.ingredient import Composition
from demould.matter.heat import (
    MIXINGS,
    conductivity,
    density,
    enthalpy,
    thermal,
)
from demould.matter.water import (
    Wet,
    freezing_point_c,
    ice_share,
    reference_a,
    wet_of,
)

INSERT = reference_a(
    water=0.62,
    carb=0.355,
    carb_kg_mol=0.260,
    protein=0.003,
    fat=0.002,
    fibre=0.012,
    ash=0.008,
)
MOUSSE = reference_a(
    water=0.5, carb=0.2, carb_kg_mol=0.3, protein=0.025, fat=0.27, ash=0.005, air=0.25
)
NAMED = {"insert": INSERT, "mousse": MOUSSE}

# An independent calculation of the ideal model (Raoult, Choi and Okos 1986, parallel
# conduction, Maxwell and Eucken), printed to the digits given: half a last digit.
PRINTED = [
    ("insert", 8, 25227.1, 0.48140, 0),
    ("insert", -5, -43215.8, 0.64175, 0.08500),
    ("insert", -10, -145136.5, 1.22777, 0.36358),
    ("insert", -18, -200532.9, 1.51671, 0.48725),
    ("insert", -35, -254536.7, 1.79744, 0.56200),
    ("mousse", 8, 23750.0, 0.27725, 0),
    ("mousse", -5, -86848.1, 0.55687, 0.22287),
    ("mousse", -10, -142874.7, 0.74089, 0.36228),
    ("mousse", -18, -178550.4, 0.84111, 0.42417),
    ("mousse", -35, -222134.7, 0.95684, 0.46158),
]


@pytest.mark.parametrize(("name", "at_c", "heat", "k", "ice"), PRINTED)
def test_the_ideal_model_is_the_printed_one(
    name: str, at_c: float, heat: float, k: float, ice: float
) -> None:
    wet, at = NAMED[name], np.array([at_c])
    assert enthalpy(wet, at)[0] == pytest.approx(heat, abs=0.051)
    assert conductivity(wet, at, "parallel")[0] == pytest.approx(k, abs=5.1e-6)
    assert ice_share(wet, at)[0] == pytest.approx(ice, abs=5.1e-6)


@pytest.mark.parametrize(
    ("name", "freezing", "heavy", "moles", "heat", "k"),
    [
        ("insert", -4.3383, 1161.254, 1.49872, -13662.0, 0.46146),
        ("mousse", -2.7792, 797.472, 0.75000, -8238.9, 0.26999),
    ],
)
def test_freezing_point_and_density_are_the_printed_ones(
    name: str, freezing: float, heavy: float, moles: float, heat: float, k: float
) -> None:
    wet = NAMED[name]
    point = freezing_point_c(wet)
    assert point == pytest.approx(freezing, abs=5.1e-5)
    assert density(wet) == pytest.approx(heavy, abs=5.1e-4)
    assert wet.particles == pytest.approx(moles, abs=5.1e-6)
    assert point is not None
    at = np.array([point])
    assert enthalpy(wet, at)[0] == pytest.approx(heat, abs=0.051)
    assert conductivity(wet, at, "parallel")[0] == pytest.approx(k, abs=5.1e-6)


# The same independent calculation at -18 °C, printed to three decimals; the series
# one of the mousse ends in a five (0.24753), so one last digit.
MIXED = {
    "parallel": (1.517, 0.841),
    "effective medium": (1.224, 0.594),
    "geometric": (0.956, 0.456),
    "series": (0.493, 0.248),
}


@pytest.mark.parametrize("mixing", MIXINGS)
def test_every_mixing_rule_is_the_printed_one(mixing: str) -> None:
    at = np.array([-18.0])
    insert, mousse = MIXED[mixing]
    assert conductivity(INSERT, at, mixing)[0] == pytest.approx(insert, abs=6e-4)
    assert conductivity(MOUSSE, at, mixing)[0] == pytest.approx(mousse, abs=6e-4)


def only(**share: float) -> Wet:
    none = {"water": 0.0, "protein": 0.0, "fat": 0.0, "carb": 0.0, "fibre": 0.0}
    return Wet(
        **{**none, "ash": 0.0, "particles": 0.0, "pull": 0.0, "bound": 0.0, "air": 0.0}
        | share
    )


# Choi and Okos 1986 at -18, 0, 20 °C from its printed coefficients, five digits.
PURE = [
    ("fat", -18, 0.18562, 933.11, 1956.1),
    ("fat", 0, 0.18071, 925.59, 1984.2),
    ("fat", 20, 0.17512, 917.24, 2011.7),
    ("carb", -18, 0.17503, 1604.7, 1511.6),
    ("carb", 20, 0.22743, 1592.9, 1585.7),
    ("water", 20, 0.60366, 995.74, 4129.3),
    ("protein", 20, 0.20164, 1319.53, None),
]


@pytest.mark.parametrize(("part", "at_c", "k", "heavy", "cp"), PURE)
def test_one_constituent_alone_has_its_own_properties(
    part: str, at_c: float, k: float, heavy: float, cp: float | None
) -> None:
    wet = only(**{part: 1.0})
    assert conductivity(wet, np.array([at_c]))[0] == pytest.approx(k, abs=6e-6)
    assert density(wet, at_c) == pytest.approx(heavy, abs=0.051)
    if cp is not None:
        below, above = enthalpy(wet, np.array([at_c - 0.5, at_c + 0.5]))
        assert above - below == pytest.approx(cp, abs=0.051)


def test_ice_alone_conducts_and_stores_as_printed() -> None:
    # Same source: ice at -18 °C 2.3650 W/(m K), 1952.9 J/(kg K); half a last digit.
    water = only(water=1.0)
    assert conductivity(water, np.array([-18.0]))[0] == pytest.approx(2.3650, abs=6e-5)
    below, above = enthalpy(water, np.array([-18.5, -17.5]))
    assert above - below == pytest.approx(1952.9, abs=0.051)


@pytest.mark.parametrize("wet", [INSERT, MOUSSE, wet_of(Composition(water=100))])
def test_straight_lines_between_nodes_lose_no_heat(wet: Wet) -> None:
    table = thermal(wet, "parallel")
    assert table.freezing_c is not None
    assert table.freezing_c in table.at_c
    at_c = np.linspace(-40, 10, 4001)
    read = np.interp(at_c, table.at_c, table.enthalpy)
    frozen = table.enthalpy[-1] - table.enthalpy[0]
    # Pure water melts within the last 0.02 K: leave that interval out.
    outside = np.abs(at_c - table.freezing_c) > 0.021
    off = np.abs(read - enthalpy(wet, at_c))[outside].max()
    assert off < 1e-3 * frozen


def test_what_never_freezes_has_an_even_table() -> None:
    table = thermal(wet_of(Composition(fat=60, sucrose=40)))
    assert table.freezing_c is None
    assert not table.ice.any()


def test_what_freezes_only_beyond_the_table_counts_as_never() -> None:
    spirit = reference_a(water=0.2, carb=0.8, carb_kg_mol=0.046)
    point = freezing_point_c(spirit)
    assert point is not None
    assert point < -60
    assert thermal(spirit).freezing_c is None


def test_the_stop_of_ice_is_a_node() -> None:
    table = thermal(wet_of(Composition(water=70, sucrose=30)))
    assert -32.0 in table.at_c


@given(
    water=st.floats(0.1, 0.9),
    air=st.floats(0, 0.6),
    at_c=st.floats(-40, 20),
)
def test_mixing_rules_keep_their_order_and_air_insulates(
    water: float, air: float, at_c: float
) -> None:
    at = np.array([at_c])
    dense = reference_a(water=water, carb=0.9 * (1 - water), carb_kg_mol=0.3, fat=0.1)
    foamy = reference_a(
        water=water, carb=0.9 * (1 - water), carb_kg_mol=0.3, fat=0.1, air=air
    )
    k = {m: conductivity(dense, at, m)[0] for m in MIXINGS}
    slack = 1 + 1e-9
    assert k["series"] <= k["geometric"] * slack
    assert k["geometric"] <= k["effective medium"] * slack
    assert k["effective medium"] <= k["parallel"] * slack
    assert conductivity(foamy, at)[0] <= k["effective medium"] * slack
    assert density(foamy) == pytest.approx((1 - air) * density(dense), rel=1e-12)


@given(water=st.floats(0.05, 0.95), sugar=st.floats(0.02, 1), warm=st.floats(-45, 40))
def test_warmer_always_holds_more_heat(water: float, sugar: float, warm: float) -> None:
    wet = reference_a(
        water=water, carb=sugar * (1 - water), carb_kg_mol=0.3, fat=(1 - sugar) / 2
    )
    cool, warmer = enthalpy(wet, np.array([warm, warm + 0.01]))
    assert cool < warmer
    assert (np.diff(thermal(wet).enthalpy) > 0).all()
