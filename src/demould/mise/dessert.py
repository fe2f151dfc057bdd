"""A dessert: components inside a shape, a finish, a plate, the steps that join them."""

from dataclasses import dataclass
from typing import Literal

from demould.mise.component import Component
from demould.mise.figure import Figure, Line
from demould.mise.method import Method
from demould.mise.shape import Shape


@dataclass(frozen=True, slots=True, kw_only=True)
class Rest:
    """Fills what everything else leaves. `share` of it, where poured in two goes."""

    words: str = ""


@dataclass(frozen=True, slots=True, kw_only=True)
class Cut:
    """Cut or cast to a size."""

    shape: Shape


@dataclass(frozen=True, slots=True, kw_only=True)
class FromMould:
    """Frozen in a mould of its own first."""

    mould: str


@dataclass(frozen=True, slots=True, kw_only=True)
class Lining:
    """Coats the face of the cavity before anything else goes in, so thick. [mm]."""

    film: Figure


Fill = Rest | Cut | FromMould | Lining


@dataclass(frozen=True, slots=True, kw_only=True)
class Stands:
    """How far a layer is from another part, from the cavity's bottom or its open side.

    `of` is a component's key, or one of `SIDES`. The distance is between the faces that
    look at each other, whichever way up the piece is filled. [mm]
    """

    of: str
    apart: Figure


SIDES = ("bottom", "open side")


@dataclass(frozen=True, slots=True, kw_only=True)
class Layer:
    """A component in a shape, in the order it goes into the mould.

    `stands` is None where nobody said how high it comes to lie; `turned_over` where its
    small or round side looks to the open side of the mould.
    """

    component: str
    fill: Fill
    stands: Stands | None = None
    turned_over: bool = False
    remarks: tuple[str, ...] = ()
    line: Line | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class Dip:
    """Held into a jug: film thickness, how deep, how clear of the bottom.

    `depth` is None where the piece goes in as high as it stands in its mould.
    """

    component: str
    film: Figure
    clearance: Figure
    heel: Figure
    depth: Figure | None = None
    remarks: tuple[str, ...] = ()
    line: Line | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class Glaze:
    """Poured over: the film that stays, and how much more is poured."""

    component: str
    film: Figure
    pour: Figure
    faces: Literal["face", "face and ends"] = "face"
    remarks: tuple[str, ...] = ()
    line: Line | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class Spray:
    """Blown on: the film that lands, and the share of what is loaded that does."""

    component: str
    film: Figure
    lands: Figure
    remarks: tuple[str, ...] = ()
    line: Line | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class Laid:
    """Brushed on, rolled in or spattered: how thick it lies, on what, covering how much.

    `covers` is the share of that face it lies on. Cut edges are those of the portions.
    """

    component: str
    how: Literal["brushed", "rolled", "spattered"]
    film: Figure
    covers: Figure | None = None
    on: Literal["face", "sides", "all round", "cut edges"] = "face"
    remarks: tuple[str, ...] = ()
    line: Line | None = None


Finish = Dip | Glaze | Spray | Laid


@dataclass(frozen=True, slots=True, kw_only=True)
class OnPlate:
    """So much of a component, or of a bought thing, beside each portion."""

    what: str
    amount: Figure
    component: str | None = None
    remarks: tuple[str, ...] = ()
    line: Line | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class Swap:
    """One component line of a variant: what is replaced by what, as written."""

    component: str
    out: str
    into: tuple[tuple[Figure, str], ...]
    line: Line | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class Variant:
    """Named replacements inside components."""

    name: str
    swaps: tuple[Swap, ...]
    line: Line | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class Dessert:
    """Everything one file of a dessert says.

    `portions` is how many one piece is cut into (1 for an individual piece). Filled
    `upside_down`, the first layer is the top of the piece. `called_for` is what a note
    speaks of and nobody has written a formula for yet.
    """

    key: str
    name: str
    written_for: str = ""
    mould: str
    portions: Figure | None = None
    upside_down: bool = False
    layers: tuple[Layer, ...]
    finish: tuple[Finish, ...] = ()
    plate: tuple[OnPlate, ...] = ()
    components: tuple[Component, ...]
    method: Method = ()
    variants: tuple[Variant, ...] = ()
    notes: tuple[str, ...] = ()
    called_for: tuple[str, ...] = ()
    line: Line | None = None


def component_of(dessert: Dessert, key: str) -> Component:
    """Find a component by its key; the reader has made sure that it is there."""
    return next(one for one in dessert.components if one.key == key)
