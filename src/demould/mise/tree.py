"""Text as a tree with places: what the door reads from YAML and rooms read from here."""

from dataclasses import dataclass

from demould.mise.figure import Line


@dataclass(frozen=True, slots=True)
class Leaf:
    """A scalar, or one line of a block, as text."""

    line: Line


@dataclass(frozen=True, slots=True)
class Block:
    """A text block (``|``): its lines, blank ones left out."""

    lines: tuple[Leaf, ...]
    line: Line


@dataclass(frozen=True, slots=True)
class Branch:
    """Keys with what hangs below them, in the order written."""

    items: tuple[tuple[Leaf, "Node"], ...]
    line: Line


Node = Leaf | Block | Branch
