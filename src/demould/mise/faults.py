"""Faults of what somebody wrote, gathered while reading goes on."""

from collections.abc import Callable, Iterable
from typing import TypeVar

from demould.mise.figure import Line
from demould.mise.problem import Problem, UnreadableError
from demould.mise.tree import Leaf
from demould.mise.words import Words

Thing = TypeVar("Thing")


class Faults:
    """Every fault found so far, each at its line and column.

    It is handed from reader to reader, so that one bad line never hides the rest.
    """

    def __init__(self) -> None:
        self._found: list[Problem] = []

    @property
    def found(self) -> tuple[Problem, ...]:
        """The faults by place, each once."""
        once = dict.fromkeys(self._found)
        return tuple(sorted(once, key=lambda one: (one.file, one.line, one.column)))

    def __len__(self) -> int:
        return len(self._found)

    def tell(self, line: Line, wrong: Words, remedy: Words, column: int = 0) -> None:
        """Note a fault; `column` is the offset inside the line's text, from 0."""
        place = line.column + column if line.number else 0
        self._found.append(Problem(line.file, line.number, place, wrong, remedy))

    def one(self, line: Line, read: Callable[[Line], Thing]) -> Thing | None:
        """Read one line, or note why it cannot be read."""
        try:
            return read(line)
        except UnreadableError as fault:
            self.tell(line, fault.wrong, fault.remedy, fault.column)
            return None

    def each(
        self, lines: Iterable[Leaf], read: Callable[[Line], Thing]
    ) -> tuple[Thing, ...]:
        """Read each line of a block; the bad ones are noted and left out."""
        read_ones = (self.one(leaf.line, read) for leaf in lines)
        return tuple(one for one in read_ones if one is not None)
