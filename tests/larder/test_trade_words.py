"""Words of the trade in five languages."""

from collections import Counter

import pytest

from demould.larder.find import find_ingredient
from demould.larder.names import plain
from demould.larder.table import rows, several
from demould.larder.trade_words import language_of, languages, trade_words

UNLISTED = {"vanilla pod", "tonka bean", "lemon", "lime", "orange"}
"""What people write and the ingredient table has no composition of."""


def test_each_language_has_forty_ingredient_and_forty_step_words() -> None:
    counted: Counter[tuple[str, str]] = Counter()
    for row in rows("trade_words"):
        counted[row["language"], row["kind"]] += len(several(row["words"]))

    assert set(languages()) == {"en", "fr", "it", "es", "de"}
    for language in languages():
        assert counted[language, "ingredient"] >= 40, language
        assert counted[language, "step"] >= 40, language


def test_every_ingredient_word_means_a_row_of_the_table() -> None:
    for row in rows("trade_words"):
        if row["kind"] == "ingredient" and row["means"] not in UNLISTED:
            assert find_ingredient(row["means"]) is not None, row


def test_no_word_of_one_language_means_two_things_of_one_kind() -> None:
    seen: dict[tuple[str, str, str], str] = {}
    for row in rows("trade_words"):
        for word in several(row["words"]):
            key = row["language"], row["kind"], plain(word)
            assert seen.setdefault(key, row["means"]) == row["means"], key


@pytest.mark.parametrize(
    ("language", "word", "means"),
    [
        ("fr", "crème", "cream"),
        ("it", "panna", "cream"),
        ("es", "nata", "cream"),
        ("de", "Sahne", "cream"),
        ("fr", "prunes", "plum"),
        ("en", "prunes", "dried plum"),
        ("de", "Butter", "butter"),
    ],
)
def test_a_word_means_what_it_means_in_the_language_of_the_note(
    language: str, word: str, means: str
) -> None:
    assert trade_words(language)[plain(word)][0].means == means


def test_a_note_without_words_is_taken_as_english() -> None:
    assert language_of([]) == "en"
    assert language_of(["zucker", "mehl"]) == "de"
