"""Where heat is kept and through which openings it passes: cut cells of a turned piece.

SI. Every grid cell that several bodies share is split into one cell a body, each with
its true volume, centre and openings; bodies meet along their true outline. Outside
surfaces end in `Rim` pieces, with the mould's wall on them where there is one.
"""

from collections.abc import Sequence
from dataclasses import dataclass, replace

import numpy as np

from demould.cold.body.cells import Cells, cells_at, cells_of, innermost
from demould.cold.body.cut import Floats, Whole
from demould.cold.body.links import Links, grid_links, joined, seam_links, way
from demould.cold.body.profile import Profile, closed, middle
from demould.cold.body.skin import FlatFace, Rim, Wall, rim_of

CORE_CELLS = 12
SLAB_CELLS = 40


@dataclass(frozen=True, slots=True, kw_only=True)
class Mesh:
    """Cells of a piece, in an order that keeps neighbours close.

    Attributes
    ----------
    body
        Which profile each cell belongs to. Shape (n,).
    volume, centre
        [m3] (n,), and (r, z) of the section's middle [m] (n, 2).
    core
        Weights that give the temperature in the middle of the core body. (n,)
    cell
        Largest side of a grid cell. [m]
    """

    body: Whole
    volume: Floats
    centre: Floats
    links: Links
    rim: Rim
    core: Floats
    cell: float


def mesh_of(
    profiles: Sequence[Profile],
    *,
    wall: Wall | None = None,
    open_faces: Sequence[FlatFace] = (),
    cell: float | None = None,
    endless: bool = False,
    flat: bool = False,
) -> Mesh:
    """Cut a piece into cells.

    Parameters
    ----------
    profiles
        The piece, then what lies in it; each later one inside an earlier one or beside
        the others. The core is the middle of the second, of the first if alone.
    wall
        Mould outside every surface but the flat faces in `open_faces`.
    cell
        Side of a grid cell [m]; without it, what makes about 170 cells.
    endless
        The profiles are sections of a bar, and everything is of one metre of it.
    flat
        Only flat bottoms and tops meet the air, as with slabs without end.

    Raises
    ------
    ValueError
        If a body does not lie inside the piece, or an open face is not there.
    """
    if flat and cell is None:
        cell = max(z for _, z in profiles[0]) / SLAB_CELLS
    cells, cuts, pieces = cells_of(profiles, cell, endless=endless)
    outline, *others = pieces
    within = outline.middle - cells.grid.tiny * outline.outward
    behind = cells_at(cells, within, innermost(profiles, within))
    lean = np.zeros_like(cells.centre)
    np.add.at(lean, behind, outline.area[:, None] * outline.outward)
    seams = [
        seam_links(cells, q, profiles, part, lean)
        for q, part in enumerate(others, start=1)
    ]
    return Mesh(
        body=cells.body,
        volume=cells.moments[0],
        centre=cells.centre,
        links=joined([*grid_links(cells, cuts, lean), *seams]),
        rim=rim_of(
            profiles[0],
            outline,
            behind,
            way(cells, outline, behind),
            wall=wall,
            open_faces=open_faces,
            endless=endless,
            flat=flat,
        ),
        core=_core_weights(profiles[min(1, len(profiles) - 1)], cells),
        cell=max(float((line[1:] - line[:-1]).max()) for line in cells.grid[:2]),
    )


def enlarged(mesh: Mesh, times: float) -> Mesh:
    """Give a mesh of so many like pieces as one: its times stay, its heat does not."""
    if times == 1:
        return mesh
    rim = mesh.rim
    return replace(
        mesh,
        volume=mesh.volume * times,
        links=replace(mesh.links, area=mesh.links.area * times),
        rim=replace(
            rim,
            area=rim.area * times,
            outer_area=rim.outer_area * times,
            wall_resistance=rim.wall_resistance / times,
            wall_capacity=rim.wall_capacity * times,
        ),
    )


def _core_weights(core: Profile, cells: Cells) -> Floats:
    """Weights of a smooth bowl through the cells nearest to the middle of the core.

    Fitted are 1, z, z^2 and r^2 to the cells' means of just these, so that a bowl is
    read exactly, and r where no axis makes the bowl even; with too few cells the least
    bent fit is taken.
    """
    r0, z0 = middle(core)
    mine = np.flatnonzero(cells.body == min(1, cells.body.max()))
    z, z2, r2 = cells.moments[1:4, mine] / cells.moments[0, mine]
    bowl = [z - z0, z2 - 2 * z * z0 + z0**2]
    if closed(core):
        r = cells.moments[6, mine] / cells.moments[0, mine]
        bowl += [r2 - 2 * r * r0 + r0**2, r - r0]
    else:
        bowl += [r2]
    distance = bowl[1] + bowl[2]
    # Cells as far as the last come too, or top and bottom would not count alike.
    limit = np.sort(distance)[:CORE_CELLS][-1] * (1 + 1e-9)
    near = np.flatnonzero(distance <= limit)
    fitted = np.stack(bowl)[:, near]
    span = np.abs(fitted).max(axis=1, keepdims=True)
    fitted /= np.where(span > 0, span, 1.0)
    mean = fitted.mean(axis=1, keepdims=True)
    slopes = np.linalg.pinv((fitted - mean).T, rcond=1e-9)
    weights = np.zeros(cells.body.size)
    weights[mine[near]] = 1 / near.size - mean[:, 0] @ slopes
    return weights
