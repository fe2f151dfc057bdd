"""The pebble note as received, drafted, and its draft with lines changed."""

from datetime import datetime
from zoneinfo import ZoneInfo

from demould.advice.gaps.gap import Gap
from demould.advice.gaps.ranked import gaps_of
from demould.counter.text.from_note import Texts, folder_of, texts_of
from demould.mise.find import find_in
from demould.mise.folder import Folder
from demould.mise.note.draft import draft_of
from demould.mise.note.read_note import read_note

NOTE = """\
PEBBLE, makes about 20. Ganache: cream 33 cl to steep the buckwheat, 40 cl cold, white couv. 190, gelatine 2 leaves, salt. Whip next day.
Centre: blackcurrant 380, pear 160, sugar 85, NH 6.5, verjuice. Base: milk couv 70, nut paste 90, flakes 110, buckwheat 30, brown butter 15.
Dip: white couv 330, cocoa b. 270, black cocoa until slate, 600 in all. Spray white. Pebble mould. Freeze overnight, dip, thaw, plate with the sauce.
"""
NOW = datetime(2026, 11, 17, 14, tzinfo=ZoneInfo("UTC"))


def drafted(text: str = NOTE) -> Texts:
    note = read_note(text)
    return texts_of(note, draft_of(note), "UTC", None)


def changed(texts: Texts, *pairs: tuple[str, str]) -> Texts:
    """The files with each first text replaced by the second, wherever it stands."""
    made = dict(texts)
    for old, new in pairs:
        files = [name for name, text in made.items() if old in text]
        assert files, old
        for name in files:
            made[name] = made[name].replace(old, new)
    return made


def folder(texts: Texts) -> Folder:
    found, problems = folder_of(texts, NOW)
    assert problems == (), [str(one) for one in problems]
    assert found is not None
    return found


def gaps(texts: Texts) -> tuple[Gap, ...]:
    read = folder(texts)
    return gaps_of(read.desserts[0], read.kitchen, find_in(read.larder), read.larder)


def keys(texts: Texts) -> set[str]:
    return {gap.key for gap in gaps(texts)}
