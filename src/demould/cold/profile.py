"""Which outline stands for a piece: half-sections to be turned about their axis.

SI, metres. A profile runs from the axis at the bottom to the axis at the top, so the
body lies on its left. Real pieces that are not round are replaced level by level by the
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
        For fewer than three points, ends off the axis, a radius below 0, or an outline
        that runs downwards as a whole (nothing on its left).
    """
    profile = tuple((float(r), float(z)) for r, z in points)
    if len(profile) < 3:
        raise ValueError(f"a profile of {len(profile)} points; it takes at least 3")
    if profile[0][0] != 0 or profile[-1][0] != 0:
        raise ValueError("a profile must start and end on the axis, at radius 0")
    if min(r for r, _ in profile) < 0:
        raise ValueError("a profile has a radius below 0")
    if volume(profile) <= 0:
        raise ValueError("a profile must run from the bottom of the axis to the top")
    return profile


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
