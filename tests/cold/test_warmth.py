import math

import numpy as np
import pytest

from demould.cold.piece import place_of
from demould.cold.warmth import warmth_at
from tests.cold.pieces import ball

BLAST = place_of("blast_chiller", -30)


def test_on_the_way_it_is_warmer_the_deeper() -> None:
    told = warmth_at(ball(6), BLAST, 900)
    deep = [math.hypot(r, z - 0.028) for r, z in told.points]
    # A ball has only its depth: cells of equal depth are equally warm, so a rank by
    # depth is one by temperature, but for neighbours.
    order = np.corrcoef(np.argsort(np.argsort(deep)), np.argsort(np.argsort(told.at_c)))
    assert order[0, 1] < -0.97
    assert len(told.points) == len(told.at_c)
    assert told.heart == pytest.approx((0, 0.028), abs=1e-4)
    assert told.seconds == 900
    assert len(told.outlines) == 2


def test_at_first_it_is_as_it_went_in_and_at_last_as_the_air() -> None:
    first = warmth_at(ball(6), BLAST, 0.5)
    assert np.median(first.at_c) == pytest.approx(6, abs=0.05)
    last = warmth_at(ball(6), BLAST, 20 * 3600)
    assert last.at_c == pytest.approx([-30] * len(last.at_c), abs=0.05)
