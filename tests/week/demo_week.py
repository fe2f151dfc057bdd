"""The demo's week worked out once, the demo with a line changed, a plan by hand."""

from collections.abc import Mapping
from dataclasses import replace
from datetime import datetime, timedelta
from functools import cache
from pathlib import Path
from shutil import copytree

from demould.counter.text.read_folder import read_folder
from demould.demo import NAME, NOW
from demould.mise.folder import Folder
from demould.mise.kitchen import Kitchen
from demould.mise.order import Order
from demould.plan.answer.schedule import Explain, Schedule
from demould.week.making import Making
from demould.week.sections import Week, week_of
from demould.week.timing import Entry, Timing
from tests.demo_folder import DEMO, demo_folder, demo_makings

PEBBLE = "saturday dinner.river-pebble.as-written"
DOMES = "domes to collect.meadow-domes.as-written"
DAYS = ("Tue", "Wed", "Thu", "Fri", "Sat")


@cache
def demo_week() -> Week:
    return week_of(demo_folder(), NOW)


def pebbles() -> Making:
    return next(one for one in demo_makings() if one.order.dessert == "river-pebble")


def domes() -> Making:
    return next(one for one in demo_makings() if one.order.dessert == "meadow-domes")


def demo_with(tmp: Path, *changes: tuple[str, str, str]) -> Folder:
    """Read the demo with some text of some files changed, each found just once."""
    place = tmp / NAME
    copytree(DEMO, place)
    for file, old, new in changes:
        path = place / file
        text = path.read_text("utf-8")
        assert text.count(old) == 1, (file, old)
        path.write_text(text.replace(old, new), "utf-8")
    folder, problems, _ = read_folder(place, NOW)
    assert folder is not None, "\n".join(map(str, problems))
    return folder


def kitchen() -> Kitchen:
    return demo_folder().kitchen


def at(said: str) -> datetime:
    """Give ``Thu 09:05`` of the demo's week."""
    day, _, clock = said.partition(" ")
    hour, minute = clock.split(":")
    return NOW.replace(hour=int(hour), minute=int(minute)) + timedelta(
        days=DAYS.index(day)
    )


def entry(
    name: str, start: str, end: str, who: str = "", took: str | None = None
) -> Entry:
    """Give a step of the demo at another time, by other people."""
    known = next(one for one in demo_week().timing.entries if one.id == name)
    people = tuple(who.split(" ")) if who else ()
    return replace(known, start=at(start), end=at(end), who=people, took=took)


def planned(*entries: Entry) -> Timing:
    """Give a plan of just these steps."""
    return replace(
        demo_week().timing, entries=entries, latest={}, last_by={}, spare={}, broken=()
    )


def judged(spare: Mapping[str, int]) -> Timing:
    """Give the demo's plan with other minutes to spare."""
    return replace(demo_week().timing, spare=spare)


def not_planned(explain: Explain | None) -> Timing:
    """Give what there is where no plan was found."""
    schedule = Schedule(problem="demo", status="infeasible", explain=explain)
    return replace(planned(), schedule=schedule)


def ordered_as(making: Making, **changes: object) -> Order:
    return replace(making.order, **changes)  # type: ignore[arg-type]  # the caller's
