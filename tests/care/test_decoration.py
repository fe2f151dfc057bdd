"""Colours, metals, leaves and flowers by rule set (published lists, from memory)."""

from dataclasses import replace

import pytest

from demould.care.decoration import decorations_of
from demould.larder.decorations import decorations, decorations_in
from demould.mise.dessert import Dessert
from demould.mise.folder import dessert_of
from demould.mise.own_larder import Larder
from tests.care.test_allergens import changed
from tests.care.test_label import label
from tests.demo_folder import demo_folder


def with_plate(what: str) -> Dessert:
    """Give the pebble with something else beside it."""
    dessert = dessert_of(demo_folder(), "river-pebble")
    return replace(dessert, plate=(replace(dessert.plate[-1], what=what),))


def found(what: str, rules: str, larder: Larder | None = None) -> list[str]:
    told = decorations_of(with_plate(what), larder or demo_folder().larder, rules)
    return [one.permit for one in told if one.what == what]


# E171: Regulation (EU) 2022/63 out of food; 21 CFR 73.575 up to 1 %. E153: not listed in
# 21 CFR 73 for food. E102: Regulation (EC) 1333/2008 Annex V, warning. All from memory.
@pytest.mark.parametrize(
    ("what", "rules", "permit"),
    [
        ("white powder E171", "eu", "no"),
        ("white powder E171", "us", "limit"),
        ("white powder E171", "uk", "yes"),
        ("vegetable carbon", "eu", "yes"),
        ("vegetable carbon", "us", "no"),
        ("yellow, E102", "eu", "limit"),
        ("gold leaf", "eu", "limit"),
        ("non-toxic glitter", "eu", "no"),
        ("lily of the valley", "eu", "no"),
        ("viola", "eu", "ask"),
        ("edible flowers", "eu", "ask"),
        ("lustre dust", "eu", "ask"),
    ],
)
def test_by_rule_set(what: str, rules: str, permit: str) -> None:
    assert found(what, rules) == [permit]


def test_leaves_of_gelatin_and_tea_are_no_decoration() -> None:
    assert found("gelatin leaf", "eu") == []
    assert found("mint leaves", "eu") == []


def test_the_demo_has_nothing_to_say_of() -> None:
    folder = demo_folder()
    for dessert in folder.desserts:
        assert decorations_of(dessert, folder.larder, "eu") == ()


def test_a_colour_in_a_pack_s_list_keeps_the_label_a_draft() -> None:
    packed = changed("cocoa butter", pack_list="cocoa butter, colour E171")
    assert any("MUST NOT be in food" in str(one) for one in label(larder=packed).open)
    assert not any("MUST NOT" in str(one) for one in label().open)


def test_a_number_inside_another_is_not_meant() -> None:
    assert decorations_in("code e1710") == ()


def test_all_warn_of_the_six_azo_colours() -> None:
    warned = {one.name for one in decorations() if "attention in children" in one.says}
    assert len(warned) == 6
