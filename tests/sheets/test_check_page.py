from demould.mise.words import Words
from demould.sheets.check_page import check_page
from demould.sheets.plain import plain
from demould.week.sure import Sure
from demould.week.unsaid import Unsaid
from tests.sheets.reading import heads, lines, rows, table_in, under
from tests.week.demo_week import demo_week

ASSUMED = "assumed, what moves most first"
SALT = Unsaid(says=Words("salt has no amount"), asks=Words("how many grams of salt?"))


def test_what_is_assumed_comes_with_what_it_moves_and_what_settles_it() -> None:
    page = check_page("Brackmoor Weir", demo_week().sure, ())
    assert str(page.title) == "BRACKMOOR WEIR: what is unsaid"
    assert lines(page.blocks) == ["Nothing that is written is wrong."]
    assert heads(page.blocks) == [ASSUMED]
    told = rows(table_in(under(page.blocks, ASSUMED)))
    assert [
        "density when whipped of the ganache 0.62 g/ml",
        "the written Buckwheat whipped ganache gives 23 at 0.57, 19 at 0.66, not 21",
        "weigh a known cup of it: density when whipped of the ganache",
    ] in told
    assert len(told) == len(demo_week().sure.moves)


def test_what_is_not_said_comes_first_with_its_question() -> None:
    page = check_page("x", Sure(assumed=(), moves=()), (SALT,))
    assert heads(page.blocks) == ["not said", ASSUMED]
    assert rows(table_in(under(page.blocks, "not said"))) == [
        ["salt has no amount", "", "how many grams of salt?"]
    ]


def test_it_is_read_in_80_columns() -> None:
    text = plain(check_page("Brackmoor Weir", demo_week().sure, (SALT,)))
    assert (
        "ASSUMED, WHAT MOVES MOST FIRST                                         6"
        in text
    )
    assert max(len(line) for line in text.splitlines()) <= 80
