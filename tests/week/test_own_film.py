"""The own film of a dip, from the scale to the line on the card."""

import json
from pathlib import Path

import pytest
from click.testing import CliRunner, Result

from demould.counter.cli.main import demould
from demould.mise.figure import Measured
from demould.mise.quantity import read_figure
from demould.week.own_film import own_film
from tests.demo_folder import DEMO
from tests.week.demo_week import domes, kitchen, pebbles

PEBBLE = DEMO / "desserts" / "river-pebble.yaml"
DOME = DEMO / "desserts" / "meadow-domes.yaml"
NOW = ("--now", "2026-11-17 14:00")
THREE = ("68.2 g to 77.3 g", "67.9 g to 77.2 g", "68,0 g to 76.9 g")


def run(*words: str | Path) -> Result:
    return CliRunner().invoke(
        demould, ["film", *map(str, words), *NOW], catch_exceptions=False
    )


# The row's check value: 107.8 cm2 x 0.8 mm x 1.06 g/ml = 9.14 g, told as 9.1 g.
def test_nine_grams_on_a_pebble_are_the_film_of_its_card() -> None:
    own = own_film(pebbles().amounts.dessert, kitchen(), [(68.0, 77.14)] * 3)
    assert own.each_g == pytest.approx(9.14)
    assert own.film.value == pytest.approx(0.8, abs=0.001)
    assert own.card.value == pytest.approx(0.8)
    assert own.spread.low == pytest.approx(own.spread.high)


# By hand: 9.1, 9.3 and 8.9 g by 1.06 g/ml by 107.8 cm2 are 0.796, 0.814 and 0.779 mm.
def test_the_spread_goes_from_the_thinnest_piece_to_the_thickest() -> None:
    told = json.loads(run(PEBBLE, *THREE, "--json").stdout)
    assert told["film"]["low"] == pytest.approx(0.779, abs=0.001)
    assert told["film"]["likely"] == pytest.approx(0.796, abs=0.001)
    assert told["film"]["high"] == pytest.approx(0.814, abs=0.001)
    assert told["card_mm"] == 0.8


def test_the_line_for_the_card_is_one_the_card_can_read() -> None:
    line = json.loads(run(PEBBLE, *THREE, "--json").stdout)["line"]
    assert line in run(PEBBLE, *THREE).stdout
    figure = read_figure(
        line.removeprefix("film "), name="film", kinds=("length",), line=None
    )
    assert figure.value == 0.80
    assert figure.origin == Measured(readings=3)


def test_fewer_than_three_say_little_of_the_spread() -> None:
    assert "weigh three or more" in run(PEBBLE, THREE[0]).stdout
    assert "weigh three or more" not in run(PEBBLE, *THREE).stdout


def test_what_cannot_be_read_is_told_all_at_once() -> None:
    result = run(PEBBLE, "68.2 g to 67.3 g", "67.9 to 77.2 g", "12 g", "1 ml to 2 ml")
    assert result.exit_code == 2
    assert "'68.2 g to 67.3 g' is a piece that took nothing on" in result.stderr
    assert "'67.9', has no unit" in result.stderr
    assert "'12 g' is not one piece before and after" in result.stderr
    assert len(result.stderr.strip().splitlines()) == 7


def test_a_piece_that_is_not_dipped_has_no_film_to_weigh() -> None:
    result = run(DOME, THREE[0])
    assert result.exit_code == 2
    assert "Meadow Domes has no dip" in result.stderr
    with pytest.raises(ValueError, match="has no dip"):
        own_film(domes().amounts.dessert, kitchen(), [(60.0, 70.0)])
    with pytest.raises(ValueError, match="no piece was weighed"):
        own_film(pebbles().amounts.dessert, kitchen(), [])
