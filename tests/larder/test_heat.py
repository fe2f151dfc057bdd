"""Heat properties against printed values and laws."""

import math

import pytest

from demould.larder.fact import Quadratic
from demould.larder.read import constituents, film, film_kinds, material


def at(curve: Quadratic, t_c: float) -> float:
    return curve.a + curve.b * t_c + curve.c * t_c**2


# Choi and Okos 1986, worked out from the printed coefficients at three temperatures by
# hand; conductivity to 5 figures, density to 0.01, heat capacity to 0.1.
# Half of the last place is allowed.
WORKED = [
    ("water", -18, 0.53719, 995.91, 4132.3),
    ("water", 0, 0.57109, 997.18, 4128.9),
    ("water", 20, 0.60366, 995.74, 4129.3),
    ("ice", -18, 2.3650, 919.24, 1952.9),
    ("ice", 0, 2.2196, 916.89, 2062.3),
    ("fat", -18, 0.18562, 933.11, 1956.1),
    ("fat", 0, 0.18071, 925.59, 1984.2),
    ("fat", 20, 0.17512, 917.24, 2011.7),
    ("carbohydrate", -18, 0.17503, 1604.7, 1511.6),
    ("carbohydrate", 0, 0.20141, 1599.1, 1548.8),
    ("carbohydrate", 20, 0.22743, 1592.9, 1585.7),
]


@pytest.mark.parametrize(("name", "t_c", "k", "rho", "cp"), WORKED)
def test_constituents_follow_choi_and_okos(
    name: str, t_c: float, k: float, rho: float, cp: float
) -> None:
    found = constituents()[name]
    k_half = 0.00005 if name == "ice" else 0.000005
    rho_half = 0.05 if name == "carbohydrate" else 0.005
    assert at(found.conductivity, t_c) == pytest.approx(k, abs=k_half * 1.01)
    assert at(found.density, t_c) == pytest.approx(rho, abs=rho_half * 1.01)
    assert at(found.heat_capacity, t_c) == pytest.approx(cp, abs=0.0505)


def test_density_of_protein_at_20_is_the_published_one() -> None:
    # Published lists of food constituents at 20 °C give 1319.5 (after Choi and Okos).
    assert at(constituents()["protein"].density, 20) == pytest.approx(
        1319.53, abs=0.006
    )


# CRC Handbook of Chemistry and Physics (from memory): k, density, cp.
# Choi and Okos's own fit leaves the handbook by 1 % for water, by 4 % for ice.
CRC = [
    ("water", 20.0, 0.598, 998.2, 4184.0, 0.015),
    ("ice", 0.0, 2.14, 916.7, 2100.0, 0.04),
]


@pytest.mark.parametrize(("name", "t_c", "k", "rho", "cp", "rel"), CRC)
def test_water_and_ice_are_near_the_handbook(
    name: str, t_c: float, k: float, rho: float, cp: float, rel: float
) -> None:
    found = constituents()[name]
    assert at(found.conductivity, t_c) == pytest.approx(k, rel=rel)
    assert at(found.density, t_c) == pytest.approx(rho, rel=rel)
    assert at(found.heat_capacity, t_c) == pytest.approx(cp, rel=rel)


@pytest.mark.parametrize("name", constituents())
@pytest.mark.parametrize("t_c", range(-40, 61, 10))
def test_curves_stay_between_their_bounds(name: str, t_c: int) -> None:
    found = constituents()[name]
    for curve in (found.conductivity, found.density, found.heat_capacity):
        assert curve.low <= at(curve, t_c) <= curve.high


def test_the_seven_constituents_are_there() -> None:
    assert set(constituents()) == {
        "water", "ice", "protein", "fat", "carbohydrate", "fibre", "ash",
    }  # fmt: skip


KINDS = {
    "still_freezer", "upright_freezer", "blast_chiller", "fan_fridge_open",
    "fridge_closed_box", "covered_tray", "still_fridge", "room",
}  # fmt: skip


def test_the_places_are_there() -> None:
    assert set(film_kinds()) == KINDS


@pytest.mark.parametrize("kind", sorted(KINDS))
def test_radiation_is_what_total_and_convective_leave_between_them(kind: str) -> None:
    # Stefan-Boltzmann: two black surfaces at 21 °C exchange 4 s T^3 = 5.8 W/(m2 K);
    # nothing in a kitchen exchanges more.
    black = 4 * 5.670e-8 * 294.15**3
    known = film(kind)
    for bound in ("low", "value", "high"):
        between = getattr(known.total, bound) - getattr(known.convective, bound)
        assert 0 < between < black


def nusselt_free(rayleigh: float, prandtl: float) -> float:
    """Sphere in still air (Churchill; Incropera et al., 6th ed., eq. 9.35)."""
    hindered = math.pow(1 + math.pow(0.469 / prandtl, 9 / 16), 4 / 9)
    return 2 + 0.589 * math.pow(rayleigh, 0.25) / hindered


def nusselt_forced(reynolds: float, prandtl: float) -> float:
    """Sphere in a stream, even viscosity (Whitaker 1972)."""
    stirred = 0.4 * math.sqrt(reynolds) + 0.06 * math.cbrt(reynolds) ** 2
    return 2 + stirred * math.pow(prandtl, 0.4)


def test_a_lone_sphere_in_a_still_freezer_is_in_the_band() -> None:
    # Air at -11 °C (Incropera et al., Table A.4, from memory).
    nu, alpha, k, d = 1.24e-5, 1.73e-5, 0.0235, 0.059
    rayleigh = 9.81 / 261.6 * (-5 - -18) * d**3 / (nu * alpha)
    convective = nusselt_free(rayleigh, nu / alpha) * k / d
    total = convective + 4 * 0.9 * 5.670e-8 * 261.6**3
    known = film("still freezer")
    assert known.convective.low < convective < known.convective.high
    assert known.total.value < total < known.total.high


def test_a_lone_sphere_in_a_blast_of_three_metres_is_in_the_band() -> None:
    # Air at -23 °C (Incropera et al., Table A.4, from memory).
    nu, prandtl, k, d = 1.14e-5, 0.72, 0.0223, 0.059
    convective = nusselt_forced(3 * d / nu, prandtl) * k / d
    total = convective + 4 * 0.9 * 5.670e-8 * 250.0**3
    known = film("blast")
    assert known.convective.value < convective < known.convective.high
    assert known.total.value < total < known.total.high


def test_places_stand_in_the_order_of_their_wind() -> None:
    order = [
        "fridge_closed_box", "still_fridge", "still_freezer", "upright_freezer",
        "fan_fridge_open", "blast_chiller",
    ]  # fmt: skip
    likely = [film(kind).total.value for kind in order]
    assert likely == sorted(likely)


@pytest.mark.parametrize("kind", ["fridge_closed_box", "covered_tray"])
def test_a_cover_lets_in_less_water_than_heat(kind: str) -> None:
    known = film(kind)
    assert known.vapour is not None
    assert known.vapour.high < known.convective.low


@pytest.mark.parametrize(
    ("kind", "litres", "pieces_m2", "changes"),
    [
        # As the table's remarks say: least, likely and most changes of air an hour.
        ("fridge_closed_box", 8, 0.12, (0.1, 0.5, 2)),
        ("covered_tray", 3.6, 0.08, (3, 11, 40)),
    ],
)
def test_what_a_cover_lets_in_is_its_changes_of_air(
    kind: str, litres: float, pieces_m2: float, changes: tuple[float, float, float]
) -> None:
    # Air 1.28 kg/m3 and 1006 J/kgK at 3 °C (handbook values), Le^(2/3) 0.89: a flow of
    # V m3/s over A m2 brings as much water as a film of V / A x rho cp Le^(2/3).
    known = film(kind).vapour
    assert known is not None
    by_flow = [
        litres / 1000 * each / 3600 / pieces_m2 * 1.28 * 1006 * 0.89 for each in changes
    ]
    assert (known.low, known.value, known.high) == pytest.approx(by_flow, rel=0.25)


def test_only_fridges_say_how_damp_they_are() -> None:
    damp = {kind for kind in film_kinds() if film(kind).humidity}
    assert damp == {"fan_fridge_open", "still_fridge"}


def test_a_place_has_the_names_people_use() -> None:
    assert film("fan fridge").kind == "fan_fridge_open"
    assert film("Upright").kind == "upright_freezer"
    assert film("closed boxes").kind == "fridge_closed_box"
    with pytest.raises(KeyError, match="pond"):
        film("pond")


# Diffusivity k / (rho cp) in m2/s at 300 K: Incropera et al., 6th ed., Table A.1 (steel
# AISI 304, aluminium; from memory); silicone and polycarbonate lie near 1e-7 as all
# plastics do. Three figures printed: 1 %; for the plastics a factor of two.
DIFFUSIVITY = [
    ("steel", 3.95e-6, 1.01),
    ("aluminium", 97.1e-6, 1.01),
    ("silicone", 1.3e-7, 2),
    ("polycarbonate", 1.4e-7, 2),
]


@pytest.mark.parametrize(("name", "diffusivity", "times"), DIFFUSIVITY)
def test_materials_lead_heat_as_the_handbook_says(
    name: str, diffusivity: float, times: float
) -> None:
    known = material(name)
    found = known.conductivity.value / (known.density.value * known.heat_capacity.value)
    assert abs(math.log(found / diffusivity)) <= math.log(times)


def test_an_unknown_material_is_refused() -> None:
    assert material("stainless steel").name == "steel"
    with pytest.raises(KeyError, match="glass"):
        material("glass")
