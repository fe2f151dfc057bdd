"""YAML text as a tree with places, or why it cannot be one, in a cook's words."""

import re

from ruamel.yaml import YAML
from ruamel.yaml.error import MarkedYAMLError, YAMLError
from ruamel.yaml.nodes import MappingNode, Node, ScalarNode

from demould.mise.faults import Faults
from demould.mise.figure import Line
from demould.mise.problem import Problem, UnreadableError
from demould.mise.tree import Block, Branch, Leaf
from demould.mise.tree import Node as Below
from demould.mise.words import Words

_ODD_ENDS = re.compile("\r(?!\n)|[\x0b\x0c\x1c-\x1e\x85\u2028\u2029]")

_SAID: tuple[tuple[str, Words, Words], ...] = (
    (
        "mapping values are not allowed",
        Words("a colon stands where none can, or the line begins too far in"),
        Words("Begin it right below the line above; put words with a colon in quotes"),
    ),
    (
        "'\\t'",
        Words("a tab stands where blanks should"),
        Words("Use blanks at the beginning of a line"),
    ),
    (
        "could not find expected ':'",
        Words("a colon is missing after a name"),
        Words("Write name: and what belongs to it"),
    ),
    (
        "unexpected end of stream",
        Words("a quotation mark is opened and never closed"),
        Words("Close it on the same line"),
    ),
    (
        "expected <block end>",
        Words("the line does not stand below the one it belongs to"),
        Words("Begin it exactly below the line above, or two blanks further in"),
    ),
    (
        "cannot start any token",
        Words("a line begins with a sign that means something else here"),
        Words("Put what stands after the colon in quotes"),
    ),
    (
        "undefined alias",
        Words("a star stands before a word, which means something else here"),
        Words("Put what stands after the colon in quotes"),
    ),
    (
        "another document",
        Words("three dashes begin a second page"),
        Words("Take the line with the dashes away"),
    ),
)
_ANYTHING = (
    Words("the line cannot be read as 'name: what belongs to it'"),
    Words("Look for a sign too many, a missing colon, or a line too far in"),
)


def read_tree(text: str, file: str) -> tuple[Branch | None, tuple[Problem, ...]]:
    """The tree of a file's text, with its faults.

    Parameters
    ----------
    text
        All of the file.
    file
        What to call it, in every place and message.

    Returns
    -------
    Branch or None, tuple of Problem
        None where the text as a whole cannot be read: then the faults say why.
        Lines and columns count from 1.
    """
    faults = Faults()
    whole = Line(file, 0, "")
    if odd := _ODD_ENDS.search(text):
        before = text[: odd.start()]
        place = Line(file, before.count("\n") + 1, "")
        wrong = Words("an unseen sign stands here that ends a line for some programs")
        faults.tell(place, wrong, Words("Delete it, and type the line's end again"))
        return None, faults.found
    try:
        node = YAML(typ="rt", pure=True).compose(text)
    except MarkedYAMLError as fault:
        faults.tell(*_place_and_words(fault, file, text))
        return None, faults.found
    except (YAMLError, RecursionError):
        faults.tell(
            whole,
            Words("there are signs in it that no text has, or brackets without end"),
            Words("Open it as text, and take out what is not words and numbers"),
        )
        return None, faults.found
    if node is None:
        faults.tell(whole, Words("the file is empty"), Words("Write it, or delete it"))
        return None, faults.found
    grower = _Grower(file, text.split("\n"), faults)
    if not isinstance(node, MappingNode):
        faults.tell(grower.at(node), *_ANYTHING)
        return None, faults.found
    return grower.branch(node, whole), faults.found


def _place_and_words(
    fault: MarkedYAMLError, file: str, text: str
) -> tuple[Line, Words, Words]:
    mark = fault.problem_mark or fault.context_mark
    if "quoted scalar" in str(fault.context) and fault.context_mark:
        mark = fault.context_mark
    lines = text.split("\n")
    number = min(mark.line, len(lines) - 1) if mark else 0
    place = Line(file, number + 1, lines[number], (mark.column if mark else 0) + 1)
    for said, wrong, remedy in _SAID:
        if said in str(fault.problem):
            return place, wrong, remedy
    return place, *_ANYTHING


class _Grower:
    """Makes a tree of YAML's nodes; what the format does not use is a fault."""

    def __init__(self, file: str, lines: list[str], faults: Faults) -> None:
        self.file = file
        self.lines = lines
        self.faults = faults
        self.seen: set[int] = set()

    def at(self, node: Node, text: str = "", column: int = 0) -> Line:
        mark = node.start_mark
        return Line(self.file, mark.line + 1, text, mark.column + 1 + column)

    def branch(self, node: MappingNode, line: Line) -> Branch:
        """All keys, double ones too; what is below a bad one is left out."""
        items: list[tuple[Leaf, Below]] = []
        for key, value in node.value:
            try:
                leaf = self.leaf(key)
                items.append((leaf, self.below(value, leaf)))
            except UnreadableError as fault:
                place = self.at(key)
                self.faults.tell(place, fault.wrong, fault.remedy)
        return Branch(tuple(items), line)

    def below(self, node: Node, key: Leaf) -> Below:
        if node.anchor or id(node) in self.seen:
            raise UnreadableError(
                Words("a sign that points to another place of the file"),
                Words("Write it out here; put words with & or * in quotes"),
            )
        self.seen.add(id(node))
        if isinstance(node, MappingNode) and not node.flow_style:
            return self.branch(node, key.line)
        if isinstance(node, ScalarNode) and node.style == "|":
            return self.block(node, key)
        if isinstance(node, ScalarNode) and node.style != ">":
            return self.leaf(node)
        raise UnreadableError(
            Words("{key!r} is followed by a list", key=key.line.text),
            Words("Write {key}: | and one thing a line below it", key=key.line.text),
        )

    def leaf(self, node: Node) -> Leaf:
        """A scalar on one line, as text."""
        if not isinstance(node, ScalarNode) or node.style in ("|", ">"):
            raise UnreadableError(*_ANYTHING)
        if node.start_mark.line != node.end_mark.line:
            raise UnreadableError(
                Words("this goes on over the end of the line"),
                Words("Write it on one line; or name: | and the lines below it"),
            )
        quoted = node.style in ("'", '"')
        return Leaf(self.at(node, str(node.value), int(quoted)))

    def block(self, node: ScalarNode, key: Leaf) -> Block:
        """The lines of a text block; blank ones and notes (#) are left out."""
        leaves = []
        first = node.start_mark.line + 1
        for number, text in enumerate(str(node.value).split("\n"), start=first):
            shown = text.strip()
            if not shown or shown.startswith("#"):
                continue
            column = self.lines[number].index(shown)
            leaves.append(Leaf(Line(self.file, number + 1, shown, column + 1)))
        return Block(tuple(leaves), key.line)
