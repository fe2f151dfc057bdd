"""The body of a clause, read from left to right: amounts find their ingredients."""

from collections.abc import Iterator, Sequence
from dataclasses import replace
from decimal import Decimal

from demould.mise.note.building import OpenLine, id_of
from demould.mise.note.done import is_heat, is_temperature, take_step, take_when
from demould.mise.note.eaten import (
    open_unknown,
    take_ingredient,
    take_leaves,
    take_squeezed,
)
from demould.mise.note.place import AMOUNTS, SMALL, Reading, Segment
from demould.mise.note.tags import Tag
from demould.mise.note.weighed import split_in_brackets, take_amount, take_total

HUNDRED = 100
_BY_ONE = frozenset({"pinch", "spoon", "teaspoon", "cup", "drop"})
_APART = ("comma", "plus")


def read_body(tags: Sequence[Tag], now: Reading) -> None:
    """Read a clause without its opening into lines and steps of the open part."""
    now.step, now.splitting, now.busy, now.last = None, None, False, None
    found = _segments(tags)
    for place, (between, inside) in enumerate(found):
        if _first_of_sum(found, place):
            now.before.extend(inside)
            continue
        segment = Segment(tags=inside, now=now, between=between)
        if between is not None:
            now.use(between, "joining")
            if between.kind == "comma" and not (inside and inside[0].kind in AMOUNTS):
                now.splitting = None
        take_total(segment)
        _walk(segment)
        _close(segment)


def _segments(tags: Sequence[Tag]) -> list[tuple[Tag | None, list[Tag]]]:
    """Cut at commas and plus signs outside brackets, each with the mark before it."""
    found: list[tuple[Tag | None, list[Tag]]] = [(None, [])]
    depth = 0
    for tag in tags:
        if tag.kind == "open":
            depth += 1
        elif tag.kind == "close":
            depth = max(0, depth - 1)
        if tag.kind in _APART and depth == 0:
            found.append((tag, []))
        else:
            found[-1][1].append(tag)
    return found


def _first_of_sum(found: Sequence[tuple[Tag | None, list[Tag]]], place: int) -> bool:
    """The 60 of ``60 + 40 sugar``: it waits for what stands behind the other."""
    inside = found[place][1]
    behind = found[place + 1 : place + 2]
    return (
        len(inside) == 1
        and inside[0].kind in AMOUNTS
        and bool(behind)
        and behind[0][0] is not None
        and behind[0][0].kind == "plus"
        and bool(behind[0][1])
        and behind[0][1][0].kind in AMOUNTS
        and any(tag.kind == "ingredient" for tag in behind[0][1])
    )


def _walk(segment: Segment) -> None:
    place = 0
    while place < len(segment.tags):
        tag = segment.tags[place]
        place += 1 if tag.start in segment.done else _take(segment, tag, place)


def _take(segment: Segment, tag: Tag, place: int) -> int:
    """Put one tag where it belongs; how many it takes with it."""
    match tag.kind:
        case "open":
            return _brackets(segment, place)
        case "bare" if is_temperature(segment, tag, place) or is_heat(
            segment, tag, place
        ):
            take_when(segment, tag, place)
        case "amount" | "percent" | "bare":
            take_amount(segment, tag, place)
        case "each":
            segment.each = list(_one_each(tag))
            segment.now.use(tag, "amount")
        case "ingredient":
            if segment.each:
                segment.pending = segment.each.pop(0)
            take_ingredient(segment, tag)
        case "juice" if taken := take_squeezed(segment, place):
            return taken
        case "state":
            _state(segment, tag)
        case "step":
            take_step(segment, tag)
        case "temp" | "minutes" | "while":
            take_when(segment, tag, place)
        case "split":
            segment.now.splitting = segment.here or segment.now.last
            segment.now.split_begun = False
            segment.now.use(tag, "amount")
        case "unit" if tag.may_be("unit") == "leaf":
            take_leaves(segment, tag)
        case "unit" if tag.may_be("unit") in _BY_ONE:
            _one_alone(segment, tag, place)
        case "mould" if name := _mould_name(segment, place):
            segment.now.mould.append(name)
            for word in (name, tag):
                segment.now.use(word, "mould")
                segment.done.add(word.start)
        case kind if kind in SMALL:
            segment.now.use(tag, "joining")
        case _:
            _word(segment, tag)
    return 1


def _one_of(tag: Tag) -> Tag:
    """``a`` pinch, where only the pinch is written."""
    one = Decimal(1)
    return replace(
        tag, kind="amount", low=one, high=one, unit=tag.may_be("unit") or "pieces"
    )


def _one_alone(segment: Segment, tag: Tag, place: int) -> None:
    """``pinch salt``, ``salt: pinch``: one of them, before or behind what it is of."""
    line = segment.here or segment.now.last
    if segment.pending is None and segment.ingredient_follows(place):
        segment.pending = _one_of(tag)
        segment.now.use(tag, "amount")
    elif line is not None and line.low is None and not line.mentioned:
        take_amount(segment, _one_of(tag), place)
    else:
        _word(segment, tag)


def _one_each(tag: Tag) -> Iterator[Tag]:
    """The amounts of ``50/50``: shares where they make a hundred."""
    shares = sum(tag.each) == HUNDRED
    for value in tag.each:
        kind, unit = ("percent", "%") if shares else ("bare", "")
        yield replace(tag, kind=kind, unit=unit, low=value, high=value, each=())


def _mould_name(segment: Segment, place: int) -> Tag | None:
    """What a mould is called: the word before it (``pebble mould``) or behind."""
    before = segment.tags[place - 1 : place] if place else []
    for other in (*before, *segment.tags[place + 1 : place + 2]):
        if other.kind in ("unknown", "piece") and other.start not in segment.done:
            return other
    return None


def _brackets(segment: Segment, place: int) -> int:
    """``(60 + 30 with the pectin)``, ``(400 ml)``, ``(45)``, ``(in dice)``."""
    tags = segment.tags
    end = next(
        (at for at in range(place + 1, len(tags)) if tags[at].kind == "close"),
        len(tags),
    )
    for tag in (tags[place], *tags[end : end + 1]):
        segment.now.use(tag, "joining")
    inside = [tag for tag in tags[place + 1 : end] if tag.kind != "open"]
    numbers = [tag for tag in inside if tag.kind in AMOUNTS]
    line = segment.here or segment.now.last
    if split_in_brackets(segment, inside):
        return end - place + 1
    if line is not None and _beside(line, inside, tags[end:]):
        for tag in inside:
            segment.now.use(tag, "remark")
        line.remarks.extend(inside)
        return end - place + 1
    if len(numbers) == 1 and line is not None and line.unit == "tin":
        line.take(numbers[0])
        segment.now.use(numbers[0], "amount")
        segment.done.add(numbers[0].start)
    segment.tags, segment.bracketed = inside, True
    _walk(segment)
    segment.tags, segment.bracketed = tags, False
    return end - place + 1


def _beside(line: OpenLine, inside: Sequence[Tag], behind: Sequence[Tag]) -> bool:
    """Brackets that give no amount: ``cream (1) 200 g``, ``500 g (about 4 apples)``."""
    if line.low is None:
        only = len(inside) == 1 and inside[0].kind == "bare"
        return only and any(tag.kind == "amount" for tag in behind)
    named = {tag.may_be("ingredient") for tag in inside if tag.kind == "ingredient"}
    return bool(named) and any(id_of(one or "") == id_of(line.what) for one in named)


def _state(segment: Segment, tag: Tag) -> None:
    line = segment.here or (segment.now.last if not segment.steps else None)
    if line is None:
        _word(segment, tag)
        return
    line.states.append(tag)
    segment.now.use(tag, "state")


def _word(segment: Segment, tag: Tag) -> None:
    """A word with no place of its own: part of a step, a part called for, a remark."""
    if tag.kind == "part" and segment.busy:
        segment.now.called.append(tag)
        segment.now.use(tag, "call")
    elif segment.steps:
        segment.now.use(tag, "step")
    else:
        segment.remark(tag)


def _close(segment: Segment) -> None:
    """What is left when the segment ends: an amount of nothing, a name alone."""
    now = segment.now
    listed = any(line.low is not None for line in segment.opened)
    now.busy = now.busy or (bool(segment.steps) and not listed)
    if segment.pending is not None:
        segment.remark(segment.pending)
    name = segment.unknown_name
    alone = segment.here is None and not segment.doing and segment.between is not None
    if name and alone and now.part.lines and len(name) == len(segment.words):
        open_unknown(segment, name)
