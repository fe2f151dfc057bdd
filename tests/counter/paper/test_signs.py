from datetime import UTC, datetime
from io import BytesIO

import pytest
from pypdf import PdfReader

from demould.counter.paper.pdf import pdf_of
from demould.counter.paper.signs import DRAWN, printable
from demould.sheets.page import Lines, Page

PRINTED = datetime(2026, 3, 3, 14, 0, tzinfo=UTC)
ALL = [chr(code) for code in range(0x20, 0x3000) if chr(code).strip()]


def text_printed(text: str) -> str:
    page = Page(key="signs", title="Signs", blocks=(Lines(lines=(text,)),))
    reader = PdfReader(BytesIO(pdf_of(page, printed=PRINTED)))
    return " ".join(leaf.extract_text() for leaf in reader.pages)


# PDF/UA-1 forbids a sign without a shape (ISO 14289-1:2014, 7.21.8), so that the
# compiler refuses a page with one: what it prints, the fonts have.
def test_every_sign_let_through_has_a_shape() -> None:
    kept = [sign for sign in ALL if printable(f"a{sign}") == f"a{sign}"]
    assert len(kept) > 600
    assert set(DRAWN) <= set(kept)
    assert text_printed(" ".join(kept))


# Letters beyond a to z of the official languages of the European Union written in
# Latin letters, with Icelandic, Norwegian and Turkish; plain Greek, Bulgarian; from memory.
ALPHABETS = (
    "áàâäãåāăąæçćčďđéèêëēėęěğģíìîïīįıķłļľĺñńňņóòôöõőøœŕřśšşșßťțúùûüūůűųýÿźžżðþ"
    "αβγδεζηθικλμνξοπρσςτυφχψωбгджзийклпфцчшщъьюя"
)


@pytest.mark.parametrize("letters", [ALPHABETS, ALPHABETS.upper().replace("SS", "")])
def test_names_in_the_languages_around_us_can_be_read_back(letters: str) -> None:
    said = text_printed(" ".join(letters))
    assert [letter for letter in letters if letter not in said] == []


# The Unicode Standard names these signs so.
@pytest.mark.parametrize(
    ("typed", "printed"),
    [
        ("12\t°C\n½", "12 °C ½"),
        ("a\N{SNOWFLAKE}b", "a[snowflake]b"),
        ("\N{HIRAGANA LETTER A}", "[hiragana letter a]"),
        ("bell\x07", "bell[u+0007]"),
        ("soft\xadhyphen\N{ZERO WIDTH JOINER}", "softhyphen"),
        ("e\N{COMBINING ACUTE ACCENT}", "é"),
        ("12\xa0g", "12\xa0g"),
    ],
)
def test_a_sign_the_fonts_have_not_is_named(typed: str, printed: str) -> None:
    assert printable(typed) == printed
    assert printed.replace("\xa0", " ") in text_printed(typed).replace("\xa0", " ")
