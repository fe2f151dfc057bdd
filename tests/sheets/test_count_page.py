import re
from dataclasses import replace
from datetime import date

import pytest

from demould.mise.figure import (
    Assumed,
    Figure,
    Line,
    Measured,
    Origin,
    Stated,
    Worked,
    unfold,
)
from demould.sheets.count_page import count_page, grams_or_more, why_lines
from demould.sheets.plain import plain
from demould.week.making import Amounts
from tests.demo_folder import DEMO
from tests.sheets.reading import heads, lines, rows, table_in, under
from tests.week.demo_week import domes, pebbles

GIVES = "as written it gives, pieces"
LINE = Line("card.yaml", 7, "  38 g  it")


def test_all_counts_stand_side_by_side_the_weakest_marked() -> None:
    page = count_page(pebbles().amounts, asked=False)
    table = table_in(under(page.blocks, GIVES))
    assert [(one[0], one[1]) for one in rows(table)] == [
        ("Buckwheat whipped ganache", "21"),
        ("Blackcurrant-pear centre", "29"),
        ("Hazelnut crisp base", "30"),
        ("Stone dip", "31"),
        ("Stone spray", "46"),
        ("Blackcurrant sauce", "25"),
    ]
    assert [one[1].strong for one in table.rows] == [True, *[False] * 5]
    assert rows(table)[0][2] == "19 to 23"
    assert rows(table)[1][2] == ""
    assert rows(table)[3][4] == "in the 100 mm jug"


# Left over once 21 are made of 29.47, at 19.8 g: 168 g (worked by hand).
def test_left_over_is_what_stays_when_the_weakest_is_used_up() -> None:
    table = table_in(under(count_page(pebbles().amounts, asked=False).blocks, GIVES))
    assert rows(table)[1][3] == "168 g"


def test_what_to_measure_first_is_named() -> None:
    page = count_page(pebbles().amounts, asked=False)
    assert lines(page.blocks) == [
        "measure first: density when whipped of the ganache, assumed 0.62 g/ml"
    ]


def test_where_nothing_is_assumed_there_is_nothing_to_measure() -> None:
    amounts = pebbles().amounts
    known = replace(amounts, counts=replace(amounts.counts, measure_first=None))
    assert lines(count_page(known, asked=False).blocks) == []


def test_only_who_asks_for_a_number_is_told_what_to_make() -> None:
    asked = count_page(pebbles().amounts, asked=True)
    alone = count_page(pebbles().amounts, asked=False)
    assert heads(asked.blocks) == [GIVES, "make"]
    assert heads(alone.blocks) == [GIVES]
    assert (str(asked.note), str(alone.note)) == ("27 pieces", "")
    assert asked.key == "count-river-pebble"


def test_it_is_read_in_80_columns() -> None:
    for amounts in (pebbles().amounts, domes().amounts):
        text = plain(count_page(amounts, asked=True))
        assert max(len(line) for line in text.splitlines()) <= 80


def leaves(amounts: Amounts) -> list[str]:
    """Give the lines of all leaves: those that nothing deeper follows."""
    told = list(why_lines(amounts, asked=True))
    return [
        line
        for line, after in zip(told, [*told[1:], ""], strict=True)
        if line and indent(after) <= indent(line)
    ]


def indent(line: str) -> int:
    return len(line) - len(line.lstrip()) if line else 0


@pytest.mark.parametrize("amounts", [pebbles().amounts, domes().amounts])
def test_every_number_reaches_the_line_it_was_written_in(amounts: Amounts) -> None:
    found = leaves(amounts)
    assert len(found) > 50
    for leaf in found:
        place = re.search(r'  (\S+\.yaml):(\d+) "(.*)"$', leaf)
        assert place is not None, leaf
        written = (DEMO / place[1]).read_text("utf-8").splitlines()
        assert place[3] in written[int(place[2]) - 1], leaf


def test_each_count_and_what_to_weigh_is_unfolded() -> None:
    told = list(why_lines(pebbles().amounts, asked=True))
    tops = [told[at + 1] for at, line in enumerate(told) if not line]
    assert tops[0] == (
        "pieces of Buckwheat whipped ganache, as written: 21 pieces  = rounded down"
    )
    assert len(tops) == 6 + 6 + 1 + 1  # counts, weighings, the dip to melt, the piece
    fewer = list(why_lines(pebbles().amounts, asked=False))
    assert sum(not line for line in fewer) == 6 + 1
    no_jug = list(why_lines(domes().amounts, asked=True))
    assert sum(not line for line in no_jug) == 4 + 4 + 1


def test_deeper_figures_stand_further_in() -> None:
    whole = pebbles().amounts.piece.whole
    told = list(why_lines(pebbles().amounts, asked=False))
    told = told[-len(list(unfold(whole))) :]
    assert [indent(line) for line in told] == [2 * depth for depth, _ in unfold(whole)]


@pytest.mark.parametrize(
    ("origin", "told"),
    [
        (Stated(), "it: 38 g  stated"),
        (Stated(by="maker"), "it: 38 g  stated by maker"),
        (Stated(line=LINE), 'it: 38 g  stated  card.yaml:7 "38 g  it"'),
        (Measured(), "it: 38 g  measured"),
        (
            Measured(on=date(2026, 11, 3), readings=3, line=LINE),
            'it: 38 g  measured on 2026-11-03, 3 times  card.yaml:7 "38 g  it"',
        ),
        (Assumed(low=30, high=40), "it: 38 g  assumed, between 30 and 40"),
        (
            Assumed(low=30, high=40, source="common_practice"),
            "it: 38 g  assumed, between 30 and 40 (common_practice)",
        ),
    ],
)
def test_each_number_says_whence_it_is(origin: Origin, told: str) -> None:
    whole = pebbles().amounts.piece.whole
    assert isinstance(whole.origin, Worked)
    figure = Figure(name="it", value=38, unit="g", origin=origin)
    assert told in list(why_lines(_with_whole(figure), asked=False))


def _with_whole(figure: Figure) -> Amounts:
    amounts = pebbles().amounts
    return replace(amounts, piece=replace(amounts.piece, whole=figure))


def test_a_number_has_the_digits_that_tell_something() -> None:
    assert grams_or_more(Figure(name="", value=38.50448, unit="g")) == "38.504 g"
    assert grams_or_more(Figure(name="", value=2, unit="")) == "2"
