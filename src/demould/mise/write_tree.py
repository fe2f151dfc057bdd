"""Trees made by hand: what writers build and `render` prints."""

from collections.abc import Iterable

from demould.mise.figure import Line
from demould.mise.tree import Block, Branch, Leaf, Node

NOWHERE = Line("", 0, "")


def leaf(text: str) -> Leaf:
    """A scalar or a line of a block that stands nowhere yet."""
    return Leaf(Line("", 0, text))


def block(lines: Iterable[str]) -> Block | None:
    """A text block, or None where there would be nothing in it."""
    leaves = tuple(leaf(line) for line in lines)
    return Block(leaves, NOWHERE) if leaves else None


def branch(items: Iterable[tuple[str, str | Node | None]]) -> Branch:
    """Keys with what hangs below; None and empty text are left out."""
    return Branch(
        tuple(
            (leaf(key), leaf(node) if isinstance(node, str) else node)
            for key, node in items
            if node is not None and node != ""
        ),
        NOWHERE,
    )


def joined(parts: Iterable[str | None]) -> str:
    """The parts of a line between semicolons, empty ones left out."""
    return "; ".join(part for part in parts if part)
