"""What changed between two versions: the line, and what it does."""

from dataclasses import replace

import pytest

from demould.advice.versions.allergens import allergens_changed
from demould.advice.versions.effects import effects_of
from demould.advice.versions.lines import lines_changed
from demould.mise.dessert import Dessert, component_of
from demould.mise.figure import Figure
from demould.mise.find import find_in
from demould.mise.folder import dessert_of
from tests.demo_folder import demo_folder

FOLDER = demo_folder()
PEBBLE = dessert_of(FOLDER, "river-pebble")


def with_amount(ordinal: int, grams: float, key: str = "ganache") -> Dessert:
    component = component_of(PEBBLE, key)
    formula = tuple(
        replace(line, amount=Figure(name=line.what, value=grams, unit="g"))
        if line.ordinal == ordinal
        else line
        for line in component.formula
    )
    return replace(
        PEBBLE,
        components=tuple(
            replace(one, formula=formula) if one.key == key else one
            for one in PEBBLE.components
        ),
    )


def effects(new: Dessert) -> dict[tuple[str, str], tuple[float, float]]:
    found = effects_of(PEBBLE, new, FOLDER.kitchen, find_in(FOLDER.larder))
    return {(one.what, one.component): (one.was, one.now) for one in found}


def test_the_same_version_has_no_change_and_no_effect() -> None:
    assert lines_changed(PEBBLE, PEBBLE) == ()
    assert effects(PEBBLE) == {}


def test_one_line_changed_is_one_line_shown_and_its_effects() -> None:
    """Gelatin 3.6 to 4.5 g: 0.40 % of 892.6 g becomes 0.50 % of 893.5 g."""
    new = with_amount(3, 4.5)
    (line,) = lines_changed(PEBBLE, new)

    assert line.where == "component ganache, formula"
    assert (line.was, line.now) == (
        "3.6 g gelatin 200 bloom",
        "4.5 g gelatin 200 bloom",
    )
    found = effects(new)
    assert set(found) == {("dose", "ganache")}
    was, now = found["dose", "ganache"]
    assert was == pytest.approx(100 * 3.6 / 892.6, abs=0.005)
    assert now == pytest.approx(100 * 4.5 / 893.5, abs=0.005)


def test_more_sugar_is_sweeter_and_fills_more_pieces() -> None:
    found = effects(with_amount(3, 100, "centre"))
    was, now = found["sweetness", "centre"]

    assert now > was
    assert ("pieces", "centre") in found
    assert ("pieces", "ganache") not in found


def test_more_paste_costs_its_price() -> None:
    """10 g more of hazelnut paste at 27.00 a kilo are 0.27 of money."""
    new = with_amount(2, 100, "base")
    find = find_in(FOLDER.larder)
    (cost,) = (
        one
        for one in effects_of(PEBBLE, new, FOLDER.kitchen, find, FOLDER.larder)
        if one.what == "cost"
    )

    assert cost.component == "base"
    assert cost.now - cost.was == pytest.approx(0.27)


def test_a_paste_that_brings_an_allergen_is_named_at_once() -> None:
    base = component_of(PEBBLE, "base")
    sunflower = replace(base.formula[1], ingredient="sunflower_paste")
    without = replace(base, formula=(base.formula[0], sunflower, *base.formula[2:]))
    new = replace(
        PEBBLE,
        components=tuple(
            without if one.key == "base" else one for one in PEBBLE.components
        ),
    )
    find = find_in(FOLDER.larder)

    there = allergens_changed(PEBBLE, new, find, FOLDER.larder)
    back = allergens_changed(new, PEBBLE, find, FOLDER.larder)

    assert there.new == ()
    assert any("hazelnut" in one for one in there.gone)
    assert (back.new, back.gone) == (there.gone, ())


def test_a_line_taken_out_and_a_line_put_in_are_told_as_such() -> None:
    ganache = component_of(PEBBLE, "ganache")
    shorter = replace(ganache, formula=ganache.formula[:-1])
    new = replace(
        PEBBLE,
        components=tuple(
            shorter if one.key == "ganache" else one for one in PEBBLE.components
        ),
    )

    (gone,) = lines_changed(PEBBLE, new)
    (back,) = lines_changed(new, PEBBLE)

    assert (gone.was, gone.now) == ("1 g salt", "")
    assert (back.was, back.now) == ("", "1 g salt")
