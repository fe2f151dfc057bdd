"""Figures that are only assumed: the mould first of all, densities, films, waits."""

from collections.abc import Iterator, Sequence
from dataclasses import replace

from demould.advice.gaps.gap import Gap, Kind, Moved, only
from demould.advice.gaps.settling import settled_by
from demould.advice.gaps.trying import Trying
from demould.amounts.counts.doubt import Doubt, doubts_of, put_at
from demould.matter.grams import counted
from demould.mise.dessert import Dessert, FromMould
from demould.mise.figure import Assumed, Figure
from demould.mise.words import Words

_HOURS = 60.0


def assumed_gaps(trying: Trying) -> Iterator[Gap]:
    """Give every assumed figure that moves something, of what this dessert uses.

    Weights of leaves, eggs and spoons are gaps of their lines, and not given here.
    """
    used = _moulds(trying.dessert)
    weights = {
        each
        for component in trying.dessert.components
        for line in component.formula
        if (each := counted(line)) is not None
    }
    hands: list[Doubt] = []
    for doubt in doubts_of(trying.dessert, trying.kitchen):
        if doubt.figure in weights or not _concerns(trying, doubt, used):
            continue
        if "hands" in doubt.path:
            hands.append(doubt)
            continue
        ends = trying.at_ends(doubt)
        moves = trying.between(*ends)
        if moves:
            yield replace(_gap(trying, doubt, moves), ends=ends)
    yield from _hands(trying, hands)


def _hands(trying: Trying, doubts: Sequence[Doubt]) -> Iterator[Gap]:
    """How long work takes is one gap: nobody writes that on a note."""
    if not doubts:
        return
    ends = []
    for low in (True, False):
        dessert, kitchen = trying.dessert, trying.kitchen
        for doubt in doubts:
            bound = doubt.low if low else doubt.high
            dessert, kitchen = put_at(dessert, kitchen, doubt, bound)
        ends.append(trying.changed(dessert, kitchen))
    steps = list(dict.fromkeys(_step(trying, doubt) for doubt in doubts))
    yield Gap(
        key="working times",
        kind="time",
        says=Words(
            "how long the work takes is not said: {steps}", steps=", ".join(steps)
        ),
        takes=Words("taken as usual, {n} steps", n=len(doubts)),
        asks=Words("how many minutes does {step!r} take you?", step=steps[0]),
        moves=trying.between(*ends),
        lines=only(trying.dessert.line),
    )


def _moulds(dessert: Dessert) -> set[str]:
    inside = {
        one.fill.mould for one in dessert.layers if isinstance(one.fill, FromMould)
    }
    return inside | {dessert.mould}


def _concerns(trying: Trying, doubt: Doubt, moulds: set[str]) -> bool:
    """Whether the dessert hangs on it: its own figures, its moulds, the jugs."""
    if not doubt.in_kitchen:
        return True
    first, *rest = doubt.path
    if first == "moulds" and isinstance(rest[0], int):
        return trying.kitchen.moulds[rest[0]].key in moulds and "wall" not in rest
    return first == "jugs"


def _gap(trying: Trying, doubt: Doubt, moves: tuple[Moved, ...]) -> Gap:
    figure = doubt.figure
    origin = figure.origin
    assert isinstance(origin, Assumed)
    kind, says, asks = _worded(trying, doubt)
    return Gap(
        key=_key(trying, doubt),
        kind=kind,
        says=says,
        takes=Words(
            "taken as {value} {unit} ({low} to {high})",
            value=_shown(figure, figure.value),
            low=_shown(figure, origin.low),
            high=_shown(figure, origin.high),
            unit="h" if _in_hours(figure) else figure.unit,
        ),
        asks=asks,
        moves=moves,
        figure=figure,
        lines=only(origin.line),
    )


def _worded(trying: Trying, doubt: Doubt) -> tuple[Kind, Words, Words]:
    figure, path = doubt.figure, doubt.path
    if doubt.in_kitchen and path[0] == "moulds" and isinstance(path[1], int):
        name = trying.kitchen.moulds[path[1]].key
        return (
            "mould",
            Words("how much the {name} mould holds is not known", name=name),
            Words(
                "fill one cavity of the {name} mould with water: how many grams?",
                name=name,
            ),
        )
    where = _where(trying, doubt)
    if figure.unit == "g/ml":
        return (
            "density",
            Words("{where}: the {name} is not known", where=where, name=figure.name),
            settled_by(figure),
        )
    if figure.unit == "min":
        step = _step(trying, doubt)
        return (
            "time",
            Words(
                "{where}: how long {step!r} takes is not said", where=where, step=step
            ),
            Words("how long does {step!r} take?", step=step),
        )
    return (
        "amount" if "formula" in path else "figure",
        Words("{where}: the {name} is only assumed", where=where, name=figure.name),
        settled_by(figure),
    )


def _where(trying: Trying, doubt: Doubt) -> str:
    if doubt.path[0] == "components" and isinstance(doubt.path[1], int):
        return trying.dessert.components[doubt.path[1]].name
    return trying.dessert.name


def _step(trying: Trying, doubt: Doubt) -> str:
    """The key of the step whose time is assumed."""
    path = doubt.path
    place = path.index("method") + 1 if "method" in path else 0
    number = path[place]
    if not place or not isinstance(number, int):
        return doubt.figure.name
    if path[0] == "components" and isinstance(path[1], int):
        return trying.dessert.components[path[1]].method[number].key
    return trying.dessert.method[number].key


def _key(trying: Trying, doubt: Doubt) -> str:
    """The same for as long as the figure is assumed: where it is and what it is."""
    where = "kitchen" if doubt.in_kitchen else _where(trying, doubt)
    if (
        doubt.in_kitchen
        and doubt.path[0] == "moulds"
        and isinstance(doubt.path[1], int)
    ):
        where = trying.kitchen.moulds[doubt.path[1]].key
    step = _step(trying, doubt) if "method" in doubt.path else ""
    return ": ".join(filter(None, (where, step, doubt.figure.name)))


def _in_hours(figure: Figure) -> bool:
    return figure.unit == "min" and figure.value >= 2 * _HOURS


def _shown(figure: Figure, value: float) -> str:
    return f"{value / _HOURS if _in_hours(figure) else value:.4g}"
