"""What is in the house: the last count, and what came and went since."""

from datetime import date, timedelta

from demould.mise.figure import Figure, worked
from demould.mise.own_larder import Stocked
from demould.mise.words import Words

DAY_MIN = 24 * 60


def in_house(stocked: Stocked) -> Figure | None:
    """Grams in the house as bought; None where it was never counted [g].

    More used than was there leaves nothing: the count was wrong, and is asked for.
    """
    if stocked.stock is None:
        return None
    if not stocked.since:
        return stocked.stock
    moved = [one.grams for one in stocked.since]
    left = stocked.stock.value + sum(
        one.grams.value if one.came else -one.grams.value for one in stocked.since
    )
    return worked(
        f"{stocked.key} in the house",
        max(0.0, left),
        "g",
        Words("{stock:g} g counted, and what came and went", stock=stocked.stock.value),
        stocked.stock,
        *moved,
    )


def overdrawn_g(stocked: Stocked) -> float:
    """How much more was used than was counted and came [g]."""
    if stocked.stock is None:
        return 0.0
    gone = sum(
        -one.grams.value if one.came else one.grams.value for one in stocked.since
    )
    return max(0.0, gone - stocked.stock.value)


def good_until(stocked: Stocked, opened: date) -> date | None:
    """Until when it is good, opened on a day; None where nobody says."""
    if stocked.keeps is None:
        return stocked.use_by
    until = opened + timedelta(days=int(stocked.keeps.value // DAY_MIN))
    return min(until, stocked.use_by) if stocked.use_by else until
