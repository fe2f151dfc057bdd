"""What sticks to the bowl."""

from dataclasses import replace

import pytest
from hypothesis import given
from hypothesis import strategies as st

from demould.amounts.counts.losses import to_make_g, usable
from demould.matter.grams import after_cooking
from tests.desserts.build import stated
from tests.desserts.larder import find
from tests.desserts.pebble import CENTRE, CRISP, GANACHE


def test_the_percent_goes_first_and_then_the_grams() -> None:
    # 892.6 x 0.96 - 40.
    left = usable(GANACHE, after_cooking(GANACHE, find))
    assert left.value == pytest.approx(816.9, abs=0.005)
    assert str(getattr(left.origin, "rule", "")) == (
        "(batch less 4 %) less 1 x 40 g, once a whip"
    )


def test_without_fixed_grams_it_is_the_percent() -> None:
    left = usable(CRISP, stated(316, "g"))
    assert left.value == pytest.approx(284.4)
    assert str(getattr(left.origin, "rule", "")) == "batch less 10 %"


def test_a_small_batch_may_be_all_loss() -> None:
    assert usable(GANACHE, stated(40, "g")).value == 0


@given(st.floats(1, 5000), st.integers(1, 5), st.floats(0, 60))
def test_what_is_made_for_a_need_leaves_the_need(
    need: float, times: int, share: float
) -> None:
    loss = replace(CENTRE.loss, share=stated(share, "%"))
    made = replace(CENTRE, loss=loss)
    grams = to_make_g(made, need, times)
    assert usable(made, stated(grams, "g"), times).value == pytest.approx(need)
