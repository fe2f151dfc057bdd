import pytest

from demould.mise.read_probe import ProbeLog, read_probe


def log(*lines: str, step: float = 5, count: int = 10) -> str:
    """Ten readings five minutes apart, `lines` before them."""
    rows = [f"{n * step:g};{4 - 2 * n}" for n in range(count)]
    return "\n".join([*lines, *rows]) + "\n"


def sound(text: str) -> ProbeLog:
    found, problems = read_probe(text, "log.csv")
    assert problems == []
    assert found is not None
    return found


def faults(text: str) -> list[str]:
    found, problems = read_probe(text, "log.csv")
    assert found is None
    return [str(one) for one in problems]


def test_minutes_and_degrees_without_a_head() -> None:
    found = sound(log())
    assert found.seconds == tuple(300.0 * n for n in range(10))
    assert found.at_c[:3] == (4.0, 2.0, 0.0)
    assert found.air_c is None


@pytest.mark.parametrize(
    ("head", "second"),
    [("seconds;core", 5.0), ("time (h);core °C", 18000.0), ("min;probe", 300.0), ("t [s];T", 5.0)],
)  # fmt: skip
def test_a_head_says_the_unit_of_time(head: str, second: float) -> None:
    wide = 1000.0 if second > 1000 else 1.0
    text = log(head, step=5 / wide)
    assert sound(text).seconds[1] == pytest.approx(second / wide)


def test_columns_stand_in_the_order_of_their_head() -> None:
    rows = "\n".join(f"{n},{-20 - n / 10},{4 - n}" for n in range(9))
    found = sound(f"minutes,air,core\n{rows}")
    assert found.at_c[1] == 3
    assert found.air_c is not None
    assert found.air_c[1] == -20.1


def test_the_clock_the_comma_and_the_sign_of_degrees_are_read() -> None:
    rows = "\n".join(f"09:{5 * n:02d};{4 - n},5 °C;-20,2" for n in range(9))
    found = sound(rows)
    assert found.seconds[:2] == (0, 300)
    assert found.at_c[0] == 4.5
    assert found.air_c == (-20.2,) * 9


def test_midnight_is_passed_with_the_day() -> None:
    rows = [f"2026-11-20 23:{50 + n}:30,{-n}" for n in range(5)]
    rows += [f"2026-11-21 00:0{n}:30,{-5 - n}" for n in range(5)]
    found = sound("\n".join(rows))
    assert found.seconds[5] - found.seconds[4] == 360
    assert found.seconds[-1] == 14 * 60


def test_an_air_that_was_not_logged_throughout_is_none() -> None:
    rows = "\n".join(f"{n};{4 - n};{-20 if n else ''}" for n in range(9))
    assert sound(rows).air_c is None


@pytest.mark.parametrize(
    ("text", "said"),
    [
        (
            log(count=5),
            "log.csv: 5 readings tell too little. Log 8 or more, from the door to the end.",
        ),
        (
            log("time;core F"),
            "log.csv:1:1: the temperatures are in Fahrenheit."
            " Give the log in °C: (F - 32) / 1.8.",
        ),
        (
            "\n".join(f"{n};{50 - 5 * n}" for n in range(10)),
            "log.csv:1:1: 50 looks like Fahrenheit: no piece goes in so warm."
            " Give the log in °C: (F - 32) / 1.8.",
        ),
        (
            log() + "40;-20\n",
            "log.csv:11:1: time goes back here, or stands still."
            " Put the readings in order; over midnight write the day too.",
        ),
        (
            log() + "200;-20\n",
            "log.csv:11:1: no reading for 155 min before this one. Give the log up to"
            " the gap, or the one from after it as its own.",
        ),
        (
            log() + "50;cold\n",
            "log.csv:11:1: the temperature, 'cold', is no number. Write it like -4.2.",
        ),
        (
            log() + "late;-20\n",
            "log.csv:11:1: the time, 'late', is no number. Write it like 35, or 09:35.",
        ),
        (
            log() + "50\n",
            "log.csv:11:1: '50' is no reading."
            " Write time and temperature, like 35; -4.2.",
        ),
        (
            log() + "50;-99\n",
            "log.csv:11:1: -99 °C is colder than any freezer here."
            " Look whether the probe was broken or the column is another.",
        ),
        (
            log() + "50;14 F\n",
            "log.csv:11:1: the temperatures are in Fahrenheit."
            " Give the log in °C: (F - 32) / 1.8.",
        ),
        ("", "log.csv: 0 readings tell too little. Log 8 or more, from the door to the end."),
    ],
)  # fmt: skip
def test_what_is_wrong_with_a_log_is_one_sentence(text: str, said: str) -> None:
    assert faults(text) == [said]


def test_all_faults_are_told_at_once() -> None:
    assert len(faults(log() + "50;cold\nlate;-20\n")) == 2
