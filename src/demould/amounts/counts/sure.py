"""How far the counts move with what is only assumed."""

from dataclasses import dataclass, replace

from demould.amounts.counts.doubt import Doubt, doubts_of, put_at
from demould.amounts.counts.yields import yields
from demould.matter.grams import Find
from demould.mise.dessert import Dessert, FromMould
from demould.mise.figure import Assumed, Estimate, Figure, Stated
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


_Gives = dict[str, tuple[float, int]]


@dataclass(frozen=True, slots=True, kw_only=True)
class _Moved:
    doubt: Doubt
    at_low: _Gives
    at_high: _Gives

    def by(self, key: str) -> float:
        return self.at_high[key][0] - self.at_low[key][0]


def spreads(dessert: Dessert, kitchen: Kitchen, find: Find) -> Spreads:
    """Put every assumed figure at both bounds and count anew, then all of them at once."""
    kitchen = _counting(kitchen, dessert)
    counted = _Counted(dessert, kitchen, find)
    likely = counted.at()
    moved = [
        _Moved(
            doubt=doubt,
            at_low=counted.at((doubt, doubt.low)),
            at_high=counted.at((doubt, doubt.high)),
        )
        for doubt in doubts_of(dessert, kitchen)
    ]
    estimates = {key: _estimate(counted, moved, likely, key) for key in likely}
    whole = estimates.pop(WHOLE)
    most = max(moved, key=lambda one: abs(one.by(WHOLE)), default=None)
    moves = most is not None and most.by(WHOLE) != 0
    return Spreads(
        each=estimates,
        whole=whole,
        measure_first=most.doubt.figure if most is not None and moves else None,
    )


_Bound = tuple[Doubt, Figure]


class _Counted:
    """Counts with figures at their bounds, each set of bounds counted once."""

    def __init__(self, dessert: Dessert, kitchen: Kitchen, find: Find) -> None:
        self._where = dessert, kitchen, find
        self._seen: dict[tuple[tuple[int, bool], ...], _Gives] = {}

    def at(self, *bounds: _Bound) -> _Gives:
        """Where no piece can be made at these bounds, that is 0 pieces."""
        key = tuple((id(doubt), bound is doubt.low) for doubt, bound in bounds)
        if key not in self._seen:
            self._seen[key] = self._count(bounds)
        return self._seen[key]

    def _count(self, bounds: tuple[_Bound, ...]) -> _Gives:
        dessert, kitchen, find = self._where
        for doubt, bound in bounds:
            dessert, kitchen = put_at(dessert, kitchen, doubt, bound)
        try:
            return _gives(dessert, kitchen, find)
        except ValueError:
            if not bounds:
                raise
            return dict.fromkeys(self.at(), (0.0, 0))


def _counting(kitchen: Kitchen, dessert: Dessert) -> Kitchen:
    """Leave out what no count hangs on, and doubt no wall and no breakage."""
    said = Stated(by="not looked at")
    used = {dessert.mould} | {
        layer.fill.mould
        for layer in dessert.layers
        if isinstance(layer.fill, FromMould)
    }
    return replace(
        kitchen,
        people=(),
        tools=(),
        cold=(),
        scales=(),
        openings=(),
        moulds=tuple(
            replace(mould, wall=replace(mould.wall, origin=said))
            for mould in kitchen.moulds
            if mould.key in used
        ),
        breakage=replace(kitchen.breakage, origin=said),
    )


def _gives(dessert: Dessert, kitchen: Kitchen, find: Find) -> _Gives:
    given = {
        one.component: (one.exact.value, int(one.gives.value))
        for one in yields(dessert, kitchen, find)
    }
    exact = min((value for value, _ in given.values()), default=0.0)
    pieces = min((whole for _, whole in given.values()), default=0)
    return {**given, WHOLE: (exact, pieces)}


def _estimate(
    counted: _Counted, moved: list[_Moved], likely: _Gives, key: str
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
    looks = [counted.at(*bounds)[key][1] for bounds in (worse, better) if bounds]
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
