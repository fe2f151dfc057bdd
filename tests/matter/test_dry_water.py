"""Nearly dry syrups: no ice on paper where there is none in the pot."""

import pytest

from demould.larder.read import ingredient
from demould.matter.water import freezing_point_c, wet_of


@pytest.mark.parametrize("name", ["sorbitol", "glycerol", "sucrose"])
def test_powders_and_dry_syrups_do_not_freeze(name: str) -> None:
    point = freezing_point_c(wet_of(ingredient(name).per_100g))
    assert point is None or point < -30
