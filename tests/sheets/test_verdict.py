from dataclasses import replace

from demould.plan.answer.schedule import Explain, Relaxation
from demould.plan.judge.violation import Violation
from demould.sheets.page import Block
from demould.sheets.verdict import verdict
from demould.week.timing import Timing
from tests.demo_folder import demo_makings
from tests.sheets.reading import lines, loud, rows, table_in
from tests.week.demo_week import demo_week, judged, not_planned, ordered_as, pebbles

SPARE = {"domes to collect": 25, "saturday dinner": 65}


def told(timing: Timing) -> tuple[Block, ...]:
    return tuple(verdict(demo_makings(), timing))


def test_it_stands_and_the_tightest_order_is_named() -> None:
    assert lines(told(judged(SPARE))) == [
        "IT STANDS: 2 orders in time. Tightest: Meadow Domes, 25 min to spare."
    ]
    assert loud(told(judged(SPARE))) == []


def test_each_order_has_a_row_with_what_is_made_and_its_spare_time() -> None:
    table = table_in(told(judged(SPARE)))
    assert rows(table) == [
        [
            "12",
            "Meadow Domes",
            "collected Fri 16:00",
            "make 14 (2 spares)",
            "spare 25 min",
        ],
        [
            "24",
            "River Pebble",
            "plates Sat 19:30",
            "make 27 (3 spares)",
            "spare 1 h 05",
        ],
    ]
    assert [row[3].known for row in table.rows] == ["assumed", "assumed"]


def test_one_order_is_one_order() -> None:
    blocks = tuple(verdict([pebbles()], judged({"saturday dinner": 65})))
    assert lines(blocks) == [
        "IT STANDS: 1 order in time. Tightest: River Pebble, 1 h 05 to spare."
    ]


def test_one_spare_and_none_are_worded_so() -> None:
    more = [replace(pebbles(), order=ordered_as(pebbles(), pieces=n)) for n in (26, 27)]
    table = table_in(tuple(verdict(more, judged({"saturday dinner": 65}))))
    assert [row[3] for row in rows(table)] == [
        "make 27 (1 spare)",
        "make 27 (no spares)",
    ]


def test_without_a_latest_start_no_spare_time_is_claimed() -> None:
    assert lines(told(judged({}))) == ["IT STANDS: everything in time."]
    assert [row[4] for row in rows(table_in(told(judged({}))))] == ["", ""]


def test_where_nothing_was_found_it_says_so_loudly_and_shows_no_rows() -> None:
    (only,) = told(not_planned(None))
    assert loud((only,)) == ["IT DOES NOT STAND: no plan was found in the time given"]


def test_what_is_in_the_way_is_loud_and_what_would_make_room_follows() -> None:
    room = Relaxation(text="borrow one mould", changes=())
    why = Explain(text="there are 3 pebble moulds, 4 are wanted", relaxations=(room,))
    blocks = told(not_planned(why))
    assert loud(blocks) == [
        "IT DOES NOT STAND: there are 3 pebble moulds, 4 are wanted"
    ]
    assert lines(blocks[1:]) == ["What would make room, one of:", "borrow one mould"]
    assert len(told(not_planned(replace(why, relaxations=())))) == 1


def test_a_plan_that_breaks_a_promise_is_told_by_what_it_breaks() -> None:
    torn = replace(
        demo_week().timing,
        broken=(Violation(rule="due", text="the domes are ready at 17:00"),),
    )
    assert loud(told(torn)) == [
        "IT DOES NOT STAND: the plan that was found breaks what it promises",
        "the domes are ready at 17:00",
    ]
