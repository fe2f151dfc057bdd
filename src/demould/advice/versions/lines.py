"""Two versions of a dessert line by line: what was, what is, and nothing else."""

import re
from collections.abc import Iterator
from dataclasses import dataclass
from difflib import SequenceMatcher
from itertools import zip_longest

from demould.mise.bare import bare
from demould.mise.dessert import Dessert
from demould.mise.tree import Block, Branch, Leaf, Node
from demould.mise.write_dessert import write_dessert


@dataclass(frozen=True, slots=True, kw_only=True)
class LineChanged:
    """One line that differs; `was` is "" where it is new, `now` where it is gone.

    `where` says in which part it stands: ``component ganache, formula``.
    """

    where: str
    was: str
    now: str


def lines_changed(old: Dessert, new: Dessert) -> tuple[LineChanged, ...]:
    """Give every line that differs between two versions, in the order of the file.

    Blanks, spelling of numbers and where things stand in the file are no change.
    """
    was, now = (write_dessert(bare(one)) for one in (old, new))
    return tuple(_branch(was, now, ()))


def _branch(was: Branch, now: Branch, where: tuple[str, ...]) -> Iterator[LineChanged]:
    before = {key.line.text: node for key, node in was.items}
    after = {key.line.text: node for key, node in now.items}
    for name in dict.fromkeys((*after, *before)):
        yield from _node(before.get(name), after.get(name), (*where, name))


def _node(
    was: Node | None, now: Node | None, where: tuple[str, ...]
) -> Iterator[LineChanged]:
    if isinstance(was, Branch) or isinstance(now, Branch):
        empty = Branch((), next(one for one in (was, now) if one is not None).line)
        yield from _branch(
            was if isinstance(was, Branch) else empty,
            now if isinstance(now, Branch) else empty,
            where,
        )
        return
    before, after = _rows(was), _rows(now)
    for what, first, last, start, end in SequenceMatcher(
        None, before, after, autojunk=False
    ).get_opcodes():
        if what == "equal":
            continue
        for old, new in zip_longest(before[first:last], after[start:end], fillvalue=""):
            yield LineChanged(where=", ".join(where), was=old, now=new)


def _rows(node: Node | None) -> list[str]:
    match node:
        case Leaf():
            return [_even(node.line.text)]
        case Block():
            return [_even(leaf.line.text) for leaf in node.lines]
        case _:
            return []


def _even(text: str) -> str:
    return re.sub(r"\s+", " ", text.strip())
