"""Brackmoor Weir, an invented kitchen: its moulds, jugs, tools and scales."""

from demould.mise.kitchen import Jug, Kitchen, Scale, Tool
from demould.mise.mould import Mould
from demould.mise.shape import (
    Box,
    CutEllipsoid,
    Cylinder,
    HalfSphere,
    Oval,
    Shape,
    Trough,
)
from tests.desserts.build import stated

PEBBLE = CutEllipsoid(
    half_length_mm=40.2, half_width_mm=28.0, half_height_mm=21.64, cut_mm=12.36
)
OVAL_INSERT = Oval(
    length_mm=45, width_mm=30, small_length_mm=42.4, small_width_mm=28.3, height_mm=18
)
DOME = HalfSphere(diameter_mm=70)
SMALL_DOME = HalfSphere(diameter_mm=40)
RING = Cylinder(diameter_mm=180, height_mm=45)
LOG = Trough(length_mm=500, width_mm=80, height_mm=70)
FRAME = Box(length_mm=480, width_mm=40, height_mm=30)
TERRINE = Box(length_mm=300, width_mm=80, height_mm=70)


def mould(
    key: str, trays: int, each: int, shape: Shape, water: float | None = None
) -> Mould:
    return Mould(
        key=key,
        trays=trays,
        cavities_each=each,
        shape=shape,
        water=None if water is None else stated(water, "g", f"water in one {key}"),
        wall=stated(1.5, "mm", f"wall of {key}"),
    )


def jug(diameter: float) -> Jug:
    return Jug(
        diameter=stated(diameter, "mm", "inside diameter"),
        height=stated(160, "mm", "inside height"),
    )


KITCHEN = Kitchen(
    name="Brackmoor Weir",
    zone="Europe/London",
    moulds=(
        mould("pebble", 3, 8, PEBBLE, 90),
        mould("oval insert", 2, 24, OVAL_INSERT, 18),
        mould("dome", 3, 6, DOME),
        mould("small dome", 1, 15, SMALL_DOME),
        mould("ring", 2, 1, RING),
        mould("trough", 1, 1, LOG),
        mould("insert frame", 1, 1, FRAME),
        mould("terrine", 1, 1, TERRINE),
    ),
    tools=(
        Tool(
            key="mixer",
            bowl=stated(4800, "ml", "the mixer's bowl"),
            fill=stated(70, "%", "full at the end"),
            least=stated(400, "g", "least the whisk takes"),
        ),
        Tool(key="blender", least=stated(300, "g", "least the blender takes")),
    ),
    jugs=tuple(jug(diameter) for diameter in (80, 100, 110, 140)),
    scales=(
        Scale(most=stated(5000, "g"), step=stated(1, "g")),
        Scale(most=stated(200, "g"), step=stated(0.01, "g")),
    ),
    breakage=stated(5, "%", "breakage"),
    sure=stated(95, "%", "how sure"),
)
