"""What is written beside a cut, and where each line belongs."""

from collections.abc import Iterator

import numpy as np

from demould.amounts.layers.piece import Part
from demould.amounts.layers.wall import Wall
from demould.amounts.shape.curve import Floats
from demould.amounts.shape.section import box_mm
from demould.mise.dessert import Dessert, Finish, Rest, component_of
from demould.mise.shape import Box, Shape
from demould.mise.words import Words
from demould.sheets.drawing.cut import Cut
from demould.sheets.drawing.labels import Note
from demould.sheets.drawing.picture import Point
from demould.sheets.drawing.plane import half_width

LEVELS = np.linspace(0.08, 0.92, 13)
ROOM_TO_POINT_MM = 1.2
NEWS_MM = 0.25
ROUND_WITHIN_MM = 0.05


def names(cut: Cut) -> Iterator[Note]:
    """Give the notes on the right: what each part is, its size and its grams."""
    by_way = {(part.component, part.how): part for part in cut.parts}
    for face, hole, wall in zip(cut.faces, cut.holes, cut.walls, strict=True):
        key = wall.part.layer.component
        held = by_way.get((key, "cut")) or by_way[key, "mould"]
        yield Note(
            text=str(
                Words(
                    "{nth} {name}, {size}, {g:.1f} g",
                    nth=_nth(cut.dessert, key),
                    name=component_of(cut.dessert, key).name,
                    size=size(wall.part.shape),
                    g=held.grams.value,
                )
            ),
            spots=_inside(face, hole),
        )
    for part in cut.parts:
        if part.how == "rest":
            yield Note(text=_filler(cut, part), spots=_between(cut))
    films = {(one.component): one for one in cut.dessert.finish}
    for part in cut.parts:
        finish = films.get(part.component)
        if finish is not None and part.how in ("dip", "glaze", "spray"):
            yield Note(text=_coat(cut, finish, part), spots=_edge(cut), left=True)


def size(shape: Shape) -> Words:
    """Say how large a part is, as it would be measured."""
    long, wide, high = box_mm(shape)
    if abs(long - wide) < ROUND_WITHIN_MM and not isinstance(shape, Box):
        return Words(
            "{across:.3g} mm across, {high:.3g} mm high", across=long, high=high
        )
    return Words(
        "{long:.3g} x {wide:.3g} x {high:.3g} mm", long=long, wide=wide, high=high
    )


def _filler(cut: Cut, part: Part) -> str:
    return str(
        Words(
            "{nth} {name}, {ml:.1f} ml, {g:.1f} g",
            nth=_nth(cut.dessert, part.component),
            name=component_of(cut.dessert, part.component).name,
            ml=part.volume.value,
            g=part.grams.value,
        )
    )


def _coat(cut: Cut, finish: Finish, part: Part) -> str:
    return str(
        Words(
            "{name}, {mm:g} mm, {g:.1f} g",
            name=component_of(cut.dessert, finish.component).name,
            mm=finish.film.value,
            g=part.grams.value,
        )
    )


def _nth(dessert: Dessert, key: str) -> str:
    """When it goes in: "1, 3" for a filler in two goes."""
    at = [n for n, one in enumerate(dessert.layers, start=1) if one.component == key]
    return ", ".join(map(str, at)) + "."


def wall_notes(cut: Cut) -> Iterator[Note]:
    """Give the notes on the left: how thick what lies round each part is."""
    for face, here, wall in zip(cut.faces, cut.gaps, cut.walls, strict=True):
        if here is None:
            if wall.sides > NEWS_MM:
                yield Note(
                    text=_beside(cut, wall), spots=_by_the_rim(cut, face), left=True
                )
            continue
        middle = (
            (here.inner[0] + here.outer[0]) / 2,
            (here.inner[1] + here.outer[1]) / 2,
        )
        yield Note(
            text=_round(cut, wall, here.mm), spots=((-middle[0], middle[1]),), left=True
        )
        if wall.towards_bottom > wall.least.value + NEWS_MM:
            level = float(face[:, 1].min()) - wall.towards_bottom / 2
            under = half_width(face, float(face[0, 1])) or float(face[:, 0].max())
            yield Note(text=_under(cut, wall), spots=((-under / 2, level),), left=True)


def _round(cut: Cut, wall: Wall, here: float) -> str:
    name = component_of(cut.dessert, wall.part.layer.component).name
    least = wall.least.value
    if wall.spots is None:
        said = Words("{name} sticks out by {mm:.1f} mm", name=name, mm=-least)
    elif wall.will_show:
        said = Words("wall {mm:.1f} mm round {name}: it will show", mm=least, name=name)
    else:
        said = Words("wall {mm:.1f} mm round {name}", mm=least, name=name)
    if abs(here - least) > NEWS_MM and wall.spots is not None:
        return f"{said}, {Words('{mm:.1f} mm in this cut', mm=here)}"
    return str(said)


def _under(cut: Cut, wall: Wall) -> str:
    return str(
        Words(
            "{mm:.1f} mm under {name}",
            mm=wall.towards_bottom,
            name=component_of(cut.dessert, wall.part.layer.component).name,
        )
    )


def _beside(cut: Cut, wall: Wall) -> str:
    return str(
        Words(
            "{mm:.1f} mm beside {name}",
            mm=wall.sides,
            name=component_of(cut.dessert, wall.part.layer.component).name,
        )
    )


def _inside(face: Floats, hole: Floats | None) -> tuple[Point, ...]:
    low, high = float(face[:, 1].min()), float(face[:, 1].max())
    levels = low + (high - low) * LEVELS
    return tuple(
        (_between_faces(face, hole, up), up)
        for up in sorted(levels, key=lambda up: abs(up - (low + high) / 2))
    )


def _between_faces(face: Floats, hole: Floats | None, up: float) -> float:
    within = 0.0 if hole is None else half_width(hole, up)
    return within + 0.75 * (half_width(face, up) - within)


def _between(cut: Cut) -> tuple[Point, ...]:
    """Places in the filler, where it is thickest first."""
    found = []
    for up in LEVELS * cut.high:
        outside = half_width(cut.cavity, up)
        inside = max(
            (half_width(face, up) for face in (*cut.faces, *_hollow(cut))), default=0.0
        )
        edges = (
            edge for face in cut.faces for edge in (face[:, 1].min(), face[:, 1].max())
        )
        apart = min((abs(up - edge) for edge in edges), default=outside)
        room = outside - inside if inside else min(outside, 2 * float(apart))
        found.append((room, ((outside + inside) / 2, float(up))))
    roomy = [
        spot for room, spot in sorted(found, reverse=True) if room > ROOM_TO_POINT_MM
    ]
    return tuple(roomy) or (found[0][1],)


def _hollow(cut: Cut) -> tuple[Floats, ...]:
    return () if cut.hole is None else (cut.hole,)


def _edge(cut: Cut) -> tuple[Point, ...]:
    """Places on the outer face, high ones first."""
    return tuple(
        (-half_width(cut.cavity, up) - cut.coat_mm / 2, float(up))
        for up in LEVELS[::-1] * cut.high
    )


def _by_the_rim(cut: Cut, face: Floats) -> tuple[Point, ...]:
    low, high = float(face[:, 1].min()), float(face[:, 1].max())
    return tuple(
        (-(half_width(cut.cavity, up) + half_width(face, up)) / 2, up)
        for up in (low + (high - low) * share for share in (0.5, 0.3, 0.7))
    )


def fill_order(dessert: Dessert) -> Iterator[str]:
    """Say what goes in after what, as written."""
    for nth, layer in enumerate(dessert.layers, start=1):
        name = component_of(dessert, layer.component).name
        how = [layer.fill.words] if isinstance(layer.fill, Rest) else []
        said = "; ".join(part for part in (name, *how, *layer.remarks) if part)
        yield f"{nth}. {said}"
