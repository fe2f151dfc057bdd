from dataclasses import replace

from demould.demo import NOW
from demould.mise.figure import Figure, Stated
from demould.mise.folder import Folder
from demould.week.faults import faults_of
from tests.demo_folder import demo_folder
from tests.week.demo_week import at


def told(folder: Folder) -> list[str]:
    return [str(problem) for problem in faults_of(folder, NOW)]


def with_dinner(due: str) -> Folder:
    folder = demo_folder()
    orders = tuple(
        replace(order, due=at(due)) if order.key == "saturday dinner" else order
        for order in folder.orders
    )
    return replace(folder, orders=orders)


def test_the_demo_has_none() -> None:
    assert told(demo_folder()) == []


# It is Tuesday 14:00, and Monday is a closed day.
def test_an_order_with_no_open_hour_before_it_is_named_at_its_line() -> None:
    assert told(with_dinner("Tue 14:00")) == [
        "orders.yaml:8:1: saturday dinner is due Tue 2026-11-17 14:00, and the kitchen"
        " has no open hour left before that. Write the hours it is open in"
        " kitchen.yaml, or another due time."
    ]
    assert told(with_dinner("Tue 14:01")) == []


def test_a_kitchen_that_has_written_no_hours_is_told_so_for_each_order() -> None:
    folder = demo_folder()
    shut = replace(folder, kitchen=replace(folder.kitchen, openings=()))
    assert told(shut) == [
        f"orders.yaml:{line}:1: {key} is due {due}, and the kitchen has no hours before"
        " that. Write the hours it is open in kitchen.yaml, or another due time."
        for line, key, due in (
            (3, "domes to collect", "Fri 2026-11-20 16:00"),
            (8, "saturday dinner", "Sat 2026-11-21 19:30"),
        )
    ]


def test_an_order_from_nowhere_is_told_too() -> None:
    folder = with_dinner("Tue 14:00")
    orders = tuple(replace(order, line=None) for order in folder.orders)
    (said,) = told(replace(folder, orders=orders))
    assert said.startswith("orders.yaml: saturday dinner is due")


def test_a_centre_that_does_not_go_into_its_mould_is_a_fault() -> None:
    folder = demo_folder()
    shapes = {mould.key: mould.shape for mould in folder.kitchen.moulds}
    moulds = tuple(
        replace(mould, shape=shapes["dome"]) if mould.key == "small dome" else mould
        for mould in folder.kitchen.moulds
    )
    (fault, *_) = faults_of(
        replace(folder, kitchen=replace(folder.kitchen, moulds=moulds)), NOW
    )
    assert fault.file == "desserts/meadow-domes.yaml"


def away(percent: float) -> Figure:
    return Figure(name="away", value=percent, unit="%", origin=Stated())


def with_component(key: str, **other: object) -> Folder:
    folder = demo_folder()
    desserts = tuple(
        replace(
            dessert,
            components=tuple(
                replace(one, **other) if one.key == key else one  # type: ignore[arg-type]
                for one in dessert.components
            ),
        )
        if dessert.key == "river-pebble"
        else dessert
        for dessert in folder.desserts
    )
    return replace(folder, desserts=desserts)


def test_a_component_without_one_amount_is_a_fault_at_its_line() -> None:
    folder = demo_folder()
    (pebble,) = (one for one in folder.desserts if one.key == "river-pebble")
    (sauce,) = (one for one in pebble.components if one.key == "sauce")
    lines = tuple(replace(line, amount=None) for line in sauce.formula)
    (said,) = told(with_component("sauce", formula=lines))
    assert said.startswith("desserts/river-pebble.yaml:")
    assert said.endswith(
        "nothing in the sauce has an amount. Write an amount for at least one of its"
        " lines: 280 g cream."
    )
    assert told(with_component("sauce", formula=(sauce.formula[0], *lines[1:]))) == []


# 380 g purée, 160 g pear, ... : by the larder's sheets about 76 % of the centre is water.
def test_more_cooked_away_than_there_is_water_is_a_fault() -> None:
    (said,) = told(with_component("centre", cooked_away=away(90)))
    assert "90 % of the centre cooks away, and only 7" in said
    assert told(with_component("centre", cooked_away=away(60))) == []


def test_orders_in_a_kitchen_where_nobody_works_are_a_fault() -> None:
    folder = demo_folder()
    empty = replace(folder, kitchen=replace(folder.kitchen, people=()))
    assert told(empty) == [
        "kitchen.yaml: nobody is named who works there, and orders need hands. Write one"
        " name a line under people."
    ]
    assert told(replace(empty, orders=())) == []
