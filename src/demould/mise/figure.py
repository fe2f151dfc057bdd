"""A number with its unit, how it is known, and what it came from."""

from collections.abc import Iterable, Iterator
from dataclasses import dataclass, field, fields, is_dataclass, replace
from datetime import date
from typing import Any, Literal, TypeVar

from demould.mise.words import Words


@dataclass(frozen=True, slots=True)
class Line:
    """One line of a file as somebody wrote it. `number` and `column` count from 1."""

    file: str
    number: int
    text: str
    column: int = 1


@dataclass(frozen=True, slots=True, kw_only=True)
class Measured:
    """Weighed, timed or counted in this kitchen."""

    on: date | None = None
    readings: int = 1
    line: Line | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class Stated:
    """Written down by somebody: the formula, the supplier, the maker of the mould."""

    by: str = ""
    line: Line | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class Assumed:
    """Taken because nobody said. `low` and `high` bound it, in the figure's own unit.

    `source` says whence: a key of the larder's sources, or a word of the cook's.
    """

    low: float
    high: float
    source: str = ""
    line: Line | None = None

    def __post_init__(self) -> None:
        if self.low > self.high:
            raise ValueError(f"assumed between {self.low:g} and {self.high:g}: turned")


@dataclass(frozen=True, slots=True, kw_only=True)
class Worked:
    """Worked out by a rule from other figures."""

    rule: Words
    parts: tuple["Figure", ...]


Origin = Measured | Stated | Assumed | Worked
Known = Literal["measured", "stated", "assumed", "worked out"]


@dataclass(frozen=True, slots=True, kw_only=True)
class Figure:
    """A number a cook may question.

    Units are those people read: g, ml, mm, cm2, min, °C, %, g/ml, pieces. `name` says
    what it is in the trade's words; two figures are the same fact when all is equal.
    """

    value: float
    unit: str
    name: str
    origin: Origin = field(default_factory=Stated)

    def __str__(self) -> str:
        return f"{self.value:g} {self.unit}".strip()


@dataclass(frozen=True, slots=True, kw_only=True)
class Estimate:
    """Low, likely, high, each from a real re-computation at a corner of what is unsure.

    `reason` names the first cause of the spread.
    """

    low: float
    likely: float
    high: float
    unit: str
    reason: Words

    def __post_init__(self) -> None:
        if not self.low <= self.likely <= self.high:
            raise ValueError(
                f"an estimate of {self.low:g}, {self.likely:g}, {self.high:g} is out of order"
            )


def worked(
    name: str, value: float, unit: str, rule: str | Words, *parts: Figure
) -> Figure:
    """Give a figure worked out from `parts`; `rule` says how, in a cook's words.

    A rule with numbers in it comes as `Words`, so that doors can translate it.
    """
    return Figure(
        name=name,
        value=value,
        unit=unit,
        origin=Worked(
            rule=rule if isinstance(rule, Words) else Words(rule), parts=parts
        ),
    )


def unfold(figure: Figure, depth: int = 0) -> Iterator[tuple[int, Figure]]:
    """Walk from a figure down to the lines as written, each with its depth."""
    yield depth, figure
    if isinstance(figure.origin, Worked):
        for part in figure.origin.parts:
            yield from unfold(part, depth + 1)


def how_known(figure: Figure) -> Known:
    """Say how a figure is known: one assumption below it makes it an assumed one."""
    match figure.origin:
        case Measured():
            return "measured"
        case Stated():
            return "stated"
        case Assumed():
            return "assumed"
        case Worked():
            return "assumed" if assumed_in([figure]) else "worked out"


def assumed_in(figures: Iterable[Figure]) -> tuple[Figure, ...]:
    """All assumed figures that these hang on, each once, in order of appearance."""
    found: dict[Figure, None] = {}
    for figure in figures:
        for _, part in unfold(figure):
            if isinstance(part.origin, Assumed):
                found[part] = None
    return tuple(found)


Path = tuple[str | int, ...]
Thing = TypeVar("Thing")


def figures_in(thing: object, path: Path = ()) -> Iterator[tuple[Path, Figure]]:
    """Find every figure inside a frozen thing, with the way to it."""
    if isinstance(thing, Figure):
        yield path, thing
    elif isinstance(thing, tuple):
        for index, part in enumerate(thing):
            yield from figures_in(part, (*path, index))
    elif is_dataclass(thing):
        for part in fields(thing):
            yield from figures_in(getattr(thing, part.name), (*path, part.name))


def put(thing: Thing, path: Path, part: object) -> Thing:
    """Give a copy of a frozen thing with `part` at `path`; the way `figures_in` gave."""
    if not path:
        return part  # type: ignore[return-value]  # the caller's path says what it is
    step, rest = path[0], path[1:]
    held: Any = thing
    if isinstance(step, int):
        inner = put(held[step], rest, part)
        return (*held[:step], inner, *held[step + 1 :])  # type: ignore[return-value]  # a tuple like the one given
    inner = put(getattr(held, step), rest, part)
    changed: Thing = replace(held, **{step: inner})
    return changed
