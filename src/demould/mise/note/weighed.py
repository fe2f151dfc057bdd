"""Amounts of a segment: each goes to the ingredient before it, behind it, or above."""

from demould.mise.note.building import OpenLine, once_more
from demould.mise.note.eaten import open_line, open_unknown, refine
from demould.mise.note.place import (
    AMOUNTS,
    LONGEST_UNKNOWN,
    NO_FOOD,
    SMALL,
    Segment,
    refer,
)
from demould.mise.note.tags import Tag


def take_amount(segment: Segment, tag: Tag, place: int) -> None:
    """Give an amount to its ingredient."""
    segment.now.use(tag, "amount")
    here = segment.here
    if here is not None and _is_strength(segment, here, tag, place):
        return
    if segment.now.splitting is not None:
        split_into(segment, segment.now.splitting, tag)
    elif (
        here is not None and here.low is None and _meant_for(segment, here, tag, place)
    ):
        here.mentioned, segment.now.last = False, here
        if tag.kind == "percent" and refine(segment, here, tag):
            return
        if tag.kind == "percent" and _more_amounts(segment, place):
            here.remarks.append(tag)
        else:
            here.take(tag)
    elif here is not None and tag.kind == "percent" and refine(segment, here, tag):
        return
    elif (
        (tag.kind == "percent" and here is None and _weight_follows(segment, place))
        or _of_it(segment, place)
        or (place and segment.tags[place - 1].plain == "x")
    ):
        segment.remark(tag)
    elif segment.ingredient_follows(place):
        segment.pending = tag
    elif name := _unknown_behind(segment, tag, place):
        segment.pending = tag
        open_unknown(segment, name)
        segment.done.update(one.start for one in name)
    else:
        _alone(segment, tag)


def _meant_for(segment: Segment, line: OpenLine, tag: Tag, place: int) -> bool:
    """Whether an amount behind an ingredient is its own, in a method too."""
    if not line.mentioned or segment.bracketed:
        return True
    near = place > 0 and segment.tags[place - 1] in line.written
    return near or (tag.kind == "amount" and not segment.ingredient_follows(place))


def _alone(segment: Segment, tag: Tag) -> None:
    """An amount with no ingredient beside it in its segment."""
    last, here = segment.now.last, segment.here
    unknown = segment.unknown_name
    said_more = any(one.kind == "state" for one in segment.tags)
    if tag.kind == "amount" and tag.unit == "leaf":
        segment.pending = tag
        open_line(segment, "gelatin", tag)
    elif unknown and (tag.kind == "amount" or not segment.doing):
        segment.pending = tag
        open_unknown(segment, unknown)
    elif here is not None and here.unit == "tin" and tag.kind == "amount":
        here.take(tag)
    elif last is not None and last.low is None and not segment.doing:
        last.take(tag)
    elif (
        last is not None and not segment.busy and (said_more or len(segment.words) == 1)
    ):
        line = once_more(last, segment.now.number)
        line.take(tag)
        refer(segment, line)
    else:
        segment.remark(tag)


def _weight_follows(segment: Segment, place: int) -> bool:
    """``quark 20 % 300 g``: the share tells which quark, not how much."""
    return bool(segment.unknown_name) and any(
        tag.kind == "amount" for tag in segment.tags[place + 1 : place + 2]
    )


def _of_it(segment: Segment, place: int) -> bool:
    """``two hundred of it``: part of what stands above, no line of its own."""
    behind = [tag.plain for tag in segment.tags[place + 1 : place + 3]]
    return behind in (["of", "it"], ["of", "them"], ["of", "that"])


def _unknown_behind(segment: Segment, tag: Tag, place: int) -> list[Tag]:
    """Words nobody knows right behind an amount: what it is an amount of."""
    name: list[Tag] = []
    for other in segment.tags[place + 1 :]:
        if other.kind in ("unknown", "part") and other.plain not in NO_FOOD:
            name.append(other)
        elif other.kind not in ("join", "state") or name:
            break
    weighed = tag.kind == "amount"
    fits = weighed or (len(segment.tags) > place + 1 + len(name) and not segment.doing)
    return name if fits and len(name) <= LONGEST_UNKNOWN else []


def split_into(segment: Segment, line: OpenLine, tag: Tag) -> None:
    """The first part takes the place of the whole, each further one is a line."""
    now = segment.now
    if not now.split_begun:
        now.split_begun = True
        line.whole = line.low
        line.take(tag)
        return
    more = once_more(line, now.number)
    more.take(tag)
    now.part.lines.insert(now.part.lines.index(line) + 1, more)


def split_in_brackets(segment: Segment, inside: list[Tag]) -> bool:
    """``sugar 100 (60 + 30 with the pectin)``: whether that is what the brackets say."""
    line = segment.here or segment.now.last
    numbers = [tag for tag in inside if tag.kind in AMOUNTS]
    if (
        line is None
        or len(numbers) < 2
        or not any(tag.kind == "plus" for tag in inside)
    ):
        return False
    segment.now.split_begun = False
    for tag in inside:
        if tag in numbers:
            segment.now.use(tag, "amount")
            split_into(segment, line, tag)
        elif tag.kind in SMALL:
            segment.now.use(tag, "joining")
        else:
            segment.remark(tag)
    return True


def take_total(segment: Segment) -> None:
    """``600 in all``: no amount of a line."""
    for place, tag in enumerate(segment.tags):
        if tag.kind != "total" and tag.may_be("makes") is None:
            continue
        before = segment.tags[max(0, place - 1) : place] if tag.kind == "total" else ()
        for other in (*before, *segment.tags[place + 1 : place + 3]):
            grams = other.kind == "amount" and other.unit == "g"
            if grams or (other.kind == "bare" and tag.kind == "total"):
                segment.now.part.total = other
                for one in (tag, other):
                    segment.now.use(one, "total")
                    segment.done.add(one.start)
                break


def _is_strength(segment: Segment, line: OpenLine, tag: Tag, place: int) -> bool:
    """``200 bloom``, ``DE 40`` behind what they belong to."""
    if tag.kind != "bare":
        return False
    before = segment.tags[place - 1].plain if place else ""
    after = segment.tags[place + 1] if place + 1 < len(segment.tags) else None
    if after is not None and after.plain in ("bloom", "bl") and line.what == "gelatin":
        segment.done.add(after.start)
        segment.now.use(after, "ingredient")
        return refine(segment, line, tag, " bloom")
    if after is not None and after.plain in ("brix", "bx") and "syrup" in line.what:
        segment.done.add(after.start)
        segment.now.use(after, "ingredient")
        line.what = "sugar syrup"
        return refine(segment, line, tag, " brix")
    if before == "de" and line.what.startswith("glucose"):
        line.what = "glucose syrup DE"
        return refine(segment, line, tag, "")
    return False


def _more_amounts(segment: Segment, place: int) -> bool:
    return any(tag.kind in ("amount", "bare") for tag in segment.tags[place + 1 :])
