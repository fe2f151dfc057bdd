"""How thick the wall round each part of a piece is, at its thinnest."""

from dataclasses import dataclass, replace
from functools import lru_cache

from demould.amounts.layers.inside import room_beside_mm, sticks_out_mm
from demould.amounts.layers.place import Placed, placed
from demould.amounts.shape.gap import Nearest, nearest
from demould.amounts.shape.section import height_mm
from demould.amounts.shape.skin import hole_of, skin_of, standing
from demould.amounts.shape.volume import KEPT, mould_of, sizes
from demould.mise.dessert import Dessert, component_of
from demould.mise.figure import Assumed, Figure, Stated, worked
from demould.mise.kitchen import Kitchen
from demould.mise.mould import Mould
from demould.mise.shape import FreeForm, Shape, WaterOnly
from demould.mise.words import Words

WANTED_MM = 5.0
DRIFT = Figure(
    name="drift of a part as it is set in",
    value=1.0,
    unit="mm",
    origin=Assumed(low=0, high=3, source="common practice"),
)
TILT = Figure(
    name="one end of a part higher than meant",
    value=1.0,
    unit="mm",
    origin=Assumed(low=0, high=3, source="common practice"),
)
NEWS_MM = 0.5


@dataclass(frozen=True, slots=True, kw_only=True)
class Wall:
    """What lies round one part.

    Attributes
    ----------
    part
        The part and its place.
    least
        The least distance between its face and the cavity's, below 0 where it sticks
        out. [mm]
    at_worst
        The least once it has drifted and tilted. [mm]
    sides
        The least level room beside it. [mm]
    towards_bottom, towards_open
        Room to the next part or to the cavity's bottom, and to the next part or to the
        open side, along the axis. [mm]
    spots
        Where the least distance is, or None where it sticks out.
    """

    part: Placed
    least: Figure
    at_worst: Figure
    sides: float
    towards_bottom: float
    towards_open: float
    spots: Nearest | None

    @property
    def will_show(self) -> bool:
        """Whether it comes nearer to a coated face than is wanted."""
        return not self.part.flush and self.least.value < WANTED_MM - 0.05


def walls(
    dessert: Dessert, kitchen: Kitchen, drift: Figure = DRIFT, tilt: Figure = TILT
) -> tuple[Wall, ...]:
    """Give the walls round every part with a size, in the order filled.

    The open side is no wall: what lies flush there is meant to. Drift and tilt both
    bring a point of the part at most as much nearer as they say, and are taken off
    together.
    """
    mould = mould_of(kitchen, dessert.mould)
    parts = placed(dessert, kitchen)
    return tuple(_wall(dessert, mould, parts, part, drift, tilt) for part in parts)


def _wall(
    dessert: Dessert,
    mould: Mould,
    parts: tuple[Placed, ...],
    part: Placed,
    drift: Figure,
    tilt: Figure,
) -> Wall:
    below, above = _between(parts, part, height_mm(mould.shape))
    name = component_of(dessert, part.layer.component).name
    spots = _nearest(part, mould)
    mm = -sticks_out_mm(part, mould.shape) if spots is None else spots.mm
    least = _least(name, mm, part, mould, (below, above))
    rule = "the least wall less drift and tilt"
    return Wall(
        part=part,
        least=least,
        at_worst=worked(
            f"least wall round the {name}, at worst",
            mm - drift.value - tilt.value,
            "mm",
            rule,
            least,
            drift,
            tilt,
        ),
        sides=room_beside_mm(part, mould.shape),
        towards_bottom=part.at - below,
        towards_open=above - part.top,
        spots=spots,
    )


def _between(
    parts: tuple[Placed, ...], part: Placed, hollow: float
) -> tuple[float, float]:
    """Give the heights of what is next below and next above a part [mm]."""
    others = [one for one in parts if one is not part]
    below = [one.top for one in others if one.top <= part.at + 1e-9]
    above = [one.at for one in others if one.at >= part.top - 1e-9]
    return max(below, default=0.0), min(above, default=hollow)


def _nearest(part: Placed, mould: Mould) -> Nearest | None:
    if sticks_out_mm(part, mould.shape) > 0:
        return None
    return _nearest_of(part.shape, part.at, part.layer.turned_over, mould.shape)


@lru_cache(maxsize=KEPT)
def _nearest_of(
    part: Shape,
    at_mm: float,
    over: bool,  # noqa: FBT001  # one of what the answer is kept by
    cavity: Shape,
) -> Nearest:
    pairs = [(skin_of(part, lidded=True), skin_of(cavity))]
    own, hollow = hole_of(part), hole_of(cavity)
    if own is not None and hollow is not None:
        pairs.append((own, hollow))
    found = (
        nearest(standing(inner, at_mm, turned_over=over), outer)
        for inner, outer in pairs
    )
    return min(found, key=lambda one: one.mm)


def _least(
    name: str, mm: float, part: Placed, mould: Mould, room: tuple[float, float]
) -> Figure:
    line = part.layer.line
    low, high = room[0], max(room[0], room[1] - height_mm(part.shape))
    said = Stated(line=line)
    guessed = Assumed(low=min(low, part.at), high=max(high, part.at), line=line)
    at = Figure(
        name=f"height of the {name} over the bottom",
        value=part.at,
        unit="mm",
        origin=said if part.said else guessed,
    )
    called = f"least wall round the {name}"
    if isinstance(mould.shape, WaterOnly | FreeForm):
        bounds = Assumed(low=min(0.0, mm), high=max(1.5 * mm, 0.0), line=mould.line)
        return Figure(name=called, value=mm, unit="mm", origin=bounds)
    return worked(
        called,
        mm,
        "mm",
        "least distance between the faces of the part and of the cavity",
        *sizes(part.shape, line),
        *sizes(mould.shape, mould.line),
        at,
    )


def better_height(dessert: Dessert, kitchen: Kitchen, wall: Wall) -> Wall | None:
    """The wall with the part let down or pushed up as far as it goes, if that helps.

    None where neither gives half a millimetre more.
    """
    mould = mould_of(kitchen, dessert.mould)
    tries = [
        replace(wall.part, at=wall.part.at - wall.towards_bottom, said=True),
        replace(wall.part, at=wall.part.at + wall.towards_open, said=True),
    ]
    others = tuple(
        one
        for one in placed(dessert, kitchen)
        if one.layer.component != wall.part.layer.component
    )
    walls_there = [
        _wall(dessert, mould, (*others, one), one, DRIFT, TILT) for one in tries
    ]
    best = max(walls_there, key=lambda one: one.least.value)
    return best if best.least.value > wall.least.value + NEWS_MM else None


def will_show(dessert: Dessert, kitchen: Kitchen, wall: Wall) -> Words | None:
    """Say that a part will show, and where it would not."""
    if not wall.will_show:
        return None
    name = component_of(dessert, wall.part.layer.component).name
    near = max(0.0, wall.least.value)
    better = better_height(dessert, kitchen, wall)
    if better is None:
        return Words(
            "{part} is {near:.1f} mm under the face and will show; want {wanted:g} mm"
            " all round: take a smaller one",
            part=name,
            near=near,
            wanted=WANTED_MM,
        )
    return Words(
        "{part} is {near:.1f} mm under the face and will show; want {wanted:g} mm all"
        " round: {at:.1f} mm over the bottom of the mould gives {then:.1f} mm",
        part=name,
        near=near,
        wanted=WANTED_MM,
        at=better.part.at,
        then=better.least.value,
    )
