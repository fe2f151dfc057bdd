import itertools
import re
from collections.abc import Iterator
from datetime import UTC, datetime, timedelta
from io import BytesIO
from typing import Any
from zoneinfo import ZoneInfo

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st
from pypdf import PdfReader

from demould.counter.paper.pdf import pdf_of
from demould.sheets.page import Blanks, Cell, Column, Head, Lines, Page, Table

PRINTED = datetime(2026, 3, 3, 14, 5, tzinfo=ZoneInfo("Europe/Oslo"))
# ISO 216: A4 is 210 x 297 mm. A point is 1/72 inch, an inch 25.4 mm.
A4_PT = (210 / 25.4 * 72, 297 / 25.4 * 72)
# Of Typst and of LaTeX, HTML, JSON and Python's own templates.
SPECIAL = r"""#set #(1+1) $x^2$ *bold* _it_ @lot \ \u{41} <leaves> `code` // no /* */ "q" 'a' [x] ~ {n} %s &amp; =h -- ---"""


def row(*texts: str) -> tuple[Cell, ...]:
    return tuple(Cell(text=text) for text in texts)


def table(*rows: tuple[Cell, ...], ticks: bool = False) -> Table:
    return Table(
        columns=(
            Column(head="ingredient", share=3),
            Column(head="grams", align="right"),
            Column(head="lot"),
        ),
        rows=rows,
        ticks=ticks,
    )


WEIGHING = Page(
    key="weigh",
    title="Whipped ganache",
    note="weigh 1167 g",
    blocks=(
        Lines(lines=("May the couverture contain nuts? NOT KNOWN",), loud=True),
        Lines(lines=("Weigh Wed 12:30, Jonne.", "From -18 → +3 °C, ½ of 80 mm")),
        Blanks(labels=("bowl, tare", "weighed by", "date", "signed")),
        Head(text="Blend", note="75 to 80 °C"),
        table(
            (
                Cell(text="white couverture 35 %"),
                Cell(text="248.4 g", known="worked out"),
                Cell(text=""),
            ),
            (
                Cell(text="salt", strong=True),
                Cell(text="1.3 g", known="assumed", strong=True),
                Cell(text=""),
            ),
            ticks=True,
        ),
    ),
    foot=("formula 3f2a91bc", "numbers assumed: 1"),
)


def read(page: Page) -> PdfReader:
    return PdfReader(BytesIO(pdf_of(page, printed=PRINTED)))


def text_of(reader: PdfReader) -> str:
    return " ".join(leaf.extract_text() for leaf in reader.pages)


def words_of(text: str) -> list[str]:
    return text.replace("\u200b", "").split()


def close(text: str) -> str:
    return "".join(words_of(text))


def fonts(reader: PdfReader) -> Iterator[dict[str, Any]]:
    for leaf in reader.pages:
        for font in leaf["/Resources"]["/Font"].values():  # type: ignore[index]  # pypdf types a page as any object
            yield font.get_object()["/DescendantFonts"][0].get_object()


@pytest.mark.parametrize("paper", ["upright", "across", "wall"])
def test_every_font_is_ours_and_in_the_file(paper: Any) -> None:
    page = Page(
        key="a",
        title=WEIGHING.title,
        blocks=WEIGHING.blocks,
        foot=WEIGHING.foot,
        paper=paper,
    )
    names = set()
    for font in fonts(read(page)):
        names.add(str(font["/BaseFont"]).split("+")[1])
        assert "/FontFile2" in font["/FontDescriptor"].get_object()
    assert names == {"AtkinsonHyperlegible-Regular", "AtkinsonHyperlegible-Bold"}


def test_all_that_is_said_is_in_the_text_in_its_order() -> None:
    said = text_of(read(WEIGHING))
    for words in (
        ["Whipped ganache", "weigh 1167 g", "May the couverture contain nuts?"],
        ["bowl, tare", "weighed by", "date", "signed", "Blend", "75 to 80 °C"],
        ["ingredient", "grams", "lot", "white couverture 35 %", "248.4 g"],
        ["248.4 g", "worked out", "salt", "<", "1.3 g", "assumed", "<"],
        ["formula 3f2a91bc", "numbers assumed: 1", "< look here first"],
    ):
        at = 0
        for text in words:
            found = close(said).find(close(text), at)
            assert found >= 0, text
            at = found
    assert "hangs on" not in said
    assert "printed Tue 3 Mar 2026, 14:05" in said
    assert "Local food law and your own food-safety plan come first." in said
    assert "page 1 of 1" in said


def test_nothing_is_printed_that_nobody_said() -> None:
    page = Page(key="a", title="Cold", blocks=(Lines(lines=("done",)),), foot=("f",))
    assert words_of(text_of(read(page))) == words_of(
        "Cold done f printed Tue 3 Mar 2026, 14:05"
        " Local food law and your own food-safety plan come first. page 1 of 1"
    )


# Twice the longest word of the German Wikipedia's article on long words, from memory:
# some 1,500 pt at 12 pt, where a leaf has 510 between its margins.
LONG = (
    "Donaudampfschifffahrtselektrizitätenhauptbetriebswerkbauunterbeamtengesellschaft"
    * 2
)


def test_a_word_wider_than_its_place_is_broken_and_not_cut() -> None:
    page = Page(
        key="a",
        title=f"title{LONG}",
        note=f"note{LONG}",
        blocks=(
            Head(text=f"head{LONG}", note=f"beside{LONG}"),
            Lines(lines=(f"line{LONG}",)),
            Lines(lines=(f"loud{LONG}",), loud=True),
            Blanks(labels=("tare", f"blank{LONG}")),
            Table(
                columns=(Column(head=f"column{LONG}"), Column(align="right")),
                rows=(row(f"cell{LONG}", f"right{LONG}"),),
            ),
        ),
    )
    lines = text_of(read(page)).replace("\u200b", "").split("\n")
    assert max(map(len, lines)) < 120
    said = close("".join(lines))
    for name in ("title", "note", "head", "beside", "line", "loud", "blank", "column"):
        assert name + LONG in said, name
    assert said.count(LONG) >= 8


@pytest.mark.parametrize("wide", [12, 14])
def test_a_table_too_wide_for_big_figures_is_set_close(wide: int) -> None:
    figures = [f"{n * 1111} g" for n in range(wide)]
    cells = tuple(Cell(text=text, known="assumed") for text in figures)
    columns = tuple(Column(head=f"c{n}", align="right") for n in range(wide))
    page = Page(key="a", title="A", blocks=(Table(columns=columns, rows=(cells,)),))
    said = close(text_of(read(page)))
    assert close(" ".join(f"{text} ~" for text in figures)) in said
    assert close("~ hangs on an assumption") in said


def starts(page: Page) -> dict[str, float]:
    """Say where each word begins, in points from the left edge of its leaf."""
    found: dict[str, float] = {}

    def see(text: str, page: list[float], at: list[float], *_: Any) -> None:
        found.setdefault(text.strip(), page[4] + at[4])

    for leaf in read(page).pages:
        leaf.extract_text(visitor_text=see)
    return found


# The fourteen that Regulation (EU) No 1169/2011, Annex II, lists, in short.
ALLERGENS = """
    gluten crustaceans egg fish peanut soya milk nuts celery mustard sesame sulphites
    lupin molluscs
"""


def test_columns_of_an_allergen_sheet_stand_side_by_side() -> None:
    cells = tuple(Cell(text=f"y{n:02}") for n in range(14))
    columns = tuple(Column(head=name) for name in words_of(ALLERGENS))
    page = Page(key="a", title="A", blocks=(Table(columns=columns, rows=(cells,)),))
    at = starts(page)
    places = [at[f"y{n:02}"] for n in range(14)]
    # Three signs at 9 pt are some 15 pt wide.
    assert min(b - a for a, b in itertools.pairwise(places)) > 20
    assert places[-1] + 15 < A4_PT[0]


@pytest.mark.parametrize(
    ("paper", "size"),
    [("upright", A4_PT), ("across", A4_PT[::-1]), ("wall", A4_PT[::-1])],
)
def test_the_leaf_is_a4(paper: Any, size: tuple[float, float]) -> None:
    page = Page(key="a", title="A", blocks=(), paper=paper)
    (leaf,) = read(page).pages
    # Sizes in a PDF are written to a hundredth of a point or finer.
    assert float(leaf.mediabox.width) == pytest.approx(size[0], abs=0.01)
    assert float(leaf.mediabox.height) == pytest.approx(size[1], abs=0.01)


def test_title_language_moment_and_tags_are_set() -> None:
    reader = read(WEIGHING)
    assert reader.metadata is not None
    assert reader.metadata.title == "Whipped ganache"
    assert reader.metadata.creation_date == PRINTED
    root: Any = reader.trailer["/Root"]
    assert root["/Lang"] == "en"
    assert root["/MarkInfo"]["/Marked"]
    # ISO 14289-1:2014, 5: a file that keeps PDF/UA-1 says so by pdfuaid:part = 1.
    about = root["/Metadata"].get_object().get_data().decode()
    assert re.search(r"pdfuaid:part(>|=.)1", about)


def test_the_same_page_at_the_same_moment_gives_the_same_bytes() -> None:
    first = pdf_of(WEIGHING, printed=PRINTED)
    assert pdf_of(WEIGHING, printed=PRINTED) == first
    assert pdf_of(WEIGHING, printed=PRINTED.astimezone(UTC)) != first
    assert pdf_of(WEIGHING, printed=PRINTED + timedelta(minutes=1)) != first


@pytest.mark.parametrize("paper", ["upright", "wall"])
def test_markup_comes_out_as_typed(paper: Any) -> None:
    page = Page(
        key="a",
        title=f"title {SPECIAL}",
        note=f"note {SPECIAL}",
        blocks=(
            Head(text=f"head {SPECIAL}", note=f"beside {SPECIAL}"),
            Lines(lines=(f"line {SPECIAL}",)),
            Lines(lines=(f"loud {SPECIAL}",), loud=True),
            Blanks(labels=(f"blank {SPECIAL}",)),
            Table(
                columns=(Column(head=f"column {SPECIAL}"), Column(align="right")),
                rows=(row(f"cell {SPECIAL}", "#1 $2 *3*"),),
            ),
        ),
        foot=(f"foot {SPECIAL}",),
        paper=paper,
    )
    reader = read(page)
    said = close(text_of(reader))
    places = "title note head beside line loud blank column cell foot"
    for name in places.split(" "):
        assert close(f"{name} {SPECIAL}") in said, name
    assert close("#1 $2 *3*") in said
    assert reader.metadata is not None
    assert reader.metadata.title == f"title {SPECIAL}"


LETTERS = st.characters(
    min_codepoint=33, max_codepoint=0x17E, exclude_characters="\x7f"
)
WORDS = st.lists(st.text(LETTERS, min_size=1, max_size=40), max_size=6).map(" ".join)


@settings(max_examples=25, suppress_health_check=[HealthCheck.too_slow], deadline=None)
@given(cells=st.lists(st.tuples(WORDS, WORDS, WORDS), min_size=1, max_size=4))
def test_whatever_is_typed_can_be_printed(cells: list[tuple[str, str, str]]) -> None:
    page = Page(key="a", title="", blocks=(table(*(row(*texts) for texts in cells)),))
    assert len(read(page).pages) >= 1


@pytest.mark.parametrize("paper", ["upright", "wall"])
def test_what_is_left_empty_prints_nothing(paper: Any) -> None:
    page = Page(
        key="",
        title="",
        blocks=(
            Head(text="", note="by"),
            Head(text=""),
            Lines(lines=()),
            Lines(lines=("",), loud=True),
            Blanks(labels=()),
            Table(columns=(), rows=()),
            table(ticks=True),
        ),
        paper=paper,
    )
    said = words_of(text_of(read(page)))
    assert said[:5] == ["sheet", "by", "ingredient", "grams", "lot"]
    assert said[5] == "printed"


def test_two_hundred_rows_go_on_over_leaves_under_the_same_heads() -> None:
    rows = [row(f"ingredient-{n}", f"{n} g", f"L{n}") for n in range(200)]
    reader = read(Page(key="a", title="Stock", blocks=(table(*rows, ticks=True),)))
    leaves = [leaf.extract_text() for leaf in reader.pages]
    assert len(leaves) > 3
    for number, leaf in enumerate(leaves, start=1):
        assert re.search(r"ingredient\s+grams\s+lot", leaf)
        assert f"page {number} of {len(leaves)}" in leaf
        assert "Local food law" in leaf
    found = re.findall(r"ingredient-(\d+)", " ".join(leaves))
    assert [int(number) for number in found] == list(range(200))


def week_of(rows: int) -> Page:
    lines = [row(f"component {n}", f"{n * 11} g", "level 2") for n in range(rows)]
    return Page(key="w", title="The week", blocks=(table(*lines),), paper="wall")


def type_sizes(reader: PdfReader) -> set[float]:
    found: set[float] = set()

    def see(text: str, _: Any, matrix: list[float], font: Any, size: float) -> None:
        if text.strip():
            found.add(round(abs(matrix[3] * size), 2))

    for leaf in reader.pages:
        leaf.extract_text(visitor_text=see)
    return found


@pytest.mark.parametrize("rows", [5, 50, 80])
def test_a_week_stays_on_one_leaf_in_type_that_can_be_read(rows: int) -> None:
    reader = read(week_of(rows))
    assert len(reader.pages) == 1
    assert min(type_sizes(reader)) >= 8.5


def test_a_short_week_is_set_larger_than_a_long_one() -> None:
    assert 11.0 in type_sizes(read(week_of(5)))
    assert 11.0 not in type_sizes(read(week_of(80)))


def test_a_week_too_long_for_one_leaf_goes_on() -> None:
    reader = read(week_of(150))
    assert len(reader.pages) > 1
    assert min(type_sizes(reader)) == 8.5
    assert "component 149" in text_of(reader)


def test_grams_are_big_and_how_they_are_known_is_small() -> None:
    sizes: dict[str, float] = {}

    def see(text: str, _: Any, matrix: list[float], font: Any, size: float) -> None:
        sizes.update(dict.fromkeys(text.split(), abs(matrix[3] * size)))

    read(WEIGHING).pages[0].extract_text(visitor_text=see)
    assert sizes["248.4"] >= 13
    assert 8.5 <= sizes["worked"] < 10


def test_a_moment_without_a_zone_is_refused() -> None:
    naive = PRINTED.replace(tzinfo=None)
    with pytest.raises(
        ValueError, match=r"^printed 2026-03-03 14:05, in no time zone$"
    ):
        pdf_of(WEIGHING, printed=naive)
