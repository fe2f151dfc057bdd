"""Which pieces had that cream: every lot followed both ways, through dips kept over."""

from collections.abc import Callable, Iterable
from dataclasses import dataclass

from demould.larder.allergens import allergens_in
from demould.mise.own_larder import Larder
from demould.mise.own_lots import Came, Entry, Made, Went
from demould.mise.words import Words


@dataclass(frozen=True, slots=True, kw_only=True)
class Traced:
    """One lot, followed both ways.

    `made_of` are all lots in it, the nearest first; `went_into` all lots made with it;
    `orders` everything of those, and of itself, that went to somebody. A dip that was
    topped up keeps the lots of the old one. `asks` is what the entries cannot tell.
    """

    lot: Came | Made
    made_of: tuple[Came | Made, ...]
    went_into: tuple[Made, ...]
    orders: tuple[Went, ...]
    asks: tuple[Words, ...]


def trace(entries: Iterable[Entry], name: str) -> Traced:
    """Follow a lot.

    Raises
    ------
    KeyError
        If no lot is called that.
    """
    entries = tuple(entries)
    lots = {one.lot: one for one in reversed(entries) if isinstance(one, Came | Made)}
    lot = lots[name]
    back = _reach(name, lambda one: _of(lots.get(one)))
    forth = _reach(
        name,
        lambda one: tuple(
            made.lot
            for made in lots.values()
            if isinstance(made, Made) and one in made.of
        ),
    )
    went_into = tuple(made for one in forth if isinstance(made := lots[one], Made))
    reached = {name, *forth}
    return Traced(
        lot=lot,
        made_of=tuple(lots[one] for one in back if one in lots),
        went_into=went_into,
        orders=tuple(
            one for one in entries if isinstance(one, Went) and one.lot in reached
        ),
        asks=tuple(_asks(entries, lots, reached)),
    )


def _of(lot: Came | Made | None) -> tuple[str, ...]:
    return lot.of if isinstance(lot, Made) else ()


def _reach(start: str, further: Callable[[str], Iterable[str]]) -> tuple[str, ...]:
    """Give everything reached from a lot, nearest first, without itself."""
    found: dict[str, None] = {}
    edge = [start]
    for name in edge:
        for one in further(name):
            if one != start and one not in found:
                found[one] = None
                edge.append(one)
    return tuple(found)


def _asks(
    entries: Iterable[Entry], lots: dict[str, Came | Made], reached: set[str]
) -> Iterable[Words]:
    entries = tuple(entries)
    used = {lot for one in lots.values() for lot in _of(one)}
    gone = {one.lot for one in entries if isinstance(one, Went)}
    for name in sorted(reached):
        if name not in used and name not in gone and isinstance(lots[name], Made):
            yield Words("where is {lot}, {what}?", lot=name, what=lots[name].what)


def allergens_in_lots(
    traced: Traced, larder: Larder
) -> tuple[tuple[str, ...], tuple[str, ...]]:
    """Give the allergens a lot carries by all that is in it, and what nobody knows.

    Deliveries count by their name in the larder; a name that is not there is not known.
    """
    own = {entry.key: entry for entry in larder}
    found: dict[str, None] = {}
    unknown: dict[str, None] = {}
    for one in (traced.lot, *traced.made_of):
        if not isinstance(one, Came):
            continue
        entry = own.get(one.what)
        if entry is None or entry.allergens is None:
            unknown[one.what] = None
        if entry is not None:
            found |= {named.name: None for named in allergens_in(entry.ingredient)}
    return tuple(found), tuple(unknown)


def used_late(entries: Iterable[Entry]) -> tuple[Words, ...]:
    """Say which lots went into something after the day they were to be used by."""
    entries = tuple(entries)
    lots = {one.lot: one for one in entries if isinstance(one, Came | Made)}
    return tuple(
        Words(
            "{lot}, {what}, to be used by {use_by}, went into {into} on {on}",
            lot=name,
            what=used.what,
            use_by=used.use_by,
            into=one.lot,
            on=one.on,
        )
        for one in entries
        if isinstance(one, Made)
        for name in one.of
        if (used := lots.get(name)) is not None
        and used.use_by is not None
        and used.use_by < one.on
    )
