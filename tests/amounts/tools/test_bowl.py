"""What a mixer takes."""

from dataclasses import replace

import pytest
from hypothesis import given
from hypothesis import strategies as st

from demould.amounts.tools.bowl import in_bowl, most_g, whips, whips_of_rounds
from demould.mise.kitchen import Tool
from tests.desserts.build import stated
from tests.desserts.kitchen import KITCHEN

MIXER = KITCHEN.tools[0]
WHIPPED = stated(0.62, "g/ml")


def test_the_bowl_takes_2_08_kg() -> None:
    # 4.8 l filled to 70 % at 0.62 g/ml.
    most = most_g(MIXER, WHIPPED)
    assert most is not None
    assert most.value == pytest.approx(2083, abs=0.5)
    full = most_g(replace(MIXER, fill=None), WHIPPED)
    assert full is not None
    assert full.value == pytest.approx(4800 * 0.62)
    assert most_g(Tool(key="pan"), WHIPPED) is None


def test_a_round_of_3_is_too_little_to_whip() -> None:
    # (3 x 38.5 + 40) / 0.96 = 162 g, under the whisk's 400 g.
    found = in_bowl(stated(162, "g"), MIXER, WHIPPED)
    assert found.verdict == "too little"
    assert [str(choice) for choice in found.choices] == [
        "whisk 162 g by hand: it is under the whisk's 400 g",
        "whip it with the next batch",
        "make up to 400 g and keep what is over",
        "borrow a mould and fill in one round",
    ]


def test_a_full_round_fits() -> None:
    found = in_bowl(stated(1004, "g"), MIXER, WHIPPED)
    assert (found.verdict, found.goes, found.choices) == ("fits", 1, ())


def test_more_than_the_bowl_is_split() -> None:
    found = in_bowl(stated(2371, "g"), MIXER, WHIPPED)
    assert (found.verdict, found.goes) == ("split", 2)
    assert [str(choice) for choice in found.choices] == ["whip in 2 goes of 1186 g"]


def test_22_417_g_are_11_bowls() -> None:
    assert whips(22_417, MIXER, WHIPPED) == 11


def test_without_a_bowl_or_a_least_it_fits() -> None:
    assert in_bowl(stated(9000, "g"), Tool(key="pan"), WHIPPED).verdict == "fits"
    assert whips(9000, None, WHIPPED) == 1


def test_every_round_is_whipped_for_itself() -> None:
    assert whips_of_rounds([1004, 162], MIXER, WHIPPED) == 2
    assert whips_of_rounds([2500, 162], MIXER, WHIPPED) == 3
    assert whips_of_rounds([], MIXER, WHIPPED) == 0


@given(st.floats(1, 50_000))
def test_no_go_is_over_the_bowl_and_one_less_would_be(mass: float) -> None:
    most = most_g(MIXER, WHIPPED)
    assert most is not None
    goes = whips(mass, MIXER, WHIPPED)
    assert mass / goes <= most.value * (1 + 1e-4)
    assert goes == 1 or mass / (goes - 1) > most.value
