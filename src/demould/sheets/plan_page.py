"""The plan alone: whether it stands, the days, how late each thing may start."""

from collections.abc import Sequence
from datetime import datetime

from demould.mise.kitchen import Kitchen
from demould.mise.words import Words
from demould.sheets.days import days
from demould.sheets.deadlines import deadlines
from demould.sheets.page import Page
from demould.sheets.times import day_time
from demould.sheets.verdict import verdict
from demould.week.making import Making
from demould.week.timing import Timing


def plan_page(
    kitchen: Kitchen, makings: Sequence[Making], timing: Timing, now: datetime
) -> Page:
    """Give the plan as a page."""
    told = (*days(kitchen, makings, timing), *deadlines(timing))
    return Page(
        key="plan",
        title=Words("{kitchen}, the plan", kitchen=kitchen.name.upper()),
        note=Words("drawn up {now}", now=day_time(now)),
        blocks=(*verdict(makings, timing), *(told if timing.stands else ())),
    )
