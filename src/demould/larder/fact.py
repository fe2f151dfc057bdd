"""The shapes of what is known: a number with its source, and the sheets made of them."""

from collections.abc import Mapping
from dataclasses import dataclass


@dataclass(frozen=True, slots=True, kw_only=True)
class Fact:
    """A number somebody can be asked about.

    `low` and `high` bound what is sensible, in the fact's own `unit`; a band to judge
    by is its `low` and `high`, with `value` what to start from. `source` is a key of
    ``sources.toml``, `page` the place in it.
    """

    value: float
    unit: str
    low: float
    high: float
    source: str
    page: str = ""
    note: str = ""


@dataclass(frozen=True, slots=True, kw_only=True)
class Source:
    """Where facts come from. `known` says how: read, memory, practice, computed, guess.

    `reason` says why a guess had to be made, and what a computed one rests on.
    """

    key: str
    reference: str
    year: int | None
    licence: str
    known: str
    reason: str = ""


@dataclass(frozen=True, slots=True, kw_only=True)
class Band:
    """What is usual for one kind of component, to speak up and not to forbid.

    `agent` is what sets it (``gelatin``, ``pectin``, ``agar``), or None. `dose` is in %
    of the whole, gelatin at 200 bloom; `fat` and `sugars` are in % of the whole;
    `density` in g/ml of the component as it goes into the mould. None where practice
    has no band. `more` holds what else is said of the kind, by quantity (``rest``,
    ``fold temperature``, ``bake loss`` ...), each in its own unit.
    """

    kind: str
    names: tuple[str, ...]
    agent: str | None
    dose: Fact | None
    fat: Fact | None
    sugars: Fact | None
    density: Fact | None
    more: Mapping[str, Fact]
    note: str = ""


@dataclass(frozen=True, slots=True, kw_only=True)
class Hold:
    """How long a thing in one state must wait and may wait, in minutes.

    The `value` of a wait is the careful end: the long one of `least`, the short one of
    `most`. None where nothing is said. `counted_from` names the moment the clock starts.
    """

    state: str
    least: Fact | None
    most: Fact | None
    counted_from: str
    note: str = ""


@dataclass(frozen=True, slots=True, kw_only=True)
class Film:
    """How well the air of one kind of place takes or gives heat, in W/(m2 K).

    `total` is with radiation, `convective` without: water condenses by the latter only.
    Both act on the outermost surface. `vapour` is what a cover leaves of the latter for
    water, None where nothing covers. `humidity` of the place's air is in %.
    """

    kind: str
    total: Fact
    convective: Fact
    vapour: Fact | None = None
    humidity: Fact | None = None
    note: str = ""


@dataclass(frozen=True, slots=True, kw_only=True)
class Material:
    """What a mould or a tray is made of.

    `conductivity` in W/(m K), `density` in kg/m3, `heat_capacity` in J/(kg K).
    """

    name: str
    conductivity: Fact
    density: Fact
    heat_capacity: Fact


@dataclass(frozen=True, slots=True, kw_only=True)
class Quadratic:
    """``a + b t + c t**2`` with t in °C, from -40 to 150 °C, in `unit`.

    `low` and `high` bound its value between -40 and 60 °C.
    """

    a: float
    b: float
    c: float
    unit: str
    low: float
    high: float
    source: str
    page: str = ""


@dataclass(frozen=True, slots=True, kw_only=True)
class Constituent:
    """What food is made of, without air: water, ice, protein, fat, carbohydrate ...

    `conductivity` in W/(m K), `density` in kg/m3, `heat_capacity` in J/(kg K).
    """

    name: str
    conductivity: Quadratic
    density: Quadratic
    heat_capacity: Quadratic


@dataclass(frozen=True, slots=True, kw_only=True)
class EnergyFactor:
    """Energy of one gram by law. `kj` and `kcal` are rounded apart, not converted."""

    constituent: str
    kj: float
    kcal: float
    source: str
    page: str = ""
