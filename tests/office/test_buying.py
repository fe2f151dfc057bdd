"""What to call: the demo's traps, worked by hand, and what must be said."""

from dataclasses import replace
from datetime import date, datetime
from decimal import Decimal

import pytest

from demould.demo import NOW
from demould.mise.find import find_in
from demould.mise.kitchen import Kitchen, Supplier
from demould.mise.own_larder import Moved, Pack, Season, Stocked
from demould.office.buying import Buying, Call, buying_of
from demould.office.money import rounded
from demould.office.ordered import Begin
from demould.week.office import needs_of_all
from tests.demo_folder import demo_folder, demo_makings
from tests.office.larder_by_hand import days, g
from tests.week.demo_week import at, kitchen

# Needs for 27 pebbles and 14 domes, in g, as set down: what is used, and where it is not
# the same what must be melted. The sauce is for 24 plates: 24 x 15 g / 0.95 of 400.
SAUCE = 24 * 15 / 0.95 / 400
NEEDS = [
    (
        "cream 35 %",
        (
            889,
            65,
            291,
        ),
    ),
    (
        "white couverture 35 %",
        (
            581,
            130,
        ),
    ),
    ("milk couverture 40 %", (63,)),
    ("cocoa butter", (289,)),
    (
        "gelatin 200 bloom",
        (
            4.7,
            14.2,
        ),
    ),
    (
        "pectin NH",
        (
            6.0,
            2.7,
        ),
    ),
    (
        "blackcurrant purée",
        (
            349,
            300 * SAUCE,
        ),
    ),
    ("pear, peeled and cored", (184,)),
    (
        "sugar",
        (
            78,
            45 * SAUCE,
            304,
        ),
    ),
    (
        "verjuice",
        (
            9,
            4,
        ),
    ),
    ("hazelnut paste", (80,)),
    ("wheat wafer flakes", (98,)),
    (
        "roasted buckwheat groats",
        (
            86,
            48,
        ),
    ),
    (
        "butter 82 %",
        (
            17,
            40,
        ),
    ),
    ("black cocoa", (7,)),
    ("whole yoghurt 3.8 %", (181,)),
    ("honey", (55,)),
    ("rhubarb, trimmed", (219,)),
    ("whole egg", (150,)),
    ("wheat flour", (95,)),
    ("whole milk 3.5 %", (30,)),
    ("thyme", (2,)),
    ("glucose syrup DE40", (120,)),
    ("sweetened condensed milk", (45,)),
    ("inulin", (20,)),
]
TUESDAY_TO_FRIDAY = {
    ("saturday dinner", key): Begin(planned=at("Wed 10:00"), latest=at("Thu 16:05"))
    for key in ("ganache", "centre")
} | {
    ("saturday dinner", key): Begin(planned=at("Sat 10:00"), latest=at("Sat 11:05"))
    for key in ("dip", "spray")
}


def buying(
    begins: dict[tuple[str, str], Begin] | None = None,
    now: datetime = NOW,
    place: Kitchen | None = None,
    **entries: Stocked,
) -> Buying:
    folder = demo_folder()
    changed = {one.key: one for one in entries.values()}
    larder = tuple(changed.get(one.key, one) for one in folder.larder)
    needs = needs_of_all(
        demo_makings(), replace(folder, larder=larder), find_in(larder)
    )
    return buying_of(needs, place or kitchen(), begins or {}, now)


def entry(key: str, **said: object) -> Stocked:
    found = next(one for one in demo_folder().larder if one.key == key)
    return replace(found, **said)  # type: ignore[arg-type]  # the caller's


def call(key: str, found: Buying) -> Call:
    return next(one for one in found.calls if one.need.name == key)


@pytest.mark.parametrize(("name", "parts"), NEEDS)
def test_the_need_is_that_set_down(name: str, parts: tuple[float, ...]) -> None:
    """Each part was printed to whole grams, gelatin and pectin to tenths."""
    folder = demo_folder()
    needs = needs_of_all(demo_makings(), folder, find_in(folder.larder))
    found = next(one for one in needs if one.name == name)
    unit = 0.1 if name in ("gelatin 200 bloom", "pectin NH") else 1.0
    assert found.have.value == pytest.approx(sum(parts), abs=unit / 2 * len(parts))


def test_three_things_are_short_and_no_others() -> None:
    """Sunflower paste takes four days and pectin five: both are in the house."""
    assert {one.need.name for one in buying().calls} == {
        "cream 35 %",
        "pear, peeled and cored",
        "cocoa butter",
    }


def test_cream_is_shared_two_packs_and_the_rest_is_dated() -> None:
    cream = call("cream 35 %", buying(TUESDAY_TO_FRIDAY))
    assert [(one.count, one.pack.size.value) for one in cream.packs] == [(2, 1000)]
    assert cream.cost == Decimal("10.40")
    assert cream.left.value == pytest.approx(2000 - 1245, abs=1)
    assert cream.good_until == date(2026, 11, 21)


def test_cocoa_butter_covers_what_is_used_not_what_must_be_melted() -> None:
    cocoa = call("cocoa butter", buying())
    assert cocoa.need.used.value == pytest.approx(146, abs=1)
    assert cocoa.only_to_melt
    assert cocoa.short.value == pytest.approx(289 - 150, abs=1)
    assert [(one.count, one.pack.size.value) for one in cocoa.packs] == [(1, 1000)]
    assert str(cocoa.remarks[0]) == (
        "289 g must be melted; the 150 g there are enough only for the 146 g used up"
    )


def test_pear_is_bought_gross_about_one_and_eggs_about_three() -> None:
    folder = demo_folder()
    needs = needs_of_all(demo_makings(), folder, find_in(folder.larder))
    whole = {one.name: one.whole.value for one in needs if one.whole}
    assert whole == {"pear, peeled and cored": 1, "whole egg": 3}


def test_everything_short_is_called_on_tuesday_for_this_plan() -> None:
    found = buying(TUESDAY_TO_FRIDAY)
    assert {one.need.name: one.by for one in found.calls} == dict.fromkeys(
        ("cream 35 %", "pear, peeled and cored", "cocoa butter"), at("Tue 17:00")
    )
    assert len(found.today(NOW)) == 3
    assert call("cream 35 %", found).last == at("Wed 17:00")
    assert call("cocoa butter", found).last == at("Tue 17:00")


def test_what_can_wait_is_not_called_today() -> None:
    later = {
        key: replace(one, planned=one.latest) for key, one in TUESDAY_TO_FRIDAY.items()
    }
    found = buying(later)
    assert [one.need.name for one in found.today(NOW)] == ["cocoa butter"]


def test_pectin_out_of_stock_on_tuesday_comes_too_late() -> None:
    """Five days from Tuesday is Sunday, shut: Tuesday week. Thursday is the last day."""
    found = buying(TUESDAY_TO_FRIDAY, pectin=entry("pectin NH", stock=g(0)))
    pectin = call("pectin NH", found)
    assert pectin.comes == datetime(2026, 11, 24, 9, tzinfo=NOW.tzinfo)
    assert pectin.too_late
    assert pectin in found.today(NOW)
    assert not call("cream 35 %", found).too_late


def test_without_a_plan_it_is_called_now() -> None:
    found = buying()
    assert {one.by for one in found.calls} == {None}
    assert found.today(NOW) == found.calls


# 1000 g counted, 2000 came, 2200 used: 800 left, 445 of 1245 short: one pack.
def test_what_came_and_went_since_the_count_counts() -> None:
    since = (
        Moved(on=NOW.date(), came=True, grams=g(2000)),
        Moved(on=NOW.date(), came=False, grams=g(2200)),
    )
    cream = call(
        "cream 35 %", buying(cream=entry("cream 35 %", stock=g(1000), since=since))
    )
    assert cream.stock.value == 800
    assert cream.short.value == pytest.approx(445, abs=1)
    assert [one.count for one in cream.packs] == [1]


# 1245 g short; packs of 1240 g: 2, for want of 5 g.
def test_a_pack_more_for_a_few_grams_is_said() -> None:
    cream = call(
        "cream 35 %", buying(cream=entry("cream 35 %", packs=(Pack(size=g(1240)),)))
    )
    assert [one.count for one in cream.packs] == [2]
    assert [str(one) for one in cream.remarks] == [
        "5 g less, and one pack fewer would do"
    ]


# 1245 g short; packs of 1250 g: one, and 5 g are all there is to spill.
def test_a_pack_that_is_only_just_enough_is_said() -> None:
    packs = (Pack(size=g(1250)),)
    cream = call("cream 35 %", buying(cream=entry("cream 35 %", packs=packs)))
    assert [str(one) for one in cream.remarks] == [
        "only 5 g more than is needed: nothing may be spilt"
    ]


def test_a_larger_pack_that_is_cheaper_is_said() -> None:
    """5 x 250 g at 1.60 are 8.00; 2 kg at 7.00 cost 1.00 less and leave 755 g."""
    packs = (
        Pack(size=g(250), price=Decimal("1.60")),
        Pack(size=g(2000), price=Decimal("7.00")),
    )
    cream = call(
        "cream 35 %", buying(cream=entry("cream 35 %", packs=packs, price=None))
    )
    assert [(one.count, one.pack.size.value) for one in cream.packs] == [(1, 2000)]
    assert [str(one) for one in cream.remarks] == [
        "5 x 250 g would leave less, and cost 1.00 more"
    ]


def test_no_pack_size_is_called_by_the_gram_and_said() -> None:
    cream = call("cream 35 %", buying(cream=entry("cream 35 %", packs=())))
    assert cream.packs == ()
    assert cream.cost is None
    assert [str(one) for one in cream.remarks] == [
        "no pack size is written: called by the gram"
    ]


def test_what_is_under_the_least_order_is_said_in_money() -> None:
    dairy = Supplier(name="Weir Dairy", least=Decimal(15))
    place = replace(kitchen(), suppliers=(dairy,))
    found = buying(place=place, cream=entry("cream 35 %", supplier="Weir Dairy"))
    basket = next(one for one in found.baskets if one.supplier == dairy)
    assert [one.need.name for one in basket.calls] == ["cream 35 %"]
    assert basket.under is not None
    assert str(rounded(basket.under)) == "4.60"


def test_what_nobody_counted_is_asked_and_not_called() -> None:
    found = buying(cream=entry("cream 35 %", stock=None))
    assert "cream 35 %" not in {one.need.name for one in found.calls}
    assert [one.name for one in found.uncounted] == ["cream 35 %"]


def test_what_is_out_of_season_is_said_with_what_is_taken_instead() -> None:
    rhubarb = entry(
        "rhubarb, trimmed", season=Season(months=(4, 5, 6), instead="rhubarb, frozen")
    )
    assert [str(one) for one in buying(rhubarb=rhubarb).seasons] == [
        "rhubarb, trimmed is out of season in Nov: take rhubarb, frozen, weighed trimmed;"
        " thawed it gives water off, so cook to the grams on the sheet"
    ]
    april = at("Tue 14:00").replace(month=4)
    assert buying(now=april, rhubarb=rhubarb).seasons == ()


def test_what_it_may_contain_is_asked_loudly() -> None:
    assert [str(one) for one in buying().asks] == [
        "what may white couverture 35 %, milk couverture 40 %, wheat wafer flakes contain,"
        " nuts above all? NOT KNOWN",
        "gelatin 200 bloom: from which animal?",
    ]


def test_an_opened_pack_is_good_no_longer_than_its_own_day() -> None:
    found = buying(
        TUESDAY_TO_FRIDAY,
        cream=entry("cream 35 %", keeps=days(9), use_by=date(2026, 11, 20)),
    )
    assert call("cream 35 %", found).good_until == date(2026, 11, 20)
