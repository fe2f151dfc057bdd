"""Dip in jugs: least, taken, heel, how high it stands."""

import math
from dataclasses import replace

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from demould.amounts.finish.dip import (
    InJug,
    best,
    dip_of,
    film_from_weighing,
    in_jugs,
    meant_on_end,
)
from demould.amounts.layers.piece import coat
from demould.amounts.shape.volume import mould_of
from demould.mise.dessert import Dessert, Dip
from demould.mise.figure import unfold
from demould.mise.kitchen import Kitchen
from demould.mise.shape import WaterOnly
from tests.desserts.build import stated
from tests.desserts.domes import MEADOW_DOMES
from tests.desserts.kitchen import KITCHEN, jug, mould
from tests.desserts.others import EMBER_LOG
from tests.desserts.pebble import RIVER_PEBBLE


def ways(
    pieces: int = 27, dessert: Dessert = RIVER_PEBBLE, kitchen: Kitchen = KITCHEN
) -> dict[tuple[float, bool], InJug]:
    return {
        (one.jug.diameter.value, one.on_end): one
        for one in in_jugs(dessert, kitchen, pieces)
    }


def dipped(**changes: object) -> Dessert:
    (dip, spray) = RIVER_PEBBLE.finish
    return replace(RIVER_PEBBLE, finish=(replace(dip, **changes), spray))  # type: ignore[arg-type]  # the test names the field


@pytest.mark.parametrize(
    ("wide", "on_end", "least", "melt"),
    [
        # Area of the jug x (34 + 15 mm) - 90 ml, x 1.06; on its end 80.4 mm deep. To melt:
        # 247 g on 27 pieces and 10 g heel besides.
        (100, False, 313, 569),
        (110, False, 398, 655),
        (140, False, 704, 961),
        (80, True, 413, 670),
    ],
)
def test_least_and_to_melt_are_the_printed_ones(
    wide: float, on_end: bool, least: float, melt: float
) -> None:
    one = ways()[wide, on_end]
    assert one.least.value == pytest.approx(least, abs=0.55)
    assert one.melt.value == pytest.approx(melt, abs=0.55)
    assert one.taken.value == pytest.approx(247, abs=0.5)
    assert one.goes_in
    assert not one.overflows


def test_a_piece_takes_9_1_g() -> None:
    # 107.8 cm2, flat side too, x 0.8 mm x 1.06.
    dip = dip_of(RIVER_PEBBLE)
    assert dip is not None
    part = coat(RIVER_PEBBLE, dip, mould_of(KITCHEN, "pebble"))
    assert part.grams.value == pytest.approx(9.1, abs=0.05)


def test_the_dip_stands_68_mm_and_80_with_a_piece_in_it() -> None:
    one = ways()[100, False]
    assert one.height.value == pytest.approx(68, abs=0.5)
    assert one.height_with_piece.value == pytest.approx(80, abs=0.5)
    # Rise on immersion: volume of the piece by the area of the jug.
    rise = one.height_with_piece.value - one.height.value
    assert rise == pytest.approx(90_000 / (math.pi / 4 * 100**2))


def test_the_100_mm_jug_is_best_and_the_80_too_narrow() -> None:
    found = best(in_jugs(RIVER_PEBBLE, KITCHEN, 27))
    assert found is not None
    assert found.jug.diameter.value == 100
    assert not ways()[80, False].goes_in
    assert [one.melt.value for one in in_jugs(RIVER_PEBBLE, KITCHEN, 27)] == sorted(
        one.melt.value for one in in_jugs(RIVER_PEBBLE, KITCHEN, 27)
    )


def test_on_its_end_it_is_the_80_mm_jug() -> None:
    found = best(in_jugs(RIVER_PEBBLE, KITCHEN, 27), on_end=True)
    assert found is not None
    assert found.jug.diameter.value == 80


def test_deeper_than_it_stands_means_on_its_end() -> None:
    assert not meant_on_end(RIVER_PEBBLE, KITCHEN)
    assert not meant_on_end(dipped(depth=stated(30, "mm")), KITCHEN)
    assert meant_on_end(dipped(depth=stated(80, "mm")), KITCHEN)
    assert not meant_on_end(MEADOW_DOMES, KITCHEN)


@pytest.mark.parametrize(
    ("pieces", "taken", "melt"), [(12, 110, 432), (27, 247, 569), (56, 512, 834)]
)
def test_other_sizes(pieces: int, taken: float, melt: float) -> None:
    one = ways(pieces)[100, False]
    assert one.taken.value == pytest.approx(taken, abs=0.5)
    assert one.melt.value == pytest.approx(melt, abs=0.7)


def test_535_pieces_want_more_than_any_jug_takes() -> None:
    found = ways(535)
    # 4890 g on the pieces and 323 g that stand: no jug takes 5213 g.
    assert found[100, False].melt.value == pytest.approx(5213, abs=1.5)
    assert all(one.overflows for one in found.values())
    topped_up = best(found.values())
    assert topped_up is not None
    assert topped_up.jug.diameter.value == 100
    # (floor x 160 mm - 90 ml) x 1.06.
    assert topped_up.most.value == pytest.approx(
        (math.pi / 4 * 100**2 * 160 / 1000 - 90) * 1.06
    )


def test_where_the_narrow_jug_runs_over_the_next_is_best() -> None:
    found = best(in_jugs(RIVER_PEBBLE, KITCHEN, 120))
    assert found is not None
    assert found.jug.diameter.value == 110
    assert ways(120)[100, False].overflows


def test_no_jug_takes_it_no_way_is_best() -> None:
    narrow = replace(KITCHEN, jugs=(jug(60),))
    assert best(in_jugs(RIVER_PEBBLE, narrow, 27)) is None
    assert in_jugs(RIVER_PEBBLE, replace(KITCHEN, jugs=()), 27) == ()
    assert in_jugs(MEADOW_DOMES, KITCHEN, 14) == ()


def test_a_log_goes_into_no_jug_by_its_diagonal() -> None:
    (dip, _) = RIVER_PEBBLE.finish
    log = replace(EMBER_LOG, finish=(replace(dip, component="glaze"),))
    assert not any(one.goes_in for one in in_jugs(log, KITCHEN, 1) if not one.on_end)
    # On its end 80 x 70 mm, 106 mm across: with 5 mm on either side the 140 mm jug.
    goes = [one.jug.diameter.value for one in in_jugs(log, KITCHEN, 1) if one.goes_in]
    assert goes == [140]


def test_a_dome_half_in_puts_half_its_height_under() -> None:
    # A ball's cap of height h: π h2 (3 r - h) / 3; 20 mm of 35.
    dip = Dip(
        component="glaze",
        film=stated(1, "mm"),
        clearance=stated(15, "mm"),
        heel=stated(10, "g"),
        depth=stated(20, "mm"),
    )
    dome = replace(MEADOW_DOMES, finish=(dip,))
    cap = math.pi * 20**2 * (3 * 35 - 20) / 3 / 1000
    floor = math.pi / 4 * 100**2
    least = ways(14, dome)[100, False].least.value
    # 200 slices of 0.175 mm: one slice of the widest is 0.6 ml of 1 % of what stands.
    assert least == pytest.approx((floor * 35 / 1000 - cap) * 1.25, rel=0.005)


def test_a_piece_half_in_on_its_end_puts_so_much_of_it_under() -> None:
    one = ways(27, dipped(depth=stated(40.2, "mm")))[80, True]
    floor = math.pi / 4 * 80**2
    assert one.least.value == pytest.approx((floor * 55.2 / 1000 - 45) * 1.06)


def test_a_piece_that_fills_the_jug_wants_nothing_under_it() -> None:
    kitchen = replace(KITCHEN, moulds=(mould("pebble", 1, 1, WaterOnly(water_ml=900)),))
    kitchen = replace(kitchen, moulds=(*kitchen.moulds, *KITCHEN.moulds[1:]))
    assert ways(1, kitchen=kitchen)[80, False].least.value == 0


def test_the_least_unfolds_to_jug_depth_and_water() -> None:
    names = {part.name for _, part in unfold(ways()[100, False].melt)}
    assert {
        "inside diameter",
        "height of the piece",
        "clear of the bottom",
        "water in one pebble",
        "density of dip",
        "film of the dip",
        "heel of the pot",
    } <= names
    rule = getattr(ways()[100, False].melt.origin, "rule", "")
    assert str(rule) == "313 g to cover + 247 g on the pieces + 10 g heel"


def test_own_film_comes_from_weighing_three_pieces() -> None:
    # 3 pieces gain 27.4 g: 9.14 g each on 107.8 cm2 at 1.06 g/ml are 0.8 mm.
    film = film_from_weighing(
        stated(206.4, "g"),
        stated(233.83, "g"),
        3,
        stated(107.8, "cm2"),
        stated(1.06, ""),
    )
    assert film.value == pytest.approx(0.8, abs=0.001)


@settings(max_examples=40, deadline=None)
@given(st.integers(1, 400), st.integers(1, 100))
def test_each_piece_more_takes_its_film_and_no_more(pieces: int, more: int) -> None:
    few, many = ways(pieces)[100, False], ways(pieces + more)[100, False]
    each = few.taken.value / pieces
    assert many.melt.value - few.melt.value == pytest.approx(more * each)
    assert many.least == few.least


@settings(max_examples=40, deadline=None)
@given(st.integers(1, 60))
def test_after_the_last_piece_least_and_heel_are_left(pieces: int) -> None:
    one = ways(pieces)[100, False]
    assert one.melt.value - one.taken.value == pytest.approx(
        one.least.value + one.heel.value
    )
    assert one.melt.value <= one.most.value or one.overflows
