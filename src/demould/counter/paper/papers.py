"""Pages as files in a folder: one PDF a page, under a name every disk can keep."""

import re
import unicodedata
from collections.abc import Iterable
from datetime import datetime
from pathlib import Path

from demould.counter.paper.pdf import pdf_of
from demould.sheets.page import Page

LONGEST_NAME = 80
_KEPT_BY_WINDOWS = re.compile(r"(con|prn|aux|nul|com\d|lpt\d)(\..*)?")


def print_page(page: Page, path: Path, *, printed: datetime) -> Path:
    """Write a page as PDF to `path`, whole or not at all, and give the path."""
    pdf = pdf_of(page, printed=printed)
    half = path.with_name(f".{path.name}.part")
    half.write_bytes(pdf)
    return half.replace(path)


def papers(
    pages: Iterable[Page], folder: Path, *, printed: datetime
) -> tuple[Path, ...]:
    """Print each page into `folder`, which is made where missing; give the paths.

    A page is named by its key. Where two keys give one name, the later counts on:
    `labels.pdf`, `labels-2.pdf`.
    """
    folder.mkdir(parents=True, exist_ok=True)
    given = tuple(pages)
    names = file_names([page.key for page in given])
    return tuple(
        print_page(page, folder / name, printed=printed)
        for page, name in zip(given, names, strict=True)
    )


def file_names(keys: Iterable[str]) -> tuple[str, ...]:
    """Give each key a file name of small letters, digits, `-`, `_` and points.

    >>> file_names(["weigh ganache/1", "Weigh ganache 1", "crème"])
    ('weigh-ganache-1.pdf', 'weigh-ganache-1-2.pdf', 'creme.pdf')
    """
    names: dict[str, None] = {}
    for key in keys:
        stem, count = _stem(key), 1
        name = stem
        while name in names:
            count += 1
            name = f"{stem}-{count}"
        names[name] = None
    return tuple(f"{name}.pdf" for name in names)


def _stem(key: str) -> str:
    plain = unicodedata.normalize("NFKD", key).encode("ascii", "ignore").decode()
    stem = re.sub(r"[^a-z0-9._-]+", "-", plain.lower())
    stem = stem[:LONGEST_NAME].strip(".-") or "sheet"
    return f"sheet-{stem}" if _KEPT_BY_WINDOWS.fullmatch(stem) else stem
