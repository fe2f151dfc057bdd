"""Can we, sizes, and from now: as a person and as a program would ask."""

import json
import shutil
from pathlib import Path

import pytest
from click.testing import CliRunner, Result

from demould.counter.cli.main import demould
from demould.demo import NAME
from tests.demo_folder import DEMO

NOW = ("--now", "Tue 2026-11-17 14:00")


@pytest.fixture
def kitchen(tmp_path: Path) -> Path:
    return Path(shutil.copytree(DEMO, tmp_path / NAME))


def run(*words: str | Path) -> Result:
    said = [str(word) for word in words]
    return CliRunner().invoke(demould, said, catch_exceptions=False)


def test_can_says_yes_first_and_by_when(kitchen: Path) -> None:
    asked = ("can", "meadow-domes", "-n", "6", "--on", "sat 12:00")
    result = run(*asked, "--kitchen", kitchen, *NOW)
    assert result.exit_code == 0
    lines = result.stdout.splitlines()
    assert lines[0].startswith("6 Meadow Domes, plates Sat 12:00")
    assert lines[2] == "YES: 7 made in 1 round, and the 2 other orders stand."
    assert lines[3].startswith("Say so by Wed ")


def test_can_says_no_first_and_why(kitchen: Path) -> None:
    asked = ("can", "river-pebble", "-n", "24", "--on", "Fri 15:00", "--collected")
    result = run(*asked, "--kitchen", kitchen, *NOW)
    assert "!! NO: Stone dip: melt for this order waits for a delivery" in result.stdout
    answer = json.loads(run(*asked, "--kitchen", kitchen, "--json", *NOW).stdout)
    assert answer["answer"] is False
    assert answer["limits"][0]["over"] == "delivery"


@pytest.mark.parametrize(
    ("words", "said"),
    [
        (
            ("river-pebble", "-n", "3", "--on", "Mon 2026-11-16 12:00"),
            "Mon 2026-11-16 12:00 is over: now it is Tue 2026-11-17 14:00. Write a"
            " moment to come.",
        ),
        (
            ("river-pebble", "-n", "3", "--on", "soon"),
            "'soon' is not a day and a time. Write it like Sat 2026-11-21 19:30.",
        ),
        (
            ("river-pebbel", "-n", "3", "--on", "sat 12:00"),
            "no dessert is called 'river-pebbel' in Brackmoor Weir; it has:"
            " amber-terrine, ember-log, meadow-domes, orchard-ring, river-pebble.",
        ),
        (
            ("meadow-domes", "-n", "3", "--on", "sat 12:00", "--variant", "no egg"),
            "Meadow Domes has no variant called 'no egg'; it has: none.",
        ),
    ],
)
def test_can_says_what_is_wrong_in_one_sentence(
    kitchen: Path, words: tuple[str, ...], said: str
) -> None:
    result = run("can", *words, "--kitchen", kitchen, *NOW)
    assert result.exit_code == 2
    assert said in " ".join(result.stderr.split())


def test_sizes_side_by_side_with_what_stops_the_largest(kitchen: Path) -> None:
    asked = ("sizes", "river-pebble", "-n", "10", "-n", "500", "--kitchen", kitchen)
    shown = run(*asked, *NOW).stdout
    assert "WHAT STOPS 500, FIRST TO LAST" in shown
    assert max(map(len, shown.splitlines())) <= 80
    answer = json.loads(run(*asked, "--json", *NOW).stdout)["sizes"]
    assert [one["stands"] for one in answer] == [True, False]
    assert [one["make"]["value"] for one in answer] == [12, 535]


def test_sizes_of_what_nobody_ordered_need_a_day(kitchen: Path) -> None:
    result = run("sizes", "ember-log", "--kitchen", kitchen, *NOW)
    assert result.exit_code == 2
    assert 'Write --on "sat 19:30".' in result.stderr


def test_now_gives_the_earliest_plate_and_the_visits(kitchen: Path) -> None:
    asked = ("now", "meadow-domes", "-n", "6", "--no-spares", "--kitchen", kitchen)
    shown = run(*asked, *NOW).stdout
    assert "ON THE PLATE" in shown
    assert "VISITS" in shown
    answer = json.loads(run(*asked, "--json", *NOW).stdout)
    assert answer["hours"]["proven"]
    assert answer["hours"]["visits"][0]["start"].startswith("2026-11-1")


def test_sure_tells_weeks_in_a_hundred_and_what_decides(kitchen: Path) -> None:
    asked = ("sure", kitchen, "--weeks", "60")
    shown = run(*asked, *NOW).stdout
    assert "EVERY ORDER STANDS in " in shown
    assert "WHAT DECIDES" in shown
    orders = kitchen / "orders.yaml"
    orders.write_text(orders.read_text("utf-8").replace("24", "500"), "utf-8")
    assert "IT DOES NOT STAND" in run(*asked, *NOW).stdout


def test_a_week_agreed_on_is_kept_done_step_by_step_and_slips(kitchen: Path) -> None:
    agreed = run("plan", kitchen, "--agree", *NOW)
    assert agreed.stderr.startswith("Agreed: kept in ")
    morning = ("--now", "Wed 2026-11-18 08:10")
    first = json.loads(run("next", kitchen, "--json", *morning).stdout)
    assert first["next"]["start"].startswith("2026-11-18T08:00")
    done = run("done", kitchen, first["next"]["id"], "--to", "08:08", *morning)
    assert done.stdout.startswith("written down: ")
    second = json.loads(run("next", kitchen, "--json", *morning).stdout)
    assert second["next"]["id"] != first["next"]["id"]
    back = run("done", kitchen, first["next"]["id"], "--take-back", *morning)
    assert back.stdout.endswith("is taken back\n")
    assert json.loads(run("next", kitchen, "--json", *morning).stdout) == first
    # On Saturday the domes are fetched long since; the dip can slip to 11:05.
    saturday = ("--now", "Sat 2026-11-21 09:30")
    stands = run("late", kitchen, "melt dip", "5", *saturday).stdout
    assert "EVERY ORDER STANDS" in stands
    gives = run("late", kitchen, "melt dip", "400", *saturday).stdout
    assert "IT GIVES" in gives


@pytest.mark.parametrize(
    ("words", "said"),
    [
        (("next", "--who", "Nobody"), "nobody is called 'Nobody'; there are: Mirel,"),
        (("done", "whip"), "'whip' may be 2 steps. Say more of it: whip River"),
        (("done", "melt dip", "--take-back"), "nobody has said that it began"),
        (("done", "melt dip", "--to", "23:00"), "Tue 23:00 is still to come."),
        (("late", "fry fish", "5"), "no step is called 'fry fish'."),
    ],
)
def test_what_cannot_be_meant_is_said_in_one_sentence(
    kitchen: Path, words: tuple[str, ...], said: str
) -> None:
    command, *rest = words
    result = run(command, kitchen, *rest, *NOW)
    assert result.exit_code == 2
    assert said in " ".join(result.stderr.split())


@pytest.mark.parametrize(
    ("file", "old", "new", "said"),
    [
        ("orders.yaml", "pieces: 24", "pieces: 0", "'0', is less than 1. Write 1"),
        ("orders.yaml", "pieces: 24", "pieces: 100000", "is more than 9999, the most"),
        ("orders.yaml", "Fri 2026-11-20 16:00", "Mon 2026-11-16 16:00", "and now it"),
        (
            "desserts/river-pebble.yaml",
            "stands 12 h to 48 h",
            "stands 48 h to 12 h",
            "the wait, '48 h to 12 h', runs backwards. Write the smaller one first.",
        ),
        (
            "desserts/river-pebble.yaml",
            "5 min; each round; mixer",
            "5 min; each round; mixxer",
            "'mixxer' is no tool, no cold place and no rule. Perhaps you meant 'mixer'",
        ),
        (
            "kitchen.yaml",
            "Sat 10:00 to 21:00",
            "Sat 18:00 to 21:00",
            "River Pebble: thaw holds 24 h",
        ),
    ],
)
def test_what_is_wrong_with_a_week_is_one_named_sentence(
    kitchen: Path, file: str, old: str, new: str, said: str
) -> None:
    path = kitchen / file
    text = path.read_text("utf-8")
    assert old in text
    path.write_text(text.replace(old, new, 1), "utf-8")
    result = run("plan", kitchen, *NOW)
    assert said in " ".join((result.stdout + result.stderr).split())


def test_hands_that_are_always_away_are_no_crash(kitchen: Path) -> None:
    days = ("Tue 2026-11-17", "Wed 2026-11-18", "Thu 2026-11-19", "Fri 2026-11-20")
    away = "; ".join(f"away {day}" for day in (*days, "Sat 2026-11-21"))
    path = kitchen / "kitchen.yaml"
    text = path.read_text("utf-8")
    path.write_text(text.replace("Jonne; second year", f"Jonne; {away}"), "utf-8")
    shown = run("plan", kitchen, *NOW).stdout
    assert "STAND" in shown
