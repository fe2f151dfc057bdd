"""The corpus of notes is sound: every reading has a known form."""

from pathlib import Path

import pytest

from benchmarks.notes import Noted, Thing, compare, read_corpus

FILES = sorted(Path(__file__).parent.glob("*.txt"))
LANGUAGES = ("English", "French", "Italian", "Spanish", "German")


def notes() -> list[Noted]:
    return [one for file in FILES for one in read_corpus(file.read_text("utf-8"))]


def test_there_are_at_least_sixty_notes_in_five_languages() -> None:
    names = [one.name for one in notes()]

    assert len(set(names)) == len(names) >= 60
    for language in LANGUAGES:
        assert sum(f"({language}" in name for name in names) >= 7, language


def test_a_line_read_otherwise_is_missed_and_one_too_many_counts_as_wrong() -> None:
    cream = Thing(kind="line", names=("cream_35",), low=200, high=200, unit="g")
    milk = Thing(kind="line", names=("milk_whole_35",), low=200, high=200, unit="g")

    score = compare([cream, cream], [cream, milk])

    assert (score.lines, score.right) == (3, 1)
    assert score.missed == (cream,)
    assert score.beside == (milk,)


def test_a_reading_of_no_known_form_is_refused_with_its_note() -> None:
    text = "=== a card\ncream 5\n--- read as\n5 buckets cream\n"

    with pytest.raises(ValueError, match="a card: '5 buckets cream' is no line of"):
        list(read_corpus(text))
