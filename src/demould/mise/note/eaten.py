"""Ingredients of a segment: each opens a line, and takes the amount that waits for it."""

from decimal import Decimal

from demould.mise.note.building import OpenLine, once_more, refined
from demould.mise.note.place import SMALL, Segment, refer
from demould.mise.note.tags import Tag

_FRUIT = frozenset({"lemon", "lime", "orange"})
_SQUEEZED = (" juice", " zest")


def take_ingredient(segment: Segment, tag: Tag) -> None:
    """Open a line for an ingredient; behind a split it only says what goes with it."""
    splitting = segment.now.splitting
    if splitting is not None and segment.pending is None and splitting.low is not None:
        segment.remark(tag)
        return
    open_line(segment, tag.may_be("ingredient") or tag.plain, tag)


def open_line(segment: Segment, what: str, tag: Tag) -> OpenLine:
    """Open a line; where something is being done, it may be only spoken of."""
    now = segment.now
    line = OpenLine(
        what=what,
        written=[tag],
        guessed=tag.guessed,
        counts=what.endswith(_SQUEEZED),
        number=now.number,
    )
    if segment.pending is not None:
        waiting, segment.pending = segment.pending, None
        if waiting.kind != "percent" or not refine(segment, line, waiting):
            line.take(waiting)
    elif segment.busy or any(one.kind == "step" for one in segment.tags):
        line.mentioned = True
        step = segment.steps[-1] if segment.steps else now.step
        line.steeped = step is not None and step.action == "steep"
    now.splitting = None
    for first in now.before:
        _part_of_sum(segment, line, first)
    now.before.clear()
    refer(segment, line)
    now.use(tag, "ingredient")
    return line


def _part_of_sum(segment: Segment, line: OpenLine, amount: Tag) -> None:
    """The 60 of ``60 + 40 sugar`` is a line of its own, before the other."""
    other = once_more(line, segment.now.number)
    other.take(amount)
    segment.now.use(amount, "amount")
    segment.now.part.lines.append(other)


def open_unknown(segment: Segment, name: list[Tag]) -> None:
    """Open a line for what nobody knows, by the words of the note."""
    line = OpenLine(
        what=" ".join(tag.plain for tag in name),
        written=name,
        unknown=True,
        number=segment.now.number,
    )
    if segment.pending is not None:
        line.take(segment.pending)
        segment.pending = None
    for tag in name:
        segment.now.use(tag, "ingredient")
    refer(segment, line)


def take_leaves(segment: Segment, tag: Tag) -> None:
    """``leaves 5``, or ``4 gelatin sheets``."""
    here = segment.here
    if here is None or here.what != "gelatin" or here.unit not in ("", "g"):
        open_line(segment, "gelatin", tag)
        return
    here.written.append(tag)
    here.unit = "leaf" if here.no_unit else here.unit
    segment.now.use(tag, "amount")


def take_squeezed(segment: Segment, place: int) -> int:
    """``juice of 1 lemon``, ``le jus d'un citron``: how many tags it takes, or 0."""
    tag = segment.tags[place]
    number: Tag | None = None
    pressed = [tag]
    for further, other in enumerate(segment.tags[place + 1 : place + 7], start=1):
        fruit = other.may_be("ingredient")
        if other.kind == "bare" and number is None:
            number = other
        elif fruit in _FRUIT:
            for one in pressed:
                line = open_line(segment, f"{fruit} {one.may_be('juice')}", one)
                line.written.append(other)
                if number is not None:
                    line.take(number)
                elif line.low is None:
                    line.low = line.high = Decimal(1)
                    line.unit = "pieces"
            for one in segment.tags[place : place + further + 1]:
                segment.now.use(one, "ingredient")
            return further + 1
        elif other.kind == "juice":
            pressed.append(other)
        elif other.kind not in SMALL:
            break
    return 0


def refine(segment: Segment, line: OpenLine, tag: Tag, ending: str = " %") -> bool:
    """``cream 35 %``, ``gelatin 200 bloom``: whether the number names the article."""
    assert tag.low is not None
    better = refined(line.what, tag.low, ending)
    if better is None:
        return False
    line.what = better
    line.written.append(tag)
    segment.now.use(tag, "ingredient")
    return True
