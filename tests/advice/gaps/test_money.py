"""How far the money of a piece moves with what is not said, by the demo's prices."""

from pathlib import Path

import pytest

from demould.advice.gaps.gap import Gap, Moved
from demould.advice.gaps.ranked import gaps_of
from demould.advice.gaps.told import moves_told
from demould.mise.find import find_in
from demould.mise.folder import Folder, dessert_of
from demould.mise.own_larder import Larder
from tests.demo_folder import demo_folder
from tests.week.demo_week import demo_with

WHOLE_G = (280 + 3.6 + 18 + 190 + 400 + 1) * 0.96 - 40
"""Ganache of the pebble that reaches a mould: 4 % are lost, then 40 g in the bowl."""
WHOLE_MONEY = ((680 + 45 * 1.1) * 5.20 + 45 * 7.00 + 3.6 * 38.00 + 190 * 15.50) / 1000
"""Cream and what the groats keep of it, groats, gelatin, couverture; the rest has no
price in the larder."""
REST_ML = 90 - 18 - 9.9
"""What the centre and the base leave of the mould."""


def pebble_gaps(folder: Folder, larder: Larder) -> tuple[Gap, ...]:
    dessert = dessert_of(folder, "river-pebble")
    return gaps_of(dessert, folder.kitchen, find_in(folder.larder), larder)


def money(gap: Gap) -> Moved:
    (move,) = (one for one in gap.moves if one.what == "cost")
    return move


def test_a_heavier_whip_takes_more_money_a_piece() -> None:
    """Each piece takes 62.1 ml; the foam weighs 0.57 to 0.66 g/ml."""
    folder = demo_folder()
    (gap,) = (
        one for one in pebble_gaps(folder, folder.larder) if one.kind == "density"
    )
    move = money(gap)

    a_gram = WHOLE_MONEY / WHOLE_G
    assert move.high - move.low == pytest.approx(
        a_gram * REST_ML * (0.66 - 0.57), rel=0.003
    )
    assert move.likely - move.low == pytest.approx(
        a_gram * REST_ML * (0.62 - 0.57), rel=0.003
    )
    assert any("of money a piece" in str(words) for words in moves_told(gap))


def test_paste_that_is_not_said_moves_the_money_by_its_price(tmp_path: Path) -> None:
    """226 g without it; usual is 1 to 15 % of that; 10 % are lost, 9.4 g go in."""
    folder = demo_with(
        tmp_path,
        (
            "desserts/river-pebble.yaml",
            "    90 g   hazelnut paste",
            "    hazelnut paste",
        ),
    )
    (gap,) = (
        one for one in pebble_gaps(folder, folder.larder) if "hazelnut" in str(one.says)
    )
    move = money(gap)

    others = (70 * 16.00 + 110 * 11.00 + 30 * 7.00 + 15 / 0.8 * 9.50) / 1000
    low, high = (
        (others + grams * 27.00 / 1000) / ((226 + grams) * 0.90) * 9.4
        for grams in (2.26, 33.9)
    )
    assert move.high - move.low == pytest.approx(high - low, rel=0.003)


def test_ends_that_read_the_same_are_said_once(tmp_path: Path) -> None:
    folder = demo_with(
        tmp_path,
        (
            "desserts/river-pebble.yaml",
            "    3.6 g  gelatin 200 bloom",
            "    gelatin 200 bloom",
        ),
    )
    (gap,) = (
        one for one in pebble_gaps(folder, folder.larder) if "gelatin" in str(one.says)
    )
    told = [str(words) for words in moves_told(gap) if "money" in str(words)]

    assert told == ["ingredients 1.02 of money a piece, not 1.01"]


def test_no_price_no_money() -> None:
    moves = [one for gap in pebble_gaps(demo_folder(), ()) for one in gap.moves]

    assert moves
    assert all(one.what != "cost" for one in moves)
