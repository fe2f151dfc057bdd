"""Which version of a formula this is."""

from collections.abc import Mapping
from hashlib import sha256

from demould.mise.bare import bare, rebuilt
from demould.mise.dessert import Dessert
from demould.mise.render import render
from demould.mise.write_dessert import write_dessert

DIGITS = 8


def formula_version(dessert: Dessert) -> str:
    """Eight hex digits that change when anything but a remark does.

    The first of SHA-256 over the canonical text. Remarks, notes, the name of the file
    and where things stand in it are left out: another spelling of the same amounts, or
    other blanks between them, is the same version.
    """
    typed = render(write_dessert(rebuilt(bare(dessert), _without_remarks)))
    return sha256(typed.encode()).hexdigest()[:DIGITS]


def texts_version(texts: Mapping[str, str]) -> str:
    """Eight hex digits that change when any file of a kitchen does, or is renamed."""
    digest = sha256()
    for name in sorted(texts):
        for part in (name, texts[name]):
            digest.update(sha256(part.encode()).digest())
    return digest.hexdigest()[:DIGITS]


def _without_remarks(_: object, name: str, value: object) -> object:
    return () if name in ("remarks", "notes", "called_for") else value
