"""Words of a note as they may stand in one part of one line of a dessert's file."""


def one_line(text: str) -> str:
    """The words without line ends, without what would end the part, blanks made one.

    >>> one_line('rest;  "film touching"')
    "rest, 'film touching'"
    """
    shown = "".join(one if one.isprintable() else " " for one in text)
    return " ".join(shown.replace(";", ",").replace('"', "'").split())
