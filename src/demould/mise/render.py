"""A tree as text, the way a person would have typed it."""

import json
import re
from typing import assert_never

from demould.mise.tree import Block, Branch, Leaf, Node

_PLAIN = re.compile(r"(?:[^\W_]|[\u2212+]|-\d)(?:(?!:(?:\s|$)|\s#).)*")


def render(tree: Branch) -> str:
    """The text of a file. Parts with lines of their own have a blank line before them."""
    lines: list[str] = []
    for key, node in tree.items:
        if lines and not isinstance(node, Leaf):
            lines.append("")
        lines.extend(entry(key.line.text, node, ""))
    return "".join(f"{line}\n" for line in lines)


def entry(key: str, node: Node, indent: str) -> list[str]:
    """The lines of one key and what hangs below it."""
    name = f"{indent}{scalar(key)}:"
    match node:
        case Leaf():
            return [f"{name} {scalar(node.line.text)}"]
        case Block():
            return [f"{name} |", *(f"{indent}  {one.line.text}" for one in node.lines)]
        case Branch():
            below = [
                entry(one.line.text, part, f"{indent}  ") for one, part in node.items
            ]
            return [name, *(line for lines in below for line in lines)]
        case _:
            assert_never(node)


def scalar(text: str) -> str:
    """Text as it may stand after or before a colon, in quotes where it must.

    >>> scalar("20 slices, served frozen"), scalar("from: where?")
    ('20 slices, served frozen', '"from: where?"')
    """
    plain = _PLAIN.fullmatch(text) and text == text.strip() and text.isprintable()
    return text if plain else json.dumps(text, ensure_ascii=False)
