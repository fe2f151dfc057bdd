"""From the text of a note to its draft, its gaps and the questions, answers written in."""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from datetime import datetime

import click

from demould.advice.gaps.gap import Gap
from demould.advice.gaps.questions import Question, questions_of
from demould.advice.gaps.ranked import gaps_of
from demould.amounts.counts.counts import Counts, counts
from demould.counter.text.from_note import Wanted, folder_of, texts_of, with_answer
from demould.mise.find import find_in
from demould.mise.folder import Folder
from demould.mise.note.draft import draft_of
from demould.mise.note.noted import Note
from demould.mise.note.read_note import MOST_CHARACTERS, read_note
from demould.mise.problem import Problem, UnreadableError
from demould.mise.words import Words
from demould.week.faults import misfits_of


@dataclass(frozen=True, slots=True, kw_only=True)
class Found:
    """What a note gives: its files, its folder, what it does not say.

    `said` is what is to be told once, whatever else is printed.
    """

    note: Note
    texts: dict[str, str]
    draft_text: str
    folder: Folder | None
    problems: tuple[Problem, ...]
    counts: Counts | None
    gaps: tuple[Gap, ...]
    questions: tuple[Question, ...]
    said: tuple[Words, ...]


def drafted(
    text: str,
    file: str,
    zone: str,
    now: datetime,
    wanted: Wanted | None,
    answers: Mapping[int, str],
) -> Found:
    """Read, draft and ask; answers are to the questions of the note without any."""
    note = read_note(text, file)
    said = list(_said(note))
    try:
        draft = draft_of(note)
    except ValueError:
        wrong = Words("no ingredient is named in it")
        remedy = Words("Write one ingredient a line, with its amount: 280 g cream")
        return _nothing(note, (Problem(file, 0, 0, wrong, remedy),), said)
    texts = dict(texts_of(note, draft, zone, wanted))
    folder, problems = _read(texts, now)
    if folder is not None and answers:
        asked = {one.number: one.gap for one in questions_of(_gaps(folder))}
        texts = dict(_answered(texts, asked, answers))
        folder, problems = _read(texts, now)
    draft_text = texts[f"desserts/{draft.key}.yaml"]
    if folder is None or problems:
        return _nothing(note, problems, said)
    gaps = _gaps(folder)
    if wanted is not None:
        gaps = _with_freezing(gaps, folder)
    return Found(
        note=note,
        texts=texts,
        draft_text=draft_text,
        folder=folder,
        problems=(),
        counts=_counts(folder),
        gaps=gaps,
        questions=questions_of(gaps),
        said=tuple(said),
    )


def _read(
    texts: Mapping[str, str], now: datetime
) -> tuple[Folder | None, tuple[Problem, ...]]:
    folder, problems = folder_of(texts, now)
    if folder is not None and not problems:
        problems = misfits_of(folder, now)
    return folder, problems


def _nothing(note: Note, problems: tuple[Problem, ...], said: Sequence[Words]) -> Found:
    return Found(
        note=note,
        texts={},
        draft_text="",
        folder=None,
        problems=problems,
        counts=None,
        gaps=(),
        questions=(),
        said=tuple(said),
    )


def _said(note: Note) -> list[Words]:
    if len(note.text) <= MOST_CHARACTERS:
        return []
    return [
        Words(
            "the note is longer than any: what is behind its first {n} letters is kept"
            " and not read",
            n=MOST_CHARACTERS,
        )
    ]


def _gaps(folder: Folder) -> tuple[Gap, ...]:
    return gaps_of(
        folder.desserts[0], folder.kitchen, find_in(folder.larder), folder.larder
    )


def _with_freezing(gaps: tuple[Gap, ...], folder: Folder) -> tuple[Gap, ...]:
    from demould.advice.gaps.freezing import with_freezing  # compiled, so only here

    dessert, kitchen = folder.desserts[0], folder.kitchen
    return with_freezing(gaps, dessert, kitchen, find_in(folder.larder))


def _counts(folder: Folder) -> Counts | None:
    try:
        return counts(folder.desserts[0], folder.kitchen, find_in(folder.larder))
    except ValueError:
        return None


def _answered(
    texts: Mapping[str, str], asked: Mapping[int, Gap], answers: Mapping[int, str]
) -> Mapping[str, str]:
    """All answers; those that take a line out come last: lines keep their place."""
    last = {number for number, gap in asked.items() if gap.kind in _TAKE_OUT}
    for number in sorted(answers, key=lambda one: one in last):
        if number not in asked:
            raise click.BadParameter(
                f"there is no question {number}; there are {len(asked)}.",
                param_hint="--answer",
            )
        try:
            texts = with_answer(texts, asked[number], answers[number])
        except UnreadableError as fault:
            raise click.BadParameter(
                f"{fault.wrong}. {fault.remedy}.", param_hint="--answer"
            ) from None
    return texts


_TAKE_OUT = ("called for", "total")
