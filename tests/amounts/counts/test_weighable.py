"""Lines as they can be weighed."""

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from demould.amounts.counts.weighable import dose_as_weighed, weighings
from demould.mise.component import Component
from demould.mise.figure import unfold
from demould.mise.formula import FormulaLine
from demould.mise.kitchen import Scale
from tests.desserts.build import component, formula, stated
from tests.desserts.domes import CENTRE as RHUBARB
from tests.desserts.domes import GLAZE, MOUSSE, SPONGE
from tests.desserts.kitchen import KITCHEN
from tests.desserts.larder import find
from tests.desserts.pebble import CENTRE, CRISP, DIP, GANACHE

COARSE = (Scale(most=stated(5000, "g"), step=stated(1, "g")),)


def shown(made: Component, factor: float) -> list[float]:
    lines = weighings(made, stated(factor, "x"), KITCHEN.scales, find)
    return [one.grams.value for one in lines]


def test_27_centres_are_weighed_to_the_gram_and_the_pectin_to_a_tenth() -> None:
    # 380, 160, 50, 35, 6.5, 10 g by 0.919: 349.2, 147.0, 45.95, 32.2, 5.97, 9.19.
    assert shown(CENTRE, 0.919) == pytest.approx([349, 147, 46, 32, 6.0, 9.2])


def test_gelatin_for_27_is_4_7_g() -> None:
    assert shown(GANACHE, 1.307)[2] == pytest.approx(4.7)


@settings(max_examples=150, deadline=None)
@given(
    st.sampled_from([GANACHE, CENTRE, CRISP, DIP, MOUSSE, RHUBARB, SPONGE, GLAZE]),
    st.floats(0.05, 6),
)
def test_lines_add_up_to_the_batch_within_a_gram(
    made: Component, factor: float
) -> None:
    lines = weighings(made, stated(factor, "x"), KITCHEN.scales, find)
    exact = [
        line.amount.value * factor
        for line in made.formula
        if line.amount and not line.strained_out
    ]
    total = sum(one.grams.value for one in lines if not one.line.strained_out)
    assert total == pytest.approx(sum(exact), abs=1.0)
    for one in lines:
        assert one.line.amount is not None
        off = abs(one.grams.value - one.line.amount.value * factor)
        assert off < one.step_g + 1e-9


@given(st.floats(0.05, 6))
def test_every_line_is_whole_steps(factor: float) -> None:
    for one in weighings(GANACHE, stated(factor, "x"), KITCHEN.scales, find):
        steps = one.grams.value / one.step_g
        assert steps == pytest.approx(round(steps), abs=1e-6)


def test_with_one_coarse_scale_all_is_in_its_steps() -> None:
    lines = weighings(GANACHE, stated(1, "x"), COARSE, find)
    assert {one.step_g for one in lines} == {1}
    assert lines[2].grams.value == 4


def test_without_scales_a_gram_is_the_step() -> None:
    lines = weighings(CRISP, stated(0.5, "x"), (), find)
    assert {one.step_g for one in lines} == {1}


def test_more_than_the_scale_takes_is_weighed_in_goes_of_its_steps() -> None:
    lines = weighings(GANACHE, stated(20, "x"), KITCHEN.scales, find)
    assert lines[0].step_g == 1
    assert lines[0].grams.value == pytest.approx(5600, abs=1)


def test_lines_without_an_amount_are_not_weighed() -> None:
    salt = FormulaLine(ordinal=2, amount=None, what="salt", ingredient="salt")
    made = component("syrup", (*formula("100 sugar"), salt), 1)
    assert len(weighings(made, stated(1, "x"), KITCHEN.scales, find)) == 1
    assert weighings(component("air", (), 1), stated(1, "x"), (), find) == ()


def test_a_line_unfolds_to_what_is_written_and_its_factor() -> None:
    line = weighings(GANACHE, stated(1.307, "x", "factor"), KITCHEN.scales, find)[0]
    assert [part.name for _, part in unfold(line.grams)] == [
        "cream 35 % to weigh",
        "cream 35 %",
        "factor",
    ]


def test_the_dose_is_checked_again_after_rounding() -> None:
    lines = weighings(CENTRE, stated(0.919, "x"), KITCHEN.scales, find)
    # 6.0 g in 589.2 g cooked to 96 %.
    assert dose_as_weighed(6.0, lines, 0.96) == pytest.approx(1.06, abs=0.005)
