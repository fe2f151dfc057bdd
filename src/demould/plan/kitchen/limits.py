"""What a kitchen has a limited number of, and how much of it a step takes."""

from collections import Counter
from collections.abc import Iterator

from demould.amounts.shape.volume import mould_of
from demould.amounts.tools.tray import on_a_tray, trays_for
from demould.mise.component import Component
from demould.mise.dessert import Cut, Dessert, FromMould
from demould.mise.kitchen import ColdPlace, Kitchen
from demould.mise.shape import Shape, WaterOnly
from demould.plan.problem.steps import Resource


def resources(kitchen: Kitchen) -> Iterator[Resource]:
    """Walk moulds, tools, jugs, cycles of the cold and its shelves."""
    for mould in kitchen.moulds:
        yield Resource(name=f"mould:{mould.key}", capacity=mould.trays)
    for tool in kitchen.tools:
        yield Resource(name=f"tool:{tool.key}", capacity=1)
    jugs = Counter(jug.diameter.value for jug in kitchen.jugs)
    for width, count in jugs.items():
        yield Resource(name=jug_name(width), capacity=count)
    for place in kitchen.cold:
        if place.load is not None:
            yield Resource(name=f"cold:{place.key}", capacity=int(place.load.value))
        if place.shelves is not None:
            yield Resource(name=f"shelf:{place.key}", capacity=place.shelves.count)


def jug_name(width_mm: float) -> str:
    """Name the resource of all jugs of one width."""
    return f"jug:{width_mm:g} mm"


def shape_of(
    kitchen: Kitchen, dessert: Dessert, component: Component | None
) -> Shape | None:
    """Give what stands in the cold: the piece, a part in its shape, or None: a pot."""
    if component is None:
        return mould_of(kitchen, dessert.mould).shape
    for layer in dessert.layers:
        if layer.component == component.key:
            match layer.fill:
                case Cut(shape=shape):
                    return shape
                case FromMould(mould=mould):
                    return mould_of(kitchen, mould).shape
    return None


def in_the_cold(
    kitchen: Kitchen, key: str, shape: Shape | None, pieces: int, grams: int
) -> dict[str, int]:
    """Give what so many pieces take of a cold place: shelves, and of a load its grams."""
    place = next((one for one in kitchen.cold if one.key == key), None)
    if place is None:
        return {}
    taken = {f"cold:{key}": grams} if place.load is not None else {}
    shelves = shelves_for(place, shape, pieces)
    return taken | ({f"shelf:{key}": shelves} if shelves else {})


def shelves_for(place: ColdPlace, shape: Shape | None, pieces: int) -> int:
    """Count the shelves for so many pieces side by side; a pot takes one.

    Each is turned the way that fits more. 0 where nobody said what shelves there are.
    """
    if place.shelves is None:
        return 0
    if shape is None or isinstance(shape, WaterOnly):
        return 1
    shelf = (place.shelves.length_mm, place.shelves.width_mm)
    return trays_for(pieces, on_a_tray(shelf, shape))
