"""Where the reader is: the open part, the last line, the segment on its way through."""

from collections.abc import Sequence
from dataclasses import dataclass, field, replace

from demould.mise.note.building import OpenLine, OpenPart, OpenStep
from demould.mise.note.noted import Use
from demould.mise.note.tags import Tag

AMOUNTS = ("amount", "percent", "bare")
SMALL = (
    *("join", "about", "mark", "dash", "at", "one", "comma", "plus", "open", "close"),
    *("stop", "colon", "times"),
)
NO_FOOD = frozenset(
    [
        *("x", "recipe", "recette", "ricetta", "receta", "rezept", "batch", "times"),
        *("terrine", "terrines", "tray", "trays", "frame", "frames", "sheet", "sheets"),
        *(
            "plaque",
            "plaques",
            "cadre",
            "cadres",
            "teglia",
            "bandeja",
            "blech",
            "rahmen",
        ),
    ]
)
"""Words beside a number that are no ingredient: ``half recipe``, ``x 2``."""

LONGEST_UNKNOWN = 3
"""More words than this in a row that nobody knows are talk, not an ingredient."""


@dataclass(slots=True, kw_only=True)
class Reading:
    """Where the reader is in the note. `busy` where something is being done."""

    part: OpenPart
    number: int = 0
    uses: dict[int, Use] = field(default_factory=dict)
    called: list[Tag] = field(default_factory=list)
    mould: list[Tag] = field(default_factory=list)
    last: OpenLine | None = None
    step: OpenStep | None = None
    busy: bool = False
    splitting: OpenLine | None = None
    split_begun: bool = False
    before: list[Tag] = field(default_factory=list)

    def use(self, tag: Tag, use: Use) -> None:
        """Note what became of a tag."""
        self.uses[tag.start] = use


@dataclass(slots=True, kw_only=True)
class Segment:
    """What stands between two commas, while it is read from left to right."""

    tags: Sequence[Tag]
    now: Reading
    between: Tag | None = None
    here: OpenLine | None = None
    pending: Tag | None = None
    each: list[Tag] = field(default_factory=list)
    bracketed: bool = False
    steps: list[OpenStep] = field(default_factory=list)
    opened: list[OpenLine] = field(default_factory=list)
    done: set[int] = field(default_factory=set)

    def remark(self, tag: Tag) -> None:
        """Keep a word that nobody understood, with the line it stands on."""
        self.now.use(tag, "remark")
        if self.here is None:
            return
        led = next((one for one in self.tags if one.end + 1 == tag.start), None)
        if led is not None and led.kind == "at" and led not in self.here.remarks:
            self.now.use(led, "remark")
            tag = replace(tag, start=led.start)
        self.here.remarks.append(tag)

    @property
    def busy(self) -> bool:
        """Whether something is being done here: amounts may be temperatures."""
        return bool(self.steps) or self.now.busy

    @property
    def doing(self) -> bool:
        """Whether the clause has a step already: a bare number is no weight then."""
        return self.busy or self.now.step is not None

    @property
    def has_ingredient(self) -> bool:
        """Whether an ingredient is named in it."""
        return any(tag.kind in ("ingredient", "juice") for tag in self.tags)

    @property
    def words(self) -> list[Tag]:
        """Its tags without marks and small words."""
        return [tag for tag in self.tags if tag.kind not in (*SMALL, "state")]

    @property
    def unknown_name(self) -> list[Tag]:
        """Words nobody knows that could be an ingredient: one to three in a row."""
        if self.has_ingredient or self.here is not None:
            return []
        words = [
            tag
            for tag in self.tags
            if tag.kind in ("unknown", "part") and tag.plain not in NO_FOOD
        ]
        return words if len(words) <= LONGEST_UNKNOWN else []

    def ingredient_follows(self, place: int) -> bool:
        """Whether an ingredient stands behind, before any other amount."""
        for tag in self.tags[place + 1 :]:
            if tag.kind in AMOUNTS:
                return False
            if tag.kind in ("ingredient", "juice"):
                return True
        return False


def refer(segment: Segment, line: OpenLine) -> None:
    """Make a line the one that what follows belongs to, and part of the formula."""
    segment.here = line
    segment.opened.append(line)
    if not line.mentioned:
        segment.now.last = line
    segment.now.part.lines.append(line)
