"""Bodies as a cook names them: half-sphere 70 mm, oval 45 x 30 to 42.4 x 28.3 ..."""

import re
from collections.abc import Callable

from demould.mise.number import NUMBER
from demould.mise.problem import UnreadableError
from demould.mise.quantity import read_amount, read_figure
from demould.mise.shape import (
    Box,
    CutEllipsoid,
    Cylinder,
    HalfSphere,
    Oval,
    Shape,
    Trough,
    WaterOnly,
)
from demould.mise.spelling import nearest_to
from demould.mise.words import Words

_SIZE = rf"({NUMBER}\s*[a-z]*)"
_BY = r"\s*[x\u00d7*]\s*"


def _pattern(heads: str, body: str) -> re.Pattern[str]:
    spelt = body.replace("N", _SIZE).replace(" x ", _BY).replace(" ", r"\s+")
    return re.compile(rf"(?:{heads})\s+{spelt}", re.IGNORECASE)


_Make = Callable[..., Shape]

_SHAPES: tuple[tuple[str, re.Pattern[str], str, _Make], ...] = (
    (
        "half-sphere",
        _pattern("half-sphere|half sphere|hemisphere", "N"),
        "half-sphere 70 mm",
        lambda d: HalfSphere(diameter_mm=d),
    ),
    (
        "disc ring cylinder",
        _pattern("disc|ring|cylinder", "N x N"),
        "disc 160 x 12 mm, across and high",
        lambda d, h: Cylinder(diameter_mm=d, height_mm=h),
    ),
    (
        "oval",
        _pattern("oval", "N x N x N"),
        "oval 60 x 42 x 5 mm",
        lambda long, wide, high: Oval(
            length_mm=long,
            width_mm=wide,
            small_length_mm=long,
            small_width_mm=wide,
            height_mm=high,
        ),
    ),
    (
        "oval",
        _pattern("oval", "N x N to N x N,? N (?:deep|high)"),
        "oval 45 x 30 to 42.4 x 28.3, 18 mm deep",
        lambda long, wide, small_long, small_wide, high: Oval(
            length_mm=long,
            width_mm=wide,
            small_length_mm=small_long,
            small_width_mm=small_wide,
            height_mm=high,
        ),
    ),
    (
        "cut ellipsoid",
        _pattern("cut ellipsoid", "N x N x N,? cut N above its widest"),
        "cut ellipsoid 40 x 28 x 22 mm, cut 12 mm above its widest",
        lambda long, wide, high, cut: CutEllipsoid(
            half_length_mm=long,
            half_width_mm=wide,
            half_height_mm=high,
            cut_mm=cut,
        ),
    ),
    (
        "box bar",
        _pattern("box|bar", "N x N x N"),
        "box 300 x 80 x 70 mm",
        lambda long, wide, high: Box(length_mm=long, width_mm=wide, height_mm=high),
    ),
    (
        "trough",
        _pattern("trough", "N x N x N"),
        "trough 500 x 80 x 70 mm",
        lambda long, wide, high: Trough(length_mm=long, width_mm=wide, height_mm=high),
    ),
)

HEADS = ("half-sphere", "disc", "ring", "cylinder", "oval", "cut ellipsoid", "box")
_ALL_HEADS = ("half sphere", "hemisphere", *HEADS, "bar", "trough", "water")


def names_shape(text: str) -> bool:
    """Whether a part of a line begins with the name of a shape and a number."""
    head = "|".join(re.escape(one) for one in _ALL_HEADS)
    return bool(re.match(rf"(?:{head})\b(?:\s|$)", text.strip(), re.IGNORECASE))


def read_shape(text: str) -> Shape:
    """The body that a text names.

    Sizes without a unit take the one that follows: ``60 x 42 x 5 mm``.

    Raises
    ------
    UnreadableError
        If no shape is called that, a size or its unit is missing, or it cannot be.
    """
    text = text.strip()
    if water := re.fullmatch(r"water\s+(.+)", text, re.IGNORECASE):
        held = read_figure(
            water[1], name="water it holds", kinds=("volume",), line=None
        )
        return WaterOnly(water_ml=held.value)
    for _, pattern, _, make in _SHAPES:
        if found := pattern.fullmatch(text):
            return _made(make, _sizes(found.groups(), text))
    raise _cannot_read(text)


def _sizes(groups: tuple[str, ...], text: str) -> list[float]:
    """Lengths from right to left, so that a unit serves those before it."""
    sizes: list[float] = []
    unit = ""
    for group in reversed(groups):
        bare = re.fullmatch(NUMBER, group.strip())
        if not bare:
            unit = re.sub(NUMBER, "", group, count=1).strip()
        elif not unit:
            raise UnreadableError(
                Words("the sizes in {found!r} have no unit", found=text),
                Words("Write the unit too: {found} mm", found=text),
            )
        whole = f"{group} {unit}" if bare else group
        sizes.append(read_amount(whole, name="size", kinds=("length",)).value)
    return sizes[::-1]


def _made(make: _Make, sizes: list[float]) -> Shape:
    try:
        return make(*sizes)
    except ValueError as why:
        raise UnreadableError(
            Words("{why}", why=why), Words("Measure it again, inside, in mm")
        ) from None


def _cannot_read(text: str) -> UnreadableError:
    for heads, _, example, _ in _SHAPES:
        if any(text.casefold().startswith(head) for head in heads.split()):
            return UnreadableError(
                Words("the sizes in {found!r} cannot be read", found=text),
                Words("Write it like {example}", example=example),
            )
    head = re.match(r"[^\d]*", text)
    near = nearest_to(head[0] if head else text, _ALL_HEADS)
    return UnreadableError(
        Words("{found!r} is not a shape known here", found=text),
        Words("Perhaps you meant {near!r}", near=near)
        if near
        else Words("Write one of {heads} with its sizes", heads=", ".join(_ALL_HEADS)),
    )
