"""A note in clauses: where a part begins, what the note makes, what is only a title."""

from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass, field, replace
from itertools import zip_longest

from demould.mise.note.tags import Tag

AMOUNTS = ("amount", "percent", "bare")
_QUIET = ("join", "about", "mark", "dash", "at", "open", "close", "one")
ANY_PART = "component"
"""What a word like "filling" means: a part, of no kind that there are bands for."""

LONG = 120
"""Speech without a mark is cut before the next amount after so many words ..."""

LONGEST = 240
"""... and after so many in any case."""

YEARS = 1900
"""A number alone from here on, on a first line, is a year."""

LONGEST_NAME = 8
"""More words than this before a colon are no name of a part."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Clause:
    """What stands between two ends of a line or a sentence."""

    tags: tuple[Tag, ...]
    opens_line: bool
    closes_line: bool
    line: int


@dataclass(slots=True, kw_only=True)
class Opening:
    """What a clause begins with: a part's name, a title, how many it makes."""

    name: tuple[Tag, ...] = ()
    kind: str = ""
    title: tuple[Tag, ...] = ()
    makes: tuple[Tag, ...] = ()
    rest: tuple[Tag, ...] = field(default=())


def clauses_of(tags: Iterable[Tag]) -> Iterator[Clause]:
    """Cut at line ends, full stops and semicolons; bullets are left out."""
    here: list[Tag] = []
    number, opens = 1, True
    given = list(tags)
    for place, tag in enumerate(given):
        if tag.kind not in ("line", "stop"):
            if len(here) >= (LONG if tag.kind in AMOUNTS else LONGEST):
                yield Clause(
                    tags=tuple(here), opens_line=opens, closes_line=False, line=number
                )
                here, opens = [], False
            here.append(tag)
            continue
        if here:
            yield Clause(
                tags=tuple(here),
                opens_line=opens,
                closes_line=tag.kind == "line"
                or all(one.kind == "line" for one in given[place + 1 : place + 2]),
                line=number,
            )
            opens = False
        here = []
        if tag.kind == "line":
            number, opens = number + 1, True
    if here:
        yield Clause(tags=tuple(here), opens_line=opens, closes_line=True, line=number)


def opening_of(clause: Clause, *, first: bool, heads: bool) -> Opening:
    """What a clause opens; its `rest` is what is left to be read.

    Parameters
    ----------
    clause
        The clause.
    first
        Whether it is the first of the note.
    heads
        Whether a clause with amounts follows it.
    """
    tags = clause.tags
    makes = tuple(_makes(tags, whole=clause.closes_line or first, first=first))
    bare = _without(tags, makes)
    if colon := _colon(bare):
        name, rest = bare[:colon], bare[colon + 1 :]
        name = _name(name) if _kind(name) else name
        return Opening(name=name, kind=_kind(name), makes=makes, rest=rest)
    if spoken := _spoken(bare):
        start, end = spoken
        name = bare[start:end]
        return Opening(name=name, kind=_kind(name), makes=makes, rest=bare[end:])
    if first and clause.closes_line and (outside := _before_brackets(bare)):
        bare = outside
    words = [tag for tag in bare if tag.kind not in _QUIET]
    if first and makes and words and _no_formula(bare):
        return _named(bare, makes)
    if any(tag.kind in AMOUNTS for tag in bare) or not words:
        return Opening(makes=makes, rest=bare)
    alone = clause.opens_line and (clause.closes_line or first) and heads
    if alone and _kind(bare) and not _begins_with_step(words):
        return Opening(name=_name(bare), kind=_kind(bare), makes=makes, rest=())
    told = {tag.kind for tag in words}
    if first and (makes or alone) and not told & {"step", "minutes", "temp"}:
        return Opening(title=bare, makes=makes, rest=())
    return Opening(makes=makes, rest=bare)


def _before_brackets(tags: tuple[Tag, ...]) -> tuple[Tag, ...]:
    """What a first line says before its brackets, where that is no formula."""
    place = next((at for at, tag in enumerate(tags) if tag.kind == "open"), 0)
    outside = tags[:place]
    named = bool(_kind(outside)) and _no_formula(outside)
    return outside if named and not _ingredients(outside[:1]) else ()


def _no_formula(tags: Sequence[Tag]) -> bool:
    """Whether it has no amount of anything, a year at most, and nothing to be done."""
    told = {tag.kind for tag in tags}
    counts = [
        tag.low is not None and (tag.low > YEARS or behind.may_be("piece") is not None)
        for tag, behind in zip_longest(tags, tags[1:], fillvalue=tags[-1])
        if tag.kind == "bare"
    ]
    return all(counts) and not told & {"amount", "percent", "step", "minutes", "temp"}


def _named(tags: tuple[Tag, ...], makes: tuple[Tag, ...]) -> Opening:
    """A first line that says what is made: a part's name or only a title."""
    if _kind(tags):
        return Opening(name=_name(tags), kind=_kind(tags), makes=makes)
    return Opening(title=tags, makes=makes)


def _begins_with_step(words: Sequence[Tag]) -> bool:
    return words[0].kind == "step" and words[0].may_be("part") is None


def _without(tags: Sequence[Tag], taken: Sequence[Tag]) -> tuple[Tag, ...]:
    left = [tag for tag in tags if tag not in taken]
    while left and left[0].kind in ("dash", "mark"):
        left.pop(0)
    return tuple(left)


def _makes(tags: Sequence[Tag], *, whole: bool, first: bool) -> list[Tag]:
    """``makes about 20``, ``x 12``, ``pour 16 pers.``, ``30 domes``: those tags, or none."""
    for place, tag in enumerate(tags):
        if tag.kind != "bare" or tag.low is None or tag.low != int(tag.low):
            continue
        before = [one for one in tags[:place] if not one.may_be("about")][-1:]
        after = tags[place + 1 : place + 2]
        counts = bool(after) and after[0].may_be("piece") is not None
        last = place + 1 == len(tags) or tags[place + 1].kind in (
            "comma",
            "mark",
            "close",
        )
        told = bool(before) and before[0].may_be("makes") is not None
        if told and not before[0].may_be("join") and (counts or last):
            start = tags.index(before[0])
            return [*tags[start : place + 1], *(after if counts else ())]
        times = bool(before) and (before[0].plain == "x" or before[0].kind == "times")
        if whole and times and last:
            return [before[0], tag]
        alone = last and whole and place <= LONGEST_NAME and not _ingredients(tags)
        if told and (counts or alone):
            start = tags.index(before[0])
            return [*tags[start : place + 1], *(after if counts else ())]
        if told and first and _what_of_them(tags, place):
            return list(tags[tags.index(before[0]) : place + 2])
        if counts and not _steps(tags[:place]):
            return [tag, after[0]]
        if whole and _how_many_of(tags, place):
            return list(tags[place : place + 2])
    return []


def _what_of_them(tags: Sequence[Tag], place: int) -> bool:
    """``(per 10 cupole)`` on a first line: whatever they are, it is so many of them."""
    behind = tags[place + 1 : place + 2]
    listed = any(tag.kind in ("amount", "percent", "colon") for tag in tags)
    return bool(behind) and behind[0].kind == "unknown" and not listed


def _how_many_of(tags: Sequence[Tag], place: int) -> bool:
    """``domes - 12`` and ``domes, 12 of`` at the end of a line."""
    behind = tags[place + 1 :]
    ends = not behind or (len(behind) == 1 and behind[0].kind == "join")
    return ends and any(tag.may_be("piece") is not None for tag in tags[:place])


def _ingredients(tags: Iterable[Tag]) -> bool:
    return any(tag.kind == "ingredient" for tag in tags)


def _steps(tags: Iterable[Tag]) -> bool:
    return any(tag.kind == "step" for tag in tags)


def _colon(tags: Sequence[Tag]) -> int:
    """Where the colon stands that ends a part's name; 0 where none does."""
    for place, tag in enumerate(tags[: LONGEST_NAME + 2]):
        counted = tag.kind == "bare" and bool(_kind(tags[:place]))
        if (tag.kind in AMOUNTS and not counted) or tag.kind in ("comma", "open"):
            return 0
        if tag.kind not in ("colon", "dash") or place == 0:
            continue
        name, rest = tags[:place], tags[place + 1 :]
        if not any(one.words or one.kind == "unknown" for one in name):
            return 0
        if tag.kind == "dash" and not _kind(name):
            return 0
        only_amount = bool(rest) and not any(
            one.kind not in (*AMOUNTS, *_QUIET, "unit", "state") for one in rest
        )
        if any(one.kind == "ingredient" for one in name) and only_amount:
            return 0
        return place
    return 0


def _spoken(tags: Sequence[Tag]) -> tuple[int, int] | None:
    """``for the raspberry centre it is 300 g ...``: from where to where the name goes."""
    start = 0
    while start < len(tags) and tags[start].kind in (
        "join",
        "mark",
        "about",
        "at",
        "makes",
    ):
        start += 1
    for place in range(start, min(start + 4, len(tags))):
        tag = tags[place]
        if tag.may_be("part") and tag.kind in ("part", "step"):
            after = tags[place + 1 : place + 2]
            amounts = any(one.kind in AMOUNTS for one in tags[place + 1 :])
            led = bool(after) and after[0].kind in (*AMOUNTS, "join", "at", "one")
            plain_part = tag.kind == "part" or place > start
            if amounts and led and plain_part and _ingredients(tags[place + 1 :]):
                return start, place + 1
            return None
        if tag.kind not in ("ingredient", "unknown", "state", "join"):
            return None
    return None


def _kind(tags: Iterable[Tag]) -> str:
    """The kind of component that a name tells of; the last word that does."""
    kinds = [tag.may_be("part") for tag in tags]
    told = [kind for kind in reversed(kinds) if kind]
    return next((kind for kind in told if kind != ANY_PART), told[0] if told else "")


def _name(tags: Sequence[Tag]) -> tuple[Tag, ...]:
    """A name up to the first mark or small word behind its kind (``for 4 trays``)."""
    last = max(place for place, tag in enumerate(tags) if tag.may_be("part"))
    end = last + 1
    while end < len(tags) and tags[end].kind not in ("comma", "open", "bare"):
        end += 1
    found = [replace(tag) for tag in tags[:end]]
    while found and found[-1].kind in _QUIET:
        found.pop()
    return tuple(found)
