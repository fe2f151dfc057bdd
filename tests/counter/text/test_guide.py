"""The guide's examples are read as the guide says."""

import re
from collections import defaultdict
from datetime import datetime
from pathlib import Path
from zoneinfo import ZoneInfo

import pytest

from demould.counter.text.read_folder import read_folder
from demould.mise.figure import Line
from demould.mise.problem import UnreadableError
from demould.mise.quantity import read_amount, read_figure
from demould.mise.read_formula import Names, read_formula_line
from demould.mise.read_shape import read_shape
from demould.mise.unit import KIND_WORDS

GUIDE = Path(__file__).parents[3] / "docs" / "guide" / "what-you-write.md"
TEXT = GUIDE.read_text("utf-8")
NOW = datetime(2026, 11, 17, 14, 0, tzinfo=ZoneInfo("Europe/London"))
KINDS = tuple(KIND_WORDS)


def rows(heading: str) -> list[tuple[str, str]]:
    """The rows of the table under a heading of two columns."""
    table = TEXT.split(f"| you write | {heading} |\n|---|---|\n", 1)[1].split("\n\n")[0]
    found = [re.fullmatch(r"\| `([^`]+)` \| (.*) \|", row) for row in table.split("\n")]
    return [(row[1], row[2]) for row in found if row]


def test_the_kitchen_of_the_guide_reads_without_a_problem(tmp_path: Path) -> None:
    files: dict[str, str] = defaultdict(str)
    for name, text in re.findall(r"```yaml (\S+)\n(.*?)```", TEXT, re.DOTALL):
        files[name] += text
    assert list(files) == [
        "kitchen.yaml",
        "larder.yaml",
        "desserts/river-pebble.yaml",
        "orders.yaml",
    ]
    (tmp_path / "desserts").mkdir()
    for name, text in files.items():
        (tmp_path / name).write_text(text, "utf-8")
    folder, problems, _ = read_folder(tmp_path, NOW)
    assert [str(problem) for problem in problems] == []
    assert folder is not None


@pytest.mark.parametrize(("text", "read"), rows("it is read as"))
def test_an_amount_of_the_guide(text: str, read: str) -> None:
    amount = read_amount(text, name="amount", kinds=KINDS)
    assert f"{amount.value:.10g} {amount.unit}" == read


@pytest.mark.parametrize(
    ("text", "_"), [row for row in rows("it means") if "(" in row[0]]
)
def test_brackets_of_the_guide(text: str, _: str) -> None:
    assert read_figure(text, name="amount", kinds=KINDS, line=None).unit in text


@pytest.mark.parametrize(("text", "_"), rows("which is"))
def test_a_shape_of_the_guide(text: str, _: str) -> None:
    read_shape(text)


@pytest.mark.parametrize(("text", "message"), rows("it says"))
def test_what_the_guide_says_is_said(text: str, message: str) -> None:
    names = Names(own=("cream 35 %", "hazelnut paste"))
    with pytest.raises(UnreadableError) as fault:
        read_formula_line(Line("x.yaml", 1, text), 1, names)
    assert str(fault.value) == message


def test_no_table_of_the_guide_is_empty() -> None:
    counts = [
        len(rows(heading))
        for heading in ("it is read as", "it means", "which is", "it says")
    ]
    assert counts == [11, 4, 8, 4]
