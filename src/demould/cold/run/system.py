"""A piece in its film, as the steps see it: what stays the same through a run.

SI, °C. Plain arrays only, so that compiled loops may walk them.
"""

from collections.abc import Sequence
from typing import NamedTuple

import numpy as np

from demould.cold.around.air import Film
from demould.cold.body.cut import Floats, Whole
from demould.cold.body.mesh import Mesh
from demould.cold.run.band import reach_of
from demould.cold.run.lookup import Lookup, lookup_of
from demould.matter.heat import Thermal


class RimWays(NamedTuple):
    """Of each piece of outside surface, shape (p,), as in `skin.Rim`.

    `half_wall` is the resistance from either side to the wall's middle. [K/W]
    """

    cell: Whole
    area: Floats
    outer_area: Floats
    depth: Floats
    radial: Floats
    half_wall: Floats
    wall_capacity: Floats


class System(NamedTuple):
    """Cells (n,), links (m,) as in `links.Links`, rim pieces (p,).

    `film` is from the outermost surface to the air [W/K]; `core` the weights that read
    the core; `reach` and `width` tell the band of the cells' balance (see `band`).
    """

    table: Lookup
    mass: Floats
    volume: Floats
    core: Floats
    low: Whole
    high: Whole
    area: Floats
    to_low: Floats
    to_high: Floats
    radial: Floats
    rim: RimWays
    film: Floats
    reach: Whole
    width: int


def system_of(mesh: Mesh, thermals: Sequence[Thermal], film: Film) -> System:
    """Put a piece, its bodies' tables and its film together."""
    table = lookup_of(thermals, mesh.body)
    links, rim = mesh.links, mesh.rim
    reach = reach_of(links.low, links.high, mesh.body.size)
    h = np.array([film.bottom, film.top, film.other])[rim.face]
    return System(
        table=table,
        mass=mesh.volume * table.density,
        volume=mesh.volume,
        core=mesh.core,
        low=links.low,
        high=links.high,
        area=links.area,
        to_low=links.to_low,
        to_high=links.to_high,
        radial=links.radial,
        rim=RimWays(
            cell=rim.cell,
            area=rim.area,
            outer_area=rim.outer_area,
            depth=rim.depth,
            radial=rim.radial,
            half_wall=rim.wall_resistance / 2,
            wall_capacity=rim.wall_capacity,
        ),
        film=h * rim.outer_area,
        reach=reach,
        width=int(reach.max()),
    )
