from dataclasses import replace

from demould.sheets.deadlines import deadlines
from tests.sheets.reading import heads, lines, rows, table_in
from tests.week.demo_week import DOMES, PEBBLE, at, planned

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
        ["Thu", "cook_rhubarb_centre_14:45_. steep_ganache_16:05"],
        ["Fri", "glaze_Meadow_Domes_08:40"],
        ["Sat", "melt_dip_11:05"],
    ]


def test_there_is_no_way_back_after_the_first_of_each_order() -> None:
    assert lines(deadlines(replace(planned(), latest=LATEST))) == [
        "Thu 14:45 for Meadow Domes: cook rhubarb centre",
        "Thu 16:05 for River Pebble: steep ganache",
    ]


def test_where_nothing_was_asked_nothing_is_said() -> None:
    assert deadlines(planned()) == ()
