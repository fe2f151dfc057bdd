from dataclasses import replace

import pytest

from demould.larder.ingredient import Ingredient
from demould.mise.component import Component
from demould.mise.dessert import Dessert, Swap, Variant, component_of
from demould.mise.figure import Figure
from demould.mise.find import find_in
from demould.mise.folder import dessert_of
from demould.mise.variant import as_variant
from tests.demo_folder import demo_folder

OWN = [stocked.key for stocked in demo_folder().larder]


def pebble() -> Dessert:
    return dessert_of(demo_folder(), "river-pebble")


def written(component: Component) -> list[str]:
    return [f"{line.amount} {line.what}" for line in component.formula]


def test_as_written_nothing_changes() -> None:
    assert as_variant(pebble(), None, OWN) is pebble()


def test_a_nut_free_base_has_sunflower_and_cocoa_butter_where_the_hazelnut_stood() -> (
    None
):
    base = component_of(as_variant(pebble(), "nut-free base", OWN), "base")
    assert written(base) == [
        "70 g milk couverture 40 %",
        "90 g sunflower kernel paste",
        "6 g cocoa butter",
        "110 g wheat wafer flakes",
        "30 g roasted buckwheat groats",
        "15 g brown butter",
        "1 g salt",
    ]
    assert [line.ordinal for line in base.formula] == [1, 2, 3, 4, 5, 6, 7]
    assert base.formula[1].ingredient == "sunflower kernel paste"
    assert base.formula[2].ingredient == "cocoa butter"


# 90 g of hazelnut paste with 63 % fat; 90 g of sunflower kernel paste with 56 % and 6 g
# of cocoa butter (suppliers' sheets of the demo, worked by hand).
def test_the_fat_stays_as_it_was() -> None:
    assert fat_g("hazelnut paste", 90) == pytest.approx(56.7, abs=0.05)
    swapped = fat_g("sunflower kernel paste", 90) + fat_g("cocoa butter", 6)
    assert swapped == pytest.approx(56.4, abs=0.05)


def fat_g(name: str, grams: float) -> float:
    found: Ingredient = find_in(demo_folder().larder)(name)
    return grams * found.per_100g.fat / 100


def test_other_components_stay_as_they_are() -> None:
    variant = as_variant(pebble(), "nut-free base", OWN)
    for key in ("ganache", "centre", "dip", "spray", "sauce"):
        assert component_of(variant, key) == component_of(pebble(), key)
    assert replace(variant, components=()) == replace(pebble(), components=())


def with_swap(out: str, *into: tuple[float, str]) -> Dessert:
    swap = Swap(
        component="centre",
        out=out,
        into=tuple(
            (Figure(name=what, value=grams, unit="g"), what) for grams, what in into
        ),
    )
    return replace(pebble(), variants=(Variant(name="ours", swaps=(swap,)),))


def test_what_stands_in_two_lines_goes_and_what_replaces_it_comes_once() -> None:
    honey = as_variant(with_swap("Sugar", (85, "honey")), "ours", OWN)
    assert written(component_of(honey, "centre")) == [
        "380 g blackcurrant purée",
        "160 g pear, peeled and cored",
        "85 g honey",
        "6.5 g pectin NH",
        "10 g verjuice",
    ]


def test_the_kitchens_own_names_come_before_the_tables() -> None:
    swapped = with_swap("verjuice", (10, "water"))
    mine = component_of(as_variant(swapped, "ours", [*OWN, "water"]), "centre")
    table = component_of(as_variant(swapped, "ours", ()), "centre")
    assert mine.formula[-1].ingredient == "water"
    assert table.formula[-1].ingredient is not None
