"""``demould amiss`` as a person and as a program would call it."""

import json

import pytest
from click.testing import CliRunner, Result

from demould.counter.cli.main import demould
from tests.demo_folder import DEMO

SWEETS = DEMO / "desserts"
NOW = ("--now", "Tue 2026-11-17 14:00")


def run(dessert: str, *words: str) -> Result:
    called = ["amiss", str(SWEETS / f"{dessert}.yaml"), *words, *NOW]
    return CliRunner().invoke(demould, called, catch_exceptions=False)


SLID = ("meadow-domes", "glaze slid off", "piece -9 °C")


def test_the_rescue_comes_first_then_the_cause() -> None:
    lines = run(*SLID).stdout.splitlines()
    assert lines[0].split("  ")[0] == "GLAZE SLIDES"
    assert lines[0].endswith("White mirror glaze")
    assert lines[2].startswith("now: back to the freezer")
    assert lines[3] == "!! hot glaze burns: gloves"
    assert "  1  piece not cold enough <" in "\n".join(lines)
    assert max(map(len, lines)) <= 80


def test_for_programs() -> None:
    answer = json.loads(run(*SLID, "--json").stdout)
    assert (answer["sign"], answer["component"]) == ("glaze slides", "glaze")
    assert answer["causes"][0]["cause"] == "piece not cold enough"
    assert answer["causes"][0]["value"] == -9


def test_a_trouble_of_the_whole_piece_names_the_dessert() -> None:
    shown = run("river-pebble", "it sweats", "room 24 °C", "humidity 65 %").stdout
    assert shown.splitlines()[0].endswith("River Pebble")
    assert "dew point 14 °C over" in shown
    assert "(your reading)" in " ".join(shown.split())


def test_where_nothing_speaks_for_a_cause_it_says_so() -> None:
    shown = run("meadow-domes", "glaze too thin", "glaze 33 °C", "piece -18 °C").stdout
    assert "nothing that was read speaks for any of these" in " ".join(shown.split())


def test_the_part_can_be_said() -> None:
    shown = run("river-pebble", "too loose", "--part", "centre").stdout
    assert "next time" in shown.casefold()


@pytest.mark.parametrize(
    ("words", "told"),
    [
        (("it exploded",), "'it exploded' is no sign known here"),
        (("dip cracks", "moon 3"), "'moon' is nothing that is read off here"),
        (("dip cracks", "piece"), "'piece' has no number"),
        (("dip cracks", "--part", "moon"), "has no component 'moon'"),
    ],
)
def test_wrong_use_is_one_sentence(words: tuple[str, ...], told: str) -> None:
    result = run("river-pebble", *words)
    assert result.exit_code == 2
    assert told in " ".join(result.stderr.split())
