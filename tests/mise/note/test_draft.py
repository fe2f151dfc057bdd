"""Drafts in the house format: read back without a fault, nothing of the note lost."""

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from benchmarks.notes import read_corpus
from demould.counter.text.from_note import folder_of, texts_of
from demould.larder.starts import start, usual_steps
from demould.larder.table import rows
from demould.mise.note.draft import draft_of
from demould.mise.note.kinds import kind_of
from demould.mise.note.one_line import one_line
from demould.mise.note.read_note import read_note
from tests.advice.gaps.pebble_note import NOW
from tests.corpus.test_corpus import FILES
from tests.mise.note.test_read_note import WORDS


def test_every_note_of_the_corpus_drafts_a_dessert_that_can_be_read() -> None:
    drafts = 0
    for file in FILES:
        for noted in read_corpus(file.read_text("utf-8")):
            note = read_note(noted.text)
            if not any(part.lines for part in note.parts):
                continue
            folder, problems = folder_of(
                texts_of(note, draft_of(note), "UTC", None), NOW
            )
            assert problems == (), (noted.name, [str(one) for one in problems])
            assert folder is not None
            drafts += 1
    assert drafts >= 60


def test_the_words_of_the_note_and_what_nobody_understood_stand_in_the_draft() -> None:
    text = "cream 200 g\nfrumious bandersnatch of the third kind indeed\n"
    note = read_note(text)
    files = texts_of(note, draft_of(note), "UTC", None)
    (dessert,) = (one for name, one in files.items() if "desserts" in name)

    assert "as received: cream 200 g" in dessert
    assert "not understood, line 2: frumious bandersnatch" in dessert


@settings(max_examples=60)
@given(st.lists(WORDS, max_size=30).map(" ".join))
def test_any_note_that_names_an_ingredient_drafts_a_dessert_that_can_be_read(
    text: str,
) -> None:
    note = read_note(text)
    if not any(part.lines for part in note.parts):
        return
    texts = texts_of(note, draft_of(note), "UTC", None)
    _, problems = folder_of(texts, NOW)

    assert problems == (), [str(one) for one in problems]
    (dessert,) = (one for name, one in texts.items() if "desserts" in name)
    for row in text.splitlines():
        assert one_line(row) in dessert


@pytest.mark.parametrize("kind", sorted({row["kind"] for row in rows("starts")}))
def test_every_kind_has_what_a_component_needs(kind: str) -> None:
    assert {"role", "density", "lost"} <= set(start(kind))
    assert start(kind)["role"] in {
        "filler",
        "centre",
        "base",
        "dip",
        "glaze",
        "spray",
        "plate",
    }


def test_a_kind_nobody_knows_starts_as_any_component() -> None:
    assert start("zorbl") == start("component")
    assert usual_steps("zorbl") == usual_steps("component")


@pytest.mark.parametrize(
    ("text", "kind"),
    [
        ("cream 400\nwhite chocolate 190\ngelatin 4", "whipped ganache"),
        ("cream 400\ndark chocolate 190", "chocolate mousse"),
        ("cream 400\nyolks 60\ngelatin 4", "bavarois"),
        ("yoghurt 180\ncream 210\ngelatin 5", "fruit mousse"),
        ("raspberry puree 300\npectin NH 5", "pectin centre"),
        ("flour 100\negg 150\nsugar 100", "sponge"),
        ("cocoa butter 270\nwhite couverture 330", "thin dip"),
        ("water 100", ""),
    ],
)
def test_a_part_without_a_name_is_known_by_what_is_in_it(text: str, kind: str) -> None:
    (part,) = read_note(text).parts

    assert kind_of(part) == kind


def test_shares_become_grams_of_the_batch() -> None:
    note = read_note("Velvet spray\ncocoa butter 60%\nwhite couverture 40%")
    files = texts_of(note, draft_of(note), "UTC", None)
    (dessert,) = (one for name, one in files.items() if "desserts" in name)

    assert "600 g  cocoa butter; written 60 %" in dessert


def test_a_share_beside_grams_is_of_those_grams() -> None:
    """1.5 % of 300 g of juice and 100 g of sugar are 6 g."""
    note = read_note("Jelly: orange juice 300 g, sugar 100 g, gelatin 1.5 %")
    files = texts_of(note, draft_of(note), "UTC", None)
    (dessert,) = (one for name, one in files.items() if "desserts" in name)

    assert "6 g    gelatin; written 1.5 %" in dessert


def test_a_note_without_an_ingredient_drafts_nothing() -> None:
    with pytest.raises(ValueError, match="the note names no ingredient"):
        draft_of(read_note("Jonne please lock the door"))
