"""What the kitchen holds of a dessert, and what its finish asks for."""

from dataclasses import replace

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
        (
            "river-pebble",
            27,
            "in the 100 mm jug 313 g to cover + 247 on the pieces + 10 heel = 569 g: 68 mm"
            " high, 80 with a piece in, of 160",
        ),
        ("river-pebble", 27, "the 110 mm jug would need 655 g"),
        ("river-pebble", 27, "the 140 mm jug would need 961 g"),
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


@pytest.mark.parametrize(
    ("high", "line"),
    [
        # A floor of 78.5 cm2 holds 7.07 x 78.54 = 550 ml at 70 mm, less 90 ml of piece:
        # 460 ml at 1.06 g/ml are 487 g.
        (70, "the first piece would make it run over: begin with 487 g and top up"),
        (
            30,
            "that jug is too low for the piece: it cannot be covered without running"
            " over; take a higher one",
        ),
    ],
)
def test_a_low_jug_runs_over_at_the_first_piece(high: float, line: str) -> None:
    jug = next(one for one in FOLDER.kitchen.jugs if one.diameter.value == 100)
    low = replace(jug, height=replace(jug.height, value=high))
    kitchen = replace(FOLDER.kitchen, jugs=(low,))
    dessert = next(one for one in FOLDER.desserts if one.key == "river-pebble")
    amounts = counted(dessert, kitchen, FIND, 27)
    assert line in [str(one) for one in finish_of(amounts, kitchen, FIND)]


def test_a_piece_that_goes_into_no_jug_is_said() -> None:
    jug = FOLDER.kitchen.jugs[0]
    narrow = replace(jug, diameter=replace(jug.diameter, value=60))
    kitchen = replace(FOLDER.kitchen, jugs=(narrow,))
    dessert = next(one for one in FOLDER.desserts if one.key == "river-pebble")
    said = [
        str(one)
        for one in finish_of(counted(dessert, kitchen, FIND, 27), kitchen, FIND)
    ]
    assert "no jug here takes the piece with 5 mm to spare on either side" in said
