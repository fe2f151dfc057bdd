"""How a dip cools as pieces go in, and how long they may stand out."""

import math
from dataclasses import replace

import pytest

from demould.amounts.finish.dip import best, dip_of, in_jugs
from demould.amounts.finish.rewarm import Rewarm, lot_of, lots_of, rewarm
from demould.amounts.finish.standing import warms_a_minute
from demould.amounts.layers.piece import piece
from demould.amounts.shape.volume import mould_of
from demould.mise.find import find_in
from tests.demo_folder import demo_folder
from tests.desserts.build import stated

FOLDER = demo_folder()
FIND = find_in(FOLDER.larder)
PEBBLES = next(one for one in FOLDER.desserts if one.key == "river-pebble")


def _told(film_mm: float = 0.8, pieces: int = 27) -> Rewarm:
    dip = dip_of(PEBBLES)
    assert dip is not None
    dip = replace(dip, film=stated(film_mm, "mm"))
    way = best(in_jugs(PEBBLES, FOLDER.kitchen, pieces))
    assert way is not None
    mould = mould_of(FOLDER.kitchen, PEBBLES.mould)
    return rewarm(PEBBLES, dip, mould, way, pieces)


def test_a_pebble_takes_300_to_700_j_and_cools_a_full_jug_by_0_3_to_0_6() -> None:
    told = _told()
    assert told.heat.low == pytest.approx(300, abs=5)
    assert told.heat.high == pytest.approx(700, abs=5)
    # 300 J / (569 g x 1.9 J/g K) = 0.28; 700 J: 0.65.
    assert told.cools.low == pytest.approx(0.28, abs=0.01)
    assert pytest.approx(0.65, abs=0.01) == 700 / 569 / 1.9


def test_it_is_warmed_every_3_to_7_pieces() -> None:
    assert _told().every == (3, 7)


def test_marks_come_closer_as_the_jug_goes_down() -> None:
    marks = _told(pieces=60).marks
    steps = [later - sooner for sooner, later in zip((0, *marks), marks, strict=False)]
    assert steps == sorted(steps, reverse=True)
    assert steps[0] > steps[-1]
    assert marks[-1] < 60


def test_the_heat_is_that_of_two_bodies_in_contact() -> None:
    # Two half-spaces brought together give 2 e1 e2 / (e1 + e2) dT sqrt(t / pi) [J/m2]
    # (H. S. Carslaw, J. C. Jaeger, Conduction of Heat in Solids, from memory). Melted
    # dip: k 0.2 W/mK, 1060 kg/m3, 1900 J/kgK; frozen ganache: 0.35, 650, 2200; 52 K apart
    # for 2.5 s. An order of magnitude: still bodies, no crystals: the low end.
    dip, frozen = math.sqrt(0.2 * 1060 * 1900), math.sqrt(0.35 * 650 * 2200)
    flow = 2 * dip * frozen / (dip + frozen) * 52 * math.sqrt(2.5 / math.pi)
    assert flow / 1e4 == pytest.approx(_told().heat.low / 107.8, rel=0.2)


def test_a_coat_at_the_low_end_of_its_window_is_1_mm_and_thicker_from_there() -> None:
    # Usual films 0.6 to 1 mm at 34 to 30 °C: 2 °C colder is sqrt(1 / 0.6) times thicker.
    told = _told()
    assert told.film_at_low.value == pytest.approx(0.8 * math.sqrt(1 / 0.6))
    assert told.thick_after is not None
    assert told.marks[0] <= told.thick_after
    assert _told(film_mm=0.3, pieces=3).thick_after is None


def test_a_pebble_standing_out_warms_by_0_7_to_0_8_a_minute() -> None:
    mould = mould_of(FOLDER.kitchen, PEBBLES.mould)
    one = piece(PEBBLES, FOLDER.kitchen)
    rate = warms_a_minute(PEBBLES, FOLDER.kitchen, mould, one, FIND)
    assert rate.value == pytest.approx(0.75, abs=0.05)
    # 5 °C from -20 to -15 at a piece a minute: lots of six.
    assert lot_of(rate.value, 1.0) == 6


def test_lots() -> None:
    assert lots_of(27, 6) == (6, 6, 6, 6, 3)
    assert lots_of(12, 6) == (6, 6)
    assert lot_of(20, 1.0) == 1
