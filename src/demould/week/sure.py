"""How sure the week is: what is assumed, and what moves how far if it is wrong."""

from collections.abc import Iterable, Iterator, Mapping
from dataclasses import dataclass

from demould.advice.gaps.settling import settled_by
from demould.advice.money import Own, money_a_piece
from demould.amounts.counts.doubt import Doubt, doubts_of, put_at
from demould.amounts.counts.factors import makes
from demould.amounts.counts.yields import yields
from demould.amounts.shape.volume import mould_of
from demould.amounts.tools.rounds import rounds_as_chosen
from demould.matter.grams import Find
from demould.mise.dessert import Dessert
from demould.mise.figure import Assumed, Figure, assumed_in
from demould.mise.kitchen import Kitchen
from demould.mise.order import Order
from demould.mise.own_larder import Larder
from demould.mise.words import Words
from demould.week.making import Making, pieces_for

NEWS = 0.005
"""Under half a per cent a move is not news."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Move:
    """What one assumed figure moves most, between its low and its high.

    `share` is that move as a share of the likely value; `says` puts it in words, and
    `settled_by` is the measurement that would settle it. `money` is what the ingredients
    of a piece cost at both ends, where prices are known and it moves.
    """

    figure: Figure
    dessert: str
    share: float
    says: Words
    settled_by: Words
    money: Words | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class Sure:
    """Every assumed figure the week hangs on, and what each moves, the most first."""

    assumed: tuple[Figure, ...]
    moves: tuple[Move, ...]


@dataclass(frozen=True, slots=True)
class _Output:
    """One number a cook acts on: ``pieces`` of a component, ``grams``, ``make``, ``cost``."""

    kind: str
    component: str


_Outputs = Mapping[_Output, float]


def sure_of(
    makings: Iterable[Making], kitchen: Kitchen, find: Find, larder: Larder = ()
) -> Sure:
    """Put every assumed figure at both its ends and see what moves.

    Money is of what `larder` has a price for.
    """
    own = {one.key: one for one in larder}
    makings = tuple(makings)
    moves: list[Move] = []
    assumed: dict[Figure, None] = {}
    for making in makings:
        hangs_on = {
            figure
            for make in making.amounts.makes
            for figure in assumed_in([make.weigh, make.each])
        } | set(
            assumed_in(
                [
                    making.amounts.made,
                    *(one.gives for one in making.amounts.counts.each),
                ]
            )
        )
        dessert = making.amounts.dessert
        likely = _outputs(making.order, dessert, kitchen, find, own)
        for doubt in doubts_of(dessert, kitchen):
            if doubt.figure not in hangs_on:
                continue
            assumed[doubt.figure] = None
            move = _move(making, kitchen, find, own, doubt, likely)
            if move is not None:
                moves.append(move)
    ranked = sorted(moves, key=lambda move: -move.share)
    return Sure(assumed=tuple(assumed), moves=tuple(_each_figure_once(ranked)))


def _each_figure_once(moves: Iterable[Move]) -> Iterator[Move]:
    seen = set()
    for move in moves:
        if move.figure not in seen:
            seen.add(move.figure)
            yield move


def _move(
    making: Making,
    kitchen: Kitchen,
    find: Find,
    own: Own,
    doubt: Doubt,
    likely: _Outputs,
) -> Move | None:
    dessert = making.amounts.dessert
    ends = [
        _outputs(making.order, *put_at(dessert, kitchen, doubt, bound), find, own)
        for bound in (doubt.low, doubt.high)
    ]
    whole = _whole(making, likely)
    shares = {
        output: abs(ends[1].get(output, 0.0) - ends[0].get(output, 0.0)) / whole[output]
        for output in likely
        if whole[output]
    }
    output = max(shares, key=lambda one: shares[one], default=None)
    if output is None or shares[output] < NEWS:
        return None
    return Move(
        figure=doubt.figure,
        dessert=dessert.name,
        share=shares[output],
        says=_says(making, doubt.figure, output, likely, ends),
        settled_by=settled_by(doubt.figure),
        money=_money(likely, ends),
    )


_COST = _Output("cost", "")


def _money(likely: _Outputs, ends: list[dict[_Output, float]]) -> Words | None:
    """What a piece costs at both ends, where it shows in two digits."""
    if any(_COST not in one for one in (likely, *ends)):
        return None
    low, high = sorted(one[_COST] for one in ends)
    usual = likely[_COST]
    if f"{low:.2f}" == f"{high:.2f}":
        return None
    return Words(
        "ingredients {low:.2f} to {high:.2f} of money a piece, not {likely:.2f}",
        low=low,
        high=high,
        likely=usual,
    )


def _whole(making: Making, likely: _Outputs) -> _Outputs:
    """Give what each output is weighed against.

    Pieces count where they limit the dessert, grams as a part of all that is weighed:
    twice as much spray is little, a tenth more ganache is not.
    """
    weakest = {one.component for one in making.amounts.counts.each if one.weakest}
    grams = sum(value for output, value in likely.items() if output.kind == "grams")
    return {
        output: {
            "make": value,
            "pieces": value if output.component in weakest else 0.0,
            "grams": grams,
            "cost": 0.0,
        }[output.kind]
        for output, value in likely.items()
    }


def _outputs(
    order: Order, dessert: Dessert, kitchen: Kitchen, find: Find, own: Own
) -> dict[_Output, float]:
    """Give what a cook acts on; nothing where no piece can be at this end."""
    made = int(pieces_for(order, kitchen).value)
    turns = rounds_as_chosen(made, mould_of(kitchen, dessert.mould), order.choices)
    try:
        given = yields(dessert, kitchen, find)
        making = makes(dessert, kitchen, find, turns)
    except ValueError:
        return {}
    money = money_a_piece(dessert, given, find, own) if own else None
    return {
        **({} if money is None else {_COST: money}),
        _Output("make", ""): float(made),
        **{_Output("pieces", one.component): one.gives.value for one in given},
        **{_Output("grams", one.component): one.weigh.value for one in making},
    }


def _says(
    making: Making,
    figure: Figure,
    output: _Output,
    likely: _Outputs,
    ends: list[dict[_Output, float]],
) -> Words:
    origin = figure.origin
    assert isinstance(origin, Assumed)
    names = {make.component: make.name for make in making.amounts.makes}
    component = names.get(output.component, "")
    usual = f"{likely[output]:.0f}"
    unit = " g" if output.kind == "grams" else ""
    told = [
        f"{at}{unit} at {end:g}"
        for end, at in (
            (origin.low, f"{ends[0].get(output, 0.0):.0f}"),
            (origin.high, f"{ends[1].get(output, 0.0):.0f}"),
        )
        if at != usual
    ]
    values = {"component": component, "ends": ", ".join(told), "likely": usual}
    match output.kind:
        case "make":
            return Words("make {ends}, not {likely}", **values)
        case "pieces":
            return Words("the written {component} gives {ends}, not {likely}", **values)
        case _:
            return Words("{component}: {ends}, not {likely} g", **values)
