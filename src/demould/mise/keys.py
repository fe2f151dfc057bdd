"""The keys of one part of a file: which are there, which are not known."""

from collections.abc import Callable, Mapping, Sequence
from dataclasses import dataclass
from typing import TypeVar

from demould.mise.faults import Faults
from demould.mise.figure import Line
from demould.mise.spelling import perhaps
from demould.mise.tree import Block, Branch, Leaf, Node
from demould.mise.words import Words

Thing = TypeVar("Thing")


@dataclass(frozen=True, slots=True)
class Keys:
    """A branch by key, with where its faults go."""

    by_key: Mapping[str, tuple[Leaf, Node]]
    line: Line
    faults: Faults

    def __contains__(self, key: str) -> bool:
        return key in self.by_key

    def quietly(self) -> "Keys":
        """The same keys, with faults that nobody hears of."""
        return Keys(self.by_key, self.line, Faults())

    def place(self, key: str) -> Line:
        """Where the key stands, or what it is missing from."""
        return self.by_key[key][0].line if key in self.by_key else self.line

    def text(self, key: str) -> str:
        """What stands after the key, as written; nothing where it is not there."""
        return self.read(key, lambda line: line.text) or ""

    def read(self, key: str, read: Callable[[Line], Thing]) -> Thing | None:
        """Read what stands after the key, if it is there."""
        if key not in self.by_key:
            return None
        name, node = self.by_key[key]
        if not isinstance(node, Leaf):
            self._wants_one_line(name)
        elif not node.line.text:
            self._is_empty(name)
        else:
            return self.faults.one(node.line, read)
        return None

    def lines(self, key: str) -> tuple[Leaf, ...]:
        """The lines of the block below the key; one line after it will do as well."""
        if key not in self.by_key:
            return ()
        name, node = self.by_key[key]
        match node:
            case Block():
                if not node.lines:
                    self._is_empty(name)
                return node.lines
            case Leaf():
                if not node.line.text:
                    self._is_empty(name)
                return (node,) if node.line.text else ()
        self.faults.tell(
            name.line,
            Words("the lines below {key!r} have keys", key=key),
            Words("Write {key}: | and one thing a line below it", key=key),
        )
        return ()

    def each(self, key: str, read: Callable[[Line], Thing]) -> tuple[Thing, ...]:
        """Read each line of the block below the key."""
        return self.faults.each(self.lines(key), read)

    def _wants_one_line(self, name: Leaf) -> None:
        self.faults.tell(
            name.line,
            Words("{key!r} has more than one line", key=name.line.text),
            Words("Write it on one line, after the colon"),
        )

    def _is_empty(self, name: Leaf) -> None:
        self.faults.tell(
            name.line,
            Words("nothing stands after {key!r}", key=name.line.text),
            Words("Write it, or take the line away"),
        )


def keys_of(
    branch: Branch,
    faults: Faults,
    *,
    known: Sequence[str],
    required: Mapping[str, Words],
    openings: Sequence[str] = (),
) -> Keys:
    """The keys of a branch, unknown, double and missing ones noted.

    Parameters
    ----------
    branch, faults
        What is read, and where its faults go.
    known
        Keys that may be there.
    required
        Keys that must be, each with what to do where it is missing.
    openings
        First words of keys that go on with a name: ``component`` for
        ``component ganache``.
    """
    by_key: dict[str, tuple[Leaf, Node]] = {}
    for leaf, node in branch.items:
        key = leaf.line.text
        if key not in known and not opens(key, openings):
            _tell_unknown(leaf, known, openings, faults)
        elif key in by_key:
            faults.tell(
                leaf.line,
                Words(
                    "{key!r} is here twice, first on line {first}",
                    key=key,
                    first=by_key[key][0].line.number,
                ),
                Words("Keep one of the two"),
            )
        else:
            by_key[key] = (leaf, node)
    for key, remedy in required.items():
        if key not in by_key:
            faults.tell(branch.line, Words("{key!r} is missing", key=key), remedy)
    return Keys(by_key, branch.line, faults)


def opens(key: str, openings: Sequence[str]) -> bool:
    """Whether a key is one of the openings and a name."""
    first, _, name = key.partition(" ")
    return first in openings and bool(name.strip())


def _tell_unknown(
    leaf: Leaf, known: Sequence[str], openings: Sequence[str], faults: Faults
) -> None:
    shown = [*known, *(f"{opening} NAME" for opening in openings)]
    faults.tell(
        leaf.line,
        Words("{key!r} is not known here", key=leaf.line.text),
        perhaps(
            leaf.line.text,
            [*known, *openings],
            Words("Write one of: {known}", known=", ".join(shown)),
        ),
    )
