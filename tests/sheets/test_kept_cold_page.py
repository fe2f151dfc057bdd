"""Pages of single questions where the answer is an uncommon one."""

from dataclasses import replace
from datetime import date

from demould.cold.beside import Beside
from demould.cold.dead_freezer import Judged
from demould.cold.probe import Fit
from demould.cold.soft import Softness
from demould.cold.sweat import Sweat
from demould.cold.van import Box
from demould.log.came_true import record_of
from demould.mise.figure import Estimate, Figure, Measured
from demould.mise.kitchen import ColdPlace
from demould.mise.words import Words
from demould.sheets.kept_cold_page import beside_page, dead_page, road_page
from demould.sheets.page import Page
from demould.sheets.plain import plain
from demould.sheets.probe_page import probe_page
from demould.sheets.room_page import plate_page, table_page
from demould.week.at_the_table import AtTheTable
from demould.week.in_the_room import OnThePlate, Room
from demould.week.kept_cold import OnTheRoad
from demould.week.probed import Learned
from tests.desserts.pebble import RIVER_PEBBLE as PEBBLE

AIR = Words("air")
FREEZER = ColdPlace(
    key="freezer",
    kind="upright freezer",
    air=Figure(name="air", value=-20, unit="°C"),
)


def told(page: Page) -> str:
    return " ".join(plain(page).split())


def three(low: float, likely: float, high: float, unit: str = "g") -> Estimate:
    return Estimate(low=low, likely=likely, high=high, unit=unit, reason=AIR)


def plate(
    point: float | None, high: float, soonest: float | None, seen: float | None
) -> OnThePlate:
    return OnThePlate(
        room=Room(air_c=21, relative=0.3, said=False),
        minutes=10,
        likely=Sweat(
            point_c=point, point="dew", grams_m2=1, film_um=1, visible_min=seen,
            driest=0.31, coolest_c=25.0,
        ),
        soonest_min=soonest,
        grams=three(0, 0, high),
        film_um=three(0, 0, high, "µm"),
        skin=((0.0, 3.0), (10.0, 8.0)),
    )  # fmt: skip


def test_a_dry_plate() -> None:
    said = told(plate_page(PEBBLE, plate(2.7, 0, None, None)))
    assert "nothing settles on it in this air" in said
    assert "room air 21 °C, 30 % humid (assumed)" in said
    # A room warmer than this one would be no help: it is not named.
    assert "or a room under" not in said


def test_when_a_film_can_be_seen() -> None:
    assert "no film that could be seen" in told(
        plate_page(PEBBLE, plate(5, 1, None, None))
    )
    assert "after 3 to 7 min" in told(plate_page(PEBBLE, plate(5, 1, 3, 7)))
    assert (
        "after 3 min if the skin stays cold; where it warms as reckoned, not in this time"
        in told(plate_page(PEBBLE, plate(5, 1, 3, None)))
    )


def test_softness_of_what_has_no_ice_and_of_what_is_soft_at_once() -> None:
    fat = Softness(component="fat", starts_c=None, shares=((-18, 0.0),), serve_c=None)
    said = told(
        table_page(
            PEBBLE,
            AtTheTable(
                smooth=(fat,),
                all_in=(fat,),
                waits=(("fridge", None), ("room", three(0, 0, 0, "min"))),
            ),
        )
    )
    assert "none" in said
    assert "never" in said
    assert "fridge: it has no such window there" in said
    assert "room: soft enough from the freezer at once" in said
    assert "dissolved" not in said


def test_a_cold_day_needs_no_ice_in_the_van() -> None:
    box = Box(kilograms=1, heat=3500, leak=0.8, inside_c=3, outside_c=2)
    said = told(
        road_page(
            PEBBLE,
            OnTheRoad(
                box=box, pieces=12, minutes=60, limit_c=5, ice_kg=1, arrives_dry_c=3,
                arrives_c=3, dry_min=None, holds_h=None, needs_kg=0,
            ),
        )
    )  # fmt: skip
    assert "is reached after" not in said
    assert "that ice holds" not in said
    assert "ice needed to arrive at 5 °C: 0.0 kg" in said
    assert "dry ice is for trained staff" in said


def test_how_many_go_in_beside_finished_pieces() -> None:
    some = Beside(
        most=three(30, 40, 55, "pieces"), tried=96, round=24, warmest_c=-17,
        limit_c=-15, goods_kg=2,
    )  # fmt: skip
    assert "at most 30 warm pieces at once (likely 40, unsure by air)" in told(
        beside_page(PEBBLE, some, FREEZER)
    )
    assert "even 96 at once leave them cold enough" in told(
        beside_page(PEBBLE, replace(some, most=None), FREEZER)
    )


def test_only_a_sound_verdict_is_said_quietly() -> None:
    sound = dead_page(PEBBLE, Judged(verdict="sound", says=Words("as read")))
    assert "!!" not in plain(sound)
    ask = dead_page(PEBBLE, Judged(verdict="take a reading", says=Words("now")))
    assert "!! take a reading: now" in plain(ask)


def test_a_film_too_unsure_is_not_to_be_kept() -> None:
    fit = Fit(
        film=9, unsure=0.4, by_air=0.2, beside=0.1, off_k=0.5, used=20,
        rows=tuple((60.0 * n, -1.0 * n, -1.1 * n) for n in range(40)),
    )  # fmt: skip
    own = Figure(
        name="film", value=9, unit="W/m2K", origin=Measured(on=date(2026, 11, 17))
    )
    learned = Learned(
        fit=fit, place=FREEZER, measured=replace(FREEZER, film=own), logged=False,
        came_h=None, record=record_of([]),
    )  # fmt: skip
    said = told(probe_page(PEBBLE, learned))
    assert "9.0 W/m2K, give or take 40 %" in said
    assert "too unsure to keep" in said
    assert "one degree warmer would make the film +20 %" in said
    assert "it came to its target" not in said
    assert "film 9 W/m2K (measured, 2026-11-17)" in said
