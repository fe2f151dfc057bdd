"""Syrups by their Brix."""

import pytest

from demould.larder.find import find_ingredient, ingredient
from demould.larder.syrup import density_of_brix, syrup

# Sucrose in water at 20 °C, g/ml: CRC Handbook of Chemistry and Physics, concentrative
# properties of aqueous solutions; values quoted from memory, to 0.001.
MEMORY_CRC = [(5, 1.0178), (15, 1.0592), (25, 1.1036), (45, 1.2025), (65, 1.3163)]


@pytest.mark.parametrize(("brix", "density"), MEMORY_CRC)
def test_density_between_the_tens_is_the_handbook_s(
    brix: float, density: float
) -> None:
    assert density_of_brix(brix) == pytest.approx(density, abs=0.0015)


@pytest.mark.parametrize(
    "name", ["sugar syrup 30 Brix", "Syrup 30 °Brix", "simple syrup, 30 Bx"]
)
def test_a_syrup_is_known_by_its_brix(name: str) -> None:
    found = find_ingredient(name)

    assert found is not None
    assert (found.id, found.per_100g.sucrose, found.per_100g.water) == (
        "syrup_30_brix",
        30,
        70,
    )
    assert ingredient(found.id) == found


@pytest.mark.parametrize("name", ["syrup", "syrup 95 brix", "glucose syrup 30 brix"])
def test_what_is_no_sugar_syrup_is_none(name: str) -> None:
    assert syrup(name) is None
