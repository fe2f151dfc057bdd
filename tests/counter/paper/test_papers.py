from datetime import UTC, datetime
from pathlib import Path

import pytest

from demould.counter.paper.papers import file_names, papers, print_page
from demould.counter.paper.pdf import pdf_of
from demould.sheets.page import Page

PRINTED = datetime(2026, 3, 3, 14, 0, tzinfo=UTC)


def page(key: str) -> Page:
    return Page(key=key, title=f"Sheet {key}", blocks=())


def test_each_page_becomes_one_file_named_by_its_key(tmp_path: Path) -> None:
    folder = tmp_path / "week 10" / "papers"
    pages = [page("week"), page("labels"), page("Labels")]
    paths = papers(pages, folder, printed=PRINTED)
    assert [path.name for path in paths] == ["week.pdf", "labels.pdf", "labels-2.pdf"]
    assert sorted(folder.iterdir()) == sorted(paths)
    for given, path in zip(pages, paths, strict=True):
        assert path.read_bytes() == pdf_of(given, printed=PRINTED)


def test_printing_again_replaces_the_sheet(tmp_path: Path) -> None:
    path = tmp_path / "week.pdf"
    path.write_text("the sheet of last week")
    assert print_page(page("week"), path, printed=PRINTED) == path
    assert path.read_bytes() == pdf_of(page("week"), printed=PRINTED)
    assert list(tmp_path.iterdir()) == [path]


# The names that Windows keeps for itself, and what it and others refuse in one:
# "Naming Files, Paths, and Namespaces", Microsoft Learn.
@pytest.mark.parametrize(
    ("key", "name"),
    [
        ("weigh-river-pebble.ganache", "weigh-river-pebble.ganache.pdf"),
        ("../../etc/passwd", "etc-passwd.pdf"),
        ('a<b>c:d"e|f?g*h\\i', "a-b-c-d-e-f-g-h-i.pdf"),
        ("crème brûlée", "creme-brulee.pdf"),
        ("con", "sheet-con.pdf"),
        ("LPT1.old", "sheet-lpt1.old.pdf"),
        ("", "sheet.pdf"),
        ("...", "sheet.pdf"),
        (".hidden. ", "hidden.pdf"),
        ("x" * 300, "x" * 80 + ".pdf"),
    ],
)
def test_a_name_is_one_that_every_disk_can_keep(key: str, name: str) -> None:
    assert file_names([key]) == (name,)


def test_names_that_fall_together_count_on() -> None:
    names = file_names(["a b", "a/b", "a-b-2", "A B"])
    assert names == ("a-b.pdf", "a-b-2.pdf", "a-b-2-2.pdf", "a-b-3.pdf")
