from dataclasses import replace

from demould.cold.from_kitchen import Cover
from demould.cold.probe_place import ProbePlace
from demould.cold.wait import AtBest, Wait, Wet
from demould.mise.figure import Estimate, Figure, Stated
from demould.mise.kitchen import ColdPlace
from demould.mise.words import Words
from demould.sheets.cold_page import beside_lines, cold_page
from demould.sheets.plain import plain
from demould.week.chilling import Chilling, InPlace
from tests.desserts.pebble import RIVER_PEBBLE
from tests.sheets.reading import heads, rows, table_in, under

FREEZE = "freeze, until nowhere is warmer than -18 °C"
THAW = "thaw, until no ice is left and the core is +1 °C"
AIR = Words("how much air moves")


def hours(low: float, likely: float, high: float) -> Estimate:
    return Estimate(low=low, likely=likely, high=high, unit="h", reason=AIR)


def in_place(
    key: str, air: float, kind: str, cover: Cover | None, wait: Wait
) -> InPlace:
    place = ColdPlace(key=key, kind=kind, air=Figure(name="air", value=air, unit="°C"))
    return InPlace(place=place, cover=cover, wait=wait)


FROZEN = Wait(
    hours=hours(1.0, 1.2, 1.5),
    curve=((0.0, -4.0, 2.0, 0.1), (0.6, -10.0, -20.0, 0.8), (1.2, -18.0, -23.0, 1.0)),
    heat_kj=8.06,
    residual=0.0,
    core_c=-18.0,
)
THAWED = Wait(
    hours=hours(3.2, 5.0, 7.6),
    curve=((0.0, -18.0, -18.0, 1.0), (5.0, 1.0, 2.0, 0.0)),
    heat_kj=-11.5,
    residual=0.0,
    core_c=1.0,
    wet=Wet(
        grams=Estimate(low=0.13, likely=0.4, high=0.86, unit="g", reason=AIR),
        film_um=40,
        left_g=0.1,
    ),
)


def chilling(frozen: Wait = FROZEN, thawed: Wait = THAWED) -> Chilling:
    return Chilling(
        load=Words("24 in 3 moulds"),
        probe=ProbePlace(face="top", depth=0.016, share=0.1),
        keeps=Figure(name="hold", value=1440, unit="min", origin=Stated()),
        freezing=(in_place("blast", -35, "blast chiller", None, frozen),),
        thawing=(in_place("fridge", 3, "fan fridge", "open", thawed),),
    )


def told(one: Chilling) -> str:
    return " ".join(plain(cold_page(RIVER_PEBBLE, one)).split())


def test_hours_heat_water_and_when_to_serve_stand_in_the_tables() -> None:
    page = cold_page(RIVER_PEBBLE, chilling())
    assert heads(page.blocks) == [FREEZE, THAW, "the probe"]
    assert rows(table_in(under(page.blocks, FREEZE))) == [
        ["blast -35 °C", "60 - 90 min", "1.2 h", "8.1 kJ", "how much air moves"]
    ]
    # Sure from the long end, 7.6 h rounded up to the half hour; 24 h as it was written.
    assert rows(table_in(under(page.blocks, THAW))) == [
        ["fridge 3 °C, open", "3 - 8 h", "5.0 h", "0.1 - 0.9 g", "8 - 24 h"]
    ]
    assert "the longest hold (24 h, stated)" in told(chilling())


def test_next_to_no_water_is_said_so() -> None:
    assert THAWED.wet is not None
    little = replace(THAWED.wet.grams, low=0.0, likely=0.01, high=0.03)
    dry = replace(THAWED, wet=replace(THAWED.wet, grams=little))
    table = table_in(under(cold_page(RIVER_PEBBLE, chilling(FROZEN, dry)).blocks, THAW))
    assert rows(table)[0][3] == "< 0.05 g"


def test_a_hold_shorter_than_the_thaw_leaves_no_time_to_serve() -> None:
    short = replace(
        chilling(), keeps=Figure(name="hold", value=420, unit="min", origin=Stated())
    )
    table = table_in(under(cold_page(RIVER_PEBBLE, short).blocks, THAW))
    assert rows(table)[0][4] == ""


def test_what_may_never_freeze_says_at_best_and_unless() -> None:
    unsure = replace(
        FROZEN,
        hours=None,
        at_best=AtBest(low=5.0, likely=7.0, unless=Words("the air is 1 °C warmer")),
    )
    table = table_in(under(cold_page(RIVER_PEBBLE, chilling(unsure)).blocks, FREEZE))
    assert rows(table)[0] == [
        "blast -35 °C", "?", "7.0 h", "8.1 kJ",
        "at best 5.0 h, and not at all if the air is 1 °C warmer",
    ]  # fmt: skip
    never = replace(FROZEN, hours=None, never=Words("not in this air"))
    table = table_in(under(cold_page(RIVER_PEBBLE, chilling(never)).blocks, FREEZE))
    assert rows(table)[0] == ["blast -35 °C", "never", "", "8.1 kJ", "not in this air"]


def test_the_trades_habit_stands_beside_the_estimate() -> None:
    # Common practice, no source: a blast 1.5 to 2.5 h, an ordinary freezer 8 to 12 h.
    assert (
        "common practice for blast freezing: 2.5 h or more (between 1.5 and 2.5 h"
        in told(chilling())
    )
    slow = replace(
        chilling(),
        freezing=(in_place("chest", -20, "still freezer", None, FROZEN),),
    )
    assert (
        "common practice for freezing in a freezer: 12 h or more (between 8 and 12 h"
        in told(slow)
    )


def test_the_probe_knows_its_place_and_what_a_slip_costs() -> None:
    said = told(chilling())
    assert "16 mm straight in from the open face" in said
    # A tenth of the way from -18 to -23; it falls 7.5 K in the last 36 min.
    assert (
        "5 mm beside the middle a probe reads -18.5 °C when the middle is -18.0" in said
    )
    assert "and says it 2 min too soon" in said


def test_a_kitchen_without_such_places_has_no_table_for_them() -> None:
    no_freezer = cold_page(RIVER_PEBBLE, replace(chilling(), freezing=()))
    assert heads(no_freezer.blocks) == [THAW, "the probe"]
    no_fridge = cold_page(RIVER_PEBBLE, replace(chilling(), thawing=()))
    assert heads(no_fridge.blocks) == [FREEZE, "the probe"]


def test_goods_that_get_too_warm_beside_a_round_are_told_from_those_that_do_not() -> (
    None
):
    cold = replace(chilling().freezing[0], beside_c=-19.4)
    warm = replace(chilling().freezing[0], beside_c=-12.0)
    both = replace(chilling(), freezing=(cold, warm))
    said = [str(one) for one in beside_lines(both)]
    assert said == [
        "blast: finished pieces uncovered beside a round put in warm get to -19 °C",
        "blast: finished pieces uncovered beside a round put in warm get to -12 °C,"
        " over -15: box them, move them, or put fewer in",
    ]
    assert [str(one) for one in beside_lines(both, too_warm_only=True)] == said[1:]
    assert " ".join(said[0].split()) in told(both)
