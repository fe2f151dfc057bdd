"""Which bodies a case describes: shapes as outlines, the insert in its place.

Lengths as written, in mm; outlines in metres.
"""

from collections.abc import Sequence
from dataclasses import dataclass
from itertools import pairwise
from typing import Literal

import numpy as np

from demould.cold.body.cut import Floats, holds
from demould.cold.body.profile import (
    Profile,
    bar,
    checked,
    cylinder,
    dome,
    half_sphere,
    halves,
    raised,
    section_area,
    sphere,
    volume,
)
from demould.cold.body.skin import FlatFace, flat_faces
from demould.mise.json_keys import Bounds, Keys, number, pairs, text
from demould.mise.json_keys import only as only_keys

SIZE = Bounds(above=0, most=10_000, unit="mm")
HEIGHT = Bounds(least=0, most=10_000, unit="mm")
SLAB_WIDTH = 1e-4
NEAR = 1e-3
Way = Literal["turned", "endless", "flat"]
KINDS: dict[str, tuple[str, ...]] = {
    "sphere": ("diameter_mm",),
    "half_sphere": ("diameter_mm",),
    "dome": ("radius_mm", "straight_mm"),
    "cylinder": ("diameter_mm", "height_mm"),
    "slab": ("thickness_mm",),
    "log": ("profile_mm",),
    "turned": ("profile_mm",),
}
WAYS: dict[str, Way] = {"slab": "flat", "log": "endless"}


@dataclass(frozen=True, slots=True, kw_only=True)
class Bodies:
    """Outlines of the piece and its insert, and what part of it they stand for.

    Attributes
    ----------
    profiles
        The piece first, its lowest point at height 0.
    way
        How they become bodies: turned about the axis, `endless` as sections of a bar,
        `flat` as a bar of which only bottom and top meet the air.
    times
        How often the bodies go into the whole: a whole turned piece, a metre of a bar,
        a square metre of a slab. [-]
    """

    profiles: tuple[Profile, ...]
    way: Way
    times: float

    @property
    def volume_ml(self) -> float:
        """Of the whole piece, of a metre of bar, of a square metre of slab."""
        body = self.profiles[0]
        part = volume(body) if self.way == "turned" else section_area(body)
        return part * self.times * 1e6

    @property
    def flat_faces(self) -> tuple[FlatFace, ...]:
        """Which of its ends the piece has flat."""
        return flat_faces(self.profiles[0])


def read_bodies(shape: Keys, insert: Keys | None) -> Bodies | None:
    """Read both shapes; None where something is wrong, which is then said."""
    before = len(shape.faults)
    kind, outer = _outline(shape, ())
    if insert is None:
        return _bodies(kind, [outer]) if outer and len(shape.faults) == before else None
    inner_kind, inner = _outline(insert, ("bottom_mm",))
    at = number(insert, "bottom_mm", HEIGHT)
    ways = {WAYS.get(each, "turned") for each in (kind, inner_kind) if each}
    if len(ways) > 1:
        insert.wrong(
            "kind",
            f"a {inner_kind} does not lie in a {kind}; in a log lies a log, in a slab a"
            " slab, and all other shapes in one another",
        )
    if outer is None or inner is None or len(shape.faults) > before:
        return None
    inner = raised(inner, at / 1000)
    if not within(inner, outer):
        insert.wrong(
            "bottom_mm",
            f"{at:g} puts the insert's outline outside the piece; it must lie inside"
            " or touch, so raise or lower it or make it smaller",
        )
        return None
    return _bodies(kind, [outer, inner])


def within(inner: Profile, outer: Profile) -> bool:
    """Whether a body lies in another, give or take a thousandth of its size."""
    around = np.array(outer)
    near = NEAR * float((around.max(axis=0) - around.min(axis=0)).max())
    points = [
        (a[0] + share * (b[0] - a[0]), a[1] + share * (b[1] - a[1]))
        for a, b in pairwise(inner)
        for share in (0.0, 0.5)
    ]
    return all(holds(around, r, z) or _away(around, r, z) <= near for r, z in points)


def _away(outline: Floats, r: float, z: float) -> float:
    """From a point to the nearest side of an outline [m]."""
    a, run = outline[:-1], outline[1:] - outline[:-1]
    square = (run**2).sum(axis=1)
    along = ((r - a[:, 0]) * run[:, 0] + (z - a[:, 1]) * run[:, 1]) / square
    nearest = a + np.clip(along, 0, 1)[:, None] * run
    return float(np.hypot(nearest[:, 0] - r, nearest[:, 1] - z).min())


def _bodies(kind: str, profiles: Sequence[Profile]) -> Bodies:
    way = WAYS.get(kind, "turned")
    if way == "flat":
        return Bodies(profiles=tuple(profiles), way=way, times=1 / SLAB_WIDTH)
    half = halves(profiles) if way == "endless" else None
    if half:
        return Bodies(profiles=tuple(half), way=way, times=2.0)
    if way == "endless":
        left = min(x for x, _ in profiles[0])
        moved = [tuple((x - left, y) for x, y in p) for p in profiles]
        return Bodies(profiles=tuple(moved), way=way, times=1.0)
    return Bodies(profiles=tuple(profiles), way=way, times=1.0)


def _outline(keys: Keys, more: tuple[str, ...]) -> tuple[str, Profile | None]:
    """Kind and outline, its lowest point at height 0."""
    kind = text(keys, "kind", KINDS)
    if not kind:
        return "", None
    only_keys(keys, ("kind", *KINDS[kind], *more))
    before = len(keys.faults)
    if kind in ("log", "turned"):
        return kind, _drawn(keys, kind)
    sizes = [
        number(keys, name, HEIGHT if name == "straight_mm" else SIZE) / 1000
        for name in KINDS[kind]
    ]
    if len(keys.faults) > before:
        return kind, None
    match kind:
        case "sphere":
            return kind, sphere(sizes[0])
        case "half_sphere":
            return kind, half_sphere(sizes[0])
        case "dome":
            return kind, dome(sizes[0], sizes[1])
        case "cylinder":
            return kind, cylinder(sizes[0], sizes[1])
        case _:
            return kind, cylinder(2 * SLAB_WIDTH, sizes[0])


def _drawn(keys: Keys, kind: str) -> Profile | None:
    what = "[x, y]" if kind == "log" else "[r, z]"
    before = len(keys.faults)
    points = pairs(keys, "profile_mm", what)
    if not points or len(keys.faults) > before:
        return None
    low = min(z for _, z in points)
    metres = [(r / 1000, (z - low) / 1000) for r, z in points]
    try:
        return bar(metres) if kind == "log" else checked(_once(metres))
    except ValueError as fault:
        keys.wrong("profile_mm", f"{fault}; write {what} in mm, in order")
        return None


def _once(points: Sequence[tuple[float, float]]) -> list[tuple[float, float]]:
    """The same outline without a point written twice running."""
    return [p for n, p in enumerate(points) if n == 0 or p != points[n - 1]]
