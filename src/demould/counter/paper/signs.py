"""Which signs the paper's fonts can print, and what stands for the others."""

import re
import unicodedata

DRAWN = "←→↑↓☐"
_UNPRINTABLE = re.compile(
    "[^"
    " -~\xa0-\xac\xae-\u0237"  # Latin
    "\u0391-\u03a1\u03a3-\u03c9\u0400-\u045f"  # Greek and Cyrillic letters
    "\u2010-\u2015\u2018-\u201e\u2020-\u2022\u2026\u2030\u20ac\u2122\u2190-\u2193\u2212"
    "\u2248\u2260\u2264\u2265\u2610\u200b\u202f"
    "]"
)


def printable(text: str) -> str:
    r"""Make one line that the paper can print; a sign it has not is named in brackets.

    >>> printable("two lines,\nand a \N{SNOWFLAKE}")
    'two lines, and a [snowflake]'
    """
    line = re.sub(r"[^\S\xa0\u202f]+", " ", unicodedata.normalize("NFC", text)).strip()
    return _UNPRINTABLE.sub(_name, line)


def _name(sign: re.Match[str]) -> str:
    if (
        unicodedata.category(sign[0]) == "Cf"
    ):  # joins or turns other signs, itself unseen
        return ""
    code = f"U+{ord(sign[0]):04X}"
    return f"[{unicodedata.name(sign[0], code).lower()}]"
