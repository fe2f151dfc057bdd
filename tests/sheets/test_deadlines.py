from dataclasses import replace

from demould.sheets.deadlines import deadlines
from tests.sheets.reading import heads, lines, rows, table_in
from tests.week.demo_week import DOMES, PEBBLE, at, demo_week, planned

LATEST = {
    f"{PEBBLE}.dip.0.melt": at("Sat 11:05"),
    f"{PEBBLE}.ganache.0.steep": at("Thu 16:05"),
    f"{DOMES}.centre.0.cook": at("Thu 14:45"),
    f"{DOMES}.piece.1.glaze": at("Fri 08:40"),
}


def test_latest_starts_stand_by_day_and_each_holds_together() -> None:
    blocks = deadlines(replace(planned(), latest=LATEST))
    assert heads(blocks) == ["latest starts", "no way back after"]
    held = [
        [text.replace("\xa0", "_") for text in row] for row in rows(table_in(blocks))
    ]
    assert held == [
        ["Thu", "cook_domes_centre_14:45_. steep_ganache_16:05"],
        ["Fri", "glaze_domes_08:40"],
        ["Sat", "melt_dip_11:05"],
    ]


def test_there_is_no_way_back_after_the_first_of_each_order() -> None:
    assert lines(deadlines(replace(planned(), latest=LATEST))) == [
        "Thu 14:45 for Meadow Domes: cook domes centre",
        "Thu 16:05 for River Pebble: steep ganache",
    ]


def test_the_last_freeze_by_each_place_stands_below() -> None:
    freeze = f"{PEBBLE}.piece.2.freeze"
    by = {
        (freeze, "blast"): at("Fri 17:00"),
        (freeze, "freezer"): at("Thu 16:45"),
    }
    told = lines(deadlines(replace(planned(), latest=LATEST, last_by=by)))
    assert [text.replace("\xa0", " ") for text in told][-1] == (
        "last freeze of pebble 3: Thu 16:45 by the freezer . Fri 17:00 by the blast"
    )


# Round 2 of the pebbles may go into the blast until the kitchen closes on Friday, and
# stay there over night: it is out on Saturday at 10:00, when the dip is melted.
def test_the_demo_can_freeze_until_friday_closing_time() -> None:
    last = demo_week().timing.last_by
    assert last[f"{PEBBLE}.piece.2.freeze", "blast"] == at("Fri 17:00")
    assert all(last[name, "freezer"] <= last[name, "blast"] for name, _ in last)


def test_where_nothing_was_asked_nothing_is_said() -> None:
    assert deadlines(planned()) == ()
