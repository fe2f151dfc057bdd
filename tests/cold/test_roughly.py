"""The hours of a dessert with its causes solved roughly, beside the same in full."""

from importlib.resources import files
from pathlib import Path

import pytest

from demould.cold.freeze import freeze
from demould.cold.from_dessert import as_demoulded, as_filled
from demould.cold.from_kitchen import to_freeze, to_thaw
from demould.cold.thaw import thaw
from demould.cold.wait import Wait
from demould.counter.text.read_folder import read_folder
from demould.demo import NAME, NOW
from demould.mise.find import find_in

DESSERTS = range(5)
FOLDER = read_folder(Path(str(files("demould.demo"))) / NAME, NOW)[0]
assert FOLDER is not None


def waits(number: int, kind: str, *, in_full: bool) -> Wait:
    assert FOLDER is not None
    dessert, kitchen = FOLDER.desserts[number], FOLDER.kitchen
    find = find_in(FOLDER.larder)
    if kind == "thaw":
        fridge = next(place for place in kitchen.cold if place.air.value > 0)
        there = to_thaw(dessert, kitchen, fridge, "open")
        return thaw(as_demoulded(dessert, kitchen, find), there, in_full=in_full)
    coldest = min(kitchen.cold, key=lambda place: place.air.value)
    there = to_freeze(dessert, kitchen, coldest)
    return freeze(as_filled(dessert, kitchen, find), there, in_full=in_full)


def test_all_desserts_of_the_kitchen_are_asked() -> None:
    assert FOLDER is not None
    assert len(FOLDER.desserts) == len(DESSERTS)


@pytest.mark.parametrize("kind", ["freeze", "thaw"])
@pytest.mark.parametrize("number", DESSERTS)
def test_rough_causes_give_the_same_hours_and_first_reason(
    number: int, kind: str
) -> None:
    rough, fine = (waits(number, kind, in_full=full) for full in (False, True))
    assert rough.curve == fine.curve
    assert rough.alone == ()
    assert len(fine.alone) >= 3
    assert (rough.hours is None) == (fine.hours is None)
    if rough.hours is None or fine.hours is None:
        assert rough.at_best == fine.at_best
        return
    assert str(rough.hours.reason) == str(fine.hours.reason)
    assert rough.hours.likely == fine.hours.likely
    # One cause alone may lie just outside the corner where all pull the same way.
    assert rough.hours.low == pytest.approx(fine.hours.low, rel=0.01)
    assert rough.hours.high == pytest.approx(fine.hours.high, rel=0.01)
