"""A draft dessert from a note, in the house format: what is said, and what is assumed."""

import re
from collections.abc import Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass

from demould.larder.starts import start
from demould.mise.figure import Assumed, Figure
from demould.mise.note.draft_line import formula_lines
from demould.mise.note.draft_steps import piece_steps, steps_of
from demould.mise.note.kinds import kind_of
from demould.mise.note.noted import Note, NotedPart
from demould.mise.note.one_line import one_line
from demould.mise.number import written
from demould.mise.tree import Branch, Node
from demould.mise.write_tree import block, branch

MOULD = "piece"
INSERT_MOULD = "insert"
BASE = "disc 45 x 5 mm"
"""A base whose size nobody said; it goes into nearly any individual mould."""

_DIPPED = (
    "dipped; film 0.8 mm (assumed 0.6 to 1); clearance 15 mm (assumed 10 to 20);"
    " heel 10 g (assumed 5 to 20)"
)
_POURED = "poured 2.5 times (assumed 2 to 3); film 1.8 mm (assumed 1 to 2)"
_SPRAYED = "sprayed; film 0.1 mm (assumed 0.05 to 0.2); 50 % lands (assumed 40 to 60)"
_FINISHES = {"dip": _DIPPED, "glaze": _POURED, "spray": _SPRAYED}
_ON_PLATE = "15 g (assumed 10 to 25)"


@dataclass(frozen=True, slots=True, kw_only=True)
class Drafted:
    """A part with its key in the file, its kind and the role it plays in the piece."""

    key: str
    kind: str
    role: str
    part: NotedPart


@dataclass(frozen=True, slots=True, kw_only=True)
class Draft:
    """A dessert's file as a tree, its key, and the names it takes from a larder.

    `unknown` are names of ingredients that nobody knows, as they stand in the note.
    """

    key: str
    tree: Branch
    unknown: tuple[str, ...]
    roles: Mapping[str, str]


def draft_of(note: Note, key: str = "") -> Draft:
    """Draft the dessert that a note tells of.

    Whatever the note does not say is taken from what is usual and marked ``(assumed LOW
    to HIGH)``. Words nobody understood stand under ``notes``, and the note as it was.

    Raises
    ------
    ValueError
        If the note names no ingredient: there is nothing to draft.
    """
    parts = _drafted(note)
    if not parts:
        raise ValueError("the note names no ingredient")
    filler = _filler(parts)
    items: list[tuple[str, str | Node | None]] = [
        ("dessert", _called(note.title)),
        ("written for", _written_for(note.pieces)),
        ("mould", note.mould or MOULD),
        ("filled, upside down", block(_layers(parts, filler))),
        ("finish", block(_finishes(parts))),
        ("plate", block(_plate(parts))),
        ("called for", block(note.calls)),
    ]
    items.extend((f"component {one.key}", _component(one)) for one in parts)
    calls = (*note.calls, *(one.role for one in parts))
    items += [
        ("method", block(piece_steps(note, _needs(parts), calls, filler.kind))),
        ("notes", block((*_kept(note), *_received(note)))),
    ]
    unknown = {
        line.what: None
        for one in parts
        for line in one.part.lines
        if line.ingredient is None
    }
    return Draft(
        key=key or _key_of(one_line(note.title) or "from a note", ()),
        tree=branch(items),
        unknown=tuple(map(one_line, unknown)),
        roles={one.key: one.role for one in parts},
    )


def _drafted(note: Note) -> list[Drafted]:
    found: list[Drafted] = []
    for part in note.parts:
        if not part.lines:
            continue
        kind = kind_of(part)
        role = start(kind)["role"]
        taken = [one.key for one in found]
        name = _short(part, kind) or role
        found.append(Drafted(key=_key_of(name, taken), kind=kind, role=role, part=part))
    return found


def _short(part: NotedPart, kind: str) -> str:
    """The last word of a part's name that says what it is, or its whole name."""
    words = one_line(part.name).casefold().split()
    return words[-1] if len(words) == 1 else " ".join(words) or kind


def _filler(parts: Sequence[Drafted]) -> Drafted:
    """The part that fills what the others leave: the first one that can."""
    fills = [one for one in parts if one.role == "filler"]
    inside = [one for one in parts if one.role in ("centre", "base")]
    return next(iter((*fills, *inside, *parts)))


def _needs(parts: Sequence[Drafted]) -> dict[str, list[str]]:
    """Which parts each step of the whole piece needs."""
    found: dict[str, list[str]] = {}
    for one in parts:
        step = one.role if one.role in (*_FINISHES, "plate") else "fill"
        found.setdefault(step, []).append(one.key)
    return found


def _layers(parts: Sequence[Drafted], filler: Drafted) -> Iterator[str]:
    centres = [
        one for one in parts if one is not filler and one.role in ("centre", "filler")
    ]
    bases = [one for one in parts if one is not filler and one.role == "base"]
    if centres:
        yield f"{filler.key}; half"
    for one in centres:
        yield f"{one.key}; from the {INSERT_MOULD} mould"
    yield f"{filler.key}; the rest"
    for one in bases:
        yield f"{one.key}; {BASE}; flush"


def _finishes(parts: Iterable[Drafted]) -> Iterator[str]:
    for one in parts:
        if one.role in _FINISHES:
            yield f"{one.key}; {_FINISHES[one.role]}"


def _plate(parts: Iterable[Drafted]) -> Iterator[str]:
    for one in parts:
        if one.role == "plate":
            yield f"{one.key}; {_ON_PLATE}"


def _component(one: Drafted) -> Branch:
    usual = start(one.kind)
    items: list[tuple[str, str | Node | None]] = [
        ("name", one_line(one.part.name)),
        ("kind", one.kind),
        ("formula", block(formula_lines(one.part))),
        ("in all", f"{written(one.part.total.value)} g" if one.part.total else ""),
    ]
    items += [
        (key, usual.get(key, ""))
        for key in ("density", "whipped", "cooked away", "lost", "made")
    ]
    items.append(("method", block(steps_of(one.part, one.kind))))
    return branch(items)


def _called(title: str) -> str:
    """The dessert's name; one shouted in capitals is said quietly."""
    name = one_line(title) or "From a note"
    return name.capitalize() if name.isupper() else name


def _written_for(pieces: Figure | None) -> str:
    if pieces is None:
        return ""
    if isinstance(pieces.origin, Assumed):
        low, high = written(pieces.origin.low), written(pieces.origin.high)
        return f"{low} to {high} pieces"
    return f"about {written(pieces.value)} pieces"


def _kept(note: Note) -> Iterator[str]:
    """What nobody understood, each remark with the line it stands on."""
    with_lines = {
        remark for part in note.parts for line in part.lines for remark in line.remarks
    }
    for one in note.stretches:
        if one.use == "remark" and one.text not in with_lines:
            for row in one.text.splitlines():
                if bare := one_line(row):
                    yield f"not understood, line {one.line}: {bare}"


def _received(note: Note) -> Iterator[str]:
    for row in note.text.splitlines():
        if bare := one_line(row):
            yield f"as received: {bare}"


def _key_of(name: str, taken: Iterable[str]) -> str:
    """A key for a name: its letters and figures; another number where it is taken."""
    bare = "-".join(re.findall(r"[^\W_]+", name.casefold()))[:40].strip("-") or "part"
    seen = set(taken)
    number = 1
    key = bare
    while key in seen:
        number += 1
        key = f"{bare}-{number}"
    return key
