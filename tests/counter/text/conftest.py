"""A kitchen as it was written one Tuesday, spoilt in one place, and what is said of it.

``weir`` stays as it is, so that messages can be tested with their lines.
"""

import shutil
from collections.abc import Callable
from datetime import datetime
from pathlib import Path
from zoneinfo import ZoneInfo

import pytest

from demould.counter.text.read_folder import read_folder

NOW = datetime(2026, 11, 17, 14, 0, tzinfo=ZoneInfo("Europe/London"))
WEIR = Path(__file__).parent / "weir"

Said = Callable[..., list[str]]


@pytest.fixture
def kitchen(tmp_path: Path) -> Path:
    return Path(shutil.copytree(WEIR, tmp_path / "kitchen"))


@pytest.fixture
def said(kitchen: Path) -> Said:
    """Replace text in files of the kitchen, and give every message, whole."""

    def spoil(*changes: tuple[str, str, str]) -> list[str]:
        for file, old, new in changes:
            text = (kitchen / file).read_text("utf-8")
            assert text.count(old) >= 1, f"{file} has no {old!r}"
            (kitchen / file).write_text(text.replace(old, new, 1), "utf-8")
        folder, problems, _ = read_folder(kitchen, NOW)
        assert (folder is None) == bool(problems)
        return [str(problem) for problem in problems]

    return spoil
