"""How many pieces stand on a tray, a shelf or in a box, side by side."""

import math

from demould.amounts.shape.section import box_mm
from demould.mise.shape import Shape

GAP_MM = 20.0
"""Left between two pieces on a tray, so that air gets round them. Common practice."""


def on_a_tray(
    tray_mm: tuple[float, float], shape: Shape, gap_mm: float = GAP_MM
) -> int:
    """Count pieces in rows, each with its gap, turned the way that takes more.

    >>> from demould.mise.shape import Box
    >>> on_a_tray((600, 400), Box(length_mm=80, width_mm=56, height_mm=34))
    30
    """
    if gap_mm < 0:
        raise ValueError(f"a gap of {gap_mm:g} mm; it must be 0 or more")
    long, wide, _ = box_mm(shape)
    return max(
        _rows(tray_mm, (long, wide), gap_mm), _rows(tray_mm, (wide, long), gap_mm)
    )


def _rows(
    tray_mm: tuple[float, float], piece_mm: tuple[float, float], gap_mm: float
) -> int:
    along, across = (
        math.floor(room / (size + gap_mm) + 1e-9)
        for room, size in zip(tray_mm, piece_mm, strict=True)
    )
    return along * across


def trays_for(pieces: int, on_one: int) -> int:
    """Count trays, or boxes, for so many pieces; one where a piece is larger than it."""
    return math.ceil(pieces / max(1, on_one))
