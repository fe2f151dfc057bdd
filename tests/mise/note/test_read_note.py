"""Notes as they are read, beyond the corpus: bad ones, odd ones, all words kept."""

import re

import pytest
from hypothesis import given
from hypothesis import strategies as st

from benchmarks.notes import compare, found_in, read_corpus
from demould.mise.figure import Assumed
from demould.mise.note.noted import NotedLine
from demould.mise.note.read_note import MOST_CHARACTERS, read_note
from tests.corpus.test_corpus import FILES


def lines(text: str) -> list[NotedLine]:
    return [line for part in read_note(text).parts for line in part.lines]


def amount(text: str) -> str:
    (line,) = lines(text)
    return str(line.amount)


def test_the_corpus_is_read_right_in_95_of_100_lines_and_no_word_is_lost() -> None:
    right = total = 0
    for file in FILES:
        for noted in read_corpus(file.read_text("utf-8")):
            things, dropped = found_in(noted.text)
            score = compare(noted.things, things)
            right, total = right + score.right, total + score.lines
            assert dropped == (), noted.name

    assert total > 400
    assert right / total >= 0.95


@pytest.mark.parametrize(
    ("text", "read"),
    [
        ("cream 1 200 g", "1200 g"),
        ("33 cl cream", "330 ml"),
        ("0,5 l milk", "500 ml"),
        ("½ cup sugar", "0.5 cup"),
        ("1½ tsp honey", "1.5 teaspoon"),
        ("two hundred and fifty grams of cream", "250 g"),
        ("zweihundertfünfzig Gramm Sahne", "250 g"),
        ("duecentocinquanta grammi di panna", "250 g"),
        ("eggs 3", "3 pieces"),
        ("eggs 150", "150 g"),
        ("4 oz cream", "113.398 g"),
        ("juice of 2 lemons", "2 pieces"),
        ("leaves 5", "5 leaf"),
        ("one sixty of white chocolate", "160 g"),
        ("90 pist. paste", "90 g"),
        ("a pinch of salt", "1 pinch"),
        ("cream (1) 200g", "200 g"),
        ("apple 500g (about 4 apples)", "500 g"),
        ("a litre and a half of milk", "1500 ml"),
        ("infuse 12 g earl grey", "12 g"),
    ],
)
def test_an_amount_is_read_as_it_is_written(text: str, read: str) -> None:
    assert amount(text) == read


def test_two_ends_are_an_amount_between_them() -> None:
    (line,) = lines("plum purée 540-550 g")

    assert line.amount is not None
    assert line.amount.value == 545
    assert isinstance(line.amount.origin, Assumed)
    assert (line.amount.origin.low, line.amount.origin.high) == (540, 550)


def test_a_number_alone_is_said_to_have_no_unit() -> None:
    cream, egg = lines("cream 200\neggs 2")

    assert (str(cream.amount), cream.no_unit) == ("200 g", True)
    assert (str(egg.amount), egg.no_unit) == ("2 pieces", True)


def test_a_spelling_is_forgiven_and_marked() -> None:
    (line,) = lines("rasberry puree 80 g")

    assert line.ingredient == "raspberry"
    assert line.guessed
    assert line.written == "rasberry puree"


def test_what_was_split_keeps_the_whole_beside_its_parts() -> None:
    first, second = lines("sugar 100 (60 + 30)")

    assert (str(first.amount), first.whole) == ("60 g", 100)
    assert (str(second.amount), second.whole) == ("30 g", None)


def test_an_unknown_ingredient_keeps_its_name_and_amount() -> None:
    unknown, milk = lines("zorbl 20 g\nmilk 100 g")

    assert (unknown.ingredient, unknown.what, str(unknown.amount)) == (
        None,
        "zorbl",
        "20 g",
    )
    assert milk.ingredient == "milk_whole_35"


def test_a_number_that_can_be_read_in_two_ways_is_kept_as_a_remark() -> None:
    note = read_note("cream 1.2.3 g")

    assert note.parts[0].lines[0].amount is None
    assert "1.2.3" in " ".join(note.remarks)


def test_a_sum_before_its_ingredient_is_two_lines_of_it() -> None:
    first, second = lines("60+40 sugar")

    assert [first.ingredient, second.ingredient] == ["sucrose", "sucrose"]
    assert [str(first.amount), str(second.amount)] == ["60 g", "40 g"]


def test_part_of_what_stands_above_is_no_line_of_its_own() -> None:
    cream, vanilla = lines("500 ml cream and warm two hundred of it with the vanilla")

    assert str(cream.amount) == "500 ml"
    assert vanilla.amount is None


def test_zest_and_juice_of_limes_are_a_line_each() -> None:
    zest, juice = lines("zest and juice of 4 limes")

    assert [zest.what, juice.ingredient] == ["lime zest", "lime_juice"]
    assert [str(zest.amount), str(juice.amount)] == ["4 pieces", "4 pieces"]


@pytest.mark.parametrize(
    ("text", "title", "pieces"),
    [
        (
            "Mousse al pistacchio (per 10 cupole)\n200 g latte",
            "Mousse al pistacchio",
            10,
        ),
        ("Kirschgelee für 12 Halbkugeln\n400 g Kirschen", "Kirschgelee", 12),
        ("Strawberry domes - 12 of\ncream 200", "Strawberry domes", 12),
        ("Choc mousse x 12\ncream 200", "Choc mousse", 12),
    ],
)
def test_a_first_line_says_what_it_is_and_how_many(
    text: str, title: str, pieces: int
) -> None:
    note = read_note(text)

    assert note.title == title
    assert note.pieces is not None
    assert note.pieces.value == pieces


def test_a_number_behind_heat_is_a_temperature() -> None:
    note = read_note("neutral glaze 300 g\nwarm 55")

    assert [line.ingredient for line in note.parts[0].lines] == ["glaze_neutral"]
    assert note.parts[0].steps[0].at_c is not None
    assert note.parts[0].steps[0].at_c.value == 55


def test_fahrenheit_is_read_as_celsius() -> None:
    (step,) = read_note("bake at 350 °F for 12 min").parts[0].steps

    assert step.at_c is not None
    assert step.at_c.value == pytest.approx(176.67, abs=0.01)


def test_what_lies_behind_the_longest_note_is_kept_and_not_read() -> None:
    text = "cream 200 g\n" + "x" * MOST_CHARACTERS
    note = read_note(text)

    assert str(lines(text)[0].amount) == "200 g"
    assert note.stretches[-1].end == len(text)


WORDS = st.sampled_from(
    [
        "cream",
        "sugar",
        "200",
        "g",
        "33",
        "cl",
        "2",
        "leaves",
        ",",
        ";",
        ":",
        ".",
        "(",
        ")",
        "+",
        "-",
        "/",
        "35",
        "%",
        "gelatin",
        "split",
        "50",
        "makes",
        "20",
        "pieces",
        "ganache",
        "centre",
        "dip",
        "boil",
        "2",
        "min",
        "to",
        "83",
        "°C",
        "overnight",
        "juice",
        "of",
        "lemon",
        "in",
        "all",
        "a",
        "zorbl",
        "1/2",
        "½",
        "1.2.3",
        "שלום",
        "\n",
        "\n",
        "=",
        "•",
        "total",
        "x",
        "12",
        "400",
        "x",
        "300",
        "mm",
        "with",
        "the",
        "pectin",
    ]
)


@given(st.lists(WORDS, max_size=40).map(" ".join) | st.text(max_size=200))
def test_no_text_is_refused_and_no_word_of_it_is_lost(text: str) -> None:
    note = read_note(text)

    ends = [0, *(one.end for one in note.stretches)]
    starts = [*(one.start for one in note.stretches), len(text)]
    between = [text[end:start] for end, start in zip(ends, starts, strict=True)]
    assert all(re.fullmatch(r"\s*", gap) for gap in between), between
    assert all(one.text == text[one.start : one.end] for one in note.stretches)


def test_speech_without_a_mark_is_cut_and_still_read() -> None:
    """Two hundred amounts in one breath are two hundred lines."""
    spoken = " ".join(["five grams of cream"] * 200)

    assert [str(line.amount) for line in lines(spoken)] == ["5 g"] * 200
