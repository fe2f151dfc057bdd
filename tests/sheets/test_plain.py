import pytest
from hypothesis import given
from hypothesis import strategies as st

from demould.mise.figure import Known
from demould.mise.words import Words
from demould.sheets.page import Blanks, Block, Cell, Column, Head, Lines, Page, Table
from demould.sheets.plain import plain

LETTERS = "abcdefghijklmnopqrstuvwxyzåéß0123456789°%,"


def texts(longest_word: int) -> st.SearchStrategy[str]:
    word = st.text(LETTERS, min_size=1, max_size=longest_word)
    gap = st.sampled_from([" ", "  ", "\n", "\t", "\xa0"])
    return st.lists(st.tuples(word, gap), max_size=8).map(
        lambda parts: "".join(word + gap for word, gap in parts)
    )


def tables(text: st.SearchStrategy[str]) -> st.SearchStrategy[Table]:
    known: st.SearchStrategy[Known | None] = st.sampled_from(
        [None, "measured", "stated", "assumed", "worked out"]
    )
    cell = st.builds(Cell, text=text, known=known, strong=st.booleans())
    align = st.sampled_from(["left", "right"])
    column = st.builds(Column, head=text, align=align)
    return st.integers(0, 7).flatmap(
        lambda wide: st.builds(
            Table,
            columns=st.tuples(*[column] * wide),
            rows=st.lists(st.tuples(*[cell] * wide), max_size=4).map(tuple),
            ticks=st.booleans(),
        )
    )


def pages(longest_word: int) -> st.SearchStrategy[Page]:
    text = texts(longest_word)
    several = st.lists(text, max_size=4).map(tuple)
    block: st.SearchStrategy[Block] = st.one_of(
        st.builds(Head, text=text, note=text),
        st.builds(Lines, lines=several, loud=st.booleans()),
        st.builds(Blanks, labels=several),
        tables(text),
    )
    return st.builds(
        Page,
        key=st.just("any"),
        title=text,
        note=text,
        blocks=st.lists(block, max_size=4).map(tuple),
        foot=several,
    )


@given(page=pages(longest_word=120), width=st.integers(20, 120))
def test_no_line_is_wider_than_asked(page: Page, width: int) -> None:
    written = plain(page, width)
    assert written.endswith("\n")
    assert max(map(len, written.split("\n"))) <= width


@given(page=pages(longest_word=120), width=st.integers(20, 120))
def test_no_line_ends_in_blanks_and_no_tab_or_no_break_space_is_left(
    page: Page, width: int
) -> None:
    written = plain(page, width)
    assert [line for line in written.split("\n") if line != line.rstrip()] == []
    assert "\t" not in written
    assert "\xa0" not in written


def said(page: Page) -> list[list[str]]:
    """List the words of each text of a page, heads in capitals as they are set."""
    found = [[str(page.title)], [str(page.note)]]
    for block in page.blocks:
        match block:
            case Head(text=text, note=note):
                found += [[str(text).upper()], [str(note)]]
            case Lines(lines=lines):
                found.append([str(line) for line in lines])
            case Blanks(labels=labels):
                found.append([str(label) for label in labels])
            case Table(columns=columns, rows=rows):
                found += [[str(column.head)] for column in columns if rows]
                found += [[str(cell.text)] for row in rows for cell in row]
    found.append([str(text) for text in page.foot])
    return [[word for text in texts for word in text.split()] for texts in found]


# Words of up to 16 signs: in 80 columns none has to be broken.
@given(page=pages(longest_word=16))
def test_every_word_is_there_in_its_order(page: Page) -> None:
    written = [word.rstrip("~") for word in plain(page).split()]
    for words in said(page):
        rest = iter(written)
        assert all(word in rest for word in words), words


@given(page=pages(longest_word=120), width=st.integers(20, 120))
def test_every_letter_is_there_however_narrow(page: Page, width: int) -> None:
    written = plain(page, width)
    for letter in LETTERS + LETTERS.upper():
        wanted = sum(
            word.count(letter) for words in said(page) for word in words if words
        )
        assert written.count(letter) >= wanted, letter


def cells(*texts: str) -> tuple[Cell, ...]:
    return tuple(Cell(text=text) for text in texts)


WEIGHING = Page(
    key="weigh",
    title="Whipped ganache",
    note="weigh 1167 g",
    blocks=(
        Lines(lines=(Words("ask about {what}", what="nuts"),), loud=True),
        Lines(lines=("Weigh Wed 12:30.",)),
        Head(text="Blend", note="ends near 35 °C"),
        Table(
            columns=(
                Column(head="ingredient"),
                Column(head="grams", align="right"),
                Column(head="lot"),
            ),
            rows=(
                (
                    Cell(text="white couverture 35 %"),
                    Cell(text="248.4 g", known="worked out"),
                    Cell(text=""),
                ),
                (
                    Cell(text="salt, as nobody said how much of it"),
                    Cell(text="1.3 g", known="assumed", strong=True),
                    Cell(text=""),
                ),
            ),
            ticks=True,
        ),
        Blanks(labels=("tare", "signed")),
    ),
    foot=("formula 3f2a91bc", "numbers assumed: 1"),
)


def test_a_weighing_sheet_reads_so() -> None:
    assert plain(WEIGHING, 50) == (
        "Whipped ganache                       weigh 1167 g\n"
        "--------------------------------------------------\n"
        "!! ask about nuts\n"
        "Weigh Wed 12:30.\n"
        "\n"
        "BLEND                              ends near 35 °C\n"
        "      ingredient                  grams     lot\n"
        "  [ ] white couverture 35 %     248.4 g     ______\n"
        "  [ ] salt, as nobody said how    1.3 g~ <  ______\n"
        "        much of it\n"
        "  tare ______   signed ______\n"
        "--------------------------------------------------\n"
        "formula 3f2a91bc   numbers assumed: 1\n"
        "~ hangs on an assumption   < look here first\n"
    )


def test_a_table_too_wide_for_columns_goes_line_by_line_with_its_heads() -> None:
    heads = ["pebble", "blast", "upright", "thawed", "boxed"]
    table = Table(
        columns=tuple(Column(head=head, align="right") for head in heads),
        rows=(
            cells("1.6 kg", "1 - 2.5 h", "", "3 - 6 h", "8 - 12 h"),
            cells("1.2 kg", "", "8 h", "", ""),
        ),
    )
    page = Page(key="cold", title="Cold", blocks=(table,))
    assert plain(page, 30).splitlines()[2:] == [
        "- pebble 1.6 kg   blast 1 -",
        "    2.5 h   thawed 3 - 6 h",
        "    boxed 8 - 12 h",
        "- pebble 1.2 kg   upright 8 h",
    ]


def test_signs_are_explained_only_where_used() -> None:
    page = Page(key="a", title="A", blocks=(Lines(lines=("one",)),))
    assert plain(page, 20) == "A\n--------------------\none\n"


def test_a_number_held_to_its_unit_stays_on_one_line() -> None:
    page = Page(key="a", title="A", blocks=(Lines(lines=("weigh in all 12\xa0g",)),))
    assert plain(page, 20).splitlines()[2:] == ["weigh in all 12 g"]
    longer = Page(
        key="a", title="A", blocks=(Lines(lines=("weigh in all 1200\xa0kg",)),)
    )
    assert plain(longer, 20).splitlines()[2:] == ["weigh in all 1200 kg"]
    broken = Page(
        key="a", title="A", blocks=(Lines(lines=("weigh in all 12000\xa0kg",)),)
    )
    assert plain(broken, 20).splitlines()[2:] == ["weigh in all", "  12000 kg"]


def test_a_page_nobody_could_read_is_refused() -> None:
    with pytest.raises(
        ValueError, match=r"^a page is 19 signs wide; it must be 20 or more$"
    ):
        plain(WEIGHING, 19)


def test_a_row_that_does_not_fit_its_columns_is_refused() -> None:
    with pytest.raises(ValueError, match=r"^row 2 has 1 cells under 2 columns$"):
        Table(
            columns=(Column(), Column()),
            rows=(cells("a", "b"), cells("c")),
        )
