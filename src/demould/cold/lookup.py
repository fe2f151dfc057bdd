"""Which temperature and conductivity a cell has, from its heat content.

SI, °C. Tables of all bodies of a piece laid end to end, so that one search serves all
cells: each body's enthalpies are set off by more than any table is long.
"""

from collections.abc import Sequence
from dataclasses import dataclass
from typing import NamedTuple

import numpy as np

from demould.cold.cut import Floats, Whole
from demould.matter.heat import Thermal

APART_J_KG = 1e7


class State(NamedTuple):
    """Of each cell. [°C, J/(kg K), W/(m K)] Shapes (n,)."""

    at_c: Floats
    capacity: Floats
    conductivity: Floats


@dataclass(frozen=True, slots=True, kw_only=True)
class Lookup:
    """One row a table interval; `offset` is each cell's place in the common scale."""

    keys: Floats
    enthalpy: Floats
    at_c: Floats
    warmth: Floats
    conductivity: Floats
    bend: Floats
    offset: Floats
    density: Floats
    freezing_c: Floats


def lookup_of(thermals: Sequence[Thermal], body: Whole) -> Lookup:
    """Join the tables of a piece's bodies for cells (n,) of those bodies."""
    rise = [np.diff(t.enthalpy) for t in thermals]
    return Lookup(
        keys=np.concatenate(
            [t.enthalpy[:-1] + APART_J_KG * q for q, t in enumerate(thermals)]
        ),
        enthalpy=np.concatenate([t.enthalpy[:-1] for t in thermals]),
        at_c=np.concatenate([t.at_c[:-1] for t in thermals]),
        warmth=np.concatenate(
            [np.diff(t.at_c) / d for t, d in zip(thermals, rise, strict=True)]
        ),
        conductivity=np.concatenate([t.conductivity[:-1] for t in thermals]),
        bend=np.concatenate(
            [np.diff(t.conductivity) / d for t, d in zip(thermals, rise, strict=True)]
        ),
        offset=APART_J_KG * body.astype(np.float64),
        density=np.array([t.density for t in thermals])[body],
        freezing_c=np.array(
            [-np.inf if t.freezing_c is None else t.freezing_c for t in thermals]
        )[body],
    )


def state_at(table: Lookup, enthalpy: Floats) -> State:
    """Temperature, slope and conductivity of cells of that heat content [J/kg]."""
    at = np.searchsorted(table.keys, enthalpy + table.offset, side="right") - 1
    np.maximum(at, 0, out=at)
    above = enthalpy - table.enthalpy[at]
    warmth = table.warmth[at]
    return State(
        table.at_c[at] + warmth * above,
        1 / warmth,
        table.conductivity[at] + table.bend[at] * above,
    )


def enthalpy_at(thermals: Sequence[Thermal], body: Whole, at_c: Floats) -> Floats:
    """Heat content of cells (n,) of temperatures (n,) [J/kg]."""
    content = np.empty(body.size)
    for q, table in enumerate(thermals):
        mine = body == q
        content[mine] = np.interp(at_c[mine], table.at_c, table.enthalpy)
    return content


def ice_of(thermals: Sequence[Thermal], body: Whole, at_c: Floats) -> Floats:
    """Ice in cells (n,) of temperatures (n,) [kg/kg]."""
    share = np.empty(body.size)
    for q, table in enumerate(thermals):
        mine = body == q
        share[mine] = np.interp(at_c[mine], table.at_c, table.ice)
    return share
