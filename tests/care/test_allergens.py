"""What is in it, what may be, and what nobody said: the demo by hand, and bad sheets."""

from dataclasses import replace
from datetime import date
from typing import Any

from demould.care.allergens import Allergens, allergens_of, may_contain
from demould.care.guest import for_guests
from demould.care.questions import asks_of
from demould.care.shared import Dipped, by_dip, by_tools
from demould.demo import NOW
from demould.larder.read import ingredient
from demould.mise.folder import dessert_of
from demould.mise.own_larder import Larder, Stocked
from demould.mise.read_larder import own_ingredient
from demould.mise.words import Words
from demould.week.caring import caring_of
from demould.week.orders import makings_of
from tests.demo_folder import demo_folder, demo_makings

NUT_FREE = "nut-free base"


def changed(key: str, **said: Any) -> Larder:
    """Give the demo's larder with one entry changed."""
    return tuple(
        _again(replace(one, **said)) if one.key == key else one
        for one in demo_folder().larder
    )


def _again(one: Stocked) -> Stocked:
    return replace(one, ingredient=own_ingredient(one))


def pebble(larder: Larder | None = None) -> Allergens:
    folder = demo_folder()
    return allergens_of(dessert_of(folder, "river-pebble"), larder or folder.larder)


# By hand from the demo's sheets, as 4.A and 4.D of the demo's description name them.
def test_what_is_in_the_demo_by_hand() -> None:
    folder = demo_folder()
    assert set(pebble().names) == {"milk", "soya", "hazelnut", "wheat", "buckwheat"}
    domes = allergens_of(dessert_of(folder, "meadow-domes"), folder.larder)
    assert set(domes.names) == {"milk", "egg", "wheat", "soya"}


def test_what_is_strained_out_has_touched() -> None:
    found = next(one for one in pebble().present if one.allergen.name == "buckwheat")
    assert ("Buckwheat whipped ganache", "roasted buckwheat groats") in found.within
    assert ("on the plate", "roasted buckwheat groats") in found.within


def test_couvertures_and_flakes_are_asked_about_and_block_the_word_none() -> None:
    asked = {one.what for one in pebble().unknown if "may it contain" in str(one.asks)}
    assert asked == {
        "white couverture 35 %",
        "milk couverture 40 %",
        "wheat wafer flakes",
    }
    assert not pebble().none_may_be_said


def test_no_allergen_data_is_unknown_and_never_none() -> None:
    larder = changed("sugar", allergens=None)
    assert "sugar" in {one.what for one in pebble(larder).unknown}
    assert "sugar" not in {one.what for one in pebble().unknown}


def test_none_is_said_only_where_nothing_is_open() -> None:
    folder = demo_folder()
    whole = dessert_of(folder, "river-pebble")
    sauce = replace(
        whole,
        components=tuple(one for one in whole.components if one.key == "sauce"),
        plate=(),
        finish=(),
    )
    assert allergens_of(sauce, folder.larder).none_may_be_said
    unread = changed("sugar", allergens=None)
    assert not allergens_of(sauce, unread).none_may_be_said


def test_what_the_supplier_says_it_may_contain_is_named_word_by_word() -> None:
    larder = changed("white couverture 35 %", may_contain="hazelnuts, almonds and egg")
    entry = next(one for one in larder if one.key == "white couverture 35 %")
    assert [one.allergen.name for one in may_contain(entry)] == [
        "hazelnut",
        "almond",
        "egg",
    ]
    none = changed("white couverture 35 %", may_contain="none")
    assert "white couverture 35 %" not in {one.what for one in pebble(none).unknown}


def test_a_sheet_that_says_less_than_the_thing_has_counts_until_a_name_is_typed() -> (
    None
):
    larder = changed("butter 82 %", allergens=())
    (found,) = pebble(larder).contradictions
    assert (found.what, found.allergen.name) == ("butter 82 %", "milk")
    milk = next(one for one in pebble(larder).present if one.allergen.name == "milk")
    assert ("Hazelnut crisp base", "butter 82 %") in milk.within
    signed = changed("butter 82 %", allergens=(), read_by="Mirel")
    milk = next(one for one in pebble(signed).present if one.allergen.name == "milk")
    assert ("Hazelnut crisp base", "butter 82 %") not in milk.within
    assert pebble(signed).contradictions[0].read_by == "Mirel"


def test_fish_gelatin_is_fish() -> None:
    assert "fish" in pebble(changed("gelatin 200 bloom", animal="fish")).names
    assert "fish" not in pebble(changed("gelatin 200 bloom", animal="pork")).names


def test_a_variant_is_made_without_and_says_why_and_never_free_from() -> None:
    folder = demo_folder()
    written = dessert_of(folder, "river-pebble")
    found = for_guests(written, NUT_FREE, folder.larder)
    assert "hazelnut" not in found.inside.names
    assert [one.allergen.name for one in found.without] == ["hazelnut"]
    assert "sunflower kernel paste" in str(found.without[0].why)
    assert "hazelnut" in {one.name for one in found.handled}
    assert for_guests(written, None, folder.larder).without == ()


def test_a_tool_that_makes_both_carries_over() -> None:
    folder = demo_folder()
    domes = dessert_of(folder, "meadow-domes")
    found = by_tools(domes, [dessert_of(folder, "river-pebble")], folder.larder)
    assert {one.allergen.name for one in found} >= {"buckwheat", "milk", "soya"}
    assert by_tools(domes, [], folder.larder) == ()


def test_a_dip_keeps_all_it_has_touched() -> None:
    folder = demo_folder()
    written = dessert_of(folder, "river-pebble")
    used = Dipped(component="dip", dessert=written, where=Words("last week's dip"))
    found = for_guests(written, NUT_FREE, folder.larder, dipped=[used])
    assert "hazelnut" in {one.allergen.name for one in found.may}
    other = replace(used, component="sauce")
    assert by_dip(written, [other], folder.larder) == ()


def test_two_orders_through_one_dip_share_what_they_hold() -> None:
    folder = demo_folder()
    order = next(one for one in folder.orders if one.dessert == "river-pebble")
    more = replace(order, key="table 6", variant=NUT_FREE, pieces=2)
    both = replace(folder, orders=(*folder.orders, more))
    told = {one.order.key: one.guests for one in caring_of(both, makings_of(both, NOW))}
    why = [
        str(one.why) for one in told["table 6"].may if one.allergen.name == "hazelnut"
    ]
    assert any("same dip" in one for one in why)
    alone = caring_of(folder, demo_makings())
    assert all(
        one.allergen.name != "hazelnut" for told in alone for one in told.guests.may
    )


def test_honey_is_not_for_infants_and_baked_egg_is_not_raw() -> None:
    folder = demo_folder()
    domes = for_guests(dessert_of(folder, "meadow-domes"), None, folder.larder)
    assert [one.name for one in domes.cautions] == ["honey"]
    terrine = for_guests(dessert_of(folder, "amber-terrine"), None, folder.larder)
    assert "honey" in {one.name for one in terrine.cautions}


def test_suppliers_are_asked_for_a_sheet_that_nobody_wrote_down() -> None:
    bare = Stocked(
        key="mystery paste", ingredient=ingredient("sucrose"), use_by=date(2026, 1, 1)
    )
    assert [str(one) for one in asks_of([bare, bare])] == [
        "which allergens are in mystery paste? NO SHEET written down"
    ]
