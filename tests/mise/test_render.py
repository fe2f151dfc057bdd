import pytest
from hypothesis import given
from hypothesis import strategies as st

from demould.counter.text.read_tree import read_tree
from demould.mise.render import render
from demould.mise.tree import Branch, Leaf
from demould.mise.write_tree import block, branch


@pytest.mark.parametrize(
    ("text", "shown"),
    [
        ("Sat 2026-11-21 19:30", "Sat 2026-11-21 19:30"),
        ("-18 °C", "-18 °C"),
        ("5 % (assumed 2 to 8)", "5 % (assumed 2 to 8)"),
        ("the baker's#1", "the baker's#1"),
        ("from: where?", '"from: where?"'),
        ("one #two", '"one #two"'),
        ("- a", '"- a"'),
        ("ends:", '"ends:"'),
        ("? salt", '"? salt"'),
        ("%", '"%"'),
        ('"quoted"', '"\\"quoted\\""'),
        (" blank ", '" blank "'),
    ],
)
def test_quotes_stand_only_where_they_must(text: str, shown: str) -> None:
    assert render(branch([("a", text)])) == f"a: {shown}\n"


def test_parts_with_lines_have_a_blank_line_before_them() -> None:
    tree = branch(
        [
            ("a", "1"),
            ("b", block(["x", "y"])),
            ("c", branch([("d", "2"), ("e", block(["z"])), ("f", "")])),
            ("g", block([])),
        ]
    )
    assert render(tree) == "a: 1\n\nb: |\n  x\n  y\n\nc:\n  d: 2\n  e: |\n    z\n"


@given(
    st.text(
        st.characters(exclude_categories=("C", "Z"), include_characters=" "), min_size=1
    )
)
def test_any_printable_text_comes_back_as_it_was(text: str) -> None:
    tree, problems = read_tree(render(branch([(text, text)])), "x.yaml")
    assert problems == ()
    assert isinstance(tree, Branch)
    ((key, value),) = tree.items
    assert isinstance(value, Leaf)
    assert (key.line.text, value.line.text) == (text, text)
