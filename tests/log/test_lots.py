"""Lots followed both ways, by hand, and what is wrong with a file of them."""

from datetime import date

import pytest
from hypothesis import given
from hypothesis import strategies as st

from demould.log.lots import allergens_in_lots, trace, used_late
from demould.mise.own_lots import Came, Entry, Lots, Made, Went
from demould.mise.read_lots import read_lots
from demould.sheets.lots_page import lot_page, lots_page
from demould.sheets.plain import plain
from tests.demo_folder import DEMO, demo_folder

DAY = date(2026, 11, 18)


def demo_lots() -> Lots:
    entries, problems = read_lots((DEMO / "lots.txt").read_text("utf-8"), "lots.txt")
    assert problems == ()
    return entries


def names(found: tuple[Came | Made, ...]) -> set[str]:
    return {one.lot for one in found}


# Row 66 of the job: one cream lot to components, trays, orders.
def test_a_cream_is_followed_to_the_guests() -> None:
    found = trace(demo_lots(), "C-1171")
    assert names(found.went_into) == {"G-46", "M-46", "P-46", "D-46R"}
    assert [one.to for one in found.orders] == ["saturday dinner of last week"]
    assert found.made_of == ()


def test_a_left_over_dip_keeps_all_it_was_and_all_it_touched() -> None:
    found = trace(demo_lots(), "D-46R")
    assert {"D-46", "D-45", "HZ-7", "WF-3", "C-1171"} <= names(found.made_of)
    assert [str(one) for one in found.asks] == ["where is D-46R, dip, left over?"]


def test_it_keeps_their_allergens_too() -> None:
    larder = demo_folder().larder
    found, unknown = allergens_in_lots(trace(demo_lots(), "D-46R"), larder)
    assert {"milk", "soya", "hazelnut", "wheat"} <= set(found)
    assert unknown == ()
    plain_dip, _ = allergens_in_lots(trace(demo_lots(), "D-46"), larder)
    assert "hazelnut" not in plain_dip
    found, unknown = allergens_in_lots(trace(demo_lots(), "D-46R"), ())
    assert (found, "hazelnut paste" in unknown) == ((), True)


def test_the_nearest_come_first() -> None:
    found = trace(demo_lots(), "P-46")
    assert [one.lot for one in found.made_of][:2] == ["M-46", "D-46"]


def test_an_unknown_lot_is_a_key_error() -> None:
    with pytest.raises(KeyError):
        trace(demo_lots(), "nothing")


def test_a_lot_used_after_its_day_is_said() -> None:
    entries: tuple[Entry, ...] = (
        Came(lot="C", what="cream", on=DAY, use_by=date(2026, 11, 19)),
        Made(lot="G", what="ganache", on=date(2026, 11, 20), of=("C",)),
        Made(lot="H", what="ganache", on=date(2026, 11, 19), of=("C",)),
    )
    (said,) = used_late(entries)
    assert "went into G on 2026-11-20" in str(said)
    assert used_late(demo_lots()) == ()


@pytest.mark.parametrize(
    ("text", "says"),
    [
        (
            "came C; cream; 2026-11-18; from A\ncame C; cream; 2026-11-18; from B",
            "lot C came as cream from A and as cream from B",
        ),
        ("made G; ganache; 2026-11-18; of C", "lot C never came and was never made"),
        ("went P; table 6; 2026-11-18", "lot P never came and was never made"),
        (
            "came C; cream; 2026-11-18; use by 2026-11-17",
            "C is to be used by 2026-11-17, before 2026-11-18",
        ),
        ("made D; dip; 2026-11-18; of D", "D is made of itself"),
        (
            "came C; cream; 2026-11-18\nmade C; ganache; 2026-11-18; of C",
            "two lots are called C",
        ),
        ("made G; ganache; 2026-11-18", "nobody says what 'G' was made of"),
        ("sent C; cream; 2026-11-18", "'sent C; cream; 2026-11-18' is no lot"),
        ("came C; cream; 2026-11-18; for A", "'for A' is not known here"),
        ("came C; cream; someday", "someday"),
    ],
)
def test_what_is_wrong_is_said_with_its_line(text: str, says: str) -> None:
    _, problems = read_lots(text, "lots.txt")
    assert any(says in str(one) for one in problems), [str(one) for one in problems]
    assert all(str(one).startswith("lots.txt:") for one in problems)


def test_two_deliveries_of_one_lot_from_one_supplier_are_one_lot() -> None:
    text = "came C; cream; 2026-11-18; from A\ncame C; cream; 2026-11-19; from A"
    assert read_lots(text, "lots.txt")[1] == ()


@given(st.lists(st.sets(st.integers(0, 9)), min_size=1, max_size=10))
def test_both_ways_agree(tree: list[set[int]]) -> None:
    made: list[Entry] = [Came(lot="0", what="cream", on=DAY)]
    for number, of in enumerate(tree, start=1):
        below = tuple(str(one) for one in sorted(of) if one < number) or ("0",)
        made.append(Made(lot=str(number), what="mix", on=DAY, of=below))
    made.append(Went(lot=str(len(tree)), to="table 6", on=DAY))
    for one in made:
        if isinstance(one, Went):
            continue
        for other in trace(made, one.lot).went_into:
            assert one.lot in names(trace(made, other.lot).made_of)


def test_a_circle_of_lots_comes_to_an_end() -> None:
    entries = (
        Made(lot="A", what="dip", on=DAY, of=("B",)),
        Made(lot="B", what="dip", on=DAY, of=("A",)),
    )
    assert names(trace(entries, "A").made_of) == {"B"}


def test_the_sheet_says_who_to_call() -> None:
    shown = plain(lot_page(trace(demo_lots(), "HZ-7")))
    assert "came from Nutfield" in shown
    assert "saturday dinner of last week" in shown
    assert "D-46R" in plain(lots_page(demo_lots(), ()))
