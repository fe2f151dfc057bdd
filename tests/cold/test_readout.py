import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from demould.cold.run.readout import passing, value_at


def test_a_decay_is_read_between_steps() -> None:
    # exp(-t) sampled every 0.1: a cubic with slopes good to second order is within
    # some 0.1^2 / 10 of it, in value and hence in time.
    seconds = np.arange(0, 5.01, 0.1)
    values = np.exp(-seconds)
    for level in (0.9, 0.5, 0.123, 0.01):
        at = passing(seconds, values, level)
        assert at == pytest.approx(-np.log(level), abs=2e-3)


def test_a_straight_line_is_read_exactly() -> None:
    seconds = np.array([0.0, 1.0, 4.0, 5.0])
    for moment in (0.0, 0.3, 2.5, 4.9, 5.0):
        assert value_at(seconds, 3 - seconds, moment) == pytest.approx(3 - moment)


def test_passing_counts_from_the_side_of_the_start() -> None:
    seconds = np.array([0.0, 1.0, 2.0, 3.0])
    there_and_back = np.array([-18.0, -8.0, -12.0, -18.0])
    assert passing(seconds, there_and_back, -18.0) == 0.0
    assert passing(seconds, there_and_back, -30.0) is None
    assert passing(seconds, there_and_back, 0.0) is None
    up = passing(seconds, there_and_back, -10.0)
    assert up is not None
    assert 0 < up < 1


@given(st.lists(st.floats(-50, 50), min_size=3, max_size=8), st.floats(0, 1))
def test_readings_never_overshoot_a_step(values: list[float], share: float) -> None:
    seconds = np.cumsum(np.arange(1.0, len(values) + 1))
    read = np.array(values)
    for n in range(len(values) - 1):
        moment = float(seconds[n] + share * (seconds[n + 1] - seconds[n]))
        low, high = sorted(read[n : n + 2])
        assert low - 1e-9 <= value_at(seconds, read, moment) <= high + 1e-9
