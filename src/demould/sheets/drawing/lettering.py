"""How wide a line of text is, so that nothing is written over anything else."""

import re
from collections.abc import Iterator

# Advance widths of Atkinson Hyperlegible Regular, version 1.006, in thousandths of the
# size, read from the `hmtx` table of the font that is printed with.
_ALIKE = {
    160: "'", 205: ",.:;", 233: "|", 235: "·", 239: "l", 254: "j", 268: "`",
    278: "iî", 280: " \xa0", 281: "!", 300: "()", 301: '"', 311: "f", 315: "[]",
    319: "{}", 324: "t", 340: "r", 352: "°", 368: "-", 377: "/\\", 382: "²",
    396: "_", 402: "1", 414: "I", 429: "y", 433: "*", 441: "v", 460: "z",
    461: "x", 471: "s", 480: "\u2013", 490: "k", 500: "cç", 510: "7J", 520: "?",
    526: "aàä", 528: "\u00d7", 536: "uûü", 539: "Leèéê", 546: "hn", 548: "F",
    549: "2", 552: "^oôö", 553: "<>", 555: "~", 558: "T", 560: "g", 564: "d",
    566: "bp", 567: "E", 574: "3", 576: "q", 583: "5", 589: "V", 594: "$",
    595: "Y", 596: "S", 598: "69", 601: "P", 602: "+=", 607: "Z", 614: "4",
    615: "8", 618: "R", 619: "B", 623: "X", 626: "A", 627: "K", 648: "0",
    654: "w", 655: "#", 656: "C", 673: "D", 689: "N", 690: "HU", 705: "&",
    710: "G", 727: "O", 753: "Q", 780: "@", 820: "M", 840: "W", 841: "m",
    927: "%",
}  # fmt: skip
_WIDE = {sign: width for width, signs in _ALIKE.items() for sign in signs}
# What no line ends between: 60 x 42 x 5 mm.
_TOGETHER = re.compile(r"(?<=\d) (?=(?:g|ml|mm|x)\b)|(?<=\bx) (?=\d)")
WIDEST = 930
BOLDER = 1.12
ABOVE, BELOW = 0.75, 0.25


def width_mm(text: str, size_mm: float, *, bold: bool = False) -> float:
    """How wide a line of text is [mm]; a sign not in the table counts as the widest.

    >>> round(width_mm("ganache", 3.0), 2)
    11.23
    """
    wide = sum(_WIDE.get(sign, WIDEST) for sign in text) / 1000 * size_mm
    return wide * BOLDER if bold else wide


def wrapped(text: str, size_mm: float, room_mm: float) -> tuple[str, ...]:
    """Break a text between words into lines that fit; a number stays with its unit.

    A word wider than the room is broken where it must be.

    >>> wrapped("set in round side down", 3.0, 20.0)
    ('set in round', 'side down')
    """
    lines: list[str] = []
    for word in _TOGETHER.sub("\xa0", text).split(" "):
        longer = f"{lines[-1]} {word}" if lines else word
        if lines and width_mm(longer, size_mm) <= room_mm:
            lines[-1] = longer
        else:
            lines.extend(_broken(word, size_mm, room_mm))
    return tuple(lines)


def _broken(word: str, size_mm: float, room_mm: float) -> Iterator[str]:
    held = ""
    for sign in word:
        if held and width_mm(held + sign, size_mm) > room_mm:
            yield held
            held = ""
        held += sign
    yield held
