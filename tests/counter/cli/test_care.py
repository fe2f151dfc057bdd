"""Who must not eat it, as a person and as a program would ask."""

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


def test_guest_says_what_is_in_it_and_can_we(kitchen: Path) -> None:
    asked = ("guest", "river-pebble", "--kitchen", kitchen, "--for", "no gelatin")
    shown = run(*asked, *NOW).stdout
    assert "HAZELNUT" in shown
    assert "Offer Amber Terrine" in shown
    told = json.loads(run(*asked, "--json", *NOW).stdout)
    assert told["requests"][0]["verdict"] == "no"
    assert {one["allergen"] for one in told["present"]} == {
        "milk",
        "buckwheat",
        "soya",
        "hazelnut",
        "wheat",
    }


def test_a_request_nobody_knows_is_said_in_one_sentence(kitchen: Path) -> None:
    result = run(
        "guest", "river-pebble", "--kitchen", kitchen, "--for", "no unicorns", *NOW
    )
    assert result.exit_code == 2
    assert "no request is called 'no unicorns'" in result.stderr


def test_label_drafts_and_prints(kitchen: Path, tmp_path: Path) -> None:
    asked = ("label", "river-pebble", "--kitchen", kitchen, "--rules", "uk")
    pdf = tmp_path / "label.pdf"
    shown = run(*asked, "--pdf", pdf, *NOW).stdout
    assert "DRAFT: not for a pack" in shown
    assert pdf.read_bytes().startswith(b"%PDF")
    told = json.loads(run(*asked, "--json", *NOW).stdout)
    assert told["draft"] is True
    assert told["ingredients"].startswith("cream (MILK), white couverture (MILK, SOYA)")


def test_a_use_by_before_the_made_day_is_wrong_use(kitchen: Path) -> None:
    days = ("--made", "2026-11-20", "--use-by", "2026-11-19")
    result = run("label", "river-pebble", "--kitchen", kitchen, *days, *NOW)
    assert result.exit_code == 2
    assert "before the day it was made" in result.stderr


def test_temperatures_judges_a_log(tmp_path: Path) -> None:
    log = tmp_path / "cooling.csv"
    lines = ("2026-11-20 14:00, 57", "2026-11-20 16:05, 21", "2026-11-20 18:00, 5")
    log.write_text("\n".join(lines))
    shown = run("temperatures", log, *NOW).stdout
    assert "US COOLING: BROKEN" in shown.upper()
    assert "what was done about it" in shown
    told = json.loads(run("temperatures", log, "--json", *NOW).stdout)
    assert told["verdict"] == "broken"
    assert len(told["gaps"]) == 2
    log.write_text("2026-11-20 14:00, 135 F\n")
    assert run("temperatures", log, *NOW).exit_code == 1


def test_lots_both_ways(kitchen: Path, tmp_path: Path) -> None:
    pdf = tmp_path / "recall.pdf"
    shown = run("lots", kitchen, "C-1171", "--pdf", pdf, *NOW).stdout
    assert "saturday dinner of last week" in shown
    assert pdf.read_bytes().startswith(b"%PDF")
    told = json.loads(run("lots", kitchen, "c-1171", "--json", *NOW).stdout)
    assert told["went_into"] == ["G-46", "M-46", "P-46", "D-46R"]
    assert "C-1171" in run("lots", kitchen, *NOW).stdout
    wrong = run("lots", kitchen, "C-9999", *NOW)
    assert (wrong.exit_code, "no lot is called" in wrong.stderr) == (2, True)
    (kitchen / "lots.txt").write_text("went P; table 6; 2026-11-18\n")
    assert run("lots", kitchen, *NOW).exit_code == 1
