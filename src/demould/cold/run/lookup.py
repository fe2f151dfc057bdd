"""Which temperature and conductivity a cell has, from its heat content.

SI, °C. Tables of all bodies of a piece laid end to end; each cell knows where its own
body's begins and ends.
"""

from collections.abc import Sequence
from typing import NamedTuple

import numpy as np

from demould.cold.body.cut import Floats, Whole
from demould.cold.compiled import compiled
from demould.matter.heat import Thermal


class State(NamedTuple):
    """Of each cell. [°C, J/(kg K), W/(m K)] Shapes (n,)."""

    at_c: Floats
    capacity: Floats
    conductivity: Floats


class Lookup(NamedTuple):
    """Rows of table intervals: where each starts, and how steep its line is after.

    `first` and `last` are the rows of each cell's own body; `density` [kg/m3] and
    `freezing_c` (minus infinity if it never freezes) are of cells too.
    """

    enthalpy: Floats
    at_c: Floats
    warmth: Floats
    conductivity: Floats
    bend: Floats
    ice: Floats
    ice_bend: Floats
    first: Whole
    last: Whole
    density: Floats
    freezing_c: Floats


def lookup_of(thermals: Sequence[Thermal], body: Whole) -> Lookup:
    """Join the tables of a piece's bodies for cells (n,) of those bodies."""
    rows = np.array([t.at_c.size - 1 for t in thermals])
    ends = np.cumsum(rows)
    starts = [(t.enthalpy, t.at_c, t.conductivity, t.ice) for t in thermals]
    enthalpy, at_c, conductivity, ice = (
        np.concatenate([column[:-1] for column in columns])
        for columns in zip(*starts, strict=True)
    )
    rise, warm, bend, ice_bend = (
        np.concatenate([column[1:] - column[:-1] for column in columns])
        for columns in zip(*starts, strict=True)
    )
    return Lookup(
        enthalpy=enthalpy,
        at_c=at_c,
        warmth=warm / rise,
        conductivity=conductivity,
        bend=bend / rise,
        ice=ice,
        ice_bend=ice_bend / rise,
        first=(ends - rows)[body],
        last=(ends - 1)[body],
        density=np.array([t.density for t in thermals])[body],
        freezing_c=np.array(
            [-np.inf if t.freezing_c is None else t.freezing_c for t in thermals]
        )[body],
    )


@compiled
def row_at(starts: Floats, low: int, high: int, enthalpy: float) -> int:
    """The row from low to high a heat content falls into; beyond the ends the last."""
    while low < high:
        middle = (low + high + 1) // 2
        if starts[middle] <= enthalpy:
            low = middle
        else:
            high = middle - 1
    return low


@compiled
def state_at(table: Lookup, enthalpy: Floats) -> State:
    """Temperature, slope and conductivity of cells of that heat content [J/kg]."""
    at_c, capacity = np.empty(enthalpy.size), np.empty(enthalpy.size)
    conductivity = np.empty(enthalpy.size)
    for n in range(enthalpy.size):
        at = row_at(table.enthalpy, table.first[n], table.last[n], enthalpy[n])
        above = enthalpy[n] - table.enthalpy[at]
        at_c[n] = table.at_c[at] + table.warmth[at] * above
        capacity[n] = 1 / table.warmth[at]
        conductivity[n] = table.conductivity[at] + table.bend[at] * above
    return State(at_c, capacity, conductivity)


@compiled
def ice_at(table: Lookup, enthalpy: Floats) -> Floats:
    """Ice in cells of that heat content [J/kg]; none and all beyond the ends [kg/kg]."""
    ice = np.empty(enthalpy.size)
    for n in range(enthalpy.size):
        at = row_at(table.enthalpy, table.first[n], table.last[n], enthalpy[n])
        above = enthalpy[n] - table.enthalpy[at]
        ice[n] = max(table.ice[at] + table.ice_bend[at] * above, 0.0)
    return ice


def enthalpy_at(thermals: Sequence[Thermal], body: Whole, at_c: Floats) -> Floats:
    """Heat content of cells (n,) of temperatures (n,) [J/kg]."""
    content = np.empty(body.size)
    for q, table in enumerate(thermals):
        mine = body == q
        content[mine] = np.interp(at_c[mine], table.at_c, table.enthalpy)
    return content
