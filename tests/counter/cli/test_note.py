"""``demould note`` as a cook would call it."""

import json
import shutil
from collections.abc import Callable
from pathlib import Path

import pytest
from click.testing import CliRunner, Result

from demould.counter.cli.main import demould
from tests.advice.gaps.pebble_note import NOTE
from tests.demo_folder import DEMO

NOW = ("--now", "2026-11-17 14:00")
Run = Callable[..., Result]


@pytest.fixture
def run(tmp_path: Path) -> Run:
    def call(text: str | bytes, *words: str) -> Result:
        file = tmp_path / "pebble.txt"
        file.write_bytes(text if isinstance(text, bytes) else text.encode())
        return CliRunner().invoke(
            demould, ["note", str(file), *words, *NOW], catch_exceptions=False
        )

    return call


def test_a_note_gives_its_draft_its_counts_and_five_questions(run: Run) -> None:
    result = run(NOTE)

    assert result.exit_code == 0
    assert result.stdout.startswith("dessert: Pebble\nwritten for: about 20 pieces\n")
    assert "AS WRITTEN IT GIVES, PIECES" in result.stdout
    shown = " ".join(result.stdout.split())
    assert "1 fill one cavity of the pebble mould" in shown
    assert "NOT UNDERSTOOD, AND KEPT until slate" in shown


def test_a_note_a_number_and_a_day_give_a_draft_week(run: Run) -> None:
    result = run(NOTE, "-n", "24", "--on", "sat 19:30")

    assert result.exit_code == 0
    assert "24 PEBBLE: PLATES <" in result.stdout.upper()
    assert "drawn up Tue 14:00" in result.stdout


def test_an_answer_changes_the_counts_and_the_next_question(run: Run) -> None:
    before = json.loads(run(NOTE, "--json").stdout)
    after = json.loads(run(NOTE, "--json", "--answer", "1=90 ml").stdout)

    def ganache(answer: dict[str, list[dict[str, object]]]) -> object:
        return next(
            one["pieces"] for one in answer["counts"] if one["component"] == "ganache"
        )

    assert ganache(before) == 23
    assert ganache(after) == 20
    assert before["questions"][0]["gap"] == "pebble: water in a cavity"
    assert after["questions"][0]["gap"] == "ganache: line 5, leaves"


def test_the_draft_is_written_as_a_kitchen_and_never_over_another(
    run: Run, tmp_path: Path
) -> None:
    out = tmp_path / "kitchen"
    words = ("-n", "24", "--on", "sat 19:30", "--out", str(out))

    assert run(NOTE, *words).exit_code == 0
    assert sorted(one.name for one in out.rglob("*.yaml")) == [
        "kitchen.yaml",
        "orders.yaml",
        "pebble.yaml",
    ]
    check = CliRunner().invoke(demould, ["check", str(out), "--json", *NOW])
    assert check.exit_code == 0, check.stderr
    unsaid = [one["says"] for one in json.loads(check.stdout)["unsaid"]]
    assert "Pebble, Ganache: how much salt is not said" in unsaid
    again = run(NOTE, *words)
    assert again.exit_code == 2
    assert "already has kitchen.yaml" in again.stderr


@pytest.mark.parametrize(
    ("text", "code", "said"),
    [
        (b"\x00\x01\x02", 2, "is not text"),
        (b"hello there\n", 1, "no ingredient is named in it"),
        (b"cr\xe8me 200 g\n", 0, ""),
        (b"cream 200 g\n" + b"la " * 80_000, 0, "is kept and not read"),
        ("שמנת 100\ncream 200 g\n".encode(), 0, ""),
        (b"dip: cocoa butter 70 %, white couverture 45 %\n", 0, ""),
        (b"cream 0 g\nsugar 40 g\n", 0, ""),
        (b"cream, sugar, salt\n", 0, ""),
    ],
)
def test_a_bad_note_is_told_once_and_the_rest_is_read(
    run: Run, text: bytes, code: int, said: str
) -> None:
    result = run(text)

    assert result.exit_code == code
    assert said in result.stderr
    assert result.stderr.count(said or "\0") <= 1


@pytest.mark.parametrize(
    ("words", "said"),
    [
        (("--on", "sat 19:30"), "a day needs a number of pieces too: -n 24"),
        (("-n", "24", "--on", "someday"), "'someday' is not a day and a time"),
        (("--answer", "90 ml"), "'90 ml' is no answer"),
        (("--answer", "9=90 ml"), "there is no question 9; there are 5"),
        (("--zone", "Narnia"), "no place on the clock is called 'Narnia'"),
    ],
)
def test_wrong_use_says_what_would_be_right(
    run: Run, words: tuple[str, ...], said: str
) -> None:
    result = run(NOTE, *words)

    assert result.exit_code == 2
    assert said in result.stderr


def test_a_note_of_one_word_is_drafted_and_its_week_asks_for_an_amount(
    run: Run,
) -> None:
    drafted = run("sugar")
    week = run("sugar", "-n", "24", "--on", "sat 19:30")
    told = run("sugar", "-n", "24", "--on", "sat 19:30", "--json")

    assert drafted.exit_code == 0, drafted.stderr
    assert week.exit_code == 1
    assert week.stderr.startswith("pebble.txt: a part of it has no amount at all")
    (fault,) = json.loads(told.stdout)["faults"]
    assert fault["remedy"].startswith("Write at least one, like 280 g cream")


def test_two_versions_of_a_file_show_the_line_and_what_it_does(tmp_path: Path) -> None:
    kitchen = Path(shutil.copytree(DEMO, tmp_path / "kitchen"))
    new = kitchen / "desserts" / "river-pebble.yaml"
    old = tmp_path / "river-pebble.yaml"
    text = new.read_text("utf-8")
    old.write_text(text, "utf-8")
    new.write_text(text.replace("3.6 g  gelatin", "4.5 g  gelatin"), "utf-8")

    told = CliRunner().invoke(demould, ["changed", str(old), str(new), *NOW])
    same = CliRunner().invoke(
        demould, ["changed", str(old), str(old), "--kitchen", str(kitchen), *NOW]
    )

    assert told.exit_code == 0, told.stderr
    assert "what sets Buckwheat whipped ganache: 0.40 %, now 0.50 %" in " ".join(
        told.stdout.split()
    )
    assert "1 changed" in told.stdout
    assert same.exit_code == 0, same.stderr
    assert "Nothing: the two say the same." in same.stdout
