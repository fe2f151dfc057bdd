"""What is left over and what it fits into, the first to expire first."""

from dataclasses import replace
from datetime import date

from demould.demo import NOW
from demould.mise.find import find_in
from demould.mise.folder import Folder
from demould.mise.own_bank import Bank, Lot
from demould.office.use_up import UseUp
from demould.week.office import buying_of_week, use_up_of_week
from demould.week.orders import allotted_of, makings_of
from tests.demo_folder import demo_folder
from tests.office.larder_by_hand import g

MADE = date(2026, 11, 14)


def used_up(folder: Folder) -> tuple[UseUp, ...]:
    find = find_in(folder.larder)
    makings = makings_of(folder, NOW)
    buying = buying_of_week(folder, makings, None, NOW, find)
    bank = allotted_of(folder, NOW)
    return use_up_of_week(folder, makings, buying, bank, find)


def with_entry(key: str, **said: object) -> Folder:
    folder = demo_folder()
    larder = tuple(
        replace(one, **said) if one.key == key else one  # type: ignore[arg-type]  # the caller's
        for one in folder.larder
    )
    return replace(folder, larder=larder)


# 2 kg of cream come on Wednesday, 1245 g are used, and open it is good for three days.
def test_what_is_left_of_an_opened_pack_is_dated_and_fits_the_week_first() -> None:
    cream = used_up(demo_folder())[0]
    assert (cream.what, round(cream.grams), cream.until) == (
        "cream 35 %",
        755,
        date(2026, 11, 21),
    )
    assert [fit.this_week for fit in cream.fits] == sorted(
        (fit.this_week for fit in cream.fits), reverse=True
    )
    ganache = next(fit for fit in cream.fits if "ganache" in fit.component)
    assert ganache.grams == 680


def test_the_first_to_expire_is_first() -> None:
    """Yoghurt, 1000 g there, 181 used: 819 left, to be used by Thursday."""
    folder = with_entry("whole yoghurt 3.8 %", use_by=date(2026, 11, 19))
    first = used_up(folder)[0]
    assert (first.what, round(first.grams)) == ("whole yoghurt 3.8 %", 819)


def test_what_keeps_for_ever_is_not_in_the_list() -> None:
    assert "cocoa butter" not in {one.what for one in used_up(demo_folder())}


def test_left_over_dip_comes_before_all_and_says_what_it_carries() -> None:
    """900 g of dip, 569 go in first; 331 are left."""
    lot = Lot(
        dessert="river-pebble", component="dip", grams=g(900), made=MADE, melted=2
    )
    first = used_up(replace(demo_folder(), bank=Bank(lots=(lot,))))[0]
    assert first.what == "Stone dip of River Pebble"
    assert 325 < first.grams < 335
    assert str(first.caution) == (
        "it has touched every part of the pieces it was on: it carries their allergens"
        " along; warmed 2 times already"
    )
