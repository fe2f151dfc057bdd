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

SAME_K = 1e-3
"""Temperatures nearer than this conduct as one."""


class State(NamedTuple):
    """Of each cell, shapes (n,).

    Row of its table, temperature [°C], its rise with the heat content [K kg/J],
    conductivity [W/(m K)], and that gathered over temperature from the table's cold
    end [W/m]: what flows between two cells of a body goes by its difference.
    """

    row: Whole
    at_c: Floats
    warmth: Floats
    conductivity: Floats
    gathered: Floats


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
    gathered: Floats
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
        gathered=np.concatenate([_gathered(t) for t in thermals]),
        ice=ice,
        ice_bend=ice_bend / rise,
        first=(ends - rows)[body],
        last=(ends - 1)[body],
        density=np.array([t.density for t in thermals])[body],
        freezing_c=np.array(
            [-np.inf if t.freezing_c is None else t.freezing_c for t in thermals]
        )[body],
    )


def _gathered(table: Thermal) -> Floats:
    """Conductivity gathered from the table's cold end to where each row starts [W/m]."""
    k = table.conductivity
    steps = (table.at_c[1:] - table.at_c[:-1]) * (k[1:] + k[:-1]) / 2
    return np.cumsum(steps) - steps


@compiled
def row_near(starts: Floats, low: int, high: int, row: int, value: float) -> int:
    """The row from low to high a value falls into, looked for from a row near it.

    Beyond the ends the last.
    """
    while row < high and starts[row + 1] <= value:
        row += 1
    while row > low and starts[row] > value:
        row -= 1
    return row


@compiled
def state_at(table: Lookup, enthalpy: Floats, near: Whole) -> State:
    """State of cells of that heat content [J/kg], looked for from the rows `near`."""
    n = enthalpy.size
    state = State(np.empty(n, np.int64), *_four(n))
    for j in range(n):
        row = row_near(
            table.enthalpy, table.first[j], table.last[j], near[j], enthalpy[j]
        )
        above = enthalpy[j] - table.enthalpy[row]
        k, bent = table.conductivity[row], table.bend[row] * above
        warmer = table.warmth[row] * above
        state.row[j] = row
        state.at_c[j] = table.at_c[row] + warmer
        state.warmth[j] = table.warmth[row]
        state.conductivity[j] = k + bent
        state.gathered[j] = table.gathered[row] + warmer * (k + bent / 2)
    return state


@compiled
def _four(n: int) -> tuple[Floats, Floats, Floats, Floats]:
    return np.empty(n), np.empty(n), np.empty(n), np.empty(n)


@compiled
def ice_at(table: Lookup, row: int, enthalpy: float) -> float:
    """Ice at a heat content in a row; none and all beyond the ends [kg/kg]."""
    above = enthalpy - table.enthalpy[row]
    return float(max(table.ice[row] + table.ice_bend[row] * above, 0.0))


@compiled
def conductivity_to(table: Lookup, state: State, cell: int, at_c: float) -> float:
    """Mean conductivity of a cell's body from the cell's own temperature to another."""
    gap = at_c - state.at_c[cell]
    if abs(gap) < SAME_K:
        return float(state.conductivity[cell])
    row = row_near(
        table.at_c, table.first[cell], table.last[cell], state.row[cell], at_c
    )
    warmer = at_c - table.at_c[row]
    bent = table.bend[row] / table.warmth[row] * warmer
    gathered = table.gathered[row] + warmer * (table.conductivity[row] + bent / 2)
    return float((gathered - state.gathered[cell]) / gap)


def enthalpy_at(thermals: Sequence[Thermal], body: Whole, at_c: Floats) -> Floats:
    """Heat content of cells (n,) of temperatures (n,) [J/kg]."""
    content = np.empty(body.size)
    for q, table in enumerate(thermals):
        mine = body == q
        content[mine] = np.interp(at_c[mine], table.at_c, table.enthalpy)
    return content
