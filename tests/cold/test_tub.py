from dataclasses import replace

import numpy as np
import pytest

from demould.cold.tub import Layer, deepest, hours_to_cool, slab_roots

LAYER = Layer(start_c=35, target_c=5, air_c=3, film=15)


# Worked by another hand: 35 to 5 °C in +3 °C air, wire shelf, 15 W/m2K both faces,
# 0.40 W/mK, 3.1 MJ/m3K; printed to a tenth or a whole hour.
@pytest.mark.parametrize(
    ("depth_mm", "hours", "rounding"),
    [(20, 1.8, 0.05), (50, 5.5, 0.05), (100, 14, 0.5)],
)
def test_trays_cool_as_printed(depth_mm: float, hours: float, rounding: float) -> None:
    found = hours_to_cool(LAYER, depth_mm / 1000)
    assert found == pytest.approx(hours, abs=rounding)


# Incropera Table 5.1, plane wall, four decimals.
@pytest.mark.parametrize(
    ("biot", "root"), [(0.1, 0.3111), (1.0, 0.8603), (10.0, 1.4289)]
)
def test_roots_are_the_tables(biot: float, root: float) -> None:
    assert slab_roots(biot, 1)[0] == pytest.approx(root, abs=5e-5)
    many = slab_roots(biot, 6)
    assert many * np.tan(many) == pytest.approx(biot)


def test_a_solid_shelf_is_a_layer_of_twice_the_depth() -> None:
    solid = hours_to_cool(replace(LAYER, shelf="solid shelf"), 0.02)
    assert solid == pytest.approx(hours_to_cool(LAYER, 0.04))


def test_how_deep_it_may_be_leads_back_to_the_hours() -> None:
    depth = deepest(LAYER, 2.0)
    assert 0.02 < depth < 0.025
    assert hours_to_cool(LAYER, depth) == pytest.approx(2.0)
    assert deepest(LAYER, 1000.0) == 0.3


@pytest.mark.parametrize(("target", "air"), [(3.0, 3.0), (2.0, 3.0), (40.0, 3.0)])
def test_air_must_be_colder_and_the_target_between(target: float, air: float) -> None:
    with pytest.raises(
        ValueError,
        match=rf"^a layer of 35 °C comes to {target:g} °C only in colder air than that,"
        rf" and this is {air:g} °C$",
    ):
        Layer(start_c=35, target_c=target, air_c=air, film=15)
