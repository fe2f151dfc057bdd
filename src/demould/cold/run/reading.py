"""What is read of a piece at a moment."""

from typing import NamedTuple

import numpy as np

from demould.cold.compiled import compiled
from demould.cold.run.lookup import ice_at
from demould.cold.run.stage import Now
from demould.cold.run.system import System


class Reading(NamedTuple):
    """One moment [°C, kg].

    `surface` is the mean of the piece's own surface, under its wall; `margin` the
    least any cell is above its freezing point, so no ice is left from 0 up; `skin` the
    mean of the outermost surface, `water` what has settled on it.
    """

    core: float
    warmest: float
    surface: float
    margin: float
    ice: float
    skin: float
    water: float


@compiled
def reading_of(system: System, now: Now) -> Reading:
    """Read a piece."""
    rim, table, state = system.rim, system.table, now.state
    core, warmest, margin, ice = 0.0, -np.inf, np.inf, 0.0
    for n in range(system.mass.size):
        at_c = state.at_c[n]
        core += system.core[n] * at_c
        warmest = max(warmest, at_c)
        margin = min(margin, at_c - table.freezing_c[n])
        ice += system.mass[n] * ice_at(table, state.row[n], now.content[n])
    surface, skin, water, inner, outer = 0.0, 0.0, 0.0, 0.0, 0.0
    for m in range(rim.cell.size):
        surface += now.under[m] * rim.area[m]
        skin += now.skin[m] * rim.outer_area[m]
        water += now.water[m] * rim.outer_area[m]
        inner += rim.area[m]
        outer += rim.outer_area[m]
    return Reading(
        core,
        max(core, warmest),
        surface / inner,
        margin,
        ice,
        skin / outer,
        water,
    )
