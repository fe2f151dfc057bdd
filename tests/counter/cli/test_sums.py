"""Sums at the stove on the command line."""

import json
from pathlib import Path

import pytest
from click.testing import CliRunner, Result

from demould.counter.cli.main import demould
from tests.demo_folder import DEMO

PEBBLE = DEMO / "desserts" / "river-pebble.yaml"
NOW = ("--now", "Tue 2026-11-17 14:00")


def run(*words: str | Path) -> Result:
    return CliRunner().invoke(
        demould, [str(word) for word in words], catch_exceptions=False
    )


MIX = (
    "mix",
    "280 g cream 35 % at 78 °C",
    "190 g white couverture 35 % at 20 °C, unmelted",
    "400 g cream 35 % at 4 °C",
)


def test_a_mix_against_its_window() -> None:
    shown = run(*MIX, "--into", "whipped ganache").stdout
    assert "BELOW 32 to 45 °C: melt the couverture first" in shown
    assert json.loads(run(*MIX, "--json").stdout)["mixed"]["likely"] < 32
    hot = run("mix", "280 g cream 35 % at 78 °C", "--into", "ganache montee").stdout
    assert "OVER 32 to 45 °C" in hot
    assert (
        "within 32 to 45 °C"
        in run(
            "mix", "1 l water at 40 °C", "--into", "whipped ganache", "--kitchen", DEMO
        ).stdout
    )


@pytest.mark.parametrize(
    ("words", "told"),
    [
        (("mix", "280 g cream 35 %"), "does not say how warm it is"),
        (("mix", "1 g water at 400 °C"), "it must be from -40 to 150 °C"),
        (("mix", "3 water at 4 °C"), "no unit stands after 3"),
        (("mix", "1 g water at 4 °C", "--into", "moon"), "'moon' is none of:"),
        (("sugar", "90"), "it must be 100 to 200 °C"),
        (("poured", PEBBLE, "cente", "1 g pear"), "has no component 'cente'; it has:"),
        (("poured", PEBBLE, "centre", "1 g salt"), "has no 'salt'; it has: blackcurr"),
        (("poured", PEBBLE, "centre", "400 pear"), "no unit stands after 400"),
        (("poured", PEBBLE, "centre", "? pear, peeled and cored"), "how many grams"),
        (("poured", PEBBLE, "centre", "0 g pear"), "more than 0"),
    ],
)
def test_wrong_use_is_one_sentence(words: tuple[str, ...], told: str) -> None:
    result = run(*words)
    assert result.exit_code == 2
    assert told in " ".join(result.stderr.split())


def test_sugar_by_height_by_boiling_water_and_by_the_kitchen() -> None:
    assert (
        "cook to 113.0 °C where the card says 118 °C"
        in run("sugar", "118", "--height", "1500").stdout
    )
    assert "by your thermometer" in run("sugar", "118", "--boils", "97").stdout
    assert (
        "by 120 m above the sea" in run("sugar", "118", "--kitchen", DEMO, *NOW).stdout
    )
    found = json.loads(run("sugar", "118", "--boils", "95", "--json").stdout)
    assert found["cook_to"]["likely"] == 113
    assert "hot sugar burns deep" in run("sugar", "118").stdout


def test_poured_shows_both_ways_on() -> None:
    words = ("poured", PEBBLE, "centre", "400 g blackcurrant purée", "-n", "27", *NOW)
    shown = run(*words).stdout
    assert "x 1.146" in shown.lower()
    assert "gives 31 pieces" in shown
    assert "nothing leaves its band" in shown
    found = json.loads(run(*words, "--json").stdout)
    assert (found["pieces"], found["others"]["pieces"]) == (27, 31)
    much = run("poured", PEBBLE, "centre", "700 g blackcurrant purée", *NOW).stdout
    assert "!! not as it is" in much


def test_the_smallest_trial() -> None:
    shown = run("trial", PEBBLE, *NOW).stdout
    assert "the smallest honest trial: 8" in shown
    assert json.loads(run("trial", PEBBLE, "--json", *NOW).stdout)["pieces"] == 8


def test_the_check_has_findings_and_the_make_up_of_every_component() -> None:
    answer = json.loads(run("check", DEMO, "--json", *NOW).stdout)
    assert answer["will_it"]
    assert {"dessert", "kind", "says", "do", "weight"} == set(answer["will_it"][0])
    ganache = next(one for one in answer["made_of"] if one["component"] == "ganache")
    assert round(ganache["per_100g"]["fat"], 1) == 34.1
    assert round(ganache["set_by"]["gelatin"]["value"], 2) == 0.40
    assert ganache["ph"][0] < ganache["ph"][1]
    shown = run("check", DEMO, *NOW).stdout
    assert "WHAT IT IS MADE OF" in shown
    assert max(map(len, shown.splitlines())) <= 80
