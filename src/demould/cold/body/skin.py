"""What a piece shows to the air: its outline in pieces, each with its share of wall.

SI. A wall lies outside every surface but open flat faces; its outer outline is the
piece's own, moved out by the thickness, so that the film acts on the true outer area.
"""

from collections.abc import Sequence
from dataclasses import dataclass
from itertools import pairwise
from typing import Literal

import numpy as np

from demould.cold.body.cut import Floats, Pieces, Whole
from demould.cold.body.profile import Profile, closed

FlatFace = Literal["bottom", "top"]
FACES = ("bottom", "top", "other")
OTHER = 2
SIDEWAYS = 1e-6
LEVEL = 1e-9


@dataclass(frozen=True, slots=True, kw_only=True)
class Wall:
    """A mould's wall [m, W/(m K), kg/m3, J/(kg K)]."""

    thickness: float
    conductivity: float
    density: float
    heat_capacity: float

    def __post_init__(self) -> None:
        if min(self.thickness, self.conductivity) <= 0:
            raise ValueError("a wall must have a thickness and a conductivity over 0")
        if min(self.density, self.heat_capacity) < 0:
            raise ValueError("a wall has a density or a heat capacity below 0")


@dataclass(frozen=True, slots=True, kw_only=True)
class Rim:
    """Pieces of outside surface, one for each cell and face. All of shape (p,).

    Attributes
    ----------
    cell
        The cell behind each.
    face
        0 bottom, 1 top (flat ends), 2 other: the order of `FACES`.
    area, outer_area
        Of the piece itself, and of the wall's outside. [m2]
    depth
        From the cell's centre to the surface, across it. [m]
    radial
        How far it faces outward from the axis: 1, or along it: 0.
    wall_resistance, wall_capacity
        Through the whole wall, and what it holds. [K/W, J/K] 0 where bare.
    """

    cell: Whole
    face: Whole
    area: Floats
    outer_area: Floats
    depth: Floats
    radial: Floats
    wall_resistance: Floats
    wall_capacity: Floats


def flat_faces(profile: Profile) -> tuple[FlatFace, ...]:
    """Which ends of a body are flat, and may be left open."""
    faces = _faces(profile)
    ends: tuple[FlatFace, ...] = ("bottom", "top")
    return tuple(end for end in ends if FACES.index(end) in faces)


def rim_of(
    profile: Profile,
    pieces: Pieces,
    cell: Whole,
    depth: Floats,
    *,
    wall: Wall | None,
    open_faces: Sequence[FlatFace],
    endless: bool,
    flat: bool,
) -> Rim:
    """Dress the outline's pieces with the wall.

    Resistance is thickness / (k sqrt(inner area x outer area)): exact for a sphere and
    a flat face, within 0.02 % for a cylinder with a wall a tenth of its radius. An
    `endless` bar has areas of a metre; `flat` leaves only flat bottoms and tops.

    Raises
    ------
    ValueError
        If a face said to be open is not there.
    """
    faces = _faces(profile)
    thickness = np.full(faces.size, 0.0 if wall is None else wall.thickness)
    for face in open_faces:
        opened = faces == FACES.index(face)
        if not opened.any():
            raise ValueError(f"there is no flat {face} to leave open")
        thickness[opened] = 0.0
    if flat:
        thickness[faces == OTHER] = 0.0
        seen = faces[pieces.segment] != OTHER
        pieces = Pieces(*(field[seen] for field in pieces))
        cell, depth = cell[seen], depth[seen]
    thick = thickness[pieces.segment]
    outer, volume = pieces.area, np.zeros_like(pieces.area)
    if wall is not None:
        ends = _outer_ends(profile, thickness, pieces)
        outer = np.where(thick > 0, _areas(*ends, endless=endless), outer)
        corners = (pieces.start, pieces.end, *ends[::-1])
        volume = _volumes(corners, endless=endless)
    conductivity = 1.0 if wall is None else wall.conductivity
    heat = 0.0 if wall is None else wall.density * wall.heat_capacity
    return _gathered(
        Rim(
            cell=cell,
            face=faces[pieces.segment],
            area=pieces.area,
            outer_area=outer,
            depth=depth,
            radial=pieces.outward[:, 0] ** 2,
            wall_resistance=thick / (conductivity * np.sqrt(pieces.area * outer)),
            wall_capacity=np.where(thick > 0, heat * volume, 0.0),
        )
    )


def _gathered(rim: Rim) -> Rim:
    """Make one of all pieces that lie before a cell on one face, walled or bare alike.

    Side by side: areas, capacities and conductances add up.
    """
    walled = rim.wall_resistance > 0
    kind = (rim.cell * len(FACES) + rim.face) * 2 + walled
    _, first, which = np.unique(kind, return_index=True, return_inverse=True)
    area, outer, depth, radial, capacity = (
        np.bincount(which, each).astype(np.float64)
        for each in (
            rim.area,
            rim.outer_area,
            rim.area * rim.depth,
            rim.area * rim.radial,
            rim.wall_capacity,
        )
    )
    passes = np.divide(
        1.0, rim.wall_resistance, where=walled, out=np.zeros_like(rim.area)
    )
    passes = np.bincount(which, passes)
    return Rim(
        cell=rim.cell[first],
        face=rim.face[first],
        area=area,
        outer_area=outer,
        depth=depth / area,
        radial=radial / area,
        wall_resistance=np.divide(
            1.0, passes, where=passes > 0, out=np.zeros_like(passes)
        ),
        wall_capacity=capacity,
    )


def _normals(points: Floats) -> Floats:
    run = points[1:] - points[:-1]
    ahead = run / np.hypot(*run.T)[:, None]
    return np.stack([ahead[:, 1], -ahead[:, 0]], axis=1)


def _faces(profile: Profile) -> Whole:
    """Index into `FACES` of each side of an outline."""
    points = np.array(profile)
    upward = _normals(points)[:, 1]
    at = points[:-1, 1]
    flat_bottom = (upward < -1 + SIDEWAYS) & (at <= at.min() + LEVEL)
    flat_top = (upward > 1 - SIDEWAYS) & (at >= points[:, 1].max() - LEVEL)
    return np.where(flat_bottom, 0, np.where(flat_top, 1, 2))


def _outer_ends(
    profile: Profile, thickness: Floats, pieces: Pieces
) -> tuple[Floats, Floats]:
    """Both ends of each piece on the outer outline. [m] Shapes (p, 2)."""
    points = np.array(profile)
    normals = _normals(points)
    # At its ends an outline goes on as its mirror image, or as itself where it closes.
    last, first = normals[-1:], normals[:1]
    if not closed(profile):
        last, first = first * [-1.0, 1.0], last * [-1.0, 1.0]
    before = np.concatenate([last, normals])
    after = np.concatenate([normals, first])
    ends = thickness[[-1, 0]] if closed(profile) else thickness[[0, -1]]
    d_before = np.concatenate([ends[:1], thickness])
    d_after = np.concatenate([thickness, ends[1:]])
    turn = before[:, 0] * after[:, 1] - before[:, 1] * after[:, 0]
    straight = np.abs(turn) < SIDEWAYS
    by = np.where(straight, 1.0, turn)
    moved_r = (d_before * after[:, 1] - d_after * before[:, 1]) / by
    moved_z = (d_after * before[:, 0] - d_before * after[:, 0]) / by
    along = after * ((d_before + d_after) / 2)[:, None]
    moved = np.where(straight[:, None], along, np.stack([moved_r, moved_z], axis=1))
    corners = points + moved
    a, run = corners[:-1][pieces.segment], np.diff(corners, axis=0)[pieces.segment]
    return a + pieces.first[:, None] * run, a + pieces.last[:, None] * run


def _areas(start: Floats, end: Floats, *, endless: bool) -> Floats:
    run = end - start
    length = np.hypot(run[:, 0], run[:, 1])
    around = 1.0 if endless else np.pi * (start[:, 0] + end[:, 0])
    return np.asarray(length * around)


def _volumes(corners: Sequence[Floats], *, endless: bool) -> Floats:
    """Volume of each four-cornered bit of wall, turned or a metre long [m3]."""
    sides = pairwise([*corners, corners[0]])
    if endless:
        return np.abs(
            sum(((b[:, 1] - a[:, 1]) * (a[:, 0] + b[:, 0]) / 2 for a, b in sides), 0.0)
        )
    return np.abs(sum((_turned(a, b) for a, b in sides), 0.0))


def _turned(a: Floats, b: Floats) -> Floats:
    """Volume between sides and the axis, with the sign of their rise [m3]."""
    square = a[:, 0] ** 2 + a[:, 0] * b[:, 0] + b[:, 0] ** 2
    return np.asarray(np.pi / 3 * (b[:, 1] - a[:, 1]) * square)
