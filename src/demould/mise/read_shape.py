"""Bodies as a cook names them: half-sphere 70 mm, oval 45 x 30 to 42.4 x 28.3 ..."""

import re
from collections.abc import Callable

from demould.mise.number import NUMBER
from demould.mise.problem import UnreadableError
from demould.mise.quantity import read_amount, read_figure
from demould.mise.read_points import read_points
from demould.mise.shape import (
    Box,
    Cone,
    CutEllipsoid,
    Cylinder,
    Dome,
    Egg,
    FreeForm,
    HalfEgg,
    HalfSphere,
    HollowRing,
    Oval,
    Savarin,
    Shape,
    Sphere,
    TaperedBox,
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
        "sphere",
        _pattern("sphere", "N"),
        "sphere 60 mm",
        lambda d: Sphere(diameter_mm=d),
    ),
    (
        "dome",
        _pattern("dome", "N x N"),
        "dome 80 x 45 mm, across and high",
        lambda d, h: Dome(diameter_mm=d, height_mm=h),
    ),
    (
        "cone",
        _pattern("cone", "N x N"),
        "cone 60 x 80 mm, across and high",
        lambda d, h: Cone(diameter_mm=d, small_mm=0.0, height_mm=h),
    ),
    (
        "cone",
        _pattern("cone", "N to N x N"),
        "cone 60 to 20 x 80 mm, across at both ends and high",
        lambda d, small, h: Cone(diameter_mm=d, small_mm=small, height_mm=h),
    ),
    (
        "ring",
        _pattern("ring", "N x N,? hole N"),
        "ring 180 x 45 mm, hole 60 mm",
        lambda d, h, hole: HollowRing(diameter_mm=d, hole_mm=hole, height_mm=h),
    ),
    (
        "savarin",
        _pattern("savarin", "N x N,? hole N"),
        "savarin 70 x 25 mm, hole 20 mm",
        lambda d, h, hole: Savarin(diameter_mm=d, hole_mm=hole, height_mm=h),
    ),
    (
        "half egg",
        _pattern("half egg|half-egg", "N x N"),
        "half egg 60 x 42 mm, long and wide",
        lambda long, wide: HalfEgg(length_mm=long, width_mm=wide),
    ),
    (
        "egg",
        _pattern("egg", "N x N"),
        "egg 60 x 42 mm, long and wide",
        lambda long, wide: Egg(length_mm=long, width_mm=wide),
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
        "ellipsoid",
        _pattern("ellipsoid", "N x N x N"),
        "ellipsoid 78 x 58 x 34 mm, long, wide and high",
        lambda long, wide, high: CutEllipsoid(
            half_length_mm=long / 2,
            half_width_mm=wide / 2,
            half_height_mm=high / 2,
            cut_mm=high / 2,
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
        "box bar frame terrine sheet",
        _pattern("box|bar|frame|terrine|sheet", "N x N to N x N,? N (?:deep|high)"),
        "box 300 x 80 to 290 x 70, 70 mm deep",
        lambda long, wide, small_long, small_wide, high: TaperedBox(
            length_mm=long,
            width_mm=wide,
            small_length_mm=small_long,
            small_width_mm=small_wide,
            height_mm=high,
        ),
    ),
    (
        "box bar frame terrine sheet",
        _pattern("box|bar|frame|terrine|sheet", "N x N x N"),
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

_ALL_HEADS = (
    "half sphere",
    "hemisphere",
    "half-sphere",
    "sphere",
    "dome",
    "disc",
    "ring",
    "cylinder",
    "cone",
    "savarin",
    "oval",
    "ellipsoid",
    "cut ellipsoid",
    "egg",
    "half egg",
    "box",
    "bar",
    "frame",
    "terrine",
    "sheet",
    "trough",
    "turned",
    "outline",
    "free form",
    "water",
)


def names_shape(text: str) -> bool:
    """Whether a part of a line begins with the name of a shape and a number."""
    head = "|".join(re.escape(one) for one in _ALL_HEADS)
    return bool(re.match(rf"(?:{head})\s+(?={NUMBER})", text.strip(), re.IGNORECASE))


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
    if drawn := read_points(text):
        return drawn
    if free := _FREE.fullmatch(text):
        return _free_form(free, text)
    for _, pattern, _, make in _SHAPES:
        if found := pattern.fullmatch(text):
            return _made(make, _sizes(found.groups(), text))
    raise _cannot_read(text)


_FREE = re.compile(
    rf"free form\s+{_SIZE}{_BY}{_SIZE}{_BY}{_SIZE},?\s+water\s+(.+)", re.IGNORECASE
)


def _free_form(found: re.Match[str], text: str) -> Shape:
    held = read_figure(found[4], name="water it holds", kinds=("volume",), line=None)
    sizes = _sizes((found[1], found[2], found[3]), text)
    return _made(
        lambda long, wide, high: FreeForm(
            water_ml=held.value, length_mm=long, width_mm=wide, height_mm=high
        ),
        sizes,
    )


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


_EXAMPLES = tuple(
    (
        (heads,) if heads in ("half egg", "cut ellipsoid") else tuple(heads.split()),
        example,
    )
    for heads, _, example, _ in _SHAPES
)
FREE_EXAMPLE = "free form 80 x 56 x 34 mm, water 90 ml"


def _cannot_read(text: str) -> UnreadableError:
    for heads, example in (*_EXAMPLES, (("free form",), FREE_EXAMPLE)):
        if any(text.casefold().startswith(head) for head in heads):
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
