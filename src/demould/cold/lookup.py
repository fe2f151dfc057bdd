"""Which temperature and conductivity a cell has, from its heat content.

SI, °C. Tables of all bodies of a piece laid end to end; each cell knows where its own
body's begins and ends.
"""

from collections.abc import Sequence
from typing import NamedTuple

import numpy as np

from demould.cold.compiled import compiled
from demould.cold.cut import Floats, Whole
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
def rows_at(table: Lookup, enthalpy: Floats) -> Whole:
    """The row each cell's heat content [J/kg] falls into; beyond the ends the last."""
    rows = np.empty(enthalpy.size, np.int64)
    for n in range(enthalpy.size):
        low, high = table.first[n], table.last[n]
        while low < high:
            middle = (low + high + 1) // 2
            if table.enthalpy[middle] <= enthalpy[n]:
                low = middle
            else:
                high = middle - 1
        rows[n] = low
    return rows


@compiled
def state_at(table: Lookup, enthalpy: Floats) -> State:
    """Temperature, slope and conductivity of cells of that heat content [J/kg]."""
    at = rows_at(table, enthalpy)
    above = enthalpy - table.enthalpy[at]
    warmth = table.warmth[at]
    return State(
        table.at_c[at] + warmth * above,
        1 / warmth,
        table.conductivity[at] + table.bend[at] * above,
    )


@compiled
def ice_at(table: Lookup, enthalpy: Floats) -> Floats:
    """Ice in cells of that heat content [J/kg]; none and all beyond the ends [kg/kg]."""
    at = rows_at(table, enthalpy)
    above = enthalpy - table.enthalpy[at]
    return np.asarray(np.maximum(table.ice[at] + table.ice_bend[at] * above, 0.0))


def enthalpy_at(thermals: Sequence[Thermal], body: Whole, at_c: Floats) -> Floats:
    """Heat content of cells (n,) of temperatures (n,) [J/kg]."""
    content = np.empty(body.size)
    for q, table in enumerate(thermals):
        mine = body == q
        content[mine] = np.interp(at_c[mine], table.at_c, table.enthalpy)
    return content
