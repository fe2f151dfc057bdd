"""A piece as one thing: what it weighs, and how warm it is once it has evened out."""

import numpy as np

from demould.cold.body.profile import volume
from demould.cold.piece import FrozenPiece, thermal_of
from demould.matter.heat import Thermal

COLDEST_C, WARMEST_C = -60.0, 60.0


def masses_kg(piece: FrozenPiece) -> tuple[float, ...]:
    """Kilograms of each part, the body without what lies in it."""
    inside = [volume(part.profile) for part in piece.inside]
    volumes = [volume(piece.body.profile) - sum(inside), *inside]
    return tuple(
        piece.times * held * thermal.density
        for held, thermal in zip(volumes, _tables(piece), strict=True)
    )


def mass_kg(piece: FrozenPiece) -> float:
    """Kilograms of the whole piece, without its mould."""
    return sum(masses_kg(piece))


def heat_j(piece: FrozenPiece, at_c: float) -> float:
    """What all of it holds at one temperature, over all of it liquid at 0 °C [J]."""
    return _sum(piece, [at_c] * len(piece.parts))


def start_heat_j(piece: FrozenPiece) -> float:
    """What it holds as it goes in, each part at its own start [J]."""
    return _sum(piece, [part.start_c for part in piece.parts])


def even_c(piece: FrozenPiece, joules: float) -> float:
    """How warm it is when that much heat is the same everywhere [°C].

    Between -60 and 60 °C; what lies beyond is given as the nearer end.
    """
    low, high = COLDEST_C, WARMEST_C
    for _ in range(40):
        middle = (low + high) / 2
        low, high = (middle, high) if heat_j(piece, middle) < joules else (low, middle)
    return (low + high) / 2


def _sum(piece: FrozenPiece, at_c: list[float]) -> float:
    return sum(
        mass * float(np.interp(each, thermal.at_c, thermal.enthalpy))
        for mass, each, thermal in zip(
            masses_kg(piece), at_c, _tables(piece), strict=True
        )
    )


def _tables(piece: FrozenPiece) -> tuple[Thermal, ...]:
    return tuple(
        thermal_of(part.made_of, part.air, fat_sets=piece.fat_sets)
        for part in piece.parts
    )
