"""Single things somebody asks about: spans of time, readings."""

import re
from datetime import datetime
from zoneinfo import ZoneInfo

from demould.mise.clock import read_moment
from demould.mise.parts import parts_of
from demould.mise.problem import UnreadableError
from demould.mise.quantity import read_amount
from demould.mise.words import Words


def read_span(text: str, zone: ZoneInfo) -> tuple[datetime, datetime | None]:
    """``2026-11-20 22:00 to 2026-11-21 06:00``; the end may be left out.

    Raises
    ------
    UnreadableError
        If a moment cannot be read, or the end is before the start.
    """
    start_text, _, end_text = text.partition(" to ")
    start = read_moment(start_text.strip(), zone)
    end = read_moment(end_text.strip(), zone) if end_text.strip() else None
    if end is not None and end < start:
        raise UnreadableError(
            Words("{found!r} ends before it begins", found=text),
            Words("Write the earlier moment first"),
        )
    return start, end


def read_reading(text: str, zone: ZoneInfo) -> tuple[datetime, float, bool]:
    """``2026-11-21 06:00; -12 °C; in the piece``: when, °C, and in a piece or of the air.

    Raises
    ------
    UnreadableError
        If one of the three is missing or cannot be read.
    """
    parts = [part.text for part in parts_of(text)]
    if len(parts) != 3:
        raise UnreadableError(
            Words("{found!r} is no reading of three parts", found=text),
            Words("Write it like 2026-11-21 06:00; -12 °C; in the piece (or: the air)"),
        )
    at = read_moment(parts[0], zone)
    at_c = read_degrees(parts[1], "reading")
    place = re.sub(r"^(in|of)\s+|^the\s+", "", parts[2].casefold())
    place = re.sub(r"^(the|a)\s+", "", place)
    if place not in ("piece", "air"):
        raise UnreadableError(
            Words("{found!r} is no place of a reading", found=parts[2]),
            Words("Write in the piece, or of the air"),
        )
    return at, at_c, place == "piece"


def read_weighing(text: str) -> tuple[float, float]:
    """``68.2 g to 77.3 g``: one piece before and after, in g.

    Raises
    ------
    UnreadableError
        If one of the two is missing or no weight, or the piece got no heavier.
    """
    before_text, _, after_text = text.partition(" to ")
    if not after_text.strip():
        raise UnreadableError(
            Words("{found!r} is not one piece before and after", found=text),
            Words("Write it like 68.2 g to 77.3 g"),
        )
    before = read_amount(before_text, name="piece before", kinds=("mass",)).value
    after = read_amount(after_text, name="piece after", kinds=("mass",)).value
    if not 0 < before < after:
        raise UnreadableError(
            Words("{found!r} is a piece that took nothing on", found=text),
            Words("Write before first, then after, the same piece"),
        )
    return before, after


def read_degrees(text: str, name: str) -> float:
    """``-18 °C``, or the number alone.

    Raises
    ------
    UnreadableError
        If it is no temperature.
    """
    alone = re.fullmatch(r"\s*[-\u2212+]?\d+(?:[.,]\d+)?\s*", text)
    whole = f"{text.strip()} °C" if alone else text
    return read_amount(whole, name=name, kinds=("temperature",)).value
