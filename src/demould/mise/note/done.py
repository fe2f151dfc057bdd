"""Steps of a segment: what is done, how warm, how long."""

from decimal import Decimal

from demould.mise.note.building import OpenStep
from demould.mise.note.place import Segment
from demould.mise.note.tags import Tag

COOKED_FROM = Decimal(60)
"""A temperature alone from here on, in °C, is one to cook to; below, to cool to."""

BAKED_FROM = Decimal(140)
"""A temperature alone from here on, in °C, is that of an oven."""

LEAST_SAID = Decimal(20)
_BY_HEAT = frozenset({"heat", "cook", "boil", "melt", "bake", "cool"})

HOTTEST = Decimal(260)
COLDEST = Decimal(-40)


def take_step(segment: Segment, tag: Tag) -> None:
    """Open a step."""
    _open(segment, tag.may_be("step") or tag.plain, tag)
    segment.now.step = segment.steps[-1]


def take_when(segment: Segment, tag: Tag, place: int) -> None:
    """A temperature or a time: it belongs to the step it stands beside."""
    step = _step_for(segment, place)
    if step is not None and step.temp is not None and tag.kind in ("temp", "bare"):
        step = None
    if step is None:
        if tag.kind in ("minutes", "while"):
            segment.remark(tag)
            return
        step = _open(segment, _meant(segment, tag), tag)
        segment.steps.remove(step)
        segment.now.step = step
    if tag.kind == "while":
        step.while_ = tag
    elif tag.kind == "minutes":
        step.time = tag
    else:
        step.temp = tag
    segment.now.use(tag, "step")


def is_temperature(segment: Segment, tag: Tag, place: int) -> bool:
    """A number alone after "to" or "at" where something is being done."""
    before = segment.tags[place - 1] if place else None
    if before is None or tag.low is None or not COLDEST <= tag.low <= HOTTEST:
        return False
    if any(one.kind == "ingredient" for one in segment.tags[place + 1 : place + 2]):
        return False
    led = before.kind == "at" or before.may_be("at") is not None
    return led and (segment.busy or any(one.kind == "step" for one in segment.tags))


def is_heat(segment: Segment, tag: Tag, place: int) -> bool:
    """``warm 55``: a number alone right behind what is done with heat or cold."""
    before = segment.tags[place - 1] if place else None
    if before is None or tag.low is None or segment.ingredient_follows(place):
        return False
    return before.may_be("step") in _BY_HEAT and LEAST_SAID <= tag.low <= HOTTEST


def _open(segment: Segment, action: str, tag: Tag) -> OpenStep:
    step = OpenStep(
        action=action, tag=tag, words=list(segment.tags), number=segment.now.number
    )
    segment.now.part.steps.append(step)
    segment.steps.append(step)
    segment.now.use(tag, "step")
    return step


def _step_for(segment: Segment, place: int) -> OpenStep | None:
    """The step before it in its segment, else the one behind, else the last one."""
    if segment.steps:
        return segment.steps[-1]
    for further in segment.tags[place + 1 :]:
        if further.kind == "step":
            take_step(segment, further)
            segment.done.add(further.start)
            return segment.steps[-1]
    if segment.has_ingredient and segment.tags[place].kind in ("temp", "bare"):
        return None
    return segment.now.step


def _meant(segment: Segment, tag: Tag) -> str:
    if segment.has_ingredient and segment.busy:
        return "mix"
    if tag.low is not None and tag.low >= BAKED_FROM:
        return "bake"
    return "cook" if tag.low is not None and tag.low >= COOKED_FROM else "cool"
