from dataclasses import replace

import pytest

from demould.demo import NOW
from demould.week.sections import planned, week_of
from tests.demo_folder import demo_folder, demo_makings
from tests.week.demo_week import DOMES, PEBBLE, at, demo_week


def test_a_week_without_an_order_is_refused() -> None:
    with pytest.raises(
        ValueError, match=r"^a week without an order has nothing to work out$"
    ):
        week_of(replace(demo_folder(), orders=()), NOW)


def test_the_week_holds_all_sections_of_both_orders() -> None:
    week = demo_week()
    assert week.makings == demo_makings()
    assert set(week.chilling) == {"meadow-domes", "river-pebble"}
    assert {one.part.make.order.key for one in week.timing.entries} == {
        "domes to collect",
        "saturday dinner",
    }
    assert len(week.decisions) == 3
    assert week.sure.assumed
    assert (week.kitchen, week.now) == (demo_folder().kitchen, NOW)


def test_nothing_is_begun_before_what_it_needs_is_delivered() -> None:
    starts = {one.id: one.start for one in demo_week().timing.entries}
    assert starts[f"{PEBBLE}.ganache.0.steep"] >= at("Wed 09:00")
    assert starts[f"{DOMES}.glaze.0.cook"] >= at("Wed 09:00")


def test_a_plan_can_be_drawn_up_for_some_orders_alone() -> None:
    domes = demo_makings()[:1]
    timing = planned(demo_folder(), domes, NOW, seed=1)
    assert timing.stands
    assert {one.part.make.order.key for one in timing.entries} == {"domes to collect"}
