"""One line of moulds: ``dome; 3 x 6; half-sphere 70 mm; silicone 1.5 mm``."""

import re
from dataclasses import dataclass, field

from demould.mise.figure import Assumed, Figure, Line
from demould.mise.mould import Mould
from demould.mise.number import NUMBER
from demould.mise.parts import Part, at_column, name_and_rest
from demould.mise.problem import UnreadableError
from demould.mise.quantity import read_count, read_figure
from demould.mise.read_shape import names_shape, read_shape
from demould.mise.shape import Shape, WaterOnly
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

_SOME_SHAPE = re.compile(r"[^\W\d][^\d;]*\d.*(?:x|mm|cm)")


@dataclass(slots=True)
class _Found:
    trays: tuple[int, int] | None = None
    shape: Shape | None = None
    water: Figure | None = None
    material: str = "silicone"
    wall: Figure | None = None
    remarks: list[str] = field(default_factory=list)


def read_mould(line: Line) -> Mould:
    """A mould: name, trays x cavities, shape, water it holds, material and its wall.

    A wall that is not said is 1.5 mm of silicone, assumed 1 to 3.

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
    return Mould(
        key=name.text,
        trays=found.trays[0],
        cavities_each=found.trays[1],
        shape=shape,
        water=found.water,
        material=found.material,
        wall=found.wall or _usual_wall(),
        remarks=tuple(found.remarks),
        line=line,
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
