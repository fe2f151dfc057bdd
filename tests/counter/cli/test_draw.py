"""``demould draw`` and the drawings among the papers."""

import json
import shutil
from pathlib import Path

import pytest
from click.testing import CliRunner

from demould.counter.cli.main import demould
from tests.demo_folder import DEMO


@pytest.fixture
def kitchen(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Path:
    shutil.copytree(DEMO, tmp_path / "weir")
    monkeypatch.chdir(tmp_path / "weir")
    return tmp_path / "weir"


def test_draw_writes_each_picture_and_one_sheet(kitchen: Path) -> None:
    done = CliRunner().invoke(demould, ["draw", "river-pebble", "-n", "27"])
    assert done.exit_code == 0, done.output
    names = sorted(path.name for path in (kitchen / "drawings").iterdir())
    assert names == [
        "cut-river-pebble.svg",
        "drawing-river-pebble.pdf",
        "jug-river-pebble.svg",
    ]
    assert (kitchen / "drawings" / names[1]).read_bytes().startswith(b"%PDF")


def test_draw_as_json_names_the_files(kitchen: Path) -> None:
    done = CliRunner().invoke(
        demould, ["draw", "desserts/orchard-ring.yaml", "--out", "out", "--json"]
    )
    assert json.loads(done.stdout) == {
        "drawings": [
            "out/cut-orchard-ring.svg",
            "out/tray-sponge.svg",
            "out/drawing-orchard-ring.pdf",
        ]
    }


def test_an_unknown_dessert_is_named(kitchen: Path) -> None:
    done = CliRunner().invoke(demould, ["draw", "river-pebbel"])
    assert done.exit_code == 2
    assert "no dessert is called 'river-pebbel'" in done.output


def test_a_mould_that_is_not_there_is_one_sentence(kitchen: Path) -> None:
    card = kitchen / "desserts" / "river-pebble.yaml"
    card.write_text(card.read_text().replace("mould: pebble", "mould: pebbles"))
    done = CliRunner().invoke(demould, ["draw", "river-pebble"])
    assert done.exit_code == 1
    assert "pebbles" in done.stderr
    assert "Traceback" not in done.output


def test_papers_can_be_printed_at_the_present_moment(kitchen: Path) -> None:
    done = CliRunner().invoke(demould, ["draw", "meadow-domes"])
    assert done.exit_code == 0, done.output
