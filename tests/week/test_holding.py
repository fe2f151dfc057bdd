"""What the kitchen holds of a dessert, and what its finish asks for."""

import pytest

from demould.mise.find import find_in
from demould.mise.order import Order
from demould.week.holding import finish_of, holding_of
from demould.week.making import counted, pieces_for
from tests.demo_folder import demo_folder, order_of

FOLDER = demo_folder()
FIND = find_in(FOLDER.larder)


def _said(key: str, pieces: int) -> list[str]:
    dessert = next(one for one in FOLDER.desserts if one.key == key)
    amounts = counted(dessert, FOLDER.kitchen, FIND, pieces)
    return [
        *map(str, holding_of(amounts, FOLDER.kitchen)),
        *map(str, finish_of(amounts, FOLDER.kitchen, FIND)),
    ]


@pytest.mark.parametrize(
    ("key", "pieces", "line"),
    [
        (
            "river-pebble",
            27,
            "pebble: 2 rounds, 24 + 3; 1 more to borrow for one round",
        ),
        ("river-pebble", 27, "bowl, round 1: 1004 g of 2083 g"),
        ("river-pebble", 27, "whisk 162 g by hand: it is under the whisk's 400 g"),
        ("river-pebble", 27, "blast: 1.8 kg, 1 x 5 kg"),
        ("river-pebble", 535, "blast: 36.2 kg, 8 x 5 kg"),
        ("river-pebble", 27, "60 g made, 58 loaded, 29 land, 29 lost, 2 left"),
        (
            "river-pebble",
            27,
            "a piece takes 302 to 701 J out of it: 3 to 7 pieces from 32 to 30 °C",
        ),
        (
            "river-pebble",
            27,
            "Stone dip: 30 to 34 °C, on a piece at -20 to -15 °C",
        ),
        ("meadow-domes", 14, "dome: one round, 14 of 18"),
        # 229 g stay of 572: 343 run off, 85 % of that come back.
        (
            "meadow-domes",
            14,
            "229 g stay, 572 g to pour, 292 g come back sieved, 52 g lost",
        ),
        (
            "ember-log",
            1,
            "231 g stay, 601 g to pour, 314 g come back sieved, 55 g lost",
        ),
        ("ember-log", 1, "cut: 20 slices 25 mm wide, 105 g each"),
        ("orchard-ring", 2, "cut: 8 wedges of 45°, 71 mm at the rim, 106 g each"),
        ("amber-terrine", 1, "cut: 15 slices 20 mm wide, 67 g each"),
    ],
)
def test_it_says(key: str, pieces: int, line: str) -> None:
    assert line in _said(key, pieces)


def _order(*choices: str) -> Order:
    from dataclasses import replace

    return replace(order_of("river-pebble"), choices=choices)


@pytest.mark.parametrize(
    ("choices", "made"),
    [
        ((), 27),
        (("a probe piece",), 28),
        (("a probe piece", "a piece to taste", "a piece to keep"), 30),
        (("no spares", "a piece to keep"), 25),
    ],
)
def test_what_is_taken_away_is_made_over_the_spares(
    choices: tuple[str, ...], made: int
) -> None:
    assert pieces_for(_order(*choices), FOLDER.kitchen).value == made
