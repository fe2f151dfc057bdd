"""Bodies drawn as points: ``turned 0 0, 20 0, 30 25, 32 40 mm``."""

import re
from collections.abc import Callable

from demould.mise.number import MINUS
from demould.mise.problem import UnreadableError
from demould.mise.quantity import read_amount
from demould.mise.shape_points import Outlined, Turned
from demould.mise.words import Words

_NUMBER = rf"[{MINUS}]?\d+(?:[.,]\d+)?"
"""No blank parts thousands here: it parts the two numbers of a point."""

_POINTS = rf"((?:{_NUMBER}\s+{_NUMBER}\s*,?\s*)+?)\s*([a-z]+)"
_TURNED = re.compile(rf"turned\s+{_POINTS}", re.IGNORECASE)
_OUTLINE = re.compile(
    rf"outline\s+{_POINTS},?\s+({_NUMBER}\s*[a-z]+)\s+(?:high|deep)", re.IGNORECASE
)
_EXAMPLES = {
    "turned": "turned 0 0, 20 0, 30 25, 32 40 mm: half a width and the height there,"
    " from the bottom up",
    "outline": "outline 0 0, 60 0, 60 40, 0 0 mm, 25 mm high: the corners in order, the"
    " last the first again",
}


def read_points(text: str) -> Turned | Outlined | None:
    """The body a line of points draws, None where it does not begin like one.

    Raises
    ------
    UnreadableError
        If the points cannot be read, or the body cannot be.
    """
    head = text.split(maxsplit=1)[0].casefold() if text.split() else ""
    if head not in _EXAMPLES:
        return None
    if found := _TURNED.fullmatch(text):
        points = _points(found[1], found[2])
        return _made(lambda: Turned(points=points))
    if found := _OUTLINE.fullmatch(text):
        corners = _points(found[1], found[2])
        high = read_amount(found[3], name="height", kinds=("length",)).value
        return _made(lambda: Outlined(points=corners, height_mm=high))
    raise UnreadableError(
        Words("the points in {found!r} cannot be read", found=text),
        Words("Write it like {example}", example=_EXAMPLES[head]),
    )


def _points(text: str, unit: str) -> tuple[tuple[float, float], ...]:
    numbers = re.findall(_NUMBER, text)
    sizes = [
        read_amount(f"{one} {unit}", name="size", kinds=("length",)).value
        for one in numbers
    ]
    return tuple(zip(sizes[::2], sizes[1::2], strict=True))


def _made(make: Callable[[], Turned | Outlined]) -> Turned | Outlined:
    try:
        return make()
    except ValueError as why:
        raise UnreadableError(
            Words("{why}", why=why), Words("Measure it again, inside, in mm")
        ) from None
