"""Writing back: only the lines that changed, and everything comes back as it was."""

from dataclasses import replace
from datetime import datetime
from pathlib import Path
from zoneinfo import ZoneInfo

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

import demould.demo
from demould.counter.text.read_folder import read_texts, read_trees
from demould.counter.text.read_tree import read_tree
from demould.mise.bare import bare
from demould.mise.faults import Faults
from demould.mise.figure import Assumed, Figure, Worked, figures_in, put
from demould.mise.folder import Folder
from demould.mise.render import render
from demould.mise.rewrite import rewrite
from demould.mise.tree import Branch
from demould.mise.write_dessert import write_dessert
from demould.mise.write_kitchen import write_kitchen
from demould.mise.write_larder import write_larder
from demould.mise.write_orders import write_orders
from demould.mise.write_tree import block, branch

DEMO = Path(demould.demo.__path__[0]) / "brackmoor-weir"
NOW = datetime(2026, 11, 17, 14, 0, tzinfo=ZoneInfo("Europe/London"))
TEXTS, _ = read_texts(DEMO)
TREES = {
    file: tree for file, text in TEXTS.items() if (tree := read_tree(text, file)[0])
}


def folder_of(trees: dict[str, Branch]) -> Folder:
    faults = Faults()
    folder = read_trees(trees, NOW, faults)
    assert [str(fault) for fault in faults.found] == []
    assert folder is not None
    return folder


def written(folder: Folder) -> dict[str, Branch]:
    return {
        "kitchen.yaml": write_kitchen(folder.kitchen),
        "larder.yaml": write_larder(folder.larder),
        "orders.yaml": write_orders(folder.orders),
    } | {f"desserts/{one.key}.yaml": write_dessert(one) for one in folder.desserts}


def rewritten(old: Folder, new: Folder) -> dict[str, str]:
    before, after = written(old), written(new)
    return {
        file: rewrite(TEXTS[file], TREES[file], before[file], after[file])
        for file in TEXTS
    }


FOLDER = folder_of(TREES)
FIGURES = [
    (path, figure)
    for path, figure in figures_in(FOLDER)
    if not isinstance(figure.origin, Worked)
]


def lines_changed(old: str, new: str) -> int:
    pairs = zip(old.split("\n"), new.split("\n"), strict=True)
    return sum(one != other for one, other in pairs)


def test_the_canonical_text_of_the_demo_reads_as_the_demo() -> None:
    trees = {}
    for file, tree in written(FOLDER).items():
        again, problems = read_tree(render(tree), file)
        assert problems == ()
        assert again is not None
        trees[file] = again
    assert bare(folder_of(trees)) == bare(FOLDER)


def test_nothing_changed_leaves_every_byte() -> None:
    assert rewritten(FOLDER, FOLDER) == TEXTS


@settings(max_examples=40, deadline=None)
@given(which=st.sampled_from(FIGURES), share=st.sampled_from([0.9, 1.1]))
def test_one_changed_figure_changes_its_line_alone(
    which: tuple[tuple[str | int, ...], Figure], share: float
) -> None:
    path, figure = which
    value = round(figure.value * share, 4)
    if figure.unit in ("pieces", "portions"):
        value = figure.value + 1
    if figure.unit == "%":
        value = min(value, 100)
    line = getattr(figure.origin, "line", None)
    assert line is not None
    origin = figure.origin
    if isinstance(origin, Assumed):
        origin = replace(origin, low=0.0, high=1e6)
    new_figure = replace(figure, value=value, origin=origin)
    new = put(FOLDER, path, new_figure)
    texts = rewritten(FOLDER, new)
    for file, text in texts.items():
        changed = lines_changed(TEXTS[file], text)
        assert changed == (new_figure != figure and file == line.file), (path, file)
    changed_tree, problems = read_tree(texts[line.file], line.file)
    assert problems == ()
    assert changed_tree is not None
    assert bare(folder_of(TREES | {line.file: changed_tree})) == bare(new)


TEXT = """# top
dessert: Dome  # a note
mould: 'dome'

filled: |
  # a note inside
  mousse;   the rest

  base;     disc 60 x 8 mm

component mousse:
  lost: 4 %   # much
  formula: |
    100 g   cream 35 %
    1 g     salt
# the end
"""


def change(old: Branch, new: Branch, text: str = TEXT) -> str:
    tree, problems = read_tree(text, "x.yaml")
    assert problems == ()
    assert tree is not None
    return rewrite(text, tree, old, new)


def canonical(**keys: str | list[str] | Branch | None) -> Branch:
    return branch(
        (key.replace("_", " "), block(node) if isinstance(node, list) else node)
        for key, node in keys.items()
    )


OLD_MOUSSE = canonical(lost="4 %", formula=["100 g  cream 35 %", "1 g    salt"])
OLD = canonical(
    dessert="Dome",
    mould="dome",
    filled=["mousse; the rest", "base; disc 60 x 8 mm"],
    component_mousse=OLD_MOUSSE,
)


def with_(**keys: str | list[str] | Branch | None) -> Branch:
    base: dict[str, str | list[str] | Branch | None] = {
        "dessert": "Dome",
        "mould": "dome",
        "filled": ["mousse; the rest", "base; disc 60 x 8 mm"],
        "component_mousse": OLD_MOUSSE,
    }
    return canonical(**(base | keys))


@pytest.mark.parametrize(
    ("new", "old_text", "new_text"),
    [
        (with_(dessert="Peak"), "Dome  # a note", "Peak  # a note"),
        (with_(dessert="Dome: 2"), "Dome  # a note", '"Dome: 2"  # a note'),
        (with_(mould="ring"), "'dome'", "ring"),
        (
            with_(filled=["mousse; half", "base; disc 60 x 8 mm"]),
            "  mousse;   the rest",
            "  mousse; half",
        ),
        (
            with_(filled=["base; disc 60 x 8 mm"]),
            "  mousse;   the rest\n",
            "",
        ),
        (
            with_(filled=["mousse; the rest", "jam; half", "base; disc 60 x 8 mm"]),
            "  mousse;   the rest\n",
            "  mousse;   the rest\n  jam; half\n",
        ),
        (
            with_(filled=["jam; half", "mousse; the rest", "base; disc 60 x 8 mm"]),
            "  # a note inside\n",
            "  jam; half\n  # a note inside\n",
        ),
        (
            with_(
                filled=["a; 1", "b; 2", "c; 3", "base; disc 60 x 8 mm"],
            ),
            "  mousse;   the rest\n",
            "  a; 1\n  b; 2\n  c; 3\n",
        ),
        (with_(mould=None), "mould: 'dome'\n", ""),
        (
            with_(filled=None),
            "filled: |\n  # a note inside\n  mousse;   the rest\n\n  base;     disc 60 x 8"
            " mm\n",
            "",
        ),
        (
            with_(component_mousse=None),
            "component mousse:\n  lost: 4 %   # much\n  formula: |\n    100 g   cream 35"
            " %\n    1 g     salt\n",
            "",
        ),
        (
            with_(notes=["a", "b"]),
            "    1 g     salt\n",
            "    1 g     salt\nnotes: |\n  a\n  b\n",
        ),
        (
            with_(
                component_mousse=canonical(
                    lost="5 %", formula=["100 g  cream 35 %", "1 g    salt"]
                )
            ),
            "lost: 4 %   # much",
            "lost: 5 %   # much",
        ),
        (
            with_(
                component_mousse=canonical(
                    lost="4 %", formula=["1200 g  cream 35 %", "1 g     salt"]
                )
            ),
            "    100 g   cream 35 %",
            "    1200 g  cream 35 %",
        ),
        (
            with_(
                component_mousse=canonical(
                    lost="4 %",
                    kind="mousse",
                    formula=["100 g  cream 35 %", "1 g    salt"],
                )
            ),
            "  lost: 4 %   # much\n",
            "  lost: 4 %   # much\n  kind: mousse\n",
        ),
        (
            with_(dessert=["a", "b"]),
            "dessert: Dome  # a note\n",
            "dessert: |\n  a\n  b\n",
        ),
    ],
    ids=range(16),
)
def test_lines_are_changed_put_in_and_taken_out(
    new: Branch, old_text: str, new_text: str
) -> None:
    assert TEXT.count(old_text) == 1
    assert change(OLD, new) == TEXT.replace(old_text, new_text)


def test_a_key_put_first_stands_before_the_first() -> None:
    new = branch([("kitchen", "K"), *((k.line.text, n) for k, n in OLD.items)])
    assert change(OLD, new).startswith("# top\nkitchen: K\ndessert: Dome")


def test_line_ends_of_windows_stay() -> None:
    text = TEXT.replace("\n", "\r\n")
    new = with_(
        dessert="Peak", notes=["a"], filled=["mousse; half", "jam; 1", "base; 2"]
    )
    changed = change(OLD, new, text)
    assert changed.replace("\r\n", "\n").count("\r") == 0
    assert changed.count("\n") == changed.count("\r\n")
    assert "dessert: Peak  # a note\r\n" in changed


def test_a_default_nobody_wrote_is_written_when_it_changes() -> None:
    old = with_(sure="95 %")
    assert change(old, old) == TEXT
    assert change(old, with_(sure="90 %")) == TEXT.replace(
        "    1 g     salt\n", "    1 g     salt\nsure: 90 %\n"
    )
