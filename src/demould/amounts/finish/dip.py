"""How much dip to melt, and in which jug."""

import math
from collections.abc import Iterable
from dataclasses import dataclass

from demould.amounts.layers.piece import coat
from demould.amounts.shape.body import has_corners
from demould.amounts.shape.section import box_mm, height_mm
from demould.amounts.shape.volume import cavity, mould_of, volume_up_to_ml
from demould.mise.component import Component
from demould.mise.dessert import Dessert, Dip, component_of
from demould.mise.figure import Figure, Stated, worked
from demould.mise.kitchen import Jug, Kitchen
from demould.mise.mould import Mould
from demould.mise.words import Words

ROOM_MM = 5.0


@dataclass(frozen=True, slots=True, kw_only=True)
class InJug:
    """One way to dip so many pieces.

    Attributes
    ----------
    on_end
        Long side down; else as the piece lies in its mould.
    least
        What must still be in the jug for the last piece. [g]
    taken
        What goes on all the pieces. [g]
    melt
        Least, taken and heel. [g]
    height, height_with_piece
        How high `melt` stands, and how high with a piece in it. [mm]
    most
        What the jug takes with a piece in it. [g]
    goes_in
        Whether the piece passes the jug with 5 mm to spare on either side.
    overflows
        Whether the first piece makes it run over.
    """

    jug: Jug
    on_end: bool
    least: Figure
    taken: Figure
    heel: Figure
    melt: Figure
    height: Figure
    height_with_piece: Figure
    most: Figure
    goes_in: bool
    overflows: bool


def dip_of(dessert: Dessert) -> Dip | None:
    """The dip of a dessert, if it has one."""
    return next((one for one in dessert.finish if isinstance(one, Dip)), None)


def in_jugs(dessert: Dessert, kitchen: Kitchen, pieces: int) -> tuple[InJug, ...]:
    """Every jug, as the piece lies and on its end, the least to melt first."""
    dip = dip_of(dessert)
    if dip is None:
        return ()
    ways = (
        in_jug(dessert, dip, kitchen, jug, pieces, on_end=on_end)
        for jug in kitchen.jugs
        for on_end in (False, True)
    )
    return tuple(sorted(ways, key=lambda way: way.melt.value))


def best(ways: Iterable[InJug], *, on_end: bool = False) -> InJug | None:
    """The way with least to melt that goes in and holds, dipped the way that is meant.

    Where every jug runs over, the one with least to melt: it is topped up as it goes
    down. None where the piece goes into no jug.
    """
    possible = [way for way in ways if way.goes_in and way.on_end is on_end]
    holding = [way for way in possible if not way.overflows]
    return min(holding or possible, key=lambda way: way.melt.value, default=None)


def meant_on_end(dessert: Dessert, kitchen: Kitchen) -> bool:
    """Whether the dip is written deeper than the piece stands: then it goes in on end."""
    dip = dip_of(dessert)
    shape = mould_of(kitchen, dessert.mould).shape
    return (
        dip is not None
        and dip.depth is not None
        and dip.depth.value > height_mm(shape) + ROOM_MM
    )


def in_jug(
    dessert: Dessert,
    dip: Dip,
    kitchen: Kitchen,
    jug: Jug,
    pieces: int,
    *,
    on_end: bool = False,
) -> InJug:
    """Dip `pieces` in one jug."""
    made = component_of(dessert, dip.component)
    mould = mould_of(kitchen, dessert.mould)
    depth = depth_mm(dip, mould, on_end=on_end)
    body = _under(dip, mould, depth, on_end=on_end)
    least = _least(dip, made, jug, depth, body)
    taken = _taken(dessert, dip, mould, pieces)
    melt = worked(
        f"{made.name} to melt",
        least.value + taken.value + dip.heel.value,
        "g",
        Words(
            "{least:.0f} g to cover + {taken:.0f} g on the pieces + {heel:g} g heel",
            least=least.value,
            taken=taken.value,
            heel=dip.heel.value,
        ),
        least,
        taken,
        dip.heel,
    )
    height = _stands(made, jug, melt, None)
    with_piece = _stands(made, jug, melt, body)
    return InJug(
        jug=jug,
        on_end=on_end,
        least=least,
        taken=taken,
        heel=dip.heel,
        melt=melt,
        height=height,
        height_with_piece=with_piece,
        most=_most(made, jug, body),
        goes_in=_across_mm(mould, on_end=on_end) + 2 * ROOM_MM <= jug.diameter.value,
        overflows=with_piece.value > jug.height.value,
    )


def depth_mm(dip: Dip, mould: Mould, *, on_end: bool) -> Figure:
    """How deep the piece goes in: all of it, unless less is written [mm]."""
    length, _, height = box_mm(mould.shape)
    stands = length if on_end else height
    if dip.depth is not None and dip.depth.value < stands:
        return dip.depth
    name = "length of the piece, on its end" if on_end else "height of the piece"
    return Figure(name=name, value=stands, unit="mm", origin=Stated(line=mould.line))


def _across_mm(mould: Mould, *, on_end: bool) -> float:
    length, width, height = box_mm(mould.shape)
    if on_end:
        return math.hypot(width, height)
    if has_corners(mould.shape):
        return math.hypot(length, width)
    return length


def _under(dip: Dip, mould: Mould, depth: Figure, *, on_end: bool) -> Figure:
    """What of the piece is under the surface, round side first [ml]."""
    hollow = cavity(mould)
    if depth is not dip.depth:
        return hollow
    if on_end:
        share = depth.value / box_mm(mould.shape)[0]
        rule = "the piece x how much of its length goes in"
        value = hollow.value * share
        return worked("piece under the surface", value, "ml", rule, hollow, depth)
    share = volume_up_to_ml(mould.shape, depth.value) / volume_up_to_ml(mould.shape)
    value = hollow.value * share
    rule = "the piece from its round side to the depth it goes in"
    return worked("piece under the surface", value, "ml", rule, hollow, depth)


def _least(dip: Dip, made: Component, jug: Jug, depth: Figure, body: Figure) -> Figure:
    ml = _floor_mm2(jug) * (depth.value + dip.clearance.value) / 1000 - body.value
    return worked(
        f"least {made.name} for the last piece",
        max(0.0, ml) * made.density.value,
        "g",
        Words(
            "(floor of a {wide:g} mm jug x ({deep:g} + {clear:g} mm) - the piece)"
            " x density",
            wide=jug.diameter.value,
            deep=depth.value,
            clear=dip.clearance.value,
        ),
        jug.diameter,
        depth,
        dip.clearance,
        body,
        made.density,
    )


def _taken(dessert: Dessert, dip: Dip, mould: Mould, pieces: int) -> Figure:
    each = coat(dessert, dip, mould).grams
    rule = Words("{n} pieces x {g:.1f} g", n=pieces, g=each.value)
    name = f"{each.name}, {pieces} pieces"
    return worked(name, pieces * each.value, "g", rule, each)


def film_from_weighing(
    before_g: Figure, after_g: Figure, pieces: int, surface: Figure, density: Figure
) -> Figure:
    """Own film, from weighing some pieces before and after [mm]."""
    each = (after_g.value - before_g.value) / pieces
    return worked(
        "film, weighed",
        10 * each / density.value / surface.value,
        "mm",
        Words("(after - before) by {n} pieces, by density, by area", n=pieces),
        after_g,
        before_g,
        density,
        surface,
    )


def _stands(made: Component, jug: Jug, melt: Figure, body: Figure | None) -> Figure:
    ml = melt.value / made.density.value
    parts = [melt, made.density, jug.diameter]
    rule = "grams / density, over the floor of the jug"
    if body is not None:
        ml += body.value
        parts.append(body)
        rule = "grams / density and the piece, over the floor of the jug"
    name = f"{made.name} stands in the jug"
    return worked(name, 1000 * ml / _floor_mm2(jug), "mm", rule, *parts)


def _most(made: Component, jug: Jug, body: Figure) -> Figure:
    ml = max(0.0, _floor_mm2(jug) * jug.height.value / 1000 - body.value)
    return worked(
        f"most {made.name} in the jug",
        ml * made.density.value,
        "g",
        "(what the jug holds less one piece) x density",
        jug.diameter,
        jug.height,
        body,
        made.density,
    )


def _floor_mm2(jug: Jug) -> float:
    return math.pi / 4 * jug.diameter.value**2
