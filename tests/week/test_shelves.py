"""Shelves by hour: hand-worked stretches, and a sweep minute by minute."""

from dataclasses import replace
from itertools import pairwise

from hypothesis import given
from hypothesis import strategies as st

from demould.sheets.plain import plain
from demould.sheets.shelves_page import fullest_rows, shelves_page
from demould.week.shelves import levels, shelves_of
from tests.week.demo_week import at, demo_week, kitchen, not_planned

MINUTES = 40
claim = st.tuples(
    st.integers(0, MINUTES), st.integers(0, MINUTES), st.integers(0, 4)
).map(lambda one: (min(one[:2]), max(one[:2]), one[2]))


# By hand: 2 from 10:00 to 14:00, 1 from 12:00 to 16:00, another 1 from 16:00 on: the
# hand-over at 16:00 is no change, what ends leaves room for what begins.
def test_what_ends_leaves_room_for_what_begins() -> None:
    assert levels([(600, 840, 2), (720, 960, 1), (960, 1020, 1)]) == (
        (600, 720, 2),
        (720, 840, 3),
        (840, 1020, 1),
    )


def test_an_empty_place_between_two_loads_is_told() -> None:
    assert levels([(0, 10, 1), (20, 30, 1)]) == ((0, 10, 1), (10, 20, 0), (20, 30, 1))
    assert levels([]) == ()


@given(st.lists(claim, max_size=8))
def test_it_is_what_a_count_at_every_minute_gives(
    claims: list[tuple[int, int, int]],
) -> None:
    swept = [
        sum(amount for begin, over, amount in claims if begin <= minute < over)
        for minute in range(MINUTES)
    ]
    told = [0] * MINUTES
    found = levels(claims)
    for begin, over, total in found:
        told[begin:over] = [total] * (over - begin)
    assert told == swept
    for before, after in pairwise(found):
        assert before[1] == after[0]
        assert before[2] != after[2]


def test_the_week_has_every_place_with_shelves_counted_from_its_entries() -> None:
    timing = demo_week().timing
    shelves = {one.place: one for one in shelves_of(timing)}
    assert {name: one.has for name, one in shelves.items()} == {
        "blast": 3,
        "freezer": 6,
        "fridge": 10,
    }
    roads = {step.id: step for step in timing.laid.problem.steps}
    for name, shelved in shelves.items():
        for stretch in shelved.hours:
            taken = 0
            for entry in timing.entries:
                step = roads[entry.id]
                road = next(
                    (one for one in step.either if one.name == entry.took), None
                )
                takes = {**step.uses, **(road.uses if road else {})}
                if entry.start <= stretch.start < entry.end:
                    taken += takes.get(f"shelf:{name}", 0)
            assert stretch.taken == taken
            assert taken <= shelved.has


def test_the_blast_takes_two_shelves_of_pebbles() -> None:
    blast = shelves_of(demo_week().timing)[0]
    assert blast.most == 2
    assert all(one.taken == 2 for one in blast.fullest)


def test_the_page_tells_every_stretch_and_fits() -> None:
    timing = demo_week().timing
    page = plain(shelves_page(kitchen(), timing, at("Tue 14:00")))
    assert max(map(len, page.splitlines())) <= 80
    for shelved in shelves_of(timing):
        for one in shelved.hours:
            assert f"{one.start:%a %H:%M}" in page
    assert "what else is kept there, come on top" in " ".join(page.split())


def test_nothing_is_told_of_a_plan_that_does_not_stand() -> None:
    assert list(fullest_rows(not_planned(None))) == []
    alone = replace(demo_week().timing, schedule=not_planned(None).schedule)
    told = [str(row[2].text) for row in fullest_rows(alone)]
    assert told[:-1] == [
        f"no written wait takes any of {n} shelves" for n in (3, 6, 10)
    ]
