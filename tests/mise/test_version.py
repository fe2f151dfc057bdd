import re
from dataclasses import replace

from demould.counter.text.read_tree import read_tree
from demould.mise.dessert import Dessert
from demould.mise.faults import Faults
from demould.mise.known import Known
from demould.mise.read_dessert import read_dessert
from demould.mise.version import formula_version

TEXT = """dessert: Dome
mould: dome
filled: |
  mousse; the rest; slowly
component mousse:
  formula: |
    100 g  cream 35 %; whipped
  density: 1.05 g/ml (measured, 2026-11-16)
  lost: 0 %
notes: |
  from grandmother
"""


def dessert(text: str, key: str = "dome") -> Dessert:
    tree, _ = read_tree(text, f"{key}.yaml")
    assert tree is not None
    read = read_dessert(tree, key, Known(), Faults())
    assert read is not None
    return read


def test_a_version_is_eight_hex_digits() -> None:
    assert re.fullmatch("[0-9a-f]{8}", formula_version(dessert(TEXT)))


def test_remarks_places_and_spelling_are_no_new_version() -> None:
    same = formula_version(dessert(TEXT))
    for old, new in [
        ("; slowly", ""),
        ("; whipped", "; softly whipped; cold"),
        ("  from grandmother", "  from the old card"),
        ("100 g  cream", "100,0 g cream"),
        ("1.05 g/ml", "1050 g/l"),
        ("dessert: Dome", "# a note\n\ndessert:   Dome"),
    ]:
        assert old in TEXT
        assert formula_version(dessert(TEXT.replace(old, new))) == same
    assert formula_version(dessert(TEXT, "another-file")) == same


def test_anything_else_is_a_new_version() -> None:
    versions = {formula_version(dessert(TEXT))}
    changes = [
        ("100 g  cream", "101 g  cream"),
        ("100 g  cream 35 %", "100 g  cream 30 %"),
        ("; whipped", "; strained out"),
        ("measured", "stated"),
        ("lost: 0 %", "lost: 1 %"),
        ("filled:", "filled, upside down:"),
        ("the rest", "half"),
        ("notes:", "method: |\n  do  5 min\nnotes:"),
    ]
    for old, new in changes:
        text = TEXT.replace(old, new).replace("(stated, 2026-11-16)", "(stated)")
        versions.add(formula_version(dessert(text)))
    assert len(versions) == len(changes) + 1


def test_a_changed_copy_is_another_version() -> None:
    one = dessert(TEXT)
    assert formula_version(replace(one, mould="ring")) != formula_version(one)
