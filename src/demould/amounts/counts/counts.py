"""All counts side by side, the weakest marked, and how sure each of them is."""

from dataclasses import dataclass

from demould.amounts.counts.sure import spreads
from demould.amounts.counts.yields import Yield, yields
from demould.matter.grams import Find
from demould.mise.dessert import Dessert
from demould.mise.figure import Estimate, Figure, worked
from demould.mise.kitchen import Kitchen
from demould.mise.words import Words


@dataclass(frozen=True, slots=True, kw_only=True)
class Count:
    """What one component as written gives, in whole pieces.

    `gives` is the same number with all it hangs on. `left_over` is grams of it that stay
    when the weakest component is used up. `remark` says what the number hangs on.
    """

    component: str
    name: str
    pieces: int
    gives: Figure
    spread: Estimate
    left_over: Figure
    weakest: bool
    remark: Words | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class Counts:
    """All components of a dessert as written.

    `pieces` is the dessert's own count with its spread. `measure_first` is the assumed
    figure that moves it most, None where nothing assumed moves it.
    """

    dessert: str
    each: tuple[Count, ...]
    pieces: Estimate
    measure_first: Figure | None


def counts(dessert: Dessert, kitchen: Kitchen, find: Find) -> Counts:
    """Count all components as written, each between what assumed figures allow.

    Every assumed figure of the dessert, of its moulds and jugs, and every assumed unit
    weight of a counted line is put at both bounds, one after the other, and the counts
    worked out anew; then each component once more with all of them at their worse
    bound, and once at their better one.

    Raises
    ------
    ValueError
        If the piece itself cannot be (`does_it_fit` says why), or nothing is counted.
    """
    likely = yields(dessert, kitchen, find)
    if not likely:
        raise ValueError(f"nothing in {dessert.name} can be counted")
    sure = spreads(dessert, kitchen, find)
    least = min(one.gives.value for one in likely)
    return Counts(
        dessert=dessert.key,
        each=tuple(_count(one, sure.each[one.component], least) for one in likely),
        pieces=sure.whole,
        measure_first=sure.measure_first,
    )


def _count(one: Yield, spread: Estimate, least: float) -> Count:
    spare = max(0.0, one.exact.value - least)
    left_over = worked(
        f"{one.name} left over",
        spare * one.each.value,
        "g",
        Words("what {spare:.2f} pieces more would take", spare=spare),
        one.exact,
        one.each,
    )
    return Count(
        component=one.component,
        name=one.name,
        pieces=int(one.gives.value),
        gives=one.gives,
        spread=spread,
        left_over=left_over,
        weakest=one.gives.value == least,
        remark=one.remark,
    )
