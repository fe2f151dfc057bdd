from dataclasses import replace

from demould.mise.words import Words
from demould.sheets.page import Head, Page
from demould.sheets.plain import plain
from demould.sheets.week_page import wall_page, week_page
from demould.week.deciding import Decision
from demould.week.sections import Week
from demould.week.sure import Sure
from tests.sheets.reading import heads, lines, loud, rows, table_in, under
from tests.week.demo_week import at, demo_week, judged, not_planned, pebbles

HEADS = [
    "you decide",
    "do today",
    "as written it gives, pieces",
    "make",
    "will it set and hold",
    "what the kitchen holds",
    "freeze and thaw, between",
    "the days",
    "latest starts",
    "no way back after",
    "frozen bank",
    "who must not eat it",
    "careful",
    "cost",
    "how sure",
    "papers",
]


def failed() -> Week:
    return replace(demo_week(), timing=not_planned(None))


def test_it_is_read_in_80_columns() -> None:
    for week in (demo_week(), failed()):
        for page in (week_page(week, "11 sheets in papers"), wall_page(week)):
            assert max(len(line) for line in plain(page).splitlines()) <= 80


def test_decisions_come_before_grams_and_grams_before_hours() -> None:
    assert heads(week_page(demo_week(), "11 sheets in papers").blocks) == HEADS


def test_the_title_says_whose_week_and_as_from_when() -> None:
    page = week_page(demo_week())
    assert str(page.title) == "BRACKMOOR WEIR, the week to Sat"
    assert str(page.note) == "drawn up Tue 14:00"


def test_whether_it_stands_is_read_first() -> None:
    page = week_page(replace(demo_week(), timing=judged({"saturday dinner": 65})))
    assert lines(page.blocks)[0] == (
        "IT STANDS: 2 orders in time. Tightest: River Pebble, 1 h 05 to spare."
    )


def test_papers_are_named_only_where_they_were_written() -> None:
    papers = week_page(demo_week(), "11 sheets in papers").blocks[-1]
    assert isinstance(papers, Head)
    assert (str(papers.text), str(papers.note)) == ("papers", "11 sheets in papers")
    assert heads(week_page(demo_week()).blocks) == HEADS[:-1]


def test_where_it_does_not_stand_the_grams_are_there_and_no_days() -> None:
    page = week_page(failed())
    assert loud(page.blocks) == [
        "IT DOES NOT STAND: no plan was found in the time given"
    ]
    assert plain(page).splitlines()[2] == (
        "!! IT DOES NOT STAND: no plan was found in the time given"
    )
    assert heads(page.blocks) == [
        head
        for head in HEADS[:-1]
        if head not in ("the days", "latest starts", "no way back after")
    ]


def test_a_decision_has_a_number_its_answers_and_its_hour() -> None:
    asks = Words("a round of 3?")
    answers = (Words("by hand"), Words("borrow one mould"))
    decisions = (
        Decision(asks=asks, answers=answers, by=at("Thu 09:00")),
        Decision(asks=Words("a probe?"), answers=(), by=None),
    )
    page = week_page(replace(demo_week(), decisions=decisions))
    assert rows(table_in(under(page.blocks, "you decide"))) == [
        ["1", "a round of 3? / by hand / borrow one mould", "Thu 09:00"],
        ["2", "a probe?", ""],
    ]


def test_who_has_nothing_to_decide_is_not_asked() -> None:
    page = week_page(replace(demo_week(), decisions=()))
    assert heads(page.blocks) == HEADS[1:-1]


# Worked by hand; see the tests of the week's amounts.
def test_counts_stand_side_by_side_without_what_goes_beside() -> None:
    table = table_in(
        under(week_page(demo_week()).blocks, "as written it gives, pieces")
    )
    assert rows(table) == [
        ["Meadow Domes", "mousse 13", "centre 13", "sponge 24", "glaze 15", ""],
        ["River Pebble", "ganache 21", "centre 29", "base 30", "dip 31", "spray 46"],
    ]
    strong = [[str(cell.text) for cell in row if cell.strong] for row in table.rows]
    assert strong == [["mousse 13", "centre 13"], ["ganache 21"]]


# 4.8 l, 70 % full: 2083 g at 0.62 g/ml, 2184 g at 0.65. 313 + 247 + 10 = 569 g (the parts
# are rounded); in the same way a jug of 110 mm needs 655 g and one of 140 mm 961 g. 14
# times 60.1 g are 0.8 kg, 24 times 67.7 g are 1.6 kg, of 5 kg a cycle.
def test_what_the_kitchen_holds_is_told_by_mould_bowl_and_jug() -> None:
    table = table_in(under(week_page(demo_week()).blocks, "what the kitchen holds"))
    told = rows(table)
    assert [row[:2] for row in told[9:]] == [
        ["all orders", "blast"],
        ["", "freezer"],
        ["", "fridge"],
        ["", ""],
    ]
    assert told[9][2].startswith("2 of 3 shelves at most, ")
    assert told[:9] == [
        ["Meadow Domes", "moulds", "dome: 14 of 18 cavities, one round"],
        ["", "bowl", "round of 14: 488 g of 2184 g, fits"],
        ["", "blast", "14: 0.8 kg of 5 kg a cycle; 1 of 3 levels"],
        ["River Pebble", "moulds", "pebble: 24 cavities, 2 rounds, 24 + 3"],
        ["", "bowl", "round of 24: 1004 g of 2083 g, fits"],
        ["", "bowl", "round of 3: 162 g of 2083 g, too little"],
        ["", "blast", "24: 1.6 kg of 5 kg a cycle; 2 of 3 levels"],
        [
            "",
            "jug",
            "100 mm: 313 to cover + 247 on pieces + 10 heel = 569 g",
        ],
        ["", "", "(110 mm would need 655 g, 140 mm would need 961 g)"],
    ]
    assert [row[2].strong for row in table.rows].index(True) == 5


def with_amounts(**changes: object) -> Page:
    amounts = replace(pebbles().amounts, **changes)  # type: ignore[arg-type]  # a field
    making = replace(pebbles(), amounts=amounts)
    return week_page(replace(demo_week(), makings=(making,)))


def test_where_the_widest_jug_is_taken_no_wider_one_is_told() -> None:
    jug = pebbles().amounts.jug
    assert jug is not None
    told = rows(
        table_in(under(with_amounts(jugs=(jug,)).blocks, "what the kitchen holds"))
    )
    assert told[[row[1] for row in told].index("jug") + 1][0] == "all orders"


def test_a_bowl_that_takes_any_amount_is_not_compared() -> None:
    whip = pebbles().amounts.whips[0]
    any_amount = replace(whip, bowl=replace(whip.bowl, most=None))
    told = rows(
        table_in(
            under(with_amounts(whips=(any_amount,)).blocks, "what the kitchen holds")
        )
    )
    assert told[1] == ["", "bowl", "round of 24: 1004 g, fits"]


def test_each_dessert_freezes_and_thaws_between_two_ends_in_each_place() -> None:
    table = table_in(under(week_page(demo_week()).blocks, "freeze and thaw, between"))
    names = [str(column.head).replace("\xa0", " ") for column in table.columns]
    assert names[1:3] == ["blast -35 °C", "freezer -20 °C"]
    assert [row[0] for row in rows(table)] == ["Meadow Domes", "River Pebble"]
    for row in rows(table):
        assert len(row) == len(names)
        assert all(" - " in text or text == "never" for text in row[1:])


def test_what_never_freezes_through_is_told_so() -> None:
    week = demo_week()
    chilled = week.chilling["meadow-domes"]
    first = chilled.freezing[0]
    wait = replace(first.wait, hours=None, never=Words("the air is too warm"))
    stuck = replace(
        chilled, freezing=(replace(first, wait=wait), *chilled.freezing[1:])
    )
    page = week_page(replace(week, chilling={**week.chilling, "meadow-domes": stuck}))
    assert (
        rows(table_in(under(page.blocks, "freeze and thaw, between")))[0][1] == "never"
    )


def test_the_three_figures_that_move_most_are_told_and_what_settles_the_first() -> None:
    week = demo_week()
    blocks = under(week_page(week).blocks, "how sure")
    assert len(rows(table_in(blocks))) == 3
    assert [
        "density when whipped of the ganache 0.62 g/ml",
        "the written Buckwheat whipped ganache gives 23 at 0.57, 19 at 0.66, not 21",
    ] in rows(table_in(blocks))
    assert lines(blocks) == [
        "These move most:",
        f"first: {week.sure.moves[0].settled_by}",
    ]


def test_where_nothing_is_assumed_nothing_moves() -> None:
    page = week_page(replace(demo_week(), sure=Sure(assumed=(), moves=())))
    assert page.blocks[-1] == Head(
        text=Words("how sure"), note=Words("{n} figures assumed", n=0)
    )


def test_the_wall_has_what_is_decided_and_the_hours_on_its_own_paper() -> None:
    wall = wall_page(demo_week())
    assert (wall.key, wall.paper) == ("wall", "wall")
    assert heads(wall.blocks) == [
        "you decide",
        "do today",
        "the days",
        "latest starts",
        "no way back after",
    ]
    assert [str(text) for text in wall.foot] == [
        f"numbers assumed: {len(demo_week().sure.assumed)}"
    ]
    assert wall.title == week_page(demo_week()).title


def test_a_wall_without_a_plan_says_so_and_has_no_days() -> None:
    wall = wall_page(failed())
    assert heads(wall.blocks) == ["you decide", "do today"]
    assert loud(wall.blocks) == [
        "IT DOES NOT STAND: no plan was found in the time given"
    ]
