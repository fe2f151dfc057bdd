"""One thing changed, and what moves with it."""

from itertools import groupby

import pytest

from demould.demo import NOW
from demould.mise.figure import Stated
from demould.mise.find import find_in
from demould.mise.problem import UnreadableError
from demould.mise.shape import CutEllipsoid
from demould.week.orders import makings_of
from demould.week.tried import tried
from demould.week.what_if import Move, Thing, cold_of, plan_of, what_if
from tests.demo_folder import demo_folder
from tests.week.demo_week import demo_week

GANACHE = "Buckwheat whipped ganache"
CENTRE = "Blackcurrant-pear centre"
DINNER = "saturday dinner"


def _moves(change: str) -> dict[Thing, Move]:
    folder = demo_folder()
    return {
        move.thing: move
        for move in what_if(folder, tried(folder, change).folder, NOW, quick=True)
    }


def test_an_insert_of_22_ml_leaves_36_g_of_ganache_and_22_pieces() -> None:
    # (90 - 22 - 9.9) ml x 0.62 = 36.0 g; 816.9 g / 36.0 = 22.7. The wall gets thinner.
    moves = _moves("oval insert water = 22 ml")
    in_piece = moves[Thing(DINNER, "in a piece", GANACHE, "g")]
    assert in_piece.after == pytest.approx(36.0, abs=0.05)
    count = moves[Thing(DINNER, "as written it gives", GANACHE)]
    assert (count.before, count.after) == (21, 22)
    wall = moves[Thing(DINNER, "least wall", CENTRE, "mm")]
    assert isinstance(wall.before, float)
    assert isinstance(wall.after, float)
    assert wall.after < wall.before - 1
    assert {thing.order for thing in moves} == {DINNER}


def test_a_whipped_density_of_0_58_gives_22() -> None:
    count = _moves("ganache whipped = 0.58")[
        Thing(DINNER, "as written it gives", GANACHE)
    ]
    assert count.after == 22


def test_a_thicker_coat_takes_more_dip() -> None:
    # 107.8 cm2 x 0.1 mm x 1.06 x 27 pieces: 31 g for each tenth of a mm.
    melt = _moves("dip film = 0.9 mm")[
        Thing(DINNER, "to melt", "in the 100 mm jug", "g")
    ]
    assert isinstance(melt.before, float)
    assert isinstance(melt.after, float)
    assert melt.after - melt.before == pytest.approx(31, abs=0.5)


def test_a_fourth_mould_takes_away_a_round_and_40_g() -> None:
    # One whip fewer: 40 g / 0.96 = 41.7 g less ganache.
    moves = _moves("pebble trays = 4")
    assert moves[Thing(DINNER, "pieces", "rounds")].after == 1
    weigh = moves[Thing(DINNER, "to weigh", GANACHE, "g")]
    assert isinstance(weigh.before, float)
    assert isinstance(weigh.after, float)
    assert weigh.before - weigh.after == pytest.approx(41.7, abs=0.9)


def test_more_pieces_for_the_order() -> None:
    moves = _moves("saturday pieces = 50")
    assert moves[Thing(DINNER, "pieces", "to make")].after == 56
    assert moves[Thing(DINNER, "pieces", "rounds")].after == 3


def test_nothing_moves_where_nothing_changes() -> None:
    assert _moves("pebble cavity = 90 ml") == {}


def test_what_is_tried_is_stated_and_the_folder_is_untouched() -> None:
    folder = demo_folder()
    change = tried(folder, "breakage = 8")
    assert (change.was, change.new) == ("5 %", "8 %")
    assert change.folder.kitchen.breakage.origin == Stated(by="what was tried")
    assert folder.kitchen.breakage.value == 5


def test_a_cavity_of_more_water_is_the_same_shape_larger() -> None:
    change = tried(demo_folder(), "pebble cavity = 180 ml")
    shape = change.folder.kitchen.moulds[0].shape
    assert isinstance(shape, CutEllipsoid)
    # Twice as much: 2 to the third part = 1.26 times as long (90 by water, 90.0 by sizes).
    assert shape.half_length_mm == pytest.approx(40.2 * 2 ** (1 / 3), rel=1e-3)


@pytest.mark.parametrize(
    ("change", "message"),
    [
        (
            "density",
            "'density' does not say what becomes what. Write what = new, for example:"
            " ganache whipped = 0.58 g/ml.",
        ),
        (
            "ganache whiped = 0.58",
            "nothing here is called 'ganache whiped'. Perhaps you meant 'ganache"
            " whipped'.",
        ),
        (
            "pebble centre density = 1.1 g",
            "the density of the centre, '1.1 g', is a weight, and a density is wanted."
            " Write it in g/ml.",
        ),
        (
            "centre density = 1.1",
            "'centre density' may be 4 things. Write one of them: Ember Log centre"
            " density; Meadow Domes centre density; Orchard Ring centre density; River"
            " Pebble centre density.",
        ),
        (
            "river pebble mould = dom",
            "no mould is called 'dom'. Perhaps you meant 'dome'.",
        ),
    ],
)
def test_what_cannot_be_tried(change: str, message: str) -> None:
    with pytest.raises(UnreadableError) as fault:
        tried(demo_folder(), change)
    assert str(fault.value) == message


def test_another_mould_moves_thaw_and_dip_too() -> None:
    # A 70 mm dome in place of the pebble: 89.8 for 90 ml, 115.5 cm2 all round for 107.8.
    folder = demo_folder()
    after = tried(folder, "river pebble base shape = disc 40 x 5 mm").folder
    moves = {
        move.thing: move
        for move in what_if(
            after, tried(after, "river pebble mould = dome").folder, NOW, quick=True
        )
    }
    dip = moves[Thing(DINNER, "in a piece", "Stone dip", "g")]
    assert dip.after == pytest.approx(115.45 * 0.08 * 1.06, abs=0.01)


def test_a_colder_fridge_thaws_longer() -> None:
    folder = demo_folder()
    making = next(one for one in makings_of(folder, NOW) if one.order.key == DINNER)
    find = find_in(folder.larder)
    colder = tried(folder, "fridge air = 2 °C").folder.kitchen
    thaw = Thing(DINNER, "thaws", "fridge open", "h")
    before = dict(cold_of(making, folder.kitchen, find))[thaw]
    after = dict(cold_of(making, colder, find))[thaw]
    assert isinstance(before, float)
    assert isinstance(after, float)
    assert after > before


def test_the_plan_is_looked_at_by_names_a_cook_knows() -> None:
    week = demo_week()
    planned = dict(plan_of(week.makings, week.timing))
    spare = planned[Thing(DINNER, "in the plan", "to spare", "min")]
    assert spare == 65
    dip = planned[Thing(DINNER, "latest start", "Stone dip, melt")]
    assert f"{dip:%a %H:%M}" == "Sat 11:05"
    assert all("(" not in thing.name for thing in planned)


def test_orders_and_headings_stand_together() -> None:
    folder = demo_folder()
    after = tried(folder, "breakage = 20").folder
    moves = what_if(folder, after, NOW, quick=True)
    heads = [(move.thing.order, move.thing.about) for move in moves]
    assert len({*heads}) == len([head for head, _ in groupby(heads)])
    assert len({order for order, _ in heads}) == 2
