"""What to ask first, and where an answer is written."""

import pytest

from demould.advice.gaps.gap import Gap
from demould.advice.gaps.questions import MOST, answered, questions_of
from demould.counter.text.from_note import with_answer
from demould.mise.problem import UnreadableError
from tests.advice.gaps.pebble_note import drafted, folder, gaps, keys


def gap(key: str) -> Gap:
    return next(one for one in gaps(drafted()) if one.key == key)


def test_at_most_five_are_asked_what_moves_most_first() -> None:
    asked = questions_of(gaps(drafted()))

    assert len(asked) == MOST == 5
    assert [one.number for one in asked] == [1, 2, 3, 4, 5]
    assert [one.gap.key for one in asked][:3] == [
        "pebble: water in a cavity",
        "ganache: line 5, leaves",
        "insert: water in a cavity",
    ]


@pytest.mark.parametrize(
    ("key", "answer", "line"),
    [
        ("pebble: water in a cavity", "90 ml", "90 ml by water (stated)"),
        ("pebble: water in a cavity", "90", "90 ml by water (stated)"),
        ("ganache: line 5, leaves", "1.8 g, 200 bloom", "3.6 g  gelatin 200 bloom"),
        ("ganache: line 5, leaves", "160 bloom", "2 leaves  gelatin 160 bloom"),
        ("ganache: line 6, amount", "1 g", "1 g         salt"),
        ("ganache: volumes", "327 g", "327 g    cream"),
        ("ganache: made up", "yes", "330 ml    cream; made up"),
        ("ganache: made up", "no", "330 ml    cream; not made up"),
        ("which: white couverture", "35", "190 g     white couverture 35 %"),
        ("which: nut paste", "hazelnut paste 100 %", "90 g   hazelnut paste 100 %"),
        ("Pebble: thaw: wait", "5 h", "thaw  stands 5 h (stated)"),
        ("Ganache: rest: wait", "14 h", "stands 14 h (stated) to 48 h"),
    ],
)
def test_an_answer_is_written_where_it_belongs_and_the_gap_is_gone(
    key: str, answer: str, line: str
) -> None:
    texts = with_answer(drafted(), gap(key), answer)

    assert any(line in text for text in texts.values())
    folder(texts)
    still = key == "ganache: volumes" or answer == "160 bloom"
    assert (key in keys(texts)) is still


def test_what_is_called_for_and_not_wanted_goes() -> None:
    texts = drafted()
    for key in ("called for: spray", "called for: sauce"):
        texts = with_answer(texts, gap(key), "not on this one")

    assert not {one for one in keys(texts) if one.startswith("called for")}
    assert all("called for" not in text for text in texts.values())


def test_an_answer_that_is_no_answer_says_what_would_be() -> None:
    with pytest.raises(UnreadableError) as fault:
        answered(gap("ganache: line 5, leaves"), "    2 leaves  gelatin", "soft")

    assert str(fault.value) == (
        "'soft' is no weight of a leaf. Write it like 1.8 g, 200 bloom."
    )
