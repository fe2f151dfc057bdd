"""Bodies as meshes, made and measured by a geometry library."""

import math
from functools import cache
from typing import Any

import numpy as np
import trimesh

from demould.mise.shape import CutEllipsoid, Oval, Trough

FINENESS = 5


@cache
def _ball() -> Any:
    return trimesh.creation.icosphere(subdivisions=FINENESS)


def ball_deficit() -> float:
    """Share of its volume that the mesh of a ball lacks."""
    return float(1 - _ball().volume / (4 / 3 * math.pi))


def cut_mesh(cut: CutEllipsoid) -> Any:
    """The curved face of a cut ellipsoid: a ball, stretched and sliced, left open."""
    body = _ball().copy()
    body.apply_scale([cut.half_length_mm, cut.half_width_mm, cut.half_height_mm])
    return body.slice_plane([0, 0, cut.cut_mm], [0, 0, -1])


def cut_ellipsoid_mesh(cut: CutEllipsoid) -> float:
    """Volume under the sliced mesh: pyramids on its facets from a point in the cut, in mm3."""
    corners = cut_mesh(cut).triangles - np.array([0, 0, cut.cut_mm])
    return float(np.linalg.det(corners).sum() / 6)


def section_hull_mm2(cut: CutEllipsoid, over_widest_mm: float) -> float:
    """Area of a horizontal section of the whole mesh, as the hull of its corners, in mm2."""
    from shapely import MultiPoint

    body = _ball().copy()
    body.apply_scale([cut.half_length_mm, cut.half_width_mm, cut.half_height_mm])
    path = body.section(plane_origin=[0, 0, over_widest_mm], plane_normal=[0, 0, 1])
    return float(MultiPoint(path.vertices[:, :2]).convex_hull.area)


def oval_mesh(oval: Oval) -> Any:
    """A tapering oval as the hull of its two faces."""
    turns = np.linspace(0, 2 * np.pi, 720, endpoint=False)
    ring = np.column_stack((np.cos(turns) / 2, np.sin(turns) / 2))
    small = ring * [oval.small_length_mm, oval.small_width_mm]
    large = ring * [oval.length_mm, oval.width_mm]
    corners = np.vstack(
        (
            np.column_stack((small, np.zeros(720))),
            np.column_stack((large, np.full(720, oval.height_mm))),
        )
    )
    return trimesh.convex.convex_hull(corners)


def trough_mesh(trough: Trough) -> Any:
    """A log as the hull of its two ends."""
    radius = trough.width_mm / 2
    turns = np.linspace(np.pi, 2 * np.pi, 361)
    bow = np.column_stack((radius * np.cos(turns), radius + radius * np.sin(turns)))
    end = np.vstack((bow, [[-radius, trough.height_mm], [radius, trough.height_mm]]))
    near = np.column_stack((np.zeros(len(end)), end))
    far = np.column_stack((np.full(len(end), trough.length_mm), end))
    return trimesh.convex.convex_hull(np.vstack((near, far)))
