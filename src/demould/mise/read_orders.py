"""``orders.yaml``: so many of a dessert, ready at a moment, one order a key."""

import re
from collections.abc import Mapping
from dataclasses import dataclass
from datetime import datetime
from decimal import Decimal
from typing import Literal
from zoneinfo import ZoneInfo

from demould.larder.requests import find_request, requests
from demould.mise.clock import read_moment, show_day
from demould.mise.faults import Faults
from demould.mise.figure import Figure, Line, Stated
from demould.mise.keys import Keys, keys_of
from demould.mise.order import Asked, Frozen, Order
from demould.mise.parts import name_and_rest, parts_of
from demould.mise.problem import UnreadableError
from demould.mise.quantity import read_count
from demould.mise.read_price import read_money
from demould.mise.spelling import one_of
from demould.mise.tree import Branch, Leaf
from demould.mise.words import Words

KEYS = (
    "dessert",
    "variant",
    "pieces",
    "plates",
    "collected",
    "spares",
    "frozen",
    "price",
    "choices",
    "requests",
)
CHOICES = (
    "by hand",
    "even rounds",
    "no spares",
    "borrow a mould",
    "a probe piece",
    "a piece to taste",
    "a piece to keep",
)
MOST_PIECES = 9999
_REQUIRED = {
    "dessert": Words("Write the name of its file in desserts, without .yaml"),
    "pieces": Words("Write how many are wanted"),
}
_A_PIECE = re.compile(r"\s*(?:\ba\b|\bper\b|/)\s*piece$")
Ends = Literal["plates", "collected"]


@dataclass(frozen=True, slots=True, kw_only=True)
class Wanted:
    """What orders are read against.

    `desserts` are the keys that can be ordered, each with its variants, or None where
    its file has faults of its own. `zone` is the kitchen's, `now` is aware.
    """

    desserts: Mapping[str, tuple[str, ...] | None]
    zone: str
    now: datetime


def read_orders(branch: Branch, wanted: Wanted, faults: Faults) -> tuple[Order, ...]:
    """Every order; those with a fault are noted and left out."""
    found: dict[str, Order | None] = {}
    for leaf, node in branch.items:
        key = leaf.line.text
        if not isinstance(node, Branch):
            faults.tell(
                leaf.line,
                Words("the order {key!r} says nothing", key=key),
                Words("Write dessert, pieces, and plates or collected below it"),
            )
        elif key in found:
            faults.tell(
                leaf.line,
                Words("two orders are called {key!r}", key=key),
                Words("Give one of them another name"),
            )
        else:
            found[key] = _order(leaf, node, wanted, faults)
    return tuple(order for order in found.values() if order is not None)


def _order(leaf: Leaf, branch: Branch, wanted: Wanted, faults: Faults) -> Order | None:
    keys = keys_of(branch, faults, known=KEYS, required=_REQUIRED)
    dessert = keys.read(
        "dessert", lambda line: one_of(line.text, wanted.desserts, "dessert")
    )
    variants = wanted.desserts.get(dessert) if dessert else None
    variant = keys.read("variant", lambda line: _variant(line, variants, dessert))
    pieces = keys.read("pieces", _pieces)
    ends, due = _due(keys, wanted)
    choices = keys.each("choices", _choice)
    spares = keys.read("spares", _spares)
    frozen = keys.read("frozen", _frozen) or ()
    if dessert is None or pieces is None or due is None:
        return None
    return Order(
        key=leaf.line.text,
        dessert=dessert,
        variant=variant,
        pieces=pieces,
        due=due,
        ends=ends,
        spares=spares,
        frozen=frozen,
        price=keys.read("price", _price),
        choices=tuple(choice for choice, _ in choices),
        remarks=tuple(remark for _, remark in choices),
        requests=keys.each("requests", _asked),
        line=leaf.line,
    )


def _variant(line: Line, variants: tuple[str, ...] | None, dessert: str | None) -> str:
    if variants is None:
        return line.text
    if not variants:
        raise UnreadableError(
            Words(
                "{dessert!r} has no variants, and {found!r} is asked for",
                dessert=dessert,
                found=line.text,
            ),
            Words(
                "Write 'variant {found}: |' in its file, or ask for none",
                found=line.text,
            ),
        )
    return one_of(line.text, variants, "variant")


def _pieces(line: Line) -> int:
    return read_count(line.text, name="number of pieces", most=MOST_PIECES)


def _spares(line: Line) -> Figure:
    number = 0
    if line.text != "0":
        number = read_count(
            line.text, name="number of spares", most=MOST_PIECES, what="spares"
        )
    return Figure(value=number, unit="pieces", name="spares", origin=Stated(line=line))


def _frozen(line: Line) -> tuple[Frozen, ...]:
    """``12 pieces, 10 centre``: whole pieces, or so many of a component."""
    found = []
    for part in parts_of(line.text, ","):
        number, _, what = part.text.partition(" ")
        what = what.strip()
        if not what:
            raise UnreadableError(
                Words("{found!r} does not say what is frozen", found=part.text),
                Words("Write it like 12 pieces, 10 centre"),
            )
        pieces = read_count(number, name="number in the freezer", most=MOST_PIECES)
        whole = what in ("piece", "pieces")
        found.append(Frozen(pieces=pieces, component=None if whole else what))
    return tuple(found)


def _price(line: Line) -> Decimal:
    """``4.50 a piece``."""
    amount, _ = read_money(_A_PIECE.sub("", line.text), "price")
    return amount


def _due(keys: Keys, wanted: Wanted) -> tuple[Ends, datetime | None]:
    """When it is plated or collected: exactly one of the two."""
    if "plates" in keys and "collected" in keys:
        keys.faults.tell(
            keys.place("collected"),
            Words("the order has both 'plates' and 'collected'"),
            Words("Keep one: plates at the pass, or collected in a box"),
        )
        return "plates", None
    ends: Ends = "collected" if "collected" in keys else "plates"
    if ends not in keys:
        keys.faults.tell(
            keys.line,
            Words("nobody says when the order is due"),
            Words("Write plates: or collected: and, for example, Sat 2026-11-21 19:30"),
        )
    return ends, keys.read(ends, lambda line: _moment(line, wanted))


def _moment(line: Line, wanted: Wanted) -> datetime:
    zone = ZoneInfo(wanted.zone)
    due = read_moment(line.text, zone)
    now = wanted.now.astimezone(zone)
    if due <= now:
        raise UnreadableError(
            Words(
                "the order is due {due}, and now it is {now}",
                due=show_day(due),
                now=show_day(now),
            ),
            Words("Write a day to come, or take the order away"),
        )
    return due


def _choice(line: Line) -> tuple[str, str]:
    """``by hand; the round of 3 is under the whisk's least``."""
    name, rest = name_and_rest(line.text)
    return (
        one_of(name.text, CHOICES, "choice"),
        "; ".join(part.text for part in rest),
    )


def _asked(line: Line) -> Asked:
    """``no nuts; one guest at table 6``."""
    name, rest = name_and_rest(line.text)
    found = find_request(name.text)
    request = found.name if found else one_of(name.text, requests(), "request")
    return Asked(request=request, who="; ".join(part.text for part in rest))
