import numpy as np
import pytest

from demould.cold.around.load import (
    Load,
    Lump,
    Machine,
    air_under,
    capacity_of,
    log_of,
)

STRONG = Machine(set_c=-20, capacity=300, holds=20e3)
TRAYS = Lump(name="trays", holds=1600, passes=1.6, start_c=21)
ALWAYS = np.array([0.0, 1e6])
WARM = np.array([-5.0, -5.0])


def test_a_place_at_rest_stays_at_rest() -> None:
    goods = Lump(name="goods", holds=9e3, passes=2, start_c=-20)
    load = Load(machine=STRONG, pieces=0, lumps=(goods,))
    warmed = air_under(load, 0.1, ALWAYS, WARM, 3600)
    assert warmed.air_c == pytest.approx(-20)
    assert warmed.lumps == pytest.approx(-20)
    assert warmed.taken == pytest.approx(0, abs=1e-6)


def test_the_machine_takes_what_comes_in() -> None:
    # The scheme's own balance, summed here by other terms: exact to rounding.
    load = Load(machine=STRONG, pieces=24, lumps=(TRAYS,))
    warmed = air_under(load, 0.05, ALWAYS, WARM, 7200)
    dt, air = np.diff(warmed.seconds), warmed.air_c[1:]
    pieces = 24 * 0.05 * float((dt * (-5 - air)).sum())
    walls = STRONG.leak * float((dt * (-20 - air)).sum())
    trays = 1600 * (21 - float(warmed.lumps[-1, 0]))
    kept = STRONG.holds * (float(air[-1]) + 20)
    assert warmed.taken == pytest.approx(pieces + walls + trays - kept, rel=1e-9)


def test_air_settles_where_machine_and_load_balance() -> None:
    # By hand: 24 * 0.05 W/K * (-5 - T) = (100 + 1.2) W/K * (T + 20): T = -19.824.
    load = Load(machine=STRONG, pieces=24)
    warmed = air_under(load, 0.05, ALWAYS, WARM, 24 * 3600)
    assert warmed.air_c[-1] == pytest.approx((-6 - 101.2 * 20) / 102.4, abs=1e-6)


def test_a_machine_at_its_end_lets_the_air_warm() -> None:
    # 5 W against 1.2 W/K * (-5 - T) + 1.2 * (-20 - T): T = (-30 - 5) / 2.4 = -14.583.
    weak = Machine(set_c=-20, capacity=5, holds=20e3)
    warmed = air_under(Load(machine=weak, pieces=24), 0.05, ALWAYS, WARM, 48 * 3600)
    assert warmed.air_c[-1] == pytest.approx(-35 / 2.4, abs=1e-3)


def test_a_machine_never_heats() -> None:
    cold = Lump(name="ice", holds=1e6, passes=50, start_c=-40)
    load = Load(machine=STRONG, pieces=0, lumps=(cold,))
    warmed = air_under(load, 0.05, ALWAYS, WARM, 3600)
    at_rest = STRONG.leak * 41
    assert warmed.taken >= -at_rest * 3600 - 1e-6
    assert warmed.air_c[-1] < -35


def test_finer_steps_change_little() -> None:
    # A first-order scheme, 400 steps: a run of a quarter of the time has steps a
    # quarter as long, and differs by some parts of a degree at most.
    load = Load(machine=STRONG, pieces=24, lumps=(TRAYS,))
    whole = air_under(load, 0.05, ALWAYS, WARM, 4 * 3600)
    part = air_under(load, 0.05, ALWAYS, WARM, 3600)
    same = np.interp(part.seconds, whole.seconds, whole.air_c)
    assert np.abs(same - part.air_c).max() < 0.15


def test_a_log_keeps_the_mean_and_begins_at_once() -> None:
    load = Load(machine=Machine(set_c=-20, capacity=20, holds=20e3), pieces=24)
    warmed = air_under(load, 0.05, ALWAYS, WARM, 7200)
    log = log_of(warmed)
    assert log[0][0] == 0
    starts = np.array([since for since, _ in log])
    spans = np.diff([*starts, 7200])
    mean = float((spans * [at_c for _, at_c in log]).sum()) / 7200
    true = float(np.trapezoid(warmed.air_c, warmed.seconds)) / 7200
    assert mean == pytest.approx(true, abs=0.05)
    assert len(log) > 5


def test_a_makers_cycle_becomes_watts() -> None:
    # By hand: 5 kg * 520 kJ/kg in 4 h is 2.6 MJ / 14 400 s = 180.6 W on the mean.
    assert capacity_of(5) == pytest.approx((180.56, 361.11, 541.67), abs=0.01)


def test_a_machine_without_strength_is_refused() -> None:
    with pytest.raises(
        ValueError,
        match=r"^a machine of 0 W over 20000 J/K; both must be more than 0$",
    ):
        Machine(set_c=-20, capacity=0, holds=20e3)
