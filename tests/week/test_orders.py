from dataclasses import replace
from pathlib import Path

from demould.demo import NOW
from demould.mise.dessert import component_of
from demould.week.orders import makings_of, ordered
from tests.demo_folder import demo_folder
from tests.week.demo_week import demo_with


def test_makings_come_by_due_time() -> None:
    folder = demo_folder()
    turned = replace(folder, orders=tuple(reversed(folder.orders)))
    for one in (folder, turned):
        assert [making.order.key for making in makings_of(one, NOW)] == [
            "domes to collect",
            "saturday dinner",
        ]


def test_an_ordered_variant_is_what_is_made(tmp_path: Path) -> None:
    folder = demo_with(
        tmp_path,
        (
            "orders.yaml",
            "  dessert: river-pebble\n",
            "  dessert: river-pebble\n  variant: nut-free base\n",
        ),
    )
    order = next(one for one in folder.orders if one.variant)
    base = component_of(ordered(folder, order), "base")
    assert "sunflower kernel paste" in {line.what for line in base.formula}
    making = next(one for one in makings_of(folder, NOW) if one.order == order)
    made = next(one for one in making.amounts.makes if one.component == "base")
    assert made.written.value == 316 + 6  # cocoa butter comes on top
