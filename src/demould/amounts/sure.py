"""How far the counts move with what is only assumed."""

from collections.abc import Iterable, Iterator
from dataclasses import dataclass, replace

from demould.amounts.yields import yields
from demould.matter.grams import Find, counted
from demould.mise.dessert import Dessert
from demould.mise.figure import Assumed, Estimate, Figure, Path, figures_in, put
from demould.mise.kitchen import Kitchen
from demould.mise.words import Words

WHOLE = "the dessert"


@dataclass(frozen=True, slots=True, kw_only=True)
class Spreads:
    """Spread of each component's count, by key, and of the dessert's.

    `measure_first` is the assumed figure that moves the dessert's count most, None
    where none does.
    """

    each: dict[str, Estimate]
    whole: Estimate
    measure_first: Figure | None


@dataclass(frozen=True, slots=True, kw_only=True)
class _Doubt:
    figure: Figure
    in_kitchen: bool
    path: Path
    low: Figure
    high: Figure


_Gives = dict[str, tuple[float, int]]


@dataclass(frozen=True, slots=True, kw_only=True)
class _Moved:
    doubt: _Doubt
    at_low: _Gives
    at_high: _Gives

    def by(self, key: str) -> float:
        return self.at_high[key][0] - self.at_low[key][0]


def spreads(dessert: Dessert, kitchen: Kitchen, find: Find) -> Spreads:
    """Put every assumed figure at both bounds and count anew, then all of them at once."""
    likely = _gives(dessert, kitchen, find)
    moved = [
        _Moved(
            doubt=doubt,
            at_low=_at(dessert, kitchen, find, [(doubt, doubt.low)], likely),
            at_high=_at(dessert, kitchen, find, [(doubt, doubt.high)], likely),
        )
        for doubt in _doubts(dessert, kitchen)
    ]
    estimates = {
        key: _estimate(dessert, kitchen, find, moved, likely, key) for key in likely
    }
    whole = estimates.pop(WHOLE)
    most = max(moved, key=lambda one: abs(one.by(WHOLE)), default=None)
    moves = most is not None and most.by(WHOLE) != 0
    return Spreads(
        each=estimates,
        whole=whole,
        measure_first=most.doubt.figure if most is not None and moves else None,
    )


def _gives(dessert: Dessert, kitchen: Kitchen, find: Find) -> _Gives:
    given = {
        one.component: (one.exact.value, int(one.gives.value))
        for one in yields(dessert, kitchen, find)
    }
    exact = min((value for value, _ in given.values()), default=0.0)
    pieces = min((whole for _, whole in given.values()), default=0)
    return {**given, WHOLE: (exact, pieces)}


def _at(
    dessert: Dessert,
    kitchen: Kitchen,
    find: Find,
    bounds: Iterable[tuple[_Doubt, Figure]],
    likely: _Gives,
) -> _Gives:
    """Count with figures at a bound. Where no piece can be made at it, that is 0 pieces."""
    for doubt, bound in bounds:
        if doubt.in_kitchen:
            kitchen = put(kitchen, doubt.path, bound)
        else:
            dessert = put(dessert, doubt.path, bound)
    try:
        return _gives(dessert, kitchen, find)
    except ValueError:
        return dict.fromkeys(likely, (0.0, 0))


def _estimate(
    dessert: Dessert,
    kitchen: Kitchen,
    find: Find,
    moved: list[_Moved],
    likely: _Gives,
    key: str,
) -> Estimate:
    moving = [one for one in moved if one.by(key) != 0]
    worse = [
        (one.doubt, one.doubt.low if one.by(key) > 0 else one.doubt.high)
        for one in moving
    ]
    better = [
        (one.doubt, one.doubt.high if one.by(key) > 0 else one.doubt.low)
        for one in moving
    ]
    looks = [
        _at(dessert, kitchen, find, bounds, likely)[key][1]
        for bounds in (worse, better)
        if bounds
    ]
    pieces = [likely[key][1], *looks]
    return Estimate(
        low=min(pieces),
        likely=likely[key][1],
        high=max(pieces),
        unit="pieces",
        reason=_reason(moving, key),
    )


def _reason(moving: list[_Moved], key: str) -> Words:
    if not moving:
        return Words("nothing it hangs on is assumed")
    first = max(moving, key=lambda one: abs(one.by(key))).doubt.figure
    assert isinstance(first.origin, Assumed)
    return Words(
        "{name} between {low:g} and {high:g} {unit}",
        name=first.name,
        low=first.origin.low,
        high=first.origin.high,
        unit=first.unit,
    )


def _doubts(dessert: Dessert, kitchen: Kitchen) -> Iterator[_Doubt]:
    yield from _assumed_in(dessert, in_kitchen=False)
    used = replace(kitchen, people=(), tools=(), cold=(), scales=(), openings=())
    yield from _assumed_in(used, in_kitchen=True)
    for number, component in enumerate(dessert.components):
        for line, one in enumerate(component.formula):
            each = counted(one)
            if each is None or one.amount is None:
                continue
            assert isinstance(each.origin, Assumed)
            path = ("components", number, "formula", line, "amount")
            yield _Doubt(
                figure=each,
                in_kitchen=False,
                path=path,
                low=_times(one.amount, each.origin.low / each.value),
                high=_times(one.amount, each.origin.high / each.value),
            )


def _assumed_in(thing: object, *, in_kitchen: bool) -> Iterator[_Doubt]:
    for path, figure in figures_in(thing):
        if isinstance(figure.origin, Assumed):
            yield _Doubt(
                figure=figure,
                in_kitchen=in_kitchen,
                path=path,
                low=replace(figure, value=figure.origin.low),
                high=replace(figure, value=figure.origin.high),
            )


def _times(figure: Figure, factor: float) -> Figure:
    return replace(figure, value=figure.value * factor)
