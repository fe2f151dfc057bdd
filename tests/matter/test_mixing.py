"""Temperatures of a mix: a ganache by hand, ice and fat by their heats."""

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from demould.larder.ingredient import Composition
from demould.larder.read import ingredient
from demould.matter.fat import solid_share
from demould.matter.mixing import Poured, mixed_c


def part(name: str, grams: float, at_c: float, *, unmelted: bool = False) -> Poured:
    made_of = ingredient(name).per_100g
    return Poured(made_of=made_of, grams=grams, at_c=at_c, unmelted=unmelted)


SOAKED = Poured(
    made_of=Composition(water=85.5, protein=14.3, ash=0.2), grams=21.6, at_c=20
)
HOT = (part("cream_35", 280, 78), SOAKED)
COLD = part("cream_35", 400, 4)
PIECES = part("white_couv_35", 190, 20, unmelted=True)


def test_melted_couverture_ends_at_35() -> None:
    # By hand, 3.3, 3.9 and 1.6 J/g K: (280 x 3.3 x 78 + 21.6 x 3.9 x 20 + 190 x 1.6 x
    # 40) / 1312.2 = 65.5; with 400 g at 4 °C (x 3.3 + 5280) / 2632.2 = 34.6. Heat by
    # make-up is a little other: allow 1 K.
    first = mixed_c((*HOT, part("white_couv_35", 190, 40)))
    assert first.likely == pytest.approx(65.5, abs=1)
    last = mixed_c((*HOT, part("white_couv_35", 190, 40), COLD))
    assert last.likely == pytest.approx(34.6, abs=1)
    assert last.low == pytest.approx(last.likely - 2.2, abs=0.4)


def test_unmelted_couverture_ends_below_the_window() -> None:
    # By hand with 45 J a gram of couverture more: 54.3, then 29.1 °C if all of it
    # melted. At 30 °C half its fat is solid still, which spares 4 kJ: 1.5 K.
    first = mixed_c((*HOT, PIECES))
    assert first.likely == pytest.approx(54.3, abs=1.1)
    last = mixed_c((*HOT, PIECES, COLD))
    assert 29.1 <= last.likely <= 30.7
    assert last.low == pytest.approx(29.1, abs=0.3)


def test_ice_takes_its_heat() -> None:
    # 1 g of ice at 0 °C and 1 g of water at 80: all melts and ends near 0 (334 J by
    # 4.18 is 80 K).
    water = Composition(water=100)
    ice = Poured(made_of=water, grams=100, at_c=-0.5)
    warm = Poured(made_of=water, grams=100, at_c=80)
    assert mixed_c((ice, warm)).likely == pytest.approx(0, abs=1)


@given(grams=st.floats(1, 1000), at_c=st.floats(0, 90))
def test_a_mix_of_the_same_is_the_same(grams: float, at_c: float) -> None:
    one = part("cream_35", grams, at_c)
    assert mixed_c((one, one)).likely == pytest.approx(at_c, abs=1e-6)


@given(cold=st.floats(0, 40), hot=st.floats(41, 100), grams=st.floats(10, 500))
def test_it_ends_between_its_parts(cold: float, hot: float, grams: float) -> None:
    found = mixed_c((part("milk_whole", grams, cold), part("cream_35", 100, hot)))
    assert cold <= found.low <= found.likely <= hot


def test_solid_fat_falls_with_warmth() -> None:
    at_c = np.array([4.0, 20, 28, 32, 36, 60])
    shares = list(solid_share("cocoa butter", at_c))
    assert shares == sorted(shares, reverse=True)
    assert (shares[0], shares[-1]) == (1.0, 0.0)


def test_what_cannot_be_is_refused_in_a_sentence() -> None:
    with pytest.raises(ValueError, match=r"^0 g to mix; it must be more than 0$"):
        part("water", 0, 10)
    with pytest.raises(ValueError, match=r"^a part at 300 °C; it must be from -40"):
        part("water", 1, 300)
    with pytest.raises(ValueError, match=r"^nothing to mix; give at least one part$"):
        mixed_c(())
