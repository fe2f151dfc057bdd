"""A page as PDF: on A4, black on white."""

import json
from datetime import datetime, timezone
from functools import cache
from importlib.resources import as_file, files
from typing import cast

import typst
from fontpkg_atkinson_hyperlegible import ROOT

from demould.counter.paper.told import told
from demould.sheets.page import Page

BENCH_PT = 12.0
WALL_PT = (11.0, 10.5, 10.0, 9.5, 9.0, 8.5)


def pdf_of(page: Page, *, printed: datetime) -> bytes:
    """Set a page on A4 and give the PDF, tagged for reading aloud (PDF/UA-1).

    A page for the wall is set in the largest of `WALL_PT` that keeps it on one leaf;
    where none does, it goes on over further leaves in the smallest. The same page
    printed at the same moment gives the same bytes.

    Raises
    ------
    ValueError
        `printed` does not say how far it is from UTC.
    """
    away = printed.utcoffset()
    if away is None:
        raise ValueError(f"printed {printed:%Y-%m-%d %H:%M}, in no time zone")
    moment = printed.astimezone(timezone(away)).replace(microsecond=0)
    if page.paper != "wall":
        return _set(page, moment, BENCH_PT)[0]
    pdf = b""
    for size in WALL_PT:
        pdf, leaves = _set(page, moment, size)
        if leaves == 1:
            break
    return pdf


def _set(page: Page, printed: datetime, size_pt: float) -> tuple[bytes, int]:
    with as_file(files(__package__) / "sheet.typ") as template:
        compiler = typst.Compiler(template, font_paths=_fonts())
        pdf = compiler.compile(
            format="pdf",
            sys_inputs={"page": json.dumps(told(page, printed, size_pt))},
            pdf_standards="ua-1",
            timestamp=printed,
        )
        leaves = compiler.query("<leaves>", field="value", one=True)
    return cast(bytes, pdf), int(leaves)


@cache
def _fonts() -> typst.Fonts:
    # The compiler's own fonts stand behind, for letters beyond Latin in a name.
    return typst.Fonts(include_system_fonts=False, font_paths=[ROOT / "files"])
