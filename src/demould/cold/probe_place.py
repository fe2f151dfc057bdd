"""Where to stick a probe, what it must read, and what a few millimetres beside it cost."""

from dataclasses import dataclass
from itertools import pairwise

from demould.cold.body.profile import Profile
from demould.cold.body.skin import FlatFace
from demould.cold.piece import FrozenPiece
from demould.cold.wait import Wait

OFF = 0.005
"""How far a tip may sit from where it is meant to be [m]."""


@dataclass(frozen=True, slots=True, kw_only=True)
class ProbePlace:
    """The middle of the core, from the face a probe goes in by.

    `depth` straight in [m]; `share` is how far along from core to skin temperature a
    tip `OFF` beside the middle reads, by the square of its way to the nearest skin.
    """

    face: FlatFace
    depth: float
    share: float


@dataclass(frozen=True, slots=True, kw_only=True)
class Reads:
    """What a probe says at the end of a wait [°C]: in the middle, and 5 mm off it.

    `early_h` is how long before the end the second one says what the first is waited
    for to say.
    """

    middle_c: float
    off_c: float
    early_h: float


def probe_place(piece: FrozenPiece) -> ProbePlace:
    """By the face the mould leaves open, else by the top."""
    face: FlatFace = piece.open_faces[0] if piece.open_faces else "top"
    heart = piece.inside[0].profile if piece.inside else piece.body.profile
    middle = (min(z for _, z in heart) + max(z for _, z in heart)) / 2
    outline = piece.body.profile
    low, high = min(z for _, z in outline), max(z for _, z in outline)
    nearest = min(middle - low, high - middle, _radius(outline, middle))
    return ProbePlace(
        face=face,
        depth=high - middle if face == "top" else middle - low,
        share=min(1.0, (OFF / nearest) ** 2) if nearest > 0 else 1.0,
    )


def probe_reads(wait: Wait, place: ProbePlace) -> Reads:
    """Read both along the likely way, to the end of it."""
    off = [
        (hours, core + place.share * (skin - core))
        for hours, core, skin, _ in wait.curve
    ]
    hours, core, _, _ = wait.curve[-1]
    return Reads(
        middle_c=core, off_c=off[-1][1], early_h=hours - _last_passing(off, core)
    )


def _radius(outline: Profile, height: float) -> float:
    """Of the body at a height: the widest its outline is there [m]."""
    found = [
        r0 + (r1 - r0) * (height - z0) / (z1 - z0)
        for (r0, z0), (r1, z1) in pairwise(outline)
        if z0 != z1 and min(z0, z1) <= height <= max(z0, z1)
    ]
    return max(found, default=max(r for r, _ in outline))


def _last_passing(rows: list[tuple[float, float]], level: float) -> float:
    """When a reading last comes to a level before the end [h]."""
    for (t0, a), (t1, b) in reversed(list(pairwise(rows))):
        if (a - level) * (b - level) <= 0 and a != b:
            return t0 + (t1 - t0) * (level - a) / (b - a)
    return rows[-1][0]
