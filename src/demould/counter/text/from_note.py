"""The files of a kitchen that a note alone makes, and the folder they are read into."""

from collections.abc import Mapping
from dataclasses import dataclass
from datetime import datetime

from demould.advice.gaps.gap import Gap
from demould.advice.gaps.questions import answered
from demould.counter.text.read_folder import (
    DESSERTS,
    KITCHEN,
    LARDER,
    ORDERS,
    in_order,
    read_trees,
)
from demould.counter.text.read_tree import read_tree
from demould.mise.faults import Faults
from demould.mise.folder import Folder
from demould.mise.note.draft import Draft
from demould.mise.note.draft_kitchen import draft_kitchen, draft_larder, draft_orders
from demould.mise.note.noted import Note
from demould.mise.problem import Problem
from demould.mise.render import render
from demould.mise.tree import Branch

Texts = Mapping[str, str]


@dataclass(frozen=True, slots=True, kw_only=True)
class Wanted:
    """So many pieces at that moment."""

    pieces: int
    due: datetime


def texts_of(note: Note, draft: Draft, zone: str, wanted: Wanted | None) -> Texts:
    """Every file of the draft, by its name inside a kitchen folder."""
    larder = draft_larder(draft.unknown)
    texts = {
        KITCHEN: render(draft_kitchen(zone, note.mould)),
        f"{DESSERTS}/{draft.key}.yaml": render(draft.tree),
    }
    if larder is not None:
        texts[LARDER] = render(larder)
    if wanted is not None:
        texts[ORDERS] = render(draft_orders(draft.key, wanted.pieces, wanted.due))
    return texts


def folder_of(texts: Texts, now: datetime) -> tuple[Folder | None, tuple[Problem, ...]]:
    """Read the files as those of any kitchen."""
    trees: dict[str, Branch] = {}
    problems: list[Problem] = []
    faults = Faults()
    for file, text in texts.items():
        tree, found = read_tree(text, file)
        problems.extend(found)
        if tree is not None:
            trees[file] = tree
    folder = read_trees(trees, now, faults, texts)
    return folder, in_order((*problems, *faults.found))


def with_answer(texts: Texts, gap: Gap, answer: str) -> Texts:
    """The files with one answer written in, on every line that it concerns.

    Raises
    ------
    UnreadableError
        If it has no place there.
    """
    changed = dict(texts)
    for line in sorted(gap.lines, key=lambda one: -one.number):
        rows = changed[line.file].split("\n")
        row = rows[line.number - 1]
        told = answered(gap, row, answer)
        if told is None:
            rows = _without(rows, gap, line.number - 1)
        else:
            rows[line.number - 1] = told
        changed[line.file] = "\n".join(rows)
    return changed


def _without(rows: list[str], gap: Gap, place: int) -> list[str]:
    """Take out the line that a settled gap stood on."""
    called = gap.key.removeprefix("called for: ")
    if gap.kind == "called for":
        opening = rows.index("called for: |")
        place = next(
            at for at, row in enumerate(rows) if at > opening and row.strip() == called
        )
        alone = rows[place - 1] == "called for: |" and not rows[place + 1].startswith(
            " "
        )
        return [*rows[: place - alone], *rows[place + 1 :]]
    return [*rows[:place], *rows[place + 1 :]]
