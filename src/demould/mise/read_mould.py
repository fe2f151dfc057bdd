"""One line of moulds: ``dome; 3 x 6; half-sphere 70 mm; silicone 1.5 mm``."""

import re
from dataclasses import dataclass, field, replace

from demould.mise.figure import Assumed, Figure, Line
from demould.mise.mould import Mould
from demould.mise.number import NUMBER
from demould.mise.parts import Part, at_column, name_and_rest
from demould.mise.problem import UnreadableError
from demould.mise.quantity import read_count, read_figure
from demould.mise.read_shape import names_shape, read_shape
from demould.mise.shape import (
    CutEllipsoid,
    Egg,
    HalfEgg,
    HalfSphere,
    Shape,
    Sphere,
    WaterOnly,
)
from demould.mise.words import Words

USUAL_WALL = (1.0, 3.0)
MATERIALS = (
    "silicone",
    "steel",
    "aluminium",
    "plastic",
    "polycarbonate",
    "copper",
    "glass",
)

_TRAYS = re.compile(rf"({NUMBER})\s*[x\u00d7*]\s*({NUMBER})")
_WATER = re.compile(rf"({NUMBER}\s*\S+)\s+(?:by|of) water\s*(\(.*\))?")

_HALVES = re.compile(r"(?:joined from )?two halves(?: joined)?", re.IGNORECASE)
_HOLE = re.compile(r"(?:filling )?hole\s+(\S.*)", re.IGNORECASE)
_SOME_SHAPE = re.compile(r"[^\W\d][^\d;]*\d.*(?:x|mm|cm)")


@dataclass(slots=True)
class _Found:
    trays: tuple[int, int] | None = None
    shape: Shape | None = None
    water: Figure | None = None
    material: str = "silicone"
    wall: Figure | None = None
    halves: bool = False
    hole: Figure | None = None
    remarks: list[str] = field(default_factory=list)


def read_mould(line: Line) -> Mould:
    """A mould: name, trays x cavities, shape, water it holds, material and its wall.

    A wall that is not said is 1.5 mm of silicone, assumed 1 to 3. ``two halves`` says
    that a piece is joined from two cavities: a half-sphere is then half a sphere.

    Raises
    ------
    UnreadableError
        If a part cannot be read, or trays or shape are missing.
    """
    name, rest = name_and_rest(line.text)
    found = _Found()
    for part in rest:
        with at_column(part.column):
            _take(part, found, line)
    if found.trays is None:
        raise UnreadableError(
            Words("how many {name!r} there are is missing", name=name.text),
            Words("Write trays x cavities after the name, for example 3 x 8"),
        )
    shape = found.shape
    if shape is None and found.water is not None:
        shape = WaterOnly(water_ml=found.water.value)
    if shape is None:
        raise UnreadableError(
            Words("the shape of {name!r} is missing", name=name.text),
            Words("Write its shape and sizes, or what it holds: 90 ml by water"),
        )
    if found.halves:
        shape = _whole(shape)
        if found.trays[0] * found.trays[1] % 2:
            raise UnreadableError(
                Words(
                    "{name!r} has {count} cavities and a piece takes two",
                    name=name.text,
                    count=found.trays[0] * found.trays[1],
                ),
                Words("Count every half, so that they pair up"),
            )
    return Mould(
        key=name.text,
        trays=found.trays[0],
        cavities_each=found.trays[1],
        shape=shape,
        water=found.water,
        material=found.material,
        wall=found.wall or _usual_wall(),
        halves=found.halves,
        hole=found.hole,
        remarks=tuple(found.remarks),
        line=line,
    )


def _whole(half: Shape) -> Shape:
    """The body two halves make."""
    match half:
        case HalfSphere(diameter_mm=across):
            return Sphere(diameter_mm=across)
        case HalfEgg(length_mm=long, width_mm=wide):
            return Egg(length_mm=long, width_mm=wide)
        case CutEllipsoid(half_height_mm=high, cut_mm=cut) if cut == 0:
            return replace(half, cut_mm=high)
        case Sphere() | Egg() | CutEllipsoid():
            return half
    raise UnreadableError(
        Words("two halves of this shape make no piece known here"),
        Words("Write sphere, egg or ellipsoid, each with its whole size"),
    )


def _usual_wall() -> Figure:
    low, high = USUAL_WALL
    return Figure(
        name="wall",
        value=1.5,
        unit="mm",
        origin=Assumed(low=low, high=high, source="usual"),
    )


def _take(part: Part, found: _Found, line: Line) -> None:
    """Put one part of the line where it belongs."""
    material, _, wall = part.text.partition(" ")
    if trays := _TRAYS.fullmatch(part.text):
        found.trays = (
            read_count(trays[1], name="number of trays", most=9999, what="trays"),
            read_count(trays[2], name="number of cavities", most=9999, what="cavities"),
        )
    elif water := _WATER.fullmatch(part.text):
        held = f"{water[1]} {water[2] or ''}"
        found.water = read_figure(
            held, name="water in a cavity", kinds=("volume",), line=line
        )
    elif _HALVES.fullmatch(part.text):
        found.halves = True
    elif hole := _HOLE.fullmatch(part.text):
        found.hole = read_figure(
            hole[1], name="filling hole", kinds=("length",), line=line
        )
    elif names_shape(part.text):
        found.shape = read_shape(part.text)
    elif material.casefold() in MATERIALS:
        found.material = material.casefold()
        found.wall = read_figure(
            wall, name="wall", kinds=("length",), line=line, usual=USUAL_WALL
        )
    elif found.shape is None and _SOME_SHAPE.match(part.text):
        found.shape = read_shape(part.text)
    else:
        found.remarks.append(part.text)
