"""A text with some things changed: every other line stays byte for byte."""

import re
from collections.abc import Iterator
from dataclasses import dataclass
from difflib import SequenceMatcher
from itertools import zip_longest
from typing import assert_never

from demould.mise.render import entry, scalar
from demould.mise.tree import Block, Branch, Leaf, Node


@dataclass(frozen=True, slots=True)
class _Edit:
    """Lines `first` to `last` (from 0, `last` not included) become `lines`."""

    first: int
    last: int
    lines: tuple[str, ...]


def rewrite(text: str, tree: Branch, old: Branch, new: Branch) -> str:
    """The text of a file with what differs between two canonical trees changed.

    Parameters
    ----------
    text
        The file as it stands.
    tree
        That text as a tree with places.
    old
        What was read from it, written canonically (`write_dessert` and the like).
    new
        What it shall say, written the same way.

    Returns
    -------
    str
        Notes, blanks, order and spelling of all that did not change are kept. Lines
        that changed keep their indent and the column of their second word group.
    """
    ending = "\r\n" if "\r\n" in text else "\n"
    lines = text.split("\n")
    for edit in sorted(_branch(lines, tree, old, new), key=_from_below):
        ends = "\r" if ending == "\r\n" else ""
        lines[edit.first : edit.last] = [f"{line}{ends}" for line in edit.lines]
    return "\n".join(lines)


def _from_below(edit: _Edit) -> tuple[int, int]:
    return -edit.first, -edit.last


def _branch(
    lines: list[str], tree: Branch, old: Branch, new: Branch
) -> Iterator[_Edit]:
    here = {key.line.text: (key, node) for key, node in tree.items}
    was = {key.line.text: node for key, node in old.items}
    shall = {key.line.text: node for key, node in new.items}
    for name, node in shall.items():
        if name not in here:
            if name not in was or _differ(was[name], node):
                yield _insert(lines, tree, name, node, list(shall))
        elif name not in was or _differ(was[name], node):
            yield from _change(lines, here[name], was.get(name), node)
    for name in was:
        if name not in shall and name in here:
            key, node = here[name]
            yield _Edit(key.line.number - 1, _last_line(key, node), ())


def _differ(one: Node, other: Node) -> bool:
    return entry("", one, "") != entry("", other, "")


def _change(
    lines: list[str], here: tuple[Leaf, Node], was: Node | None, shall: Node
) -> Iterator[_Edit]:
    key, node = here
    match node, was, shall:
        case Leaf(), Leaf(), Leaf():
            number = node.line.number - 1
            yield _Edit(
                number, number + 1, (_with_value(lines[number], key, node, shall),)
            )
        case Block(), Block(), Block() if len(node.lines) == len(was.lines):
            yield from _block(lines, node, was, shall)
        case Branch(), Branch(), Branch():
            yield from _branch(lines, node, was, shall)
        case _:
            indent = _indent(lines[key.line.number - 1])
            yield _Edit(
                key.line.number - 1,
                _last_line(key, node),
                tuple(entry(key.line.text, shall, indent)),
            )


def _with_value(raw: str, key: Leaf, node: Leaf, shall: Leaf) -> str:
    """The line with another value: what follows it, a note perhaps, is kept."""
    raw = raw.removesuffix("\r")
    start = node.line.column - 1
    quoted = raw[start - 1 : start] in ("'", '"') and start > key.line.column
    if quoted:
        start -= 1
        found = re.match(r"'(?:[^']|'')*'|\"(?:[^\"\\]|\\.)*\"", raw[start:])
        end = start + found.end() if found else len(raw)
    else:
        end = start + len(node.line.text)
    return raw[:start] + scalar(shall.line.text) + raw[end:]


def _block(lines: list[str], node: Block, was: Block, shall: Block) -> Iterator[_Edit]:
    """Lines of a block, each kept, replaced, put in or taken out."""
    before = [_bare(leaf) for leaf in was.lines]
    after = [_bare(leaf) for leaf in shall.lines]
    texts = [leaf.line.text for leaf in shall.lines]
    steps = SequenceMatcher(None, before, after, autojunk=False).get_opcodes()
    for what, first, last, start, end in steps:
        if what == "equal":
            continue
        indent = _indent(lines[node.lines[0].line.number - 1])
        for leaf, text in zip_longest(node.lines[first:last], texts[start:end]):
            if leaf is None:
                number = node.lines[last - 1].line.number if last else node.line.number
                rest = texts[start + (last - first) : end]
                yield _Edit(number, number, tuple(indent + one for one in rest))
                break
            number = leaf.line.number - 1
            changed = () if text is None else (_aligned(lines[number], text),)
            yield _Edit(number, number + 1, changed)


def _bare(leaf: Leaf) -> str:
    """A line without the blanks of its columns: another width is no change."""
    return re.sub(r"\s+", " ", leaf.line.text)


def _aligned(raw: str, text: str) -> str:
    """The new line with the old one's indent and column."""
    indent = _indent(raw)
    head, gap, rest = text.partition("  ")
    column = re.match(r"\s*\S(?:\s?\S)*?\s{2,}(?=\S)", raw)
    if not gap:
        return indent + text
    width = len(column[0]) - len(indent) if column else 0
    return indent + head.strip().ljust(max(0, width - 2)) + "  " + rest.strip()


def _indent(raw: str) -> str:
    return raw[: len(raw) - len(raw.lstrip())]


def _insert(
    lines: list[str], tree: Branch, name: str, node: Node, order: list[str]
) -> _Edit:
    """Put a key after those that come before it in a canonical file."""
    before = order[: order.index(name)]
    placed = [item for item in tree.items if item[0].line.text in before]
    first = tree.items[0][0].line
    indent = _indent(lines[first.number - 1])
    number = _last_line(*placed[-1]) if placed else first.number - 1
    return _Edit(number, number, tuple(entry(name, node, indent)))


def _last_line(key: Leaf, node: Node) -> int:
    """The number, from 1, of the last line of a key and all below it."""
    match node:
        case Leaf():
            return max(key.line.number, node.line.number)
        case Block():
            return max(key.line.number, *(leaf.line.number for leaf in node.lines), 0)
        case Branch():
            return max(key.line.number, *(_last_line(*item) for item in node.items), 0)
        case _:
            assert_never(node)
