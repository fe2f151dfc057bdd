"""How many to make so that enough come out whole."""

import math

from demould.matter.grams import share
from demould.mise.figure import Figure, worked
from demould.mise.kitchen import Kitchen
from demould.mise.words import Words


def sure_of(needed: int, made: int, breakage: float) -> float:
    """Chance that at least `needed` of `made` come out whole.

    Pieces break one by one, each with the chance `breakage`: the binomial law. A tray
    that falls is not in it.

    >>> round(sure_of(24, 27, 0.05), 3), round(sure_of(24, 26, 0.05), 3)
    (0.956, 0.861)
    """
    if not 0 <= breakage < 1:
        raise ValueError(f"breakage of {100 * breakage:g} %; it must be from 0 to 99 %")
    if made < needed:
        return 0.0
    if breakage == 0:
        return 1.0
    log_break, log_whole = math.log(breakage), math.log1p(-breakage)
    return math.fsum(
        math.exp(
            math.lgamma(made + 1)
            - math.lgamma(broken + 1)
            - math.lgamma(made - broken + 1)
            + broken * log_break
            + (made - broken) * log_whole
        )
        for broken in range(made - needed + 1)
    )


def pieces_to_make(needed: int, breakage: float, sure: float) -> int:
    """Least number made of which at least `needed` come out whole, `sure` of the time.

    >>> [pieces_to_make(n, 0.05, 0.95) for n in (12, 24, 50, 100, 500)]
    [14, 27, 56, 109, 535]
    """
    if not 0 <= sure < 1:
        raise ValueError(f"sure of {100 * sure:g} %; it must be under 100 %")
    if needed <= 0:
        return 0
    low, high = needed, needed + 1
    while sure_of(needed, high, breakage) < sure:
        low, high = high, 2 * high
    while low < high:
        middle = (low + high) // 2
        if sure_of(needed, middle, breakage) < sure:
            low = middle + 1
        else:
            high = middle
    return low


def make_for(ordered: int, kitchen: Kitchen, spares: Figure | None = None) -> Figure:
    """Pieces to make for so many ordered [pieces].

    Spares the order names win over the kitchen's breakage.
    """
    if spares is not None:
        rule = Words("{ordered} ordered and the spares asked for", ordered=ordered)
        made = ordered + spares.value
        return worked("pieces to make", made, "pieces", rule, spares)
    broken, sure = share(kitchen.breakage), share(kitchen.sure)
    rule = Words(
        "the fewest of which {ordered} come out whole {sure:g} times in 100,"
        " where {broken:g} % break",
        ordered=ordered,
        sure=100 * sure,
        broken=100 * broken,
    )
    made = pieces_to_make(ordered, broken, sure)
    return worked(
        "pieces to make", made, "pieces", rule, kitchen.breakage, kitchen.sure
    )
