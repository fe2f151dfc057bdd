"""Which packs to buy so that it is enough and costs least."""

import math
from collections.abc import Sequence
from dataclasses import dataclass
from decimal import Decimal

from demould.mise.own_larder import Pack, Stocked
from demould.office.money import exact

SPECK_G = 1e-6


@dataclass(frozen=True, slots=True, kw_only=True)
class Bought:
    """So many packs of one size. `price` is money each, None where nobody says."""

    pack: Pack
    count: int
    price: Decimal | None

    @property
    def grams(self) -> float:
        """What is in them."""
        return self.count * self.pack.size.value


def price_of(pack: Pack, stocked: Stocked) -> Decimal | None:
    """Money one pack costs: its own price, or the kilo's.

    A price for the trimmed kilo is that of what is left of the pack.
    """
    if pack.price is not None:
        return pack.price
    if stocked.price is None:
        return None
    return price_a_bought_kg(stocked) * exact(pack.size.value) / 1000


def price_a_bought_kg(stocked: Stocked) -> Decimal:
    """Money a kilo costs as it is bought, untrimmed.

    Raises
    ------
    ValueError
        If no price a kilo is written.
    """
    if stocked.price is None:
        raise ValueError(f"{stocked.key!r} has no price a kilo")
    if stocked.priced == "net" and stocked.trim:
        return stocked.price * (100 - exact(stocked.trim.value)) / 100
    return stocked.price


def least_cost(short_g: float, stocked: Stocked) -> tuple[Bought, ...]:
    """Packs that together hold at least `short_g`, at least cost.

    Of choices that cost the same, the one that leaves least over; then the fewest
    packs. Where no price is known the one that leaves least over. Nothing is bought
    where nothing is short, or no pack size is written.
    """
    packs = sorted(stocked.packs, key=lambda pack: pack.size.value)
    prices = [price_of(pack, stocked) for pack in packs]
    known = [price for price in prices if price is not None]
    costs = (
        known
        if len(known) == len(packs)
        else [exact(pack.size.value) for pack in packs]
    )
    sizes = [exact(pack.size.value) for pack in packs]
    counts = cheapest_counts(exact(short_g), sizes, costs)
    return tuple(
        Bought(pack=pack, count=count, price=price)
        for pack, count, price in zip(packs, counts, prices, strict=True)
        if count
    )


def cheapest_counts(
    short: Decimal, sizes: Sequence[Decimal], costs: Sequence[Decimal]
) -> tuple[int, ...]:
    """How many of each size cover `short` at least cost, then weight, then number.

    Exact. The size with the lowest price a gram is tried first, from as many as would
    do alone downwards; a branch ends where even at the best price a gram of what is
    left it could only cost more than the best found.
    """
    if short <= exact(SPECK_G) or not sizes:
        return (0,) * len(sizes)
    by_rate = sorted(range(len(sizes)), key=lambda at: (costs[at] / sizes[at], at))
    best: tuple[tuple[Decimal, Decimal, int], tuple[int, ...]] | None = None
    picked = [0] * len(sizes)

    def dearer(paid: Decimal, left: Decimal, at: int) -> bool:
        """Whether what is left, at this size's price a gram, costs more than the best.

        Multiplied out: a price a gram is rounded, and would cut off what costs the same.
        """
        if best is None:
            return False
        return (paid - best[0][0]) * sizes[at] + left * costs[at] > 0

    def pick(depth: int, left: Decimal, cost: Decimal) -> None:
        nonlocal best
        if left <= exact(SPECK_G) or depth == len(by_rate):
            if left <= exact(SPECK_G):
                judged = (cost, -left, sum(picked)), tuple(picked)
                if best is None or judged[0] < best[0]:
                    best = judged
            return
        at = by_rate[depth]
        if dearer(cost, left, at):
            return
        rest = by_rate[depth + 1 :]
        for count in range(math.ceil(left / sizes[at]), -1, -1):
            still = left - count * sizes[at]
            paid = cost + count * costs[at]
            if still > exact(SPECK_G) and (not rest or dearer(paid, still, rest[0])):
                break
            picked[at] = count
            pick(depth + 1, still, paid)
        picked[at] = 0

    pick(0, short, Decimal(0))
    assert best is not None
    return best[1]
