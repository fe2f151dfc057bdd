"""Fat that sets in the cold, by the larder's figures (from memory of handbooks)."""

import numpy as np
import pytest

from demould.larder.ingredient import Composition
from demould.larder.read import melting_heat
from demould.matter.fat import setting_fat
from demould.matter.heat import Thermal, thermal
from demould.matter.water import wet_of

COCOA_BUTTER = Composition(fat=100, cocoa_butter=100)
CREAM = Composition(water=59, fat=35, milk_fat=35, protein=2, lactose=4)


def table(made_of: Composition) -> Thermal:
    return thermal(wet_of(made_of), setting=setting_fat(made_of))


def drawn(of: Thermal, warm: float, cold: float) -> float:
    at = np.interp([warm, cold], of.at_c, of.enthalpy)
    return float(at[0] - at[1])


def test_cocoa_butter_gives_off_its_sensible_and_its_melting_heat() -> None:
    # Sensible: Choi and Okos 1986, 1984.2 + 1.4733 T - 4.8008e-3 T2 from -20 to 40.
    sensible = 1984.2 * 60 + 1.4733 / 2 * (1600 - 400) - 4.8008e-3 / 3 * (64000 + 8000)
    latent = melting_heat("cocoa butter")
    found = drawn(table(COCOA_BUTTER), 40, -20)
    assert found == pytest.approx(sensible + 130e3, rel=1e-9)
    # Handbooks of chocolate give 110 to 157 J/g for cocoa butter; from memory.
    assert latent.low * 1000 <= found - sensible <= latent.high * 1000


def test_half_of_milk_fat_sets() -> None:
    plain = thermal(wet_of(CREAM))
    more = drawn(table(CREAM), 40, -20) - drawn(plain, 40, -20)
    assert more == pytest.approx(0.35 * 0.50 * 85e3, rel=1e-3)


def test_the_shares_bend_at_nodes_and_heat_rises() -> None:
    for made_of in (COCOA_BUTTER, CREAM):
        found = table(made_of)
        assert (np.diff(found.enthalpy) > 0).all()
        assert (np.diff(found.at_c) > 0).all()
    assert {27.5, 32.5} <= set(table(COCOA_BUTTER).at_c)


def test_without_such_fat_nothing_changes() -> None:
    for made_of in (Composition(water=70, sucrose=30), Composition(fat=60, sucrose=40)):
        assert setting_fat(made_of) == ()
        plain, found = thermal(wet_of(made_of)), table(made_of)
        assert (plain.at_c == found.at_c).all()
        assert (plain.enthalpy == found.enthalpy).all()
