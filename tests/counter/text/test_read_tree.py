import pytest

from demould.counter.text.read_tree import read_tree
from demould.mise.figure import Line
from demould.mise.tree import Block, Branch, Leaf


def faults(text: str) -> list[str]:
    _, problems = read_tree(text, "x.yaml")
    return [str(problem) for problem in problems]


def test_keys_scalars_and_block_lines_have_their_places() -> None:
    tree, problems = read_tree(
        "a: 010\nb:\n  'c d': \"12:30\"  # note\n  e: |\n    one;  two\n\n    # note\n    three\n",
        "x.yaml",
    )
    assert problems == ()
    below = Line("x.yaml", 2, "b", 1)
    assert tree == Branch(
        (
            (Leaf(Line("x.yaml", 1, "a", 1)), Leaf(Line("x.yaml", 1, "010", 4))),
            (
                Leaf(below),
                Branch(
                    (
                        (
                            Leaf(Line("x.yaml", 3, "c d", 4)),
                            Leaf(Line("x.yaml", 3, "12:30", 11)),
                        ),
                        (
                            Leaf(Line("x.yaml", 4, "e", 3)),
                            Block(
                                (
                                    Leaf(Line("x.yaml", 5, "one;  two", 5)),
                                    Leaf(Line("x.yaml", 8, "three", 5)),
                                ),
                                Line("x.yaml", 4, "e", 3),
                            ),
                        ),
                    ),
                    below,
                ),
            ),
        ),
        Line("x.yaml", 0, ""),
    )


def test_windows_line_ends_count_once() -> None:
    tree, _ = read_tree("a: 1\r\nb: |\r\n  x\r\n  y\r\n", "x.yaml")
    assert tree is not None
    block = tree.items[1][1]
    assert isinstance(block, Block)
    assert [(leaf.line.text, leaf.line.number) for leaf in block.lines] == [
        ("x", 3),
        ("y", 4),
    ]


def test_a_double_key_is_kept_for_the_reader_to_see() -> None:
    tree, problems = read_tree("a: 1\na: 2\n", "x.yaml")
    assert tree is not None
    assert (len(tree.items), problems) == (2, ())


LISTS = "{0}: 'a' is followed by a list. Write a: | and one thing a line below it."
SIGN = (
    "a line begins with a sign that means something else here. Put what stands after the"
    " colon in quotes."
)
COLON = (
    "a colon stands where none can, or the line begins too far in. Begin it right below"
    " the line above; put words with a colon in quotes."
)
ANYTHING = (
    "the line cannot be read as 'name: what belongs to it'. Look for a sign too many, a"
    " missing colon, or a line too far in."
)
POINTS = (
    "a sign that points to another place of the file. Write it out here; put words with"
    " & or * in quotes."
)
BEYOND = (
    "this goes on over the end of the line. Write it on one line; or name: | and the"
    " lines below it."
)


@pytest.mark.parametrize(
    ("text", "message"),
    [
        ("", "x.yaml: the file is empty. Write it, or delete it."),
        ("# only a note\n", "x.yaml: the file is empty. Write it, or delete it."),
        ("a: b: c\n", f"x.yaml:1:5: {COLON}"),
        ("a: 1\n  b: 2\n", f"x.yaml:2:4: {COLON}"),
        (
            "a: |\n  x\n y\nb: 1\n",
            "x.yaml:3:2: the line does not stand below the one it belongs to. Begin it"
            " exactly below the line above, or two blanks further in.",
        ),
        (
            "a:\tb\n\tc: d\n",
            "x.yaml:1:3: a tab stands where blanks should. Use blanks at the beginning of"
            " a line.",
        ),
        (
            "a: 'b\nc: d\n",
            "x.yaml:1:4: a quotation mark is opened and never closed. Close it on the"
            " same line.",
        ),
        ("a: %x\n", f"x.yaml:1:4: {SIGN}"),
        ("a: @x\n", f"x.yaml:1:4: {SIGN}"),
        (
            "a: *x\n",
            "x.yaml:1:4: a star stands before a word, which means something else here."
            " Put what stands after the colon in quotes.",
        ),
        (
            "a: 1\n---\nb: 2\n",
            "x.yaml:2:1: three dashes begin a second page. Take the line with the dashes"
            " away.",
        ),
        ("just words\n", f"x.yaml:1:1: {ANYTHING}"),
        ("- a\n- b\n", f"x.yaml:1:1: {ANYTHING}"),
        ("a: [1, 2]\n", f"x.yaml:1:1{LISTS.format('')}"),
        ("a:\n  - 1\n", f"x.yaml:1:1{LISTS.format('')}"),
        ("a: {b: 1}\n", f"x.yaml:1:1{LISTS.format('')}"),
        ("a: >\n  b\n", f"x.yaml:1:1{LISTS.format('')}"),
        ("a: &x 1\n", f"x.yaml:1:1: {POINTS}"),
        ("a: b\n  c\n", f"x.yaml:1:1: {BEYOND}"),
        ("? [a, b]\n: c\n", f"x.yaml:1:3: {ANYTHING}"),
        (
            "a: \x01\n",
            "x.yaml: there are signs in it that no text has, or brackets without end."
            " Open it as text, and take out what is not words and numbers.",
        ),
        (
            "[" * 3000,
            "x.yaml: there are signs in it that no text has, or brackets without end."
            " Open it as text, and take out what is not words and numbers.",
        ),
        (
            "a: 1\nb: 2\u2028c\n",
            "x.yaml:2:1: an unseen sign stands here that ends a line for some programs."
            " Delete it, and type the line's end again.",
        ),
        ('a: "x\\q"\n', f"x.yaml:1:4: {ANYTHING}"),
        ("%YAML 3.0\n---\na: 1\n", f"x.yaml:1:1: {ANYTHING}"),
    ],
    ids=repr,
)
def test_what_is_no_tree_is_said_in_a_cooks_words(text: str, message: str) -> None:
    assert faults(text) == [message]


def test_a_place_pointed_to_twice_is_said_where_it_is_used() -> None:
    assert faults("a: &x\n  b: 1\nc: *x\n") == [
        f"x.yaml:1:1: {POINTS}",
        f"x.yaml:3:1: {POINTS}",
    ]
