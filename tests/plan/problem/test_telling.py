from demould.plan.problem.steps import Problem, Step, exactly
from demould.plan.problem.telling import called, clock, minutes, moment

WEEK = Problem(id="week", origin="2026-03-28T00:00", horizon=3000)
ZONED = Problem(
    id="week", origin="2026-03-28T00:00", horizon=3000, zone="Europe/Vienna"
)


def test_minutes_are_told_by_the_wall_clock() -> None:
    assert clock(WEEK, 0) == "Sat 00:00"
    assert clock(WEEK, 1440 + 550) == "Sun 09:10"


def test_the_night_the_clocks_change_has_an_hour_less() -> None:
    # Council Directive 2000/84/EC, article 2: from 1:00 UTC on the last Sunday in
    # March, 2:00 in Vienna, summer time runs an hour ahead.
    assert clock(ZONED, 1440 + 119) == "Sun 01:59"
    assert clock(ZONED, 1440 + 120) == "Sun 03:00"


def test_stretches_are_told_in_hours_from_one_hour_on() -> None:
    assert [minutes(count) for count in (-5, 45, 720, 1150)] == [
        "-5 min",
        "45 min",
        "12 h",
        "19 h 10",
    ]


def test_a_step_goes_by_its_label_and_its_orders() -> None:
    plain = Step(id="o1.whip", duration=exactly(5))
    labelled = Step(id="o1.whip", label="whip", duration=exactly(5))
    batch = Step(id="w", label="whip", order=("o1", "o2"), duration=exactly(5))
    assert called(plain) == "o1.whip"
    assert called(labelled) == "whip"
    assert called(batch) == "whip for o1, o2"
    assert moment({"w": batch}, "w", "end") == "the end of whip for o1, o2"
    assert moment({}, "due:o1", "start") == "the due time of o1"
