from dataclasses import replace

from demould.mise.kitchen import Kitchen
from demould.sheets.days import days
from demould.week.timing import Entry, Timing
from tests.demo_folder import demo_makings
from tests.sheets.reading import heads, rows, table_in
from tests.week.demo_week import (
    DOMES,
    PEBBLE,
    demo_week,
    domes,
    entry,
    kitchen,
    planned,
)


def cook() -> Entry:
    return entry(f"{DOMES}.centre.0.cook", "Wed 09:00", "Wed 09:35", "Mirel")


def blast() -> Entry:
    return entry(f"{DOMES}.centre.0.freeze", "Wed 09:35", "Wed 10:50", took="blast")


def sponge() -> Entry:
    return entry(f"{DOMES}.sponge.0.mix", "Wed 09:00", "Wed 09:20", "Jonne")


def other() -> Entry:
    return entry(f"{PEBBLE}.centre.0.cook", "Wed 09:00", "Wed 09:25", "Jonne")


def fill() -> Entry:
    return entry(f"{PEBBLE}.piece.1.fill", "Thu 09:15", "Thu 09:33", "Mirel Jonne")


def freeze() -> Entry:
    return entry(f"{PEBBLE}.piece.1.freeze", "Thu 09:33", "Thu 12:03", took="blast")


def glaze() -> Entry:
    return entry(f"{DOMES}.piece.1.glaze", "Fri 08:15", "Fri 09:15", "Mirel")


def thaw() -> Entry:
    return entry(f"{DOMES}.piece.0.thaw", "Fri 09:15", "Fri 15:15")


def told(timing: Timing, *, of: Kitchen | None = None) -> list[list[str]]:
    """Give the rows for the domes' order alone, up to the day they are collected."""
    blocks = days(of or kitchen(), [domes()], timing)
    assert heads(blocks) == ["the days"]
    return rows(table_in(blocks))


def test_each_day_is_named_once_and_each_hour_has_a_row() -> None:
    assert told(planned(cook(), sponge(), glaze())) == [
        ["Wed", "", "", ""],
        ["09:00", "cook domes centre 0:35", "mix sponge 0:20", ""],
        ["Fri", "", "", ""],
        ["08:15", "glaze domes 1:00", "", ""],
        ["16:00", "12 MEADOW DOMES: COLLECTED", "", ""],
    ]


def test_every_person_has_a_column_and_the_cold_the_last() -> None:
    table = table_in(days(kitchen(), [domes()], planned(cook())))
    assert [str(one.head) for one in table.columns] == ["", "Mirel", "Jonne", "cold"]


def test_a_wait_stands_beside_the_work_it_follows() -> None:
    assert told(planned(cook(), blast()))[1] == [
        "09:00",
        "cook domes centre 0:35",
        "",
        "blast to 10:50",
    ]


def test_beside_two_works_a_wait_is_named() -> None:
    assert told(planned(cook(), sponge(), blast()))[1][3] == "centre: blast to 10:50"


def test_beside_two_centres_a_wait_is_named_in_full() -> None:
    assert (
        told(planned(cook(), other(), blast()))[1][3] == "domes centre: blast to 10:50"
    )


def test_two_waits_of_one_row_are_told_apart() -> None:
    chilled = entry(f"{PEBBLE}.centre.0.freeze", "Wed 09:25", "Wed 11:25", took="blast")
    deposit = entry(f"{PEBBLE}.centre.0.deposit", "Wed 09:00", "Wed 09:25", "Jonne")
    assert told(planned(cook(), deposit, blast(), chilled))[1][3] == (
        "domes centre: blast to 10:50; pebble centre: blast to 11:25"
    )


def test_the_piece_is_named_where_another_work_stands_beside() -> None:
    assert told(planned(glaze(), thaw()))[1][3] == "fridge to 15:15"
    beside = entry(f"{PEBBLE}.sauce.0.boil", "Fri 08:15", "Fri 08:30", "Jonne")
    assert told(planned(glaze(), beside, thaw()))[1][3] == ("domes: fridge to 15:15")


def test_a_wait_that_follows_no_work_has_a_row_and_a_name_of_its_own() -> None:
    late = replace(blast(), start=cook().end.replace(minute=50))
    assert told(planned(cook(), late))[2] == [
        "09:50",
        "",
        "",
        "domes centre: blast to 10:50",
    ]


def test_a_wait_after_work_of_the_day_before_is_on_its_own_day() -> None:
    night = replace(cook(), start=cook().start.replace(day=17), end=blast().start)
    assert told(planned(night, blast()))[2:4] == [
        ["Wed", "", "", ""],
        ["09:35", "", "", "domes centre: blast to 10:50"],
    ]


def test_what_ends_on_another_day_says_which() -> None:
    over_night = replace(blast(), end=blast().end.replace(day=19), took="freezer")
    assert told(planned(cook(), over_night))[1][3] == "freezer to Thu 10:50"


def test_a_short_stand_at_the_bench_is_no_news() -> None:
    bake = entry(f"{DOMES}.sponge.0.bake", "Wed 09:20", "Wed 09:29")
    assert told(planned(sponge(), bake)) == [
        ["Wed", "", "", ""],
        ["09:00", "", "mix sponge 0:20", ""],
        ["Fri", "", "", ""],
        ["16:00", "12 MEADOW DOMES: COLLECTED", "", ""],
    ]


def test_a_round_says_how_many_pieces_and_both_pairs_of_hands() -> None:
    assert told(planned(fill(), freeze()))[1] == [
        "09:15",
        "fill pebble 24 0:18",
        "fill pebble 24 0:18",
        "blast to 12:03",
    ]


def test_another_round_is_not_taken_for_the_one_before() -> None:
    third = entry(f"{PEBBLE}.piece.2.freeze", "Thu 09:33", "Thu 12:03", took="blast")
    assert told(planned(fill(), third))[2] == [
        "09:33",
        "",
        "",
        "pebble: blast to 12:03",
    ]


def test_a_wait_does_not_stand_beside_work_on_something_else() -> None:
    cut = entry(f"{DOMES}.sponge.0.cut", "Wed 09:30", "Wed 09:35", "Jonne")
    late = replace(blast(), start=cut.end)
    assert told(planned(cut, late))[1:3] == [
        ["09:30", "", "cut sponge 0:05", ""],
        ["09:35", "", "", "domes centre: blast to 10:50"],
    ]


def test_a_due_moment_is_loud_and_stands_after_the_work_of_that_minute() -> None:
    box = entry(f"{DOMES}.piece.0.box", "Fri 16:00", "Fri 16:20", "Jonne")
    table = table_in(days(kitchen(), [domes()], planned(box)))
    assert rows(table)[1:] == [
        ["16:00", "", "box domes 0:20", ""],
        ["16:00", "12 MEADOW DOMES: COLLECTED", "", ""],
    ]
    assert [row[1].strong for row in table.rows] == [False, False, True]


def test_the_demos_days_hold_every_work_of_its_plan() -> None:
    week = demo_week()
    table = table_in(days(kitchen(), demo_makings(), week.timing))
    cells = [text for row in rows(table) for text in row[1:3] if ":" in text]
    hands = [one for one in week.timing.entries if not one.part.stands]
    assert len(cells) == sum(len(one.who) for one in hands) + len(demo_makings())
