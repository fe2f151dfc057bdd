from dataclasses import replace
from math import comb
from pathlib import Path

import pytest

from demould.advice.gaps.settling import settled_by
from demould.demo import NOW
from demould.mise.figure import Assumed, Figure, figures_in, put
from demould.mise.find import find_in
from demould.mise.folder import Folder
from demould.week.making import making_of
from demould.week.orders import makings_of
from demould.week.sure import NEWS, Move, Sure, sure_of
from tests.demo_folder import demo_folder, demo_makings
from tests.week.demo_week import demo_with, kitchen, pebbles

FIND = find_in(demo_folder().larder)


def demo_sure() -> Sure:
    return sure_of(demo_makings(), kitchen(), FIND)


def sure_in(folder: Folder) -> Sure:
    return sure_of(makings_of(folder, NOW), folder.kitchen, find_in(folder.larder))


def move(sure: Sure, name: str) -> Move:
    return next(one for one in sure.moves if one.figure.name == name)


# 816.9 g of ganache by 62.1 ml: at 0.57 g/ml 23.08, at 0.62 21.2, at 0.66 19.93 pieces
# (worked by hand).
def test_ganache_whipped_to_057_or_066_gives_23_or_19() -> None:
    found = move(demo_sure(), "density when whipped of the ganache")
    assert str(found.says) == (
        "the written Buckwheat whipped ganache gives 23 at 0.57, 19 at 0.66, not 21"
    )
    assert found.share == pytest.approx(4 / 21)
    assert found.dessert == "River Pebble"


# 77 cm2 by 1.7 mm at 1.25 g/ml, poured 2.5 times, is 573 g for 14: a batch of 659 g cooks
# down to 639 g. At 2 mm it is 674 g: two batches. At 1.3 mm one is still made.
def test_an_end_that_moves_nothing_is_not_told() -> None:
    found = move(demo_sure(), "film of the glaze")
    assert str(found.says) == "White mirror glaze: 1318 g at 2, not 659 g"


def least_to_make(needed: int, broken: float) -> int:
    """Add up the binomial law, plainly: `needed` whole, 95 times in 100."""
    made = needed
    while (
        sum(
            comb(made, bad) * broken**bad * (1 - broken) ** (made - bad)
            for bad in range(made - needed + 1)
        )
        < 0.95
    ):
        made += 1
    return made


def test_breakage_moves_how_many_to_make() -> None:
    low, high = (least_to_make(24, share) for share in (0.02, 0.08))
    assert (low, least_to_make(24, 0.05), high) == (26, 27, 29)
    alone = sure_of([pebbles()], kitchen(), FIND)
    assert str(move(alone, "breakage").says) == (
        f"make {low} at 2, {high} at 8, not 27"
    )


def test_a_figure_of_the_kitchen_is_told_once_where_it_moves_more() -> None:
    """Of 12: 13 at 2 %, 15 at 8 %, 14 between: 2 of 14 is more than 2 of 27."""
    both = [one for one in demo_sure().moves if one.figure.name == "breakage"]
    assert [(one.dessert, str(one.says)) for one in both] == [
        ("Meadow Domes", "make 13 at 2, 15 at 8, not 14")
    ]
    assert (least_to_make(12, 0.02), least_to_make(12, 0.08)) == (13, 15)


def test_what_moves_most_comes_first_and_nothing_moves_less_than_half_a_per_cent() -> (
    None
):
    shares = [one.share for one in demo_sure().moves]
    assert shares == sorted(shares, reverse=True)
    assert min(shares) >= NEWS == 0.005


def test_a_figure_nothing_hangs_on_is_not_counted_as_assumed() -> None:
    """The walls of the moulds are assumed, and no gram hangs on them."""
    assert any(
        isinstance(figure.origin, Assumed)
        for _, figure in figures_in(kitchen().moulds)
        if figure.unit == "mm"
    )
    names = {one.name for one in demo_sure().assumed}
    assert not {name for name in names if "wall" in name}
    assert {"breakage", "density when whipped of the ganache"} <= names


def test_what_is_hardly_in_doubt_is_assumed_and_moves_nothing() -> None:
    making = pebbles()
    path, film = next(
        (path, figure)
        for path, figure in figures_in(making.amounts.dessert)
        if figure.name == "film of the dip"
    )
    sharp = replace(film, origin=Assumed(low=0.799, high=0.801))
    dessert = put(making.amounts.dessert, path, sharp)
    found = sure_of(
        [making_of(making.order, dessert, kitchen(), FIND)], kitchen(), FIND
    )
    assert sharp in found.assumed
    assert sharp not in {one.figure for one in found.moves}


# 90 ml take no centre of 85 ml beside a base of 9.9 ml.
def test_where_no_piece_can_be_there_are_none(tmp_path: Path) -> None:
    folder = demo_with(
        tmp_path,
        (
            "kitchen.yaml",
            "18 ml by water (measured)",
            "18 ml by water (assumed 10 to 85)",
        ),
    )
    ours = sure_in(folder)
    found = next(
        one
        for one in ours.moves
        if isinstance(one.figure.origin, Assumed) and one.figure.origin.high == 85
    )
    assert " 0 at 85," in str(found.says)


@pytest.mark.parametrize(
    ("unit", "told"),
    [
        ("g/ml", "weigh a known cup of it: this"),
        ("mm", "weigh three pieces before and after: this"),
        ("%", "count it for a week: this"),
        ("min", "time it once: this"),
        ("ml", "measure it: this"),
    ],
)
def test_each_figure_has_the_measurement_that_settles_it(unit: str, told: str) -> None:
    assert str(settled_by(Figure(name="this", value=1, unit=unit))) == told


def test_the_weight_of_a_leaf_is_a_doubt_of_the_week_too(tmp_path: Path) -> None:
    """Two leaves for 3.6 g: what one leaf weighs is assumed, and the batch hangs on it."""
    leaves = ("desserts/river-pebble.yaml", "3.6 g  gelatin", "2 leaves  gelatin")
    after = sure_in(demo_with(tmp_path, leaves)).assumed
    assert len(after) == len(demo_sure().assumed) + 1
    assert any("leaf" in figure.name for figure in after)


def test_money_of_a_piece_is_told_where_prices_are_known() -> None:
    """Ganache 7.19 of money in 816.9 g; 62.1 ml a piece at 0.57 and 0.66 g/ml.

    The span is 7.190 / 816.9 x 62.1 x 0.09 = 0.049 of money.
    """
    folder = demo_folder()
    found = sure_of([pebbles()], folder.kitchen, FIND, folder.larder)
    (move,) = (one for one in found.moves if one.figure.unit == "g/ml")

    assert move.money is not None
    ends = dict(move.money.values)
    low, high = float(str(ends["low"])), float(str(ends["high"]))
    assert high - low == pytest.approx(0.049, abs=0.0005)
    without = sure_of([pebbles()], folder.kitchen, FIND)
    assert all(one.money is None for one in without.moves)


def test_what_stays_in_the_jug_is_no_money_of_a_piece() -> None:
    """A film 0.4 mm apart on 107.8 cm2 at 1.06 g/ml is 4.57 g of a dip of 19.31 a kilo.

    (330 x 15.50 + 270 x 24.00 + 8 x 18.00) / 608 = 19.31, and 0.00457 x 19.31 = 0.088.
    """
    folder = demo_folder()
    found = sure_of([pebbles()], folder.kitchen, FIND, folder.larder)
    words = move(found, "film of the dip").money

    assert words is not None
    ends = dict(words.values)
    low, high = float(str(ends["low"])), float(str(ends["high"]))
    assert high - low == pytest.approx(0.088, abs=0.0005)
