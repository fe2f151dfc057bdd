"""What the plan needs to know of an order's amounts."""

from collections.abc import Mapping
from datetime import datetime

from demould.mise.dessert import Dip
from demould.plan.kitchen.parts import ToMake
from demould.week.making import Making


def to_make(making: Making, arrivals: Mapping[str, datetime]) -> ToMake:
    """Give the part of an order's amounts that the plan needs."""
    inside = [
        part
        for part in making.amounts.piece.parts
        if part.how in ("rest", "cut", "mould", "coat")
    ]
    each: dict[str, float] = {}
    for part in inside:
        each[part.component] = each.get(part.component, 0.0) + part.grams.value
    return ToMake(
        order=making.order,
        dessert=making.amounts.dessert,
        pieces=making.amounts.pieces,
        rounds=making.amounts.rounds.each,
        own_rounds={
            key: turns.each for key, turns in making.amounts.own_rounds.items()
        },
        piece_g=sum(each.values()),
        part_g=each,
        arrivals=arrivals,
        counts=making.amounts.still,
        jug=_jug(making),
    )


def _jug(making: Making) -> tuple[str, float] | None:
    jug = making.amounts.jug
    dips = [one for one in making.amounts.dessert.finish if isinstance(one, Dip)]
    if jug is None or not dips:
        return None
    return dips[0].component, jug.jug.diameter.value
