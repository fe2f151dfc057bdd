"""How high each part of a piece lies in its mould."""

from collections.abc import Iterator
from dataclasses import dataclass, replace

from demould.amounts.shape.section import box_sides_mm, height_mm
from demould.amounts.shape.volume import mould_of
from demould.mise.dessert import (
    SIDES,
    Cut,
    Dessert,
    FromMould,
    Layer,
    Lining,
    Rest,
    Stands,
)
from demould.mise.kitchen import Kitchen
from demould.mise.shape import Box, CutEllipsoid, Oval, Shape

BOTTOM, OPEN_SIDE = SIDES


@dataclass(frozen=True, slots=True, kw_only=True)
class Placed:
    """A part with a size, as it lies in the cavity as filled.

    Attributes
    ----------
    layer
        The line it comes from; its `turned_over` says which way up it lies.
    shape
        Its body, its longer side along the cavity's longer one.
    at
        Its underside over the bottom of the cavity. [mm]
    flush
        Whether it closes the piece: nothing is filled in after it.
    said
        Whether its height is known, and not only taken as even between its neighbours.
    """

    layer: Layer
    shape: Shape
    at: float
    flush: bool = False
    said: bool = True

    @property
    def top(self) -> float:
        """Its upper side over the bottom of the cavity [mm]."""
        return self.at + height_mm(self.shape)


def placed(dessert: Dessert, kitchen: Kitchen) -> tuple[Placed, ...]:
    """Give each part with a size its height in the cavity, in the order filled.

    What goes in before any of the filler lies on the bottom, or on what lines it; what comes after the last
    of it lies flush under the open side. What lies between two goes of the filler
    stands where its line says, or else as far from what is under it as from what is
    over it. Without a filler parts are stacked from the bottom.
    """
    mould = mould_of(kitchen, dessert.mould)
    hollow = height_mm(mould.shape)
    before, between, after = _groups(dessert)
    lined = [layer for layer in dessert.layers if isinstance(layer.fill, Lining)]
    coat = sum(one.fill.film.value for one in lined if isinstance(one.fill, Lining))
    low = list(_stacked(before, kitchen, coat))
    total = sum(height_mm(_own_shape(layer, kitchen)) for layer in after)
    high = [
        replace(part, flush=True) for part in _stacked(after, kitchen, hollow - total)
    ]
    floor = low[-1].top if low else coat
    spread = _spread(between, kitchen, floor, hollow - total)
    ends = {part.layer.component: part for part in (*low, *high)}
    parts = (*low, *_as_said(spread, ends, hollow), *high)
    return tuple(_along(part, mould.shape) for part in parts)


def _groups(
    dessert: Dessert,
) -> tuple[list[Layer], list[list[Layer]], list[Layer]]:
    """Part the layers at the filler: before its first, between, after its last."""
    runs: list[list[Layer]] = [[]]
    for layer in dessert.layers:
        if isinstance(layer.fill, Rest):
            runs.append([])
        elif not isinstance(layer.fill, Lining):
            runs[-1].append(layer)
    if len(runs) == 1:
        return runs[0], [], []
    return runs[0], [run for run in runs[1:-1] if run], runs[-1]


def _stacked(layers: list[Layer], kitchen: Kitchen, at: float) -> Iterator[Placed]:
    for layer in layers:
        shape = _own_shape(layer, kitchen)
        yield Placed(layer=layer, shape=shape, at=at)
        at += height_mm(shape)


def _spread(
    groups: list[list[Layer]], kitchen: Kitchen, floor: float, roof: float
) -> Iterator[Placed]:
    """Lay groups with as much of the filler under, between and over them."""
    taken = sum(
        height_mm(_own_shape(layer, kitchen)) for group in groups for layer in group
    )
    gap = (roof - floor - taken) / (len(groups) + 1)
    at = floor + gap
    for group in groups:
        for part in _stacked(group, kitchen, at):
            yield replace(part, said=False)
            at = part.top
        at += gap


def _as_said(
    spread: Iterator[Placed], known: dict[str, Placed], hollow: float
) -> Iterator[Placed]:
    """Move those whose line says where they stand; each may refer to one before it."""
    for part in spread:
        moved = part
        if part.layer.stands is not None:
            at = _at(part, part.layer.stands, known, hollow)
            moved = part if at is None else replace(part, at=at, said=True)
        known[part.layer.component] = moved
        yield moved


def _at(
    part: Placed, stands: Stands, known: dict[str, Placed], hollow: float
) -> float | None:
    tall, apart = part.top - part.at, stands.apart.value
    if stands.of == BOTTOM:
        return apart
    if stands.of == OPEN_SIDE:
        return hollow - apart - tall
    other = known.get(stands.of)
    if other is None:
        return None
    if other.at >= part.at:
        return other.at - apart - tall
    return other.top + apart


def _own_shape(layer: Layer, kitchen: Kitchen) -> Shape:
    if isinstance(layer.fill, FromMould):
        return mould_of(kitchen, layer.fill.mould).shape
    assert isinstance(layer.fill, Cut)
    return layer.fill.shape


def _along(part: Placed, cavity: Shape) -> Placed:
    long, wide = box_sides_mm(part.shape)
    room_long, room_wide = box_sides_mm(cavity)
    if (long >= wide) is (room_long >= room_wide):
        return part
    return replace(part, shape=_turned_round(part.shape))


def _turned_round(shape: Shape) -> Shape:
    """Turn a body a quarter about its axis: what was long is wide."""
    match shape:
        case Box(length_mm=length, width_mm=width):
            return replace(shape, length_mm=width, width_mm=length)
        case CutEllipsoid(half_length_mm=length, half_width_mm=width):
            return replace(shape, half_length_mm=width, half_width_mm=length)
        case Oval(length_mm=length, width_mm=width):
            return replace(
                shape,
                length_mm=width,
                width_mm=length,
                small_length_mm=shape.small_width_mm,
                small_width_mm=shape.small_length_mm,
            )
        case _:
            return shape
