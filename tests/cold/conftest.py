"""Materials the cold checks share."""

from collections.abc import Callable

import numpy as np
import pytest

from demould.matter.heat import Thermal, thermal
from demould.matter.water import reference_a

Plain = Callable[[float, float, float], Thermal]


@pytest.fixture(scope="session")
def plain() -> Plain:
    """Something that never freezes: conductivity, density, heat capacity."""

    def make(k: float, density: float, capacity: float) -> Thermal:
        at_c = np.array([-80.0, 80.0])
        return Thermal(
            at_c=at_c,
            enthalpy=capacity * at_c,
            conductivity=np.full(2, k),
            ice=np.zeros(2),
            density=density,
            freezing_c=None,
        )

    return make


@pytest.fixture(scope="session")
def mousse() -> Thermal:
    """The ideal model's mousse, with conduction in parallel as its cases had it."""
    wet = reference_a(
        water=0.5,
        carb=0.2,
        carb_kg_mol=0.3,
        protein=0.025,
        fat=0.27,
        ash=0.005,
        air=0.25,
    )
    return thermal(wet, "parallel")


@pytest.fixture(scope="session")
def insert() -> Thermal:
    """The ideal model's fruit centre."""
    wet = reference_a(
        water=0.62,
        carb=0.355,
        carb_kg_mol=0.26,
        protein=0.003,
        fat=0.002,
        fibre=0.012,
        ash=0.008,
    )
    return thermal(wet, "parallel")
