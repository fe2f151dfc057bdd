"""Whatever is typed into a kitchen's files, it is read or said, and never a crash."""

from datetime import datetime
from pathlib import Path
from zoneinfo import ZoneInfo

from hypothesis import given, settings
from hypothesis import strategies as st

from demould.counter.text.read_folder import read_texts, read_trees
from demould.counter.text.read_tree import read_tree
from demould.mise.faults import Faults

NOW = datetime(2026, 11, 17, 14, 0, tzinfo=ZoneInfo("Europe/London"))
TEXTS, _ = read_texts(Path(__file__).parent / "weir")
TREES = {
    file: tree for file, text in TEXTS.items() if (tree := read_tree(text, file)[0])
}

SLIPS = st.text(max_size=6) | st.sampled_from(
    [
        ";",
        ";;",
        ",",
        ":",
        "|",
        "#",
        "\n",
        "\n  ",
        "-",
        "0",
        "1.200",
        "(",
        ")",
        "%",
        " to ",
    ]
)


@settings(max_examples=60, deadline=None)
@given(
    file=st.sampled_from(sorted(TEXTS)),
    where=st.floats(0, 1),
    length=st.integers(0, 12),
    slip=SLIPS,
)
def test_a_slip_anywhere_is_read_or_said(
    file: str, where: float, length: int, slip: str
) -> None:
    text = TEXTS[file]
    start = int(where * len(text))
    tree, problems = read_tree(text[:start] + slip + text[start + length :], file)
    trees = {name: one for name, one in TREES.items() if name != file}
    faults = Faults()
    folder = read_trees(trees | ({file: tree} if tree else {}), NOW, faults, TEXTS)
    assert tree is not None or problems
    for problem in (*problems, *faults.found):
        assert str(problem).startswith(problem.file)
    faulty = {problem.file for problem in faults.found}
    if folder is not None:
        assert not faulty & {f"desserts/{one.key}.yaml" for one in folder.desserts}
