from demould.demo import NOW
from demould.sheets.page import Page
from demould.sheets.plain import plain
from demould.sheets.plan_page import plan_page
from demould.week.timing import Timing
from tests.demo_folder import demo_makings
from tests.sheets.reading import heads, loud
from tests.week.demo_week import demo_week, kitchen, not_planned


def page(timing: Timing) -> Page:
    return plan_page(kitchen(), demo_makings(), timing, NOW)


def test_a_plan_that_stands_shows_its_days_and_deadlines() -> None:
    stands = page(demo_week().timing)
    assert heads(stands.blocks) == ["the days", "latest starts", "no way back after"]
    assert str(stands.title) == "BRACKMOOR WEIR, the plan"
    assert str(stands.note) == "drawn up Tue 14:00"
    assert max(len(line) for line in plain(stands).splitlines()) <= 80


def test_a_plan_that_does_not_stand_shows_why_and_no_days() -> None:
    fails = page(not_planned(None))
    assert heads(fails.blocks) == []
    assert loud(fails.blocks) == [
        "IT DOES NOT STAND: no plan was found in the time given"
    ]
