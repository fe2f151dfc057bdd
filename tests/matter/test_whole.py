"""Gross and net, and how many whole ones.

The grams and the numbers are the trade's own check values: pear 320 g net at 20 % is
400 g gross; 184 g of pear is about one; 150 g of egg about three.
"""

from dataclasses import replace

import pytest

from demould.larder.read import ingredient
from demould.matter.whole import gross_of, whole_of, wholes
from demould.mise.dessert import component_of
from demould.mise.figure import Figure
from demould.mise.folder import dessert_of
from demould.mise.formula import FormulaLine
from tests.demo_folder import demo_folder


def grams(value: float) -> Figure:
    return Figure(name="net", value=value, unit="g")


def line(what: str) -> FormulaLine:
    return FormulaLine(ordinal=1, amount=None, what=what, ingredient=None)


def test_320_g_net_at_20_per_cent_are_400_g_gross() -> None:
    trim = Figure(name="trim", value=20, unit="%")

    assert gross_of(grams(320), trim).value == pytest.approx(400)


def test_147_g_of_pear_are_184_g_gross_and_about_one_pear() -> None:
    found = whole_of(line("pear"), grams(147.2))

    assert found is not None
    assert found.gross is not None
    assert found.gross.value == pytest.approx(184)
    assert round(found.pieces.value) == 1


@pytest.mark.parametrize(
    ("what", "net", "pieces"),
    [
        ("egg", 150, 3),
        ("egg yolk", 57, 3),
        ("egg white", 93, 3),
        ("lemon juice", 90, 2),
    ],
)
def test_eggs_and_juice_in_whole_ones(what: str, net: float, pieces: int) -> None:
    found = whole_of(line(what), grams(net))

    assert found is not None
    assert found.gross is None
    assert found.pieces.value == pytest.approx(pieces)


@pytest.mark.parametrize("what", ["cream", "gelatin", "pear purée"])
def test_what_is_not_bought_whole_gives_nothing(what: str) -> None:
    assert whole_of(line(what), grams(100)) is None


def test_a_line_that_counts_whole_ones_already_is_left_alone() -> None:
    pieces = Figure(name="egg", value=3, unit="pieces")
    component = replace(
        component_of(dessert_of(demo_folder(), "meadow-domes"), "sponge"),
        formula=(
            replace(line("egg"), amount=pieces, ingredient="egg_whole"),
            replace(line("pear"), amount=grams(320), ingredient="pear"),
        ),
    )

    (pear,) = wholes(component, ingredient)

    assert pear.what == "pear"
    assert pear.gross is not None
    assert pear.gross.value == pytest.approx(400)
