"""What is being put together while a note is read: lines, steps and parts, still open."""

from collections.abc import Iterable
from dataclasses import dataclass, field
from decimal import Decimal

from demould.larder.find import find_ingredient, ingredient, ingredients
from demould.mise.note.tags import Tag

COUNTED = {
    "egg": 24,
    "egg yolk": 24,
    "egg white": 24,
    "vanilla pod": 12,
    "tonka bean": 12,
    "lemon": 12,
    "lime": 12,
    "orange": 12,
    "pear": 12,
    "apple": 12,
}
"""Up to how many a number without a unit counts pieces of it, not grams."""

SQUEEZED = 8
"""Up to how many "juice of" counts fruit."""


@dataclass(slots=True, kw_only=True)
class OpenLine:
    """A line of a formula while it is read. `what` is an English name or an id.

    `whole` is what was written before it was split; `counts` where a number counts fruit.
    """

    what: str
    written: list[Tag]
    low: Decimal | None = None
    high: Decimal | None = None
    unit: str = ""
    no_unit: bool = False
    guessed: bool = False
    mentioned: bool = False
    steeped: bool = False
    unknown: bool = False
    counts: bool = False
    whole: Decimal | None = None
    states: list[Tag] = field(default_factory=list)
    remarks: list[Tag] = field(default_factory=list)
    number: int = 0

    def take(self, tag: Tag) -> None:
        """Give the line its amount; a number alone is pieces or grams."""
        self.low, self.high = tag.low, tag.high
        self.unit = tag.unit
        if tag.kind == "bare":
            self.no_unit = True
            self.unit = "g"
            most = SQUEEZED if self.counts else COUNTED.get(self.what, 0)
            whole = tag.low is not None and tag.low == int(tag.low)
            if whole and tag.low is not None and tag.low <= most:
                self.unit = "pieces"
            elif self.what == "gelatin" and self.unit_hint == "leaf":
                self.unit = "leaf"

    @property
    def unit_hint(self) -> str:
        """What its own words count by (``leaves 5``)."""
        kinds = {tag.may_be("unit") for tag in self.written}
        return "leaf" if "leaf" in kinds else ""


def once_more(line: OpenLine, number: int) -> OpenLine:
    """The same ingredient once more, without an amount yet."""
    return OpenLine(
        what=line.what,
        written=list(line.written),
        unknown=line.unknown,
        counts=line.counts,
        number=number,
    )


@dataclass(slots=True, kw_only=True)
class OpenStep:
    """A step while it is read."""

    action: str
    tag: Tag
    words: list[Tag] = field(default_factory=list)
    temp: Tag | None = None
    time: Tag | None = None
    while_: Tag | None = None
    number: int = 0


@dataclass(slots=True, kw_only=True)
class OpenPart:
    """A part while it is read."""

    name: str
    kind: str
    lines: list[OpenLine] = field(default_factory=list)
    steps: list[OpenStep] = field(default_factory=list)
    total: Tag | None = None
    number: int = 0


def id_of(what: str) -> str | None:
    """The id of the ingredient that an English name or an id is, or None."""
    found = find_ingredient(what)
    return found.id if found else None


def refined(what: str, number: Decimal, ending: str) -> str | None:
    """The id of the article with that share in its name (``cream`` and 30), or None."""
    text = format(number.normalize(), "f")
    bare = ingredient(what).name if what in ingredients() else what
    for name in (f"{what} {text}{ending}", f"{bare} {text}{ending}"):
        if (found := find_ingredient(name)) is not None:
            return found.id
    return None


def same_family(line: OpenLine, other: OpenLine) -> bool:
    """Whether one name may stand for the other in a method: ``choc``, ``the milk``."""
    one, two = id_of(line.what), id_of(other.what)
    if one is not None and one == two:
        return True
    if line.what.startswith("sugar syrup") and two == "sucrose":
        return True
    if set(line.written[0].plain.split()) & set(other.written[0].plain.split()):
        return True
    if one is None or two is None:
        return False
    categories = {ingredient(one).category, ingredient(two).category}
    return categories == {"chocolate"} or (
        categories == {"gelling"} and {one[:7], two[:7]} in ({"gelatin"}, {"pectin_"})
    )


def without_repeats(lines: Iterable[OpenLine]) -> list[OpenLine]:
    """Lines that only the method mentions go where the list has the thing."""
    given = list(lines)
    listed = [one for one in given if not one.mentioned]
    kept: list[OpenLine] = []
    for one in given:
        others = (*listed, *kept)
        if (
            one.mentioned
            and one.low is None
            and any(same_family(one, other) for other in others)
        ):
            continue
        kept.append(one)
    return kept
