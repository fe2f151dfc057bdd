"""Which outline stands for a piece: half-sections to be turned about their axis.

SI, metres. A profile runs from the axis at the bottom to the axis at the top, so the
body lies on its left; a ring's runs once round its section and ends where it began, and
so does that of an endless bar, whose sections are not turned. Real pieces that are not round are replaced level by level by the
circle of the same area: same height, same volume, a little less surface.
"""

import math
from collections.abc import Sequence
from itertools import pairwise

Profile = tuple[tuple[float, float], ...]


def checked(points: Sequence[tuple[float, float]]) -> Profile:
    """Give a sound profile, or say why these points are none.

    Raises
    ------
    ValueError
        For fewer than three points, ends off the axis that do not meet, a radius below
        0, or an outline that runs the wrong way round (nothing on its left).
    """
    profile = tuple((float(r), float(z)) for r, z in points)
    if len(profile) < 3:
        raise ValueError(f"a profile of {len(profile)} points; it takes at least 3")
    if not closed(profile) and (profile[0][0] != 0 or profile[-1][0] != 0):
        raise ValueError("a profile must start and end on the axis, at radius 0")
    if min(r for r, _ in profile) < 0:
        raise ValueError("a profile has a radius below 0")
    if volume(profile) <= 0:
        raise ValueError("a profile must run from the bottom of the axis to the top")
    return profile


def closed(profile: Profile) -> bool:
    """Whether the outline runs once round and ends where it began."""
    return profile[0] == profile[-1]


def section_area(profile: Profile) -> float:
    """Area between outline and axis, or within a closed outline [m2]."""
    return sum((z1 - z0) * (r0 + r1) / 2 for (r0, z0), (r1, z1) in pairwise(profile))


def middle(profile: Profile) -> tuple[float, float]:
    """The middle of a body: half way up its axis, or of a closed outline's frame [m]."""
    if not closed(profile):
        return 0.0, (profile[0][1] + profile[-1][1]) / 2
    r, z = zip(*profile, strict=True)
    return (min(r) + max(r)) / 2, (min(z) + max(z)) / 2


def volume(profile: Profile) -> float:
    """Volume of the turned body [m3]."""
    return math.pi * sum(
        (z1 - z0) * (r0 * r0 + r0 * r1 + r1 * r1) / 3
        for (r0, z0), (r1, z1) in pairwise(profile)
    )


def area(profile: Profile) -> float:
    """Whole surface of the turned body [m2]."""
    return math.pi * sum(
        (r0 + r1) * math.hypot(r1 - r0, z1 - z0)
        for (r0, z0), (r1, z1) in pairwise(profile)
    )


def raised(profile: Profile, by: float) -> Profile:
    """Give the same body `by` higher [m]."""
    return tuple((r, z + by) for r, z in profile)


def cylinder(diameter: float, height: float) -> Profile:
    """Standing on z = 0 [m]."""
    return checked([(0, 0), (diameter / 2, 0), (diameter / 2, height), (0, height)])


def sphere(diameter: float, chords: int = 48) -> Profile:
    """Resting on z = 0; the chords are pushed out until the volume is exact [m]."""
    angles = [math.pi * n / chords for n in range(chords + 1)]
    arc = [(math.sin(a), 1 - math.cos(a)) for a in angles]
    return _swollen(arc, diameter / 2, math.pi / 6 * diameter**3)


def half_sphere(diameter: float, chords: int = 24) -> Profile:
    """Flat side down on z = 0; volume exact [m]."""
    angles = [math.pi / 2 * n / chords for n in range(chords + 1)]
    arc = [(0.0, 0.0), *((math.cos(a), math.sin(a)) for a in angles)]
    return _swollen(arc, diameter / 2, math.pi / 12 * diameter**3)


def dome(radius: float, straight: float, chords: int = 24) -> Profile:
    """A cylinder with a half-sphere on top, standing on z = 0 [m]."""
    cap = half_sphere(2 * radius, chords)[1:]
    return checked([(0, 0), (cap[0][0], 0), *raised(cap, straight)])


def ring(inner: float, outer: float, height: float) -> Profile:
    """A flat ring of two diameters, standing on z = 0 [m]."""
    r, s = inner / 2, outer / 2
    return checked([(r, 0), (s, 0), (s, height), (r, height), (r, 0)])


def bar(points: Sequence[tuple[float, float]]) -> Profile:
    """Close a bar's section and turn it the right way round; any x, upright y [m].

    Raises
    ------
    ValueError
        For fewer than three points, or sides that cross or enclose nothing.
    """
    outline = [(float(x), float(y)) for x, y in points]
    if len(outline) > 1 and outline[0] == outline[-1]:
        outline.pop()
    if len(outline) < 3:
        raise ValueError(f"a section of {len(outline)} corners; it takes at least 3")
    around = (*outline, outline[0])
    area = section_area(around)
    if area == 0 or _crosses(around):
        raise ValueError("a section must enclose something, its sides never crossing")
    return around if area > 0 else around[::-1]


def halves(bars: Sequence[Profile]) -> list[Profile] | None:
    """Right halves of sections that are mirrored about one upright line, or None.

    They run from that line, the new axis at radius 0, at the bottom to it at the top.
    """
    x = [point[0] for point in bars[0]]
    axis = (min(x) + max(x)) / 2
    found = [_half(profile, axis) for profile in bars]
    return None if None in found else [half for half in found if half is not None]


def _half(profile: Profile, axis: float) -> Profile | None:
    near = 1e-9 * max(abs(p[0] - axis) + abs(p[1]) for p in profile)
    corners = [(x - axis, y) for x, y in profile[:-1]]
    if any(
        min(abs(-x - u) + abs(y - v) for u, v in corners) > near for x, y in corners
    ):
        return None
    path = [_on_axis(a, b) for a, b in pairwise([*corners, corners[0]])]
    points = [
        point for pair in zip(corners, path, strict=True) for point in pair if point
    ]
    kept = [(0.0 if abs(x) <= near else x, y) for x, y in points if x >= -near]
    touching = sorted({point for point in kept if point[0] == 0}, key=lambda p: p[1])
    if len(touching) != 2:
        return None
    begin = kept.index(touching[0])
    return checked(list(dict.fromkeys(kept[begin:] + kept[:begin])))


def _on_axis(
    a: tuple[float, float], b: tuple[float, float]
) -> tuple[float, float] | None:
    if a[0] * b[0] >= 0:
        return None
    return 0.0, a[1] + a[0] / (a[0] - b[0]) * (b[1] - a[1])


def _crosses(outline: Profile) -> bool:
    """Whether two sides of a closed outline cross away from shared corners."""
    sides = list(pairwise(outline))
    return any(
        _side(a, b, c) * _side(a, b, d) < 0 and _side(c, d, a) * _side(c, d, b) < 0
        for n, (a, b) in enumerate(sides)
        for c, d in sides[n + 2 :]
    )


def _side(
    a: tuple[float, float], b: tuple[float, float], c: tuple[float, float]
) -> float:
    return (b[0] - a[0]) * (c[1] - a[1]) - (b[1] - a[1]) * (c[0] - a[0])


def turned(
    levels: Sequence[tuple[float, float]], holding: float | None = None
) -> Profile:
    """Turn a body known by its level cross-sections: circles of the same area.

    Parameters
    ----------
    levels
        (height, area of the level section there), heights rising. [m, m2] Between two
        levels the radius runs straight.
    holding
        The volume it is known to have: all radii are stretched alike to it. [m3]
    """
    heights = [z for z, _ in levels]
    if len(levels) < 2 or any(above <= below for below, above in pairwise(heights)):
        raise ValueError("levels must be two or more, each higher than the one before")
    if min(a for _, a in levels) < 0:
        raise ValueError("a level has an area below 0")
    outline = [(math.sqrt(a / math.pi), z) for z, a in levels]
    profile = checked(
        [
            *([(0.0, heights[0])] if outline[0][0] > 0 else []),
            *outline,
            *([(0.0, heights[-1])] if outline[-1][0] > 0 else []),
        ]
    )
    stretch = 1.0 if holding is None else math.sqrt(holding / volume(profile))
    return tuple((stretch * r, z) for r, z in profile)


def _swollen(
    arc: Sequence[tuple[float, float]], radius: float, wanted: float
) -> Profile:
    points = [(abs(r) * radius if r > 1e-12 else 0.0, z * radius) for r, z in arc]
    share = (wanted / volume(tuple(points))) ** (1 / 3)
    return checked([(share * r, share * z) for r, z in points])
