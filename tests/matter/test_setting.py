"""Doses of what sets, nested components included, and what weeps."""

from dataclasses import replace

import pytest

from demould.matter.inside import inside
from demould.matter.setting import doses, weeps
from demould.mise.component import Component
from demould.mise.figure import Figure, unfold
from demould.mise.formula import FormulaLine
from tests.advice.kitchenware import FIND, made


def jelly() -> Component:
    return replace(made("x", "96 water", "4 gelatin_200"), key="jelly", name="Jelly")


def with_jelly(grams: float) -> Component:
    taken = FormulaLine(
        ordinal=2,
        amount=Figure(value=grams, unit="g", name="jelly"),
        what="jelly",
        ingredient=None,
        component="jelly",
    )
    mousse = replace(made("x", "300 cream_35"), key="mousse")
    return replace(mousse, formula=(*mousse.formula, taken))


def test_a_line_that_takes_another_component_brings_its_gelatin() -> None:
    mousse = with_jelly(100)
    parts = (jelly(), mousse)
    (one,) = doses(mousse, FIND, parts)
    # 100 g of a jelly with 4 % gelatin in 400 g.
    assert one.whole.value == pytest.approx(1.0)
    assert any("gelatin_200" in part.name for _, part in unfold(one.whole))
    told = {what.id: grams for what, grams in inside(mousse, FIND, parts)}
    assert told == pytest.approx({"cream_35": 300, "water": 96, "gelatin_200": 4})


def test_a_part_nobody_makes_brings_nothing() -> None:
    assert doses(with_jelly(100), FIND, ()) == ()
    assert len(inside(with_jelly(100), FIND, ())) == 1


def test_two_blooms_together_count_each_by_its_root() -> None:
    (one,) = doses(made("x", "980 water", "10 gelatin_160", "10 gelatin_250"), FIND)
    assert one.at_200 is not None
    assert one.at_200.root == pytest.approx(0.8**0.5 + 1.25**0.5)
    assert one.at_200.ratio == pytest.approx(0.8 + 1.25)
    assert one.to_judge.value == one.at_200.root


@pytest.mark.parametrize(
    ("lines", "much"),
    [
        (("500 water", "5 agar_powder"), True),
        (("500 water", "2 carrageenan_kappa"), True),
        (("500 water", "2 carrageenan_kappa", "1 xanthan"), False),
        (("300 water", "200 sucrose", "2 gellan_la"), True),
        (("500 water", "8 gelatin_200"), False),
        (("500 pear", "6 pectin_nh"), False),
    ],
)
def test_what_weeps_by_its_rank(lines: tuple[str, ...], much: bool) -> None:
    # Common practice, no source: iota, high-acyl gellan and NH the least, agar the most.
    one = weeps(made("x", *lines), FIND)
    assert one is not None
    assert one.much is much


def test_what_is_not_set_does_not_weep() -> None:
    assert weeps(made("x", "500 water", "2 xanthan"), FIND) is None
