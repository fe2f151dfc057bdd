"""The trade's scale of sweetness and of what keeps from freezing."""

import pytest

from demould.larder.ingredient import Composition
from demould.larder.read import ingredient, scale
from demould.matter.sweetness import antifreeze, sweetness


def test_sugar_is_a_hundred_by_definition() -> None:
    assert sweetness(Composition(sucrose=100)) == pytest.approx(100)
    assert antifreeze(Composition(sucrose=100)) == pytest.approx(100)


@pytest.mark.parametrize(
    ("part", "molar"),
    [
        ("glucose", 180.16),
        ("lactose", 342.3),
        ("erythritol", 122.12),
        ("alcohol", 46.07),
    ],
)
def test_antifreeze_goes_by_molar_mass(part: str, molar: float) -> None:
    # 342.3 over the molar mass; the trade rounds to its tens.
    assert scale(part)["antifreeze"].value == pytest.approx(34230 / molar, rel=0.01)


def test_glucose_syrup_as_the_trade_counts_it() -> None:
    # Common practice, no source: dry DE40-42 has 45 to 50 and 80 to 90; 80 % solids.
    made_of = ingredient("glucose_de40").per_100g
    solids = 100 - made_of.water
    assert 80 <= 100 * antifreeze(made_of) / solids <= 90
    assert 45 <= 100 * sweetness(made_of) / solids <= 50


def test_salt_counts_once_and_never_more_than_the_ash() -> None:
    assert antifreeze(ingredient("salt").per_100g) == pytest.approx(585, rel=0.02)
    assert antifreeze(Composition(water=99, ash=0, sodium_mg=390)) == 0
