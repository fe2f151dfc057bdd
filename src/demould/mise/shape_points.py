"""Bodies drawn as points: a profile to turn, a plane outline to raise."""

from dataclasses import dataclass
from itertools import pairwise


@dataclass(frozen=True, slots=True, kw_only=True)
class Turned:
    """A profile turned about its axis: points of half its width and the height there.

    From the bottom to the rim; between points it runs straight. [mm, mm]
    """

    points: tuple[tuple[float, float], ...]

    def __post_init__(self) -> None:
        if len(self.points) < 2:
            raise ValueError("a turned profile needs at least two points")
        for number, (half, up) in enumerate(self.points, start=1):
            if half < 0:
                raise ValueError(
                    f"point {number} of the profile is {half:g} mm from the axis; half a"
                    " width is 0 mm or more"
                )
            if number > 1 and up < self.points[number - 2][1]:
                raise ValueError(
                    f"point {number} of the profile, {up:g} mm up, is lower than the one"
                    f" before it, {self.points[number - 2][1]:g} mm: it would cross or"
                    " undercut itself"
                )
        if self.points[-1][1] <= self.points[0][1]:
            raise ValueError("the profile is 0 mm high; it must be more than 0")
        if not any(half for half, _ in self.points):
            raise ValueError("the profile is 0 mm wide; it must be more than 0")


@dataclass(frozen=True, slots=True, kw_only=True)
class Outlined:
    """Upright on a plane outline: its corners in order, the last the first again, in mm."""

    points: tuple[tuple[float, float], ...]
    height_mm: float

    def __post_init__(self) -> None:
        if self.height_mm <= 0:
            raise ValueError(
                f"the outline is {self.height_mm:g} mm high; it must be more than 0"
            )
        if len(self.points) < 4:
            raise ValueError("an outline needs at least three corners")
        (x0, y0), (x1, y1) = self.points[0], self.points[-1]
        if (x0, y0) != (x1, y1):
            raise ValueError(
                f"the outline is open: it begins at {x0:g} {y0:g} and ends at"
                f" {x1:g} {y1:g}; it must end where it began"
            )
        crossed = _crossing(self.points)
        if crossed:
            raise ValueError(
                "the outline crosses itself: side {} meets side {}".format(*crossed)
            )
        if _double_area(self.points) == 0:
            raise ValueError("the outline has no area: all its corners lie in a line")


def _double_area(points: tuple[tuple[float, float], ...]) -> float:
    return sum(x0 * y1 - x1 * y0 for (x0, y0), (x1, y1) in pairwise(points))


def _crossing(points: tuple[tuple[float, float], ...]) -> tuple[int, int] | None:
    """The first two sides, from 1, that meet elsewhere than in the corner they share."""
    sides = tuple(pairwise(points))
    last = len(sides) - 1
    for one, (a, b) in enumerate(sides):
        for other in range(one + 1, len(sides)):
            c, d = sides[other]
            next_ = other == one + 1 or (one == 0 and other == last)
            if not next_ and _meet(a, b, c, d):
                return one + 1, other + 1
            if next_ and _folds(a, b, c, d):
                return one + 1, other + 1
    return None


_Point = tuple[float, float]


def _turn(a: _Point, b: _Point, c: _Point) -> float:
    return (b[0] - a[0]) * (c[1] - a[1]) - (b[1] - a[1]) * (c[0] - a[0])


def _within(a: _Point, b: _Point, c: _Point) -> bool:
    """Whether `c`, in line with a and b, lies between them."""
    return all(min(u, v) <= w <= max(u, v) for u, v, w in zip(a, b, c, strict=True))


def _meet(a: _Point, b: _Point, c: _Point, d: _Point) -> bool:
    ends = _turn(a, b, c), _turn(a, b, d), _turn(c, d, a), _turn(c, d, b)
    if ends[0] * ends[1] < 0 and ends[2] * ends[3] < 0:
        return True
    touching = ((a, b, c), (a, b, d), (c, d, a), (c, d, b))
    return any(
        not turn and _within(*three) for turn, three in zip(ends, touching, strict=True)
    )


def _folds(a: _Point, b: _Point, c: _Point, d: _Point) -> bool:
    """Whether two sides that share a corner run back over each other."""
    shared, start, end = (b, a, d) if b == c else (a, b, c)
    back = (start[0] - shared[0]) * (end[0] - shared[0]) + (start[1] - shared[1]) * (
        end[1] - shared[1]
    )
    return not _turn(shared, start, end) and back > 0
