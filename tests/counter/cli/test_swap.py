"""``demould swap`` as a person and as a program would call it."""

import json

import pytest
from click.testing import CliRunner, Result

from demould.counter.cli.main import demould
from tests.demo_folder import DEMO

SWEETS = DEMO / "desserts"
NOW = ("--now", "Tue 2026-11-17 14:00")


def run(dessert: str, *words: str) -> Result:
    called = ["swap", str(SWEETS / f"{dessert}.yaml"), *words, *NOW]
    return CliRunner().invoke(demould, called, catch_exceptions=False)


CREAM = ("ganache", "cream", "35", "%", "with", "cream", "30", "%")


def test_a_swap_shows_grams_and_what_changes() -> None:
    shown = run("river-pebble", *CREAM).stdout
    assert "held: mass, water, fat" in shown
    assert "fat 34.1 to 30.3 %" in shown
    assert "trial first" in shown
    answer = json.loads(run("river-pebble", *CREAM, "--json").stdout)
    fat = next(
        one for one in answer["gram_for_gram"]["effects"] if one["name"] == "fat"
    )
    assert round(fat["after"], 1) == 30.3


def test_the_cook_says_what_is_held() -> None:
    shown = run("river-pebble", *CREAM, "--hold", "fat, protein").stdout
    assert "held: fat, protein" in shown


def test_an_allergen_that_comes_in_is_loud() -> None:
    shown = run(
        "river-pebble", "base", "hazelnut paste", "with", "pistachio paste"
    ).stdout
    assert "!! ALLERGEN COMES IN: " in shown
    assert "no longer in the formula: hazelnut" in shown


def test_gelatin_by_both_laws_and_agar_never() -> None:
    shown = run(
        "river-pebble", "ganache", "gelatin 200 bloom", "with", "gelatin_160"
    ).stdout
    assert "4.02 g of 160 bloom by the square root (taken)" in shown
    assert "4.50 g by the straight ratio" in shown
    words = ("river-pebble", "ganache", "gelatin 200 bloom", "with", "agar")
    assert "!! NO SWAP" in run(*words).stdout
    assert json.loads(run(*words, "--json").stdout)["swap"] is None
    other = run(*words[:-1], "gelatin_160", "--json").stdout
    assert round(json.loads(other)["root_g"], 2) == 4.02


def test_from_the_freezer() -> None:
    shown = run("meadow-domes", "centre", "rhubarb, trimmed", "with", "frozen rhubarb")
    assert "weigh it thawed" in shown.stdout


@pytest.mark.parametrize(
    ("words", "told"),
    [
        (("ganache", "cream", "35", "%"), "the word with"),
        (("ganach", "cream", "with", "milk"), "has no component 'ganach'"),
        (("ganache", "milk", "with", "cream"), "has no 'milk'; it has: cream 35 %"),
        (("ganache", "salt", "with", "moon"), "no ingredient is called 'moon'"),
        ((*CREAM, "--hold", "colour"), "'colour' cannot be held"),
        (("ganache", "salt", "with", "agar"), "agar sets and salt does not"),
    ],
)
def test_wrong_use_is_one_sentence(words: tuple[str, ...], told: str) -> None:
    result = run("river-pebble", *words)
    assert result.exit_code == 2
    assert told.casefold() in " ".join(result.stderr.split()).casefold()
