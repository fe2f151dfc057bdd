"""The freezer against the orders and the counter: oldest first, worked by hand."""

from dataclasses import replace
from datetime import date

import pytest
from hypothesis import given
from hypothesis import strategies as st

from demould.demo import NOW
from demould.mise.folder import Folder
from demould.mise.order import Frozen
from demould.mise.own_bank import Bank, Lot, Par
from demould.office.bank import Allotted, Wanted, allot, good_until
from demould.office.needs import still_to_make
from demould.week.orders import allotted_of, makings_of
from tests.demo_folder import demo_folder
from tests.office.larder_by_hand import days, g
from tests.week.demo_week import domes, pebbles

TODAY = NOW.date()
OLD, NEW = date(2026, 11, 10), date(2026, 11, 14)


def lot(pieces: int, made: date = NEW, **said: object) -> Lot:
    return Lot(dessert="river-pebble", pieces=pieces, made=made, **said)  # type: ignore[arg-type]  # the caller's


def with_bank(*lots: Lot, pars: tuple[Par, ...] = ()) -> Folder:
    return replace(demo_folder(), bank=Bank(lots=lots, pars=pars))


def parted(*lots: Lot, pars: tuple[Par, ...] = ()) -> Allotted:
    return allotted_of(with_bank(*lots, pars=pars), NOW)


# 12 boxed pebbles leave 15 of 27: one round; 15 x 38.504 g = 577.6, + 40, / 0.96 = 643.3 g
# of ganache, x 0.721 (by hand).
def test_12_boxed_pebbles_leave_15_to_fill() -> None:
    making = makings_of(with_bank(lot(12)), NOW)[1]
    assert making.amounts.rounds.each == (15,)
    ganache = next(one for one in making.amounts.makes if one.component == "ganache")
    assert ganache.factor.value == pytest.approx(0.721)
    assert round(ganache.weigh.value) == 644


def test_the_oldest_goes_first() -> None:
    found = parted(lot(20, NEW), lot(10, OLD))
    assert [(shelf.lot.made, shelf.stays) for shelf in found.shelves] == [
        (OLD, 0),
        (NEW, 3),
    ]
    assert found.frozen == {"saturday dinner": (Frozen(pieces=27),)}


def test_centres_count_for_what_is_still_filled() -> None:
    found = parted(lot(12), lot(30, component="centre"))
    assert found.frozen["saturday dinner"] == (
        Frozen(pieces=12),
        Frozen(pieces=15, component="centre"),
    )


# Made on 1 November and good for 21 days in its box: the 22nd, a day after the dinner.
def test_only_what_is_good_until_it_is_due_counts() -> None:
    pebble = next(one for one in demo_folder().desserts if one.key == "river-pebble")
    assert good_until(lot(5, date(2026, 11, 1)), pebble) == date(2026, 11, 22)
    assert parted(lot(5, date(2026, 11, 1))).frozen != {}
    assert parted(lot(5, date(2026, 10, 30))).frozen == {}
    assert parted(lot(5, NEW, keeps=days(6))).frozen == {}


def test_what_is_past_its_day_is_marked() -> None:
    shelf = parted(lot(5, date(2026, 10, 20))).shelves[0]
    assert shelf.gone
    assert not parted(lot(5)).shelves[0].gone


def test_another_variant_is_another_thing() -> None:
    """What was made with hazelnut is never counted for who asked for none."""
    assert parted(lot(12, variant="nut-free base")).frozen == {}


def test_an_order_that_names_what_is_frozen_has_said_all() -> None:
    order = replace(pebbles().order, frozen=(Frozen(pieces=4),))
    want = Wanted(order=order, dessert=pebbles().amounts.dessert, pieces=27)
    found = allot(Bank(lots=(lot(12),)), [want], demo_folder().desserts, TODAY)
    assert found.frozen == {}


# 569 g of dip are melted; 313 g are there: 256 g new, 45 % of it. Cocoa butter: 270 of 608
# in the dip, 36 g in the spray (by hand).
def test_left_over_dip_goes_in_first_and_less_is_bought() -> None:
    folder = with_bank(
        Lot(dessert="river-pebble", component="dip", grams=g(313), made=NEW)
    )
    making = makings_of(folder, NOW)[1]
    assert making.banked == {"dip": 313}
    dip = next(one for one in making.amounts.makes if one.component == "dip")
    assert still_to_make(dip, 313) == pytest.approx(256 / 569, abs=0.002)


def test_a_whole_batch_is_made_unless_what_is_left_saves_one() -> None:
    """572 g of glaze are poured of 639: with 60 g left still one batch, with 580 none."""
    glaze = next(one for one in domes().amounts.makes if one.component == "glaze")
    assert [still_to_make(glaze, g) for g in (0, 60, 580)] == [1, 1, 0]


def test_the_counter_is_filled_up_tonight_with_the_oldest() -> None:
    par = Par(dessert="river-pebble", pieces=12, there=5)
    found = parted(lot(33, NEW), lot(3, OLD), pars=(par,))
    # 27 go to the dinner, three of the old ones with them; 9 are left.
    assert found.thaw[0].lots == ((NEW, 7),)
    assert found.thaw[0].missing == 0


def test_what_the_freezer_has_not_is_said() -> None:
    par = Par(dessert="meadow-domes", pieces=6)
    found = parted(pars=(par,))
    assert (found.thaw[0].lots, found.thaw[0].missing) == ((), 6)
    assert parted(pars=(replace(par, there=6),)).thaw == ()


@given(st.lists(st.tuples(st.integers(1, 20), st.integers(1, 40)), max_size=5))
def test_nothing_is_given_twice_or_lost(lots: list[tuple[int, int]]) -> None:
    found = parted(*(lot(pieces, date(2026, 11, 1 + ago // 3)) for pieces, ago in lots))
    for shelf in found.shelves:
        taken = sum(one.amount for one in shelf.taken)
        assert taken + shelf.stays == shelf.lot.pieces
    given = sum(one.pieces for one in found.frozen.get("saturday dinner", ()))
    assert given == min(27, sum(pieces for pieces, _ in lots))
