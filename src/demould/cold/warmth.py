"""How warm a piece is all through, at one moment on its way."""

from dataclasses import dataclass

from demould.cold.body.profile import Profile
from demould.cold.corners import likely_corner
from demould.cold.follow import follow
from demould.cold.piece import FrozenPiece, Place, mesh_for


@dataclass(frozen=True, slots=True, kw_only=True)
class Warmth:
    """The right half of a turned piece's section.

    Attributes
    ----------
    seconds
        Since it went in.
    outlines
        Of the piece, then of what lies in it. (m from the axis, m up)
    points, at_c
        Middles of its cells, and how warm each is. [m, °C]
    heart
        The middle of its core. [m]
    """

    seconds: float
    outlines: tuple[Profile, ...]
    points: tuple[tuple[float, float], ...]
    at_c: tuple[float, ...]
    heart: tuple[float, float]


def warmth_at(piece: FrozenPiece, place: Place, seconds: float) -> Warmth:
    """Follow the likely case that far."""
    done = follow(
        piece, place, likely_corner(place), until=seconds, done=lambda _: False
    )
    outlines = tuple(part.profile for part in piece.parts)
    mesh = mesh_for(piece)
    core = (piece.inside[0] if piece.inside else piece.body).profile
    low, high = min(z for _, z in core), max(z for _, z in core)
    return Warmth(
        seconds=seconds,
        outlines=outlines,
        points=tuple((float(r), float(z)) for r, z in mesh.centre),
        at_c=tuple(done.run.cells_c.tolist()),
        heart=(0.0, (low + high) / 2),
    )
