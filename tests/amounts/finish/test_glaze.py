"""Glaze that stays, is poured, runs off."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from demould.amounts.finish.glaze import Poured, poured
from demould.amounts.layers.piece import piece
from demould.mise.dessert import Dessert, Glaze
from demould.mise.figure import unfold
from tests.desserts.domes import MEADOW_DOMES
from tests.desserts.kitchen import KITCHEN
from tests.desserts.others import EMBER_LOG


def over(dessert: Dessert, pieces: int) -> Poured:
    (glaze,) = dessert.finish
    assert isinstance(glaze, Glaze)
    part = next(p for p in piece(dessert, KITCHEN).parts if p.how == "glaze")
    return poured(glaze, part, pieces)


def test_a_log_keeps_231_g_of_601_poured() -> None:
    # 1027 cm2 x 1.8 mm x 1.25 g/ml, times 2.6.
    log = over(EMBER_LOG, 1)
    assert log.stays.value == pytest.approx(231, abs=0.5)
    assert log.pour.value == pytest.approx(601, abs=0.5)
    assert log.runs_off.value == pytest.approx(601 - 231, abs=0.9)


def test_14_domes_want_572_g_poured() -> None:
    # 77 cm2 x 1.7 mm x 1.25 g/ml = 16.4 g each, times 2.5.
    domes = over(MEADOW_DOMES, 14)
    assert domes.stays.value / 14 == pytest.approx(16.4, abs=0.05)
    assert domes.pour.value == pytest.approx(572, abs=0.5)
    assert str(getattr(domes.pour.origin, "rule", "")) == "14 pieces x 16.4 g x 2.5"
    names = {part.name for _, part in unfold(domes.pour)}
    assert {"film of the glaze", "poured, times what stays", "diameter"} <= names


@given(st.integers(1, 500))
def test_poured_is_what_stays_and_what_runs_off(pieces: int) -> None:
    domes = over(MEADOW_DOMES, pieces)
    assert domes.pour.value == pytest.approx(domes.stays.value + domes.runs_off.value)
