"""Spheres joined from halves, closed moulds with a filling hole."""

from dataclasses import replace

import pytest

from demould.amounts.layers.closed import closing, passes, slimmest_mm
from demould.amounts.layers.fit import does_it_fit
from demould.amounts.layers.piece import piece
from demould.amounts.shape.volume import cavity
from demould.amounts.tools.rounds import rounds
from demould.mise.dessert import Dessert, FromMould
from demould.mise.figure import Line
from demould.mise.kitchen import Kitchen
from demould.mise.problem import UnreadableError
from demould.mise.read_mould import read_mould
from demould.mise.shape import Box, Oval, Shape, Sphere
from tests.desserts.build import layer, stated
from tests.desserts.kitchen import KITCHEN, mould
from tests.desserts.pebble import RIVER_PEBBLE


def _read(text: str) -> object:
    return read_mould(Line("kitchen.yaml", 1, text))


BALL = read_mould(
    Line("kitchen.yaml", 1, "ball; 3 x 8; sphere 60 mm; two halves; silicone 1.5 mm")
)
SMALL = read_mould(
    Line("kitchen.yaml", 2, "small ball; 2 x 15; half-sphere 40 mm; two halves")
)


def _dessert(hole: float | None) -> tuple[Dessert, Kitchen]:
    ball = BALL
    if hole is not None:
        ball = replace(mould("ball", 3, 8, Sphere(diameter_mm=60)))
        ball = replace(ball, hole=stated(hole, "mm", "filling hole"))
    kitchen = replace(KITCHEN, moulds=(ball, SMALL))
    inside = (
        layer("ganache"),
        replace(layer("centre", "small ball")),
        layer("ganache"),
    )
    dessert = replace(RIVER_PEBBLE, mould="ball", layers=inside, finish=(), plate=())
    return dessert, kitchen


def test_a_ball_with_a_ball_in_it_takes_24_7_g_in_each_half() -> None:
    # 60 mm sphere less a 40 mm one: 79.6 ml, 39.8 in each half, at 0.62 g/ml 24.7 g.
    dessert, kitchen = _dessert(None)
    one = piece(dessert, kitchen)
    told = closing(dessert, kitchen.moulds[0], one)
    assert told is not None
    assert [round(go.value, 1) for go in told.goes] == [24.7, 24.7]
    assert str(told.rules[1]) == "into the other half"


def test_two_cavities_make_one_ball() -> None:
    assert (BALL.cavities, BALL.at_once) == (24, 12)
    assert SMALL.shape == Sphere(diameter_mm=40)
    turns = rounds(14, BALL)
    assert turns.each == (12, 2)
    assert turns.borrow == 1


def test_the_water_of_one_half_counts_twice() -> None:
    text = "ball; 3 x 8; sphere 60 mm; 56.5 ml by water; two halves; silicone 1.5 mm"
    weighed = read_mould(Line("kitchen.yaml", 1, text))
    assert cavity(weighed).value == pytest.approx(113.0)


def test_halves_that_do_not_pair_up_are_refused() -> None:
    with pytest.raises(UnreadableError) as fault:
        _read("ball; 1 x 15; sphere 60 mm; two halves")
    assert str(fault.value) == (
        "'ball' has 15 cavities and a piece takes two. Count every half, so that they"
        " pair up."
    )


def test_two_halves_of_a_log_are_refused() -> None:
    with pytest.raises(UnreadableError) as fault:
        _read("log; 1 x 2; trough 500 x 80 x 70 mm; two halves")
    assert str(fault.value) == (
        "two halves of this shape make no piece known here. Write sphere, egg or"
        " ellipsoid, each with its whole size."
    )


def test_an_insert_that_does_not_pass_the_hole_is_refused() -> None:
    dessert, kitchen = _dessert(25)
    assert [str(one) for one in does_it_fit(dessert, kitchen)] == [
        ": centre is 40 mm across at its slimmest, but the filling"
        " hole of the ball mould only 25 mm. Take an insert under 25 mm, or a mould of"
        " two halves."
    ]


def test_through_a_wide_hole_half_goes_in_before_and_half_after() -> None:
    dessert, kitchen = _dessert(45)
    assert does_it_fit(dessert, kitchen) == ()
    told = closing(dessert, kitchen.moulds[0], piece(dessert, kitchen))
    assert told is not None
    assert [str(rule) for rule in told.rules] == [
        "through the hole, before the insert",
        "after the insert, up to the hole: it closes the piece",
    ]


@pytest.mark.parametrize(
    ("shape", "needs"),
    [
        # Long side first: an oval 45 x 30 x 18 needs 30; a bar its section's diagonal.
        (
            Oval(
                length_mm=45,
                width_mm=30,
                small_length_mm=42.4,
                small_width_mm=28.3,
                height_mm=18,
            ),
            30,
        ),
        (Box(length_mm=60, width_mm=12, height_mm=9), 15),
        (Sphere(diameter_mm=20), 20),
    ],
)
def test_what_passes_a_hole(shape: Shape, needs: float) -> None:
    assert slimmest_mm(shape) == pytest.approx(needs)
    assert passes(shape, needs + 0.1)
    assert not passes(shape, needs)


@pytest.mark.parametrize(
    ("shape", "says"),
    [
        (
            Sphere(diameter_mm=5),
            "dome is 5 x 5 x 5 mm and holds 0.065 ml, a drop, as if the sizes"
            " were cm. Are they? Then write 50 x 50 x 50 mm; if not, weigh the water it holds and write"
            " that too.",
        ),
        (
            Sphere(diameter_mm=600),
            "dome is 600 x 600 x 600 mm and holds 113 l, as if the sizes were"
            " mm. Are they? Then write 60 x 60 x 60 mm; if not, weigh the water it holds and write"
            " that too.",
        ),
    ],
)
def test_sizes_that_look_like_another_unit_are_asked(shape: Shape, says: str) -> None:
    dessert = replace(RIVER_PEBBLE, mould="dome", layers=(layer("ganache"),), finish=())
    kitchen = replace(KITCHEN, moulds=(mould("dome", 1, 6, shape),))
    asked = [str(one) for one in does_it_fit(dessert, kitchen)]
    assert asked == [f": {says}"]
    weighed = replace(kitchen.moulds[0], water=stated(0.09, "ml", "water"))
    kitchen = replace(kitchen, moulds=(weighed,))
    assert not any("as if" in str(one) for one in does_it_fit(dessert, kitchen))


def test_the_layer_that_is_no_insert_has_its_mould() -> None:
    assert isinstance(_dessert(None)[0].layers[1].fill, FromMould)
