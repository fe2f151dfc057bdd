"""Shelves by hour: hand-worked stretches, and a sweep minute by minute."""

import json
from dataclasses import replace
from datetime import timedelta
from itertools import pairwise

from hypothesis import given
from hypothesis import strategies as st

from demould.counter.cli.answer import of_timing
from demould.sheets.page import Lines
from demould.sheets.plain import plain
from demould.sheets.shelves_page import fullest_rows, no_room, shelves_page
from demould.week.shelves import levels, shelves_of
from demould.week.stored import left_waiting
from demould.week.timing import Timing
from tests.week.demo_week import PEBBLE, at, demo_week, kitchen, not_planned

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


def test_the_week_has_every_place_swept_minute_by_minute() -> None:
    timing = demo_week().timing
    shelves = {one.place: one for one in shelves_of(kitchen(), timing)}
    assert {name: one.has for name, one in shelves.items()} == {
        "blast": 3,
        "freezer": 6,
        "fridge": 10,
    }
    roads = {step.id: step for step in timing.laid.problem.steps}
    for name, shelved in shelves.items():
        claims = []
        for entry in timing.entries:
            step = roads[entry.id]
            road = next((one for one in step.either if one.name == entry.took), None)
            takes = {**step.uses, **(road.uses if road else {})}
            claims.append((entry.start, entry.end, takes.get(f"shelf:{name}", 0)))
        claims += [(lot.start, lot.end, lot.taken) for lot in shelved.lots]
        minute = min(begin for begin, *_ in claims)
        while minute < max(over for _, over, _ in claims):
            told = [h.taken for h in shelved.hours if h.start <= minute < h.end]
            here = sum(n for begin, over, n in claims if begin <= minute < over)
            assert sum(told) == here
            assert len(told) == 1 or not here
            minute += timedelta(minutes=1)


def stored_in(place: str) -> list[tuple[str, str, str, int, int]]:
    shelved = next(
        one for one in shelves_of(kitchen(), demo_week().timing) if one.place == place
    )
    return [
        (
            str(lot.what),
            f"{lot.start:%a %H:%M}",
            f"{lot.end:%a %H:%M}",
            lot.pieces,
            lot.taken,
        )
        for lot in shelved.lots
    ]


def step_at(component: str, number: int, key: str, edge: str) -> str:
    name = f"{PEBBLE}.{component}.{number}.{key}"
    found = next(one for one in demo_week().timing.entries if one.id == name)
    return f"{found.start if edge == 'start' else found.end:%a %H:%M}"


# By hand. Moulded 24 + 3: of 27 centres and bases 24 go with the first filling and 3 stay
# for the second. A shelf of 600 x 400 mm takes pebbles of 80.4 x 56 mm with 20 mm between
# in 5 rows of 5, so 24 on one and 27 on two; each demoulded lot waits on its own.
def test_centres_bases_and_pieces_wait_in_the_freezer_till_they_are_taken() -> None:
    first = step_at("piece", 1, "fill", "start")
    second = step_at("piece", 2, "fill", "start")
    dipped = step_at("piece", 0, "dip", "start")
    centre = "Blackcurrant-pear centre after unmould"
    base = "Hazelnut crisp base after cut"
    told = stored_in("freezer")
    assert [one for one in told if one[0] in (centre, base)] == [
        (centre, step_at("centre", 0, "unmould", "end"), first, 27, 1),
        (centre, first, second, 3, 1),
        (base, step_at("base", 0, "cut", "end"), first, 27, 1),
        (base, first, second, 3, 1),
    ]
    assert [one for one in told if one[0] == "River Pebble after demould"] == [
        (
            "River Pebble after demould",
            step_at("piece", 1, "demould", "end"),
            dipped,
            24,
            1,
        ),
        (
            "River Pebble after demould",
            step_at("piece", 2, "demould", "end"),
            dipped,
            3,
            1,
        ),
    ]


def test_what_is_held_at_minus_18_is_frozen_and_what_thawed_is_in_the_fridge() -> None:
    assert "Thyme sponge after cut" in [one[0] for one in stored_in("freezer")]
    fridge = stored_in("fridge")
    thawed = [one for one in fridge if one[0] == "River Pebble after thaw"]
    plated = step_at("piece", 0, "plate", "start")
    assert thawed == [
        (
            "River Pebble after thaw",
            step_at("piece", 0, "thaw", "end"),
            plated,
            27,
            2,
        )
    ]
    boxed = [one for one in fridge if one[0] == "Meadow Domes after box"]
    assert [(one[2], one[3], one[4]) for one in boxed] == [("Fri 16:00", 14, 1)]


def test_nothing_is_stored_in_the_blast_nor_what_never_was_cold() -> None:
    assert stored_in("blast") == []
    everything = [one[0] for one in (*stored_in("freezer"), *stored_in("fridge"))]
    warm = ("cook", "mix", "bake", "melt", "fold", "whip", "deposit", "set-out")
    assert not [one for one in everything if one.endswith(warm)]


takers = st.lists(st.tuples(st.integers(0, MINUTES), st.integers(0, 9)), max_size=5)


@given(st.integers(0, MINUTES), takers)
def test_what_is_left_is_what_a_count_at_every_minute_gives(
    begin: int, taken: list[tuple[int, int]]
) -> None:
    made = sum(pieces for _, pieces in taken)
    found = list(left_waiting(begin, made, taken))
    for minute in range(begin, MINUTES):
        here = sum(n for since, till, n in found if since <= minute < till)
        assert here == made - sum(n for start, n in taken if start <= minute)


# 20 made beside 7 that are there: the 24 of the first filling are the 7 and 17 of these.
# 30 made for 27: the 3 over go with the last.
def test_more_or_fewer_than_are_taken() -> None:
    assert list(left_waiting(0, 20, [(5, 24), (9, 3)])) == [(0, 5, 20), (5, 9, 3)]
    assert list(left_waiting(0, 30, [(9, 3), (5, 24)])) == [(0, 5, 30), (5, 9, 6)]
    assert list(left_waiting(0, 2, [(5, 24), (9, 3)])) == [(0, 5, 2), (5, 9, 2)]


def with_freezer_shelves(count: int) -> Timing:
    timing = demo_week().timing
    problem = timing.laid.problem
    fewer = tuple(
        replace(one, capacity=count) if one.name == "shelf:freezer" else one
        for one in problem.resources
    )
    return replace(
        timing, laid=replace(timing.laid, problem=replace(problem, resources=fewer))
    )


def test_where_there_is_no_room_it_is_said_loudly_with_the_moment() -> None:
    freezer = shelves_of(kitchen(), demo_week().timing)[1]
    assert list(no_room(kitchen(), demo_week().timing)) == []
    tight = with_freezer_shelves(freezer.most - 1)
    blocks = list(no_room(kitchen(), tight))
    assert len(blocks) == 1
    assert isinstance(blocks[0], Lines)
    assert blocks[0].loud
    assert [str(line) for line in blocks[0].lines] == [
        f"NO ROOM in the freezer: {freezer.most} of {freezer.most - 1} shelves,"
        f" {one.start:%a %H:%M} to {one.end:%H:%M}"
        for one in freezer.fullest
    ]
    page = plain(shelves_page(kitchen(), tight, at("Tue 14:00")))
    assert "1 too many" in page
    assert "NO ROOM in the freezer" in page


def test_without_a_freezer_the_page_says_it_does_not_count() -> None:
    warm = replace(
        kitchen(), cold=tuple(one for one in kitchen().cold if one.key != "freezer")
    )
    page = plain(shelves_page(warm, demo_week().timing, at("Tue 14:00")))
    assert "what is stored frozen is not counted" in " ".join(page.split())


def test_the_answer_marks_what_is_stored() -> None:
    told = json.loads(json.dumps(of_timing(kitchen(), demo_week().timing)))["shelves"]
    freezer = next(one for one in told if one["place"] == "freezer")
    assert len(freezer["between_steps"]) == len(stored_in("freezer"))
    assert all(one["stored"] is True for one in freezer["between_steps"])


def test_the_blast_takes_two_shelves_of_pebbles() -> None:
    blast = shelves_of(kitchen(), demo_week().timing)[0]
    assert blast.most == 2
    assert all(one.taken == 2 for one in blast.fullest)


def test_the_page_tells_every_stretch_and_fits() -> None:
    timing = demo_week().timing
    page = plain(shelves_page(kitchen(), timing, at("Tue 14:00")))
    assert max(map(len, page.splitlines())) <= 80
    for shelved in shelves_of(kitchen(), timing):
        starts = [one.start for one in shelved.hours]
        for start in (*starts, *(lot.start for lot in shelved.lots)):
            assert f"{start:%a %H:%M}" in page
    flat = " ".join(page.split())
    assert "reckoned here, not written (assumed)" in flat
    assert "what else is kept there comes on top" in flat


def test_nothing_is_told_of_a_plan_that_does_not_stand() -> None:
    assert list(fullest_rows(kitchen(), not_planned(None))) == []
    assert list(no_room(kitchen(), not_planned(None))) == []
    alone = replace(demo_week().timing, schedule=not_planned(None).schedule)
    told = [str(row[2].text) for row in fullest_rows(kitchen(), alone)]
    assert told[:-1] == [
        f"nothing planned takes any of {n} shelves" for n in (3, 6, 10)
    ]
