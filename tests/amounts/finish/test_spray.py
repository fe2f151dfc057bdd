"""Spray that lands and spray that does not."""

from dataclasses import replace

import pytest
from hypothesis import given
from hypothesis import strategies as st

from demould.amounts.finish.spray import Sprayed, in_steps, sprayed
from demould.amounts.layers.piece import piece
from demould.mise.component import InSteps, Scaled
from demould.mise.dessert import Spray
from tests.desserts.build import stated
from tests.desserts.kitchen import KITCHEN
from tests.desserts.pebble import RIVER_PEBBLE, SPRAY


def on(pieces: int) -> Sprayed:
    spray = RIVER_PEBBLE.finish[1]
    assert isinstance(spray, Spray)
    part = next(p for p in piece(RIVER_PEBBLE, KITCHEN).parts if p.how == "spray")
    return sprayed(spray, part, SPRAY, pieces)


def test_27_pebbles_want_60_g_made_and_58_loaded() -> None:
    # 0.10 mm x 107.8 cm2 x 1.00 = 1.08 g on; half lands: 29 lands, 29 lost, 2 left.
    found = on(27)
    assert found.lands.value == pytest.approx(29, abs=0.5)
    assert found.load.value == pytest.approx(58, abs=0.5)
    assert found.made.value == 60
    assert found.lost.value == pytest.approx(29, abs=0.5)
    assert found.left.value == pytest.approx(2, abs=0.5)


@given(st.integers(1, 1000))
def test_made_is_what_lands_is_lost_and_left(pieces: int) -> None:
    found = on(pieces)
    assert found.made.value == pytest.approx(
        found.lands.value + found.lost.value + found.left.value
    )
    assert 0 <= found.left.value + 1e-3 < 20.01


def test_steps_go_up_and_a_full_step_stays() -> None:
    stepped = replace(SPRAY, making=InSteps(of=stated(20, "g")))
    assert in_steps(stepped, stated(40, "g")).value == 40
    assert in_steps(stepped, stated(40.1, "g")).value == 60
    assert in_steps(replace(SPRAY, making=Scaled()), stated(40.1, "g")).value == 40.1
