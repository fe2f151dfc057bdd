r"""What the air of a cold place does while a load warms it.

SI, °C. One body of air, the machine that cools it and what else shares it:

.. math:: C_a \dot T_a = \sum_j h_j A_j (T_j - T_a) + UA (T_{room} - T_a) + Q_{door}
          - Q_{machine}

A machine takes what it must at its set air, more as the air warms, and never more than
its capacity. Trays and moulds come in warm, goods that lie there already are cold.
"""

from dataclasses import dataclass
from statistics import fmean

import numpy as np

from demould.cold.body.cut import Floats

STEPS = 400
ENTRY_K = 0.3
"""By how much the air moves before its log gets another entry."""
FULL_AT_K = 3.0
"""So far above its set air a machine runs at all it can. An estimate."""
CYCLE_HOURS = 4.0
CYCLE_J_KG = 520e3
PEAK_OVER_MEAN = (1.0, 2.0, 3.0)


@dataclass(frozen=True, slots=True, kw_only=True)
class Machine:
    """A cold place as a machine.

    Attributes
    ----------
    set_c
        Its air when it has rested.
    capacity
        The most it takes beside what comes through its walls. [W]
    holds
        Of the air, its linings and shelves. [J/K]
    leak, room_c
        Through walls and seals. [W/K, °C]
    door
        What opening the door brings on the mean. [W]
    """

    set_c: float
    capacity: float
    holds: float
    leak: float = 1.2
    room_c: float = 21.0
    door: float = 0.0

    def __post_init__(self) -> None:
        if self.capacity <= 0 or self.holds <= 0:
            raise ValueError(
                f"a machine of {self.capacity:g} W over {self.holds:g} J/K; both must"
                " be more than 0"
            )


@dataclass(frozen=True, slots=True, kw_only=True)
class Lump:
    """Trays, moulds or goods of one temperature in that air [J/K, W/K, °C]."""

    name: str
    holds: float
    passes: float
    start_c: float


@dataclass(frozen=True, slots=True, kw_only=True)
class Load:
    """So many like pieces put in at once, and what comes with them or is there."""

    machine: Machine
    pieces: int
    lumps: tuple[Lump, ...] = ()


@dataclass(frozen=True, slots=True, kw_only=True)
class Warmed:
    """How the air went. Arrays of shape (m,); `lumps` (m, number of lumps).

    `taken` is by the machine, over what it takes at rest. [J]
    """

    seconds: Floats
    air_c: Floats
    lumps: Floats
    taken: float


def capacity_of(kilograms_a_cycle: float) -> tuple[float, float, float]:
    """A machine's net capacity from its maker's "kg a cycle": low, likely, high [W].

    Taken as: so much food of 520 kJ/kg (from +65 to -18 °C: 65 x 3.6 and 250 of ice
    and 18 x 2) in 4 h. A load draws most at the start, so a machine can do more than
    that mean: once to three times as much, twice likely. An estimate.
    """
    mean = kilograms_a_cycle * CYCLE_J_KG / (CYCLE_HOURS * 3600)
    low, likely, high = (share * mean for share in PEAK_OVER_MEAN)
    return low, likely, high


def air_under(
    load: Load, passes: float, seconds: Floats, surface_c: Floats, until: float
) -> Warmed:
    """Follow the air past pieces whose outsides are as warm as said.

    Parameters
    ----------
    passes
        Film times outside area of one piece. [W/K]
    seconds, surface_c
        Outside temperature over time; after the last it stays. Shapes (n,).
    """
    machine, lumps = load.machine, load.lumps
    dt = until / STEPS
    grid = np.linspace(0, until, STEPS + 1)
    outside = np.interp(grid[1:] - dt / 2, seconds, surface_c).tolist()
    to_pieces = load.pieces * passes
    warm = [lump.start_c for lump in lumps]
    # Each lump's end is implicit in the air's: kept of its own, the rest of the air.
    kept = [lump.holds / (lump.holds + lump.passes * dt) for lump in lumps]
    to_air = [lump.passes * own for lump, own in zip(lumps, kept, strict=True)]
    lead = machine.holds / dt + to_pieces + machine.leak + sum(to_air)
    rest = _at_rest(machine)
    air, taken = machine.set_c, 0.0
    airs, all_lumps = [air], [warm]
    for out in outside:
        given = machine.holds / dt * air + to_pieces * out
        given += machine.leak * machine.room_c + machine.door
        given += sum(each * own for each, own in zip(to_air, warm, strict=True))
        air, drawn = _with_machine(machine, lead, given)
        warm = [k * own + (1 - k) * air for k, own in zip(kept, warm, strict=True)]
        taken += (drawn - rest) * dt
        airs.append(air)
        all_lumps.append(warm)
    return Warmed(
        seconds=grid,
        air_c=np.array(airs),
        lumps=np.array(all_lumps),
        taken=taken,
    )


def _at_rest(machine: Machine) -> float:
    return machine.leak * (machine.room_c - machine.set_c) + machine.door


def _with_machine(machine: Machine, lead: float, given: float) -> tuple[float, float]:
    """Air at the end of a step and what the machine draws: lead * air = given - drawn."""
    slope = machine.capacity / FULL_AT_K
    rest = _at_rest(machine)
    air = (given - rest + slope * machine.set_c) / (lead + slope)
    drawn = rest + slope * (air - machine.set_c)
    bounded = min(max(drawn, 0.0), rest + machine.capacity)
    return (given - bounded) / lead, bounded


def log_of(warmed: Warmed) -> tuple[tuple[float, float], ...]:
    """Give the air as a log of jumps, one every 0.3 K, each at its mean (s, °C)."""
    air, entries, first = warmed.air_c.tolist(), [], 0
    for n in range(1, len(air)):
        last = n == len(air) - 1
        if abs(air[n] - air[first]) >= ENTRY_K or last:
            entries.append((float(warmed.seconds[first]), fmean(air[first : n + 1])))
            first = n
    return tuple(entries)
