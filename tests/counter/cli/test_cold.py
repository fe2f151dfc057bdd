"""``demould cold`` and its questions, as a person and as a program would ask them."""

import json
from dataclasses import replace
from pathlib import Path

import numpy as np
import pytest
from click.testing import CliRunner, Result

from demould.cold.follow import Corner, follow
from demould.cold.from_dessert import as_filled
from demould.cold.from_kitchen import to_freeze
from demould.counter.cli.main import demould
from demould.mise.figure import Figure, Line, Measured
from demould.mise.find import find_in
from demould.mise.folder import dessert_of
from demould.mise.read_cold import read_cold_place
from tests.demo_folder import DEMO, demo_folder

PEBBLE = str(DEMO / "desserts" / "river-pebble.yaml")
TERRINE = str(DEMO / "desserts" / "amber-terrine.yaml")
NOW = ("--now", "2026-11-17 14:00")


def cold(*words: str, dessert: str = PEBBLE) -> Result:
    return CliRunner().invoke(
        demould, ["cold", dessert, *words, *NOW], catch_exceptions=False
    )


def test_help_sets_questions_apart() -> None:
    said = CliRunner().invoke(demould, ["cold", "--help"]).output
    order = [said.index(head) for head in ("Questions:", "Said with a", "Options:")]
    assert order == sorted(order)
    assert "--json" in said


@pytest.mark.parametrize(
    ("words", "head", "says"),
    [
        (("--sweat", "10 min"), "ON THE PLATE", "dew point of this air: 11.6 °C"),
        (("--bench", "-20 °C"), "OUT OF THE COLD", "at 1.0 min a piece that is lots of"),
        (("--van", "90 min", "--ice", "1 kg", "--outside", "21 °C"), "IN THE VAN", "that ice holds 6.4 h"),
        (("--tub", "2 h"), "HOW SHALLOW A TUB", "in 2 h: no deeper than 22 mm"),
        (("--beside", "2 kg"), "WARM BESIDE FINISHED", "2 kg of finished pieces stand uncovered in freezer"),
        (("--dead", "2026-11-16 22:00"), "THE FREEZER STOPPED", "!! take a reading: nobody knows how warm it is"),
    ],
)  # fmt: skip
def test_each_question_has_its_page(
    words: tuple[str, ...], head: str, says: str
) -> None:
    result = cold(*words)
    assert result.exit_code == 0
    assert head in result.stdout
    assert says in " ".join(result.stdout.split())
    assert all(len(line) <= 80 for line in result.stdout.splitlines())
    assert "FREEZE, UNTIL" not in result.stdout


def test_softness_is_a_question_too() -> None:
    result = cold("--table", dessert=TERRINE)
    assert "HOW SOFT AT THE TABLE" in result.stdout
    assert "Iced nougat feels: -18 °C" in result.stdout


def test_several_questions_at_once_are_one_json() -> None:
    told = json.loads(
        cold("--van", "1 h", "--tub", "2 h", "--dead", "2026-11-16 22:00", "--reading",
             "2026-11-17 13:30; -17 °C; in the piece", "--json").stdout
    )  # fmt: skip
    van, tub, dead = told["answers"]
    assert (van["asked"], tub["asked"], dead["asked"]) == ("van", "tub", "dead")
    assert van["pieces"] == 12
    assert tub["rows"][0][0] == 20
    assert dead["verdict"] == "sound"


def test_the_room_can_be_another() -> None:
    told = json.loads(
        cold("--sweat", "10 min", "--room", "24 °C, 65 % humid", "--json").stdout
    )
    # Magnus, WMO: 24 °C at 65 % has its dew point at 17.0 °C.
    assert told["answers"][0]["likely"]["point_c"] == pytest.approx(17.0, abs=0.05)


@pytest.mark.parametrize(
    ("words", "fault"),
    [
        (("--sweat", "ten"), "the time on the plate, 'ten', is not an amount. Write a number and its unit, in min, h or d."),
        (("--van", "-3 h"), "the time on the way, '-3 h', is under 0; write how much it is."),
        (("--bench", "-10 °C"), "the piece starts at -10.0 °C; a limit of -15 °C is passed already."),
        (("--tub", "0 h"), "no depth of tray goes with 0 h. Ask for a time like 2 h."),
        (("--tub", "2 h", "--in", "blast"), "none of these cold places is cold enough or warm enough for that; name one with --in, or write one in kitchen.yaml."),
        (("--beside", "0 g"), "0 kg of finished goods; it must be more than 0."),
        (("--dead", "2026-11-18 22:00"), "an outage ends before it began, or after now."),
        (("--dead", "yesterday"), "'yesterday' is not a day and a time. Write it like Sat 2026-11-21 19:30."),
        (("--in", "cellar"), "no cold place is called 'cellar'; the kitchen has: blast, freezer, fridge."),
        (("--room", "21 F", "--sweat", "5 min"), "the air of the room, '21 F', is in Fahrenheit. Write it in °C."),
    ],
)  # fmt: skip
def test_what_cannot_be_answered_is_one_sentence(
    words: tuple[str, ...], fault: str
) -> None:
    result = cold(*words)
    assert result.exit_code == 2
    assert fault in " ".join(result.stderr.split())


def probe_log(tmp_path: Path, film: float = 11.0, *, air: bool = True) -> Path:
    """A log as the demo's freezer would give with that film, at -21 °C."""
    folder = demo_folder()
    place = next(one for one in folder.kitchen.cold if one.key == "freezer")
    dessert = dessert_of(folder, "river-pebble")
    piece = as_filled(dessert, folder.kitchen, find_in(folder.larder))
    there = replace(to_freeze(dessert, folder.kitchen, place), load=None, air_c=-21.0)
    run = follow(
        piece, there, Corner(film=film), until=5 * 3600.0, done=lambda _: False
    ).run
    rows = [
        f"{at / 60:g};{np.interp(at, run.seconds, run.core):.2f}"
        + (";-21" if air else "")
        for at in range(0, 18000, 300)
    ]
    file = tmp_path / "log.csv"
    file.write_text("minutes;core" + (";air" if air else "") + "\n" + "\n".join(rows))
    return file


def test_a_probes_log_tells_the_film_and_the_line_to_keep(tmp_path: Path) -> None:
    result = cold(
        "--probe", str(probe_log(tmp_path)), "--in", "freezer", "--svg", str(tmp_path)
    )
    said = " ".join(result.stdout.split())
    assert "film of freezer over pieces like these: 11.0 W/m2K" in said
    assert (
        "freezer; -20 °C; upright freezer; 6 shelves of 600 x 400 mm; film 11 W/m2K"
        " (measured, 2026-11-17)" in said
    )
    assert "the estimate: right 1 times of 1" in said
    assert "the air was not logged" not in said
    assert (tmp_path / "probe-freezer-river-pebble.svg").read_text().startswith("<svg")


def test_a_log_without_its_air_says_how_much_that_matters(tmp_path: Path) -> None:
    file = str(probe_log(tmp_path, air=False))
    said = " ".join(cold("--probe", file, "--in", "freezer").stdout.split())
    assert (
        "the air was not logged: taken as -20 °C; one degree warmer would make" in said
    )


def test_the_line_it_gives_is_read_back(tmp_path: Path) -> None:
    told = cold("--probe", str(probe_log(tmp_path)), "--in", "freezer", "--json").stdout
    film = json.loads(told)["answers"][0]["measured"]["film"]["value"]
    line = Line(
        "kitchen.yaml",
        1,
        f"freezer; -20 °C; upright freezer; film {film} W/m2K (measured)",
    )
    assert read_cold_place(line).film == Figure(
        name="film of the freezer", value=film, unit="W/m2K", origin=Measured(line=line)
    )


def test_a_log_with_faults_is_told_line_by_line(tmp_path: Path) -> None:
    file = tmp_path / "bad.csv"
    file.write_text("minutes;core F\n" + "\n".join(f"{n};{40 - n}" for n in range(9)))
    result = cold("--probe", str(file), "--in", "freezer")
    assert result.exit_code == 1
    assert "bad.csv:1:1: the temperatures are in Fahrenheit." in result.stderr
    file.write_text("\n".join(f"{9 * n};-19.5" for n in range(20)))
    result = cold("--probe", str(file), "--in", "freezer")
    assert result.exit_code == 1
    assert "bad.csv: only 0 readings are over 2 °C away from the air" in result.stderr
    file.write_bytes(b"\xff\xfe\x00")
    assert (
        "Save the log as CSV, UTF-8."
        in cold("--probe", str(file), "--in", "freezer").stderr
    )
    result = cold("--probe", str(file))
    assert result.exit_code == 2
    assert "name the place of the log with --in." in result.stderr


def test_curves_are_drawn_with_signs_and_written_as_svg(tmp_path: Path) -> None:
    result = cold("--in", "blast", "--svg", str(tmp_path))
    assert "blast -35 °C: core #, surface ., both +" in result.stdout
    assert "ice, tenths" in result.stdout
    for name in ("cold-river-pebble-blast", "cold-river-pebble-blast-section"):
        assert (tmp_path / f"{name}.svg").read_text("utf-8").startswith("<svg")
    assert all(len(line) <= 80 for line in result.stdout.splitlines()[:-2])


def test_air_as_it_was_logged_is_reckoned_with(tmp_path: Path) -> None:
    steady = tmp_path / "steady.csv"
    steady.write_text("minutes;air\n" + "\n".join(f"{10 * n};-30" for n in range(20)))
    warm = tmp_path / "warm.csv"
    # Two hours at -5 °C with the door ajar, then as cold.
    warm.write_text(
        "minutes;air\n"
        + "\n".join(f"{10 * n};{-5 if n < 12 else -30}" for n in range(20))
    )

    def likely(file: Path) -> float:
        told = json.loads(cold("--in", "freezer", "--air", str(file), "--json").stdout)
        (one,) = told["freeze"]
        return float(one["hours"]["likely"])

    # In the warm air it does not get to -18 at all, so it is later by nearly two hours.
    assert 1.0 < likely(warm) - likely(steady) < 2.2
    assert "name the place of the log" in cold("--air", str(steady)).stderr
