"""Where the cuts of a sheet lie: straight rows, shifted rows, two sizes on one tray."""

import math
from collections.abc import Callable, Iterable, Iterator, Sequence
from dataclasses import dataclass, replace

from demould.amounts.shape.section import box_mm
from demould.amounts.shape.volume import volume_ml
from demould.mise.component import Sheet, Tray
from demould.mise.shape import Box, Shape, Trough

TIGHT = 1e-9
Row = tuple[float, ...]
Rows = tuple[tuple[float, Row], ...]
RowsOf = Callable[[float, float, float, float, float], Rows]


@dataclass(frozen=True, slots=True, kw_only=True)
class Place:
    """The middle of one cut over the tray's corner [mm]; its long side lengthwise."""

    cut: Shape
    at: tuple[float, float]
    turned: bool = False


@dataclass(frozen=True, slots=True, kw_only=True)
class Layout:
    """What is cut from one tray.

    `shifted` says whether every other row, or every few, stands between the discs of
    the row before.
    """

    tray: Tray
    places: tuple[Place, ...]
    shifted: bool

    @property
    def off_cut(self) -> float:
        """Share of the tray that stays over [%]."""
        used = sum(_face_mm2(place.cut) for place in self.places)
        return 100 * (1 - used / (self.tray.length_mm * self.tray.width_mm))


def straight(sheet: Sheet, cut: Shape) -> Layout:
    """Cut in straight rows, turned whichever way gives more."""
    return _better(
        Layout(tray=sheet.tray, places=tuple(_places(rows)), shifted=False)
        for rows in _each_way(sheet, cut, _straight_rows)
    )


def most(sheet: Sheet, cut: Shape) -> Layout:
    """Cut as many as rows give, straight or shifted, or both on one tray.

    Discs and ovals of a shifted row stand between those of the row before, spread as far
    as the tray allows so that the rows come closer. Cuts with corners gain nothing by
    it: they are cut straight, and what is left beside the rows once more, turned.
    """
    if _has_corners(cut):
        return _better([straight(sheet, cut), *_with_rest(sheet, cut)])
    shifted = (
        Layout(tray=sheet.tray, places=tuple(_places(rows)), shifted=True)
        for rows in _each_way(sheet, cut, _shifted_rows)
    )
    return _better([straight(sheet, cut), *shifted])


def laid_out(sheet: Sheet, cut: Shape) -> Layout:
    """Cut a tray as the card asks for it: in straight rows unless it says shifted."""
    return most(sheet, cut) if sheet.shifted else straight(sheet, cut)


@dataclass(frozen=True, slots=True, kw_only=True)
class Ruled:
    """A tray ruled into rows along its length, or along its width where `across`.

    `rows` are the middles of each row, `(from the edge, middles along it)`.
    """

    cut: Shape
    rows: Rows
    across: bool
    turned: bool


def _places(rows: Ruled) -> Iterator[Place]:
    for down, row in rows.rows:
        for along in row:
            at = (down, along) if rows.across else (along, down)
            yield Place(cut=rows.cut, at=at, turned=rows.turned)


def _better(layouts: Iterable[Layout]) -> Layout:
    return max(layouts, key=lambda one: len(one.places))


def _each_way(sheet: Sheet, cut: Shape, rows_of: RowsOf) -> Iterator[Ruled]:
    """Rows along and across the tray, the cut lengthwise and turned."""
    long, wide, _ = box_mm(cut)
    tray, gap = sheet.tray, sheet.gap.value
    for across in (False, True):
        for turned in (False, True):
            if turned and long == wide:
                continue
            length, width = tray.length_mm, tray.width_mm
            along, down = (wide, long) if turned else (long, wide)
            if across:
                length, width, along, down = width, length, down, along
            found = rows_of(length, width, along, down, gap)
            yield Ruled(cut=cut, rows=found, across=across, turned=turned)


def _straight_rows(
    length: float, width: float, along: float, down: float, gap: float
) -> Rows:
    a_row = _fit(length, along, gap)
    row = tuple(along / 2 + n * (along + gap) for n in range(a_row))
    return tuple(
        (down / 2 + n * (down + gap), row) for n in range(_fit(width, down, gap))
    )


def _fit(room: float, cut: float, gap: float) -> int:
    return max(0, math.floor((room + gap) / (cut + gap) + TIGHT))


def _shifted_rows(
    length: float, width: float, along: float, down: float, gap: float
) -> Rows:
    """Rows in units of a disc with its gap: circles of 1 in a tray a gap larger."""
    pattern = best_rows((length + gap) / (along + gap), (width + gap) / (down + gap))
    return tuple(
        (
            at * (down + gap) - gap / 2,
            tuple(x * (along + gap) - gap / 2 for x in row),
        )
        for at, row in pattern
    )


def best_rows(long: float, wide: float) -> Rows:
    """Rows of circles of diameter 1 in a rectangle, as many circles as rows give.

    Three families are tried for every mix of straight and shifted steps from row to row:
    rows as full as they go and moved over by what is left; the same spread until half a
    step is left; and full rows spread over the whole length with one less between them.
    Two shifted steps must still be a whole disc apart. Middles over the corner.

    >>> sum(len(row) for _, row in best_rows(402 / 62, 302 / 62))
    30
    """
    full = math.floor(long + TIGHT)
    if full < 1 or wide < 1 - TIGHT:
        return ()
    found = [
        rows
        for one, other in _families(long, full)
        if (rows := _stacked(one, other, wide))
    ]
    return max(found, key=lambda rows: sum(len(row) for _, row in rows), default=())


def _families(long: float, full: int) -> Iterator[tuple[Row, Row]]:
    """Two rows that may follow each other, shifted."""
    slack = long - full
    close = tuple(0.5 + n for n in range(full))
    yield close, tuple(x + min(slack, 0.5 if full > 1 else slack) for x in close)
    if full > 1:
        step = (long - 1) / (full - 0.5)
        if step >= 1 - TIGHT:
            row = tuple(0.5 + n * step for n in range(full))
            yield row, tuple(x + step / 2 for x in row)
        step = (long - 1) / (full - 1)
        row = tuple(0.5 + n * step for n in range(full))
        yield row, tuple(x + step / 2 for x in row[:-1])


def _stacked(one: Row, other: Row, wide: float) -> Rows:
    """Rows from the edge down, with whichever mix of steps gives most."""
    apart = min((abs(x - y) for x in one for y in other), default=1.0)
    step = max(math.sqrt(max(0.0, 1 - apart**2)), 0.5)
    best: Rows = ()
    for shifts in range(math.floor((wide - 1) / step + TIGHT) + 1):
        plain = math.floor(wide - 1 - shifts * step + TIGHT)
        rows = tuple(_mixed(one, other, shifts, plain, step))
        if sum(len(row) for _, row in rows) > sum(len(row) for _, row in best):
            best = rows
    return best


def _mixed(
    one: Row, other: Row, shifts: int, plain: int, step: float
) -> Iterator[tuple[float, Row]]:
    """Straight steps first, while the fuller row stands; then shifted ones."""
    at = 0.5
    yield at, one
    for _ in range(plain):
        at += 1
        yield at, one
    for n in range(shifts):
        at += step
        yield at, (other, one)[n % 2]


def _with_rest(sheet: Sheet, cut: Shape) -> Iterator[Layout]:
    """Straight rows, and in the strip they leave more rows with the cut turned."""
    tray, gap = sheet.tray, sheet.gap.value
    long, wide, _ = box_mm(cut)
    for rows in _each_way(sheet, cut, _straight_rows):
        for kept in range(1, len(rows.rows)):
            first = replace(rows, rows=rows.rows[:kept])
            used = first.rows[-1][0] + _down(rows, long, wide) / 2 + gap
            strip = (
                (
                    Tray(length_mm=tray.length_mm - used, width_mm=tray.width_mm)
                    if rows.across
                    else Tray(length_mm=tray.length_mm, width_mm=tray.width_mm - used)
                )
                if used < (tray.length_mm if rows.across else tray.width_mm)
                else None
            )
            if strip is None:
                continue
            rest = straight(replace(sheet, tray=strip), cut)
            moved = (_moved(place, used, across=rows.across) for place in rest.places)
            yield Layout(tray=tray, places=(*_places(first), *moved), shifted=False)


def _down(rows: Ruled, long: float, wide: float) -> float:
    return long if rows.across != rows.turned else wide


def _moved(place: Place, by: float, *, across: bool) -> Place:
    x, y = place.at
    return replace(place, at=(x + by, y) if across else (x, y + by))


def trays_for(sheet: Sheet, wanted: Sequence[tuple[Shape, int]]) -> tuple[Layout, ...]:
    """Cut so many of each size from as few trays as rows allow, the largest cuts first.

    Each size takes whole rows, straight or shifted; the next size begins below them on
    the same tray. Both ways round are tried: fewer trays win, then the larger clean
    strip at the end of the last one.

    Raises
    ------
    ValueError
        If a cut does not come out of a whole tray.
    """
    for cut, _ in wanted:
        if not most(sheet, cut).places:
            long, wide, _ = box_mm(cut)
            raise ValueError(
                f"a cut of {long:g} x {wide:g} mm does not come out of a tray of"
                f" {sheet.tray.length_mm:g} x {sheet.tray.width_mm:g} mm"
            )
    tries = [tuple(_filled(sheet, wanted, across=across)) for across in (False, True)]
    return min(tries, key=lambda trays: (len(trays), _used_of_last(trays)))


def _used_of_last(trays: tuple[Layout, ...]) -> float:
    """How much of the last tray the cuts reach over, by area [mm2]."""
    if not trays:
        return 0.0
    ends = [_end(place) for place in trays[-1].places]
    return min(
        max(x for x, _ in ends) * trays[-1].tray.width_mm,
        max(y for _, y in ends) * trays[-1].tray.length_mm,
    )


def _end(place: Place) -> tuple[float, float]:
    long, wide, _ = box_mm(place.cut)
    if place.turned:
        long, wide = wide, long
    return place.at[0] + long / 2, place.at[1] + wide / 2


def _filled(
    sheet: Sheet, wanted: Sequence[tuple[Shape, int]], *, across: bool
) -> Iterator[Layout]:
    tray, gap = sheet.tray, sheet.gap.value
    whole = tray.length_mm if across else tray.width_mm
    by_size = sorted(wanted, key=lambda one: -_face_mm2(one[0]))
    places: list[Place] = []
    used, shifted = 0.0, False
    for cut, n in by_size:
        left = n
        while left > 0:
            room = whole - used
            layout = _strip(sheet, cut, room, left, across=across) if room > 0 else None
            if layout is None or not layout.places:
                yield Layout(tray=tray, places=tuple(places), shifted=shifted)
                places, used, shifted = [], 0.0, False
                continue
            new = [_moved(place, used, across=across) for place in layout.places]
            places.extend(new)
            shifted |= layout.shifted
            left -= len(new)
            used = max(_end(place)[0 if across else 1] for place in new) + gap
    if places:
        yield Layout(tray=tray, places=tuple(places), shifted=shifted)


def _strip(
    sheet: Sheet, cut: Shape, room: float, n: int, *, across: bool
) -> Layout | None:
    """The narrowest strip, at most `room`, that gives `n`; else all that room gives."""
    tray = sheet.tray

    def over(strip: float) -> Layout:
        cut_from = (
            Tray(length_mm=strip, width_mm=tray.width_mm)
            if across
            else Tray(length_mm=tray.length_mm, width_mm=strip)
        )
        return most(replace(sheet, tray=cut_from), cut)

    whole = over(room)
    if len(whole.places) <= n:
        return whole
    low, high = 0.0, room
    for _ in range(30):
        middle = (low + high) / 2
        if middle > 0 and len(over(middle).places) >= n:
            high = middle
        else:
            low = middle
    found = over(high)
    return replace(found, places=found.places[:n])


def _has_corners(cut: Shape) -> bool:
    return isinstance(cut, Box | Trough)


def _face_mm2(cut: Shape) -> float:
    return 1000 * volume_ml(cut) / box_mm(cut)[2]
