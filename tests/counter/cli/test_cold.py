"""``demould cold`` and its questions, as a person and as a program would ask them."""

import json

import pytest
from click.testing import CliRunner, Result

from demould.counter.cli.main import demould
from tests.demo_folder import DEMO

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
        (("--out", "-20 °C"), "OUT OF THE COLD", "at 1 min a piece that is lots of"),
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
        (("--out", "-10 °C"), "the piece starts at -10.0 °C; a limit of -15 °C is passed already."),
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
