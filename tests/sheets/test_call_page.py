"""The buying list and today's lines, as a cook reads them."""

from dataclasses import replace

from demould.demo import NOW
from demould.mise.find import find_in
from demould.office.bank import Allotted
from demould.office.buying import Buying
from demould.office.ordered import Begin
from demould.office.use_up import UseUp
from demould.sheets.call_page import call_page, do_today
from demould.sheets.page import Page
from demould.sheets.plain import plain
from demould.week.office import buying_of_week
from tests.demo_folder import demo_folder
from tests.office.larder_by_hand import g
from tests.office.test_buying import TUESDAY_TO_FRIDAY, buying, entry
from tests.sheets.reading import heads, lines, loud, rows, table_in, under
from tests.week.demo_week import at, kitchen


def page(found: Buying, use_up: tuple[UseUp, ...] = ()) -> Page:
    return call_page(kitchen(), found, Allotted(), use_up, NOW)


# 953 + 291 g of cream, 2 packs at 5.20; 184 g of pear gross, 3.36 a kilo bought; 139 g of
# cocoa butter short, 24.00: 37.76 in all (by hand).
def test_a_supplier_s_list_says_how_much_for_what_and_by_when() -> None:
    blocks = page(buying(TUESDAY_TO_FRIDAY)).blocks
    assert rows(table_in(under(blocks, "no supplier named"))) == [
        ["cream 35 %", "1.24 kg", "0 g", "2 x 1 kg", "10.40", "Tue 17:00", "Wed 09:00"],
        [
            "pear, peeled and cored, gross, about 1",
            "184 g",
            "0 g",
            "1 x 1 kg",
            "3.36",
            "Tue 17:00",
            "Wed 09:00",
        ],
        [
            "cocoa butter",
            "289 g",
            "150 g",
            "1 x 1 kg",
            "24.00",
            "Tue 17:00",
            "Fri 09:00",
        ],
    ]


def test_what_is_left_is_dated() -> None:
    left = rows(
        table_in(
            under(page(buying(TUESDAY_TO_FRIDAY)).blocks, "left over, when all is made")
        )
    )
    assert ["cream 35 %", "755 g", "good until Sat 21 Nov"] in left


def test_it_is_read_in_80_columns() -> None:
    for found in (buying(), buying(TUESDAY_TO_FRIDAY)):
        assert max(map(len, plain(page(found)).splitlines())) <= 80


def test_today_has_the_lead_and_the_last_moment() -> None:
    told = rows(table_in(tuple(do_today(buying(TUESDAY_TO_FRIDAY), NOW))))
    assert told[0][0] == "call"
    assert [
        "cream 35 %, 1.24 kg: 2 x 1 kg (1 day), at the latest Wed 17:00" in row[1]
        for row in told
    ].count(True) == 1
    assert [row[1] for row in told if row[1].startswith("cocoa butter")] == [
        "cocoa butter, 289 g: 1 x 1 kg (3 days), by Tue 17:00, or it is too late; 289 g"
        " must be melted; the 150 g there are enough only for the 146 g used up"
    ]
    assert [row[0] for row in told if row[1].startswith("what may")] == ["ask"]


def test_what_comes_too_late_is_loud() -> None:
    found = buying(TUESDAY_TO_FRIDAY, pectin=entry("pectin NH", stock=g(0)))
    says = (
        "pectin NH, 8.7 g: called now it comes Tue 24 Nov 09:00, and is needed Thu 16:05"
        " at the latest. Borrow it, buy it over a counter, or take something else"
    )
    assert loud(tuple(do_today(found, NOW))) == [says]
    assert loud(page(found).blocks) == [says]


def test_where_nothing_is_short_that_is_said() -> None:
    find = find_in(demo_folder().larder)
    nothing = buying_of_week(demo_folder(), (), None, NOW, find)
    assert lines(page(nothing).blocks) == [
        "nothing is short: all that is needed is in the house"
    ]
    assert tuple(do_today(nothing, NOW)) == ()


def test_what_was_never_counted_is_asked() -> None:
    found = buying(cream=entry("cream 35 %", stock=None))
    assert "is it there? Never counted: cream 35 % 1.24 kg" in lines(
        under(page(found).blocks, "ask")
    )


def test_what_can_wait_says_until_when() -> None:
    later = {
        key: Begin(planned=at("Thu 10:00"), latest=at("Thu 16:05"))
        for key in TUESDAY_TO_FRIDAY
    }
    found = buying(later, cocoa=entry("cocoa butter", stock=g(500)))
    assert found.today(NOW) == ()
    assert heads(tuple(do_today(replace(found, asks=()), NOW))) == []
