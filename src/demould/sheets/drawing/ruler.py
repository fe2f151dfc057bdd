"""A ruler on the paper, to see that it was printed true to size."""

from demould.mise.words import Words
from demould.sheets.drawing.picture import FINE, PLAIN, Mark, Path, Point, Said

LONG_MM = 100.0
HIGH_MM = 9.0
SAID_MM = 2.8


def ruler(at: Point, shrunk: int = 1) -> tuple[Mark, ...]:
    """Draw 100 mm of paper with a tick each 10 mm, its left end at `at`.

    `shrunk` is how many millimetres of the thing one of the paper stands for.
    """
    x, y = at
    ticks = (
        Path(
            points=(
                (x + 10 * n, y),
                (x + 10 * n, y - (3.0 if n % 5 == 0 else 1.8)),
            ),
            width=FINE,
        )
        for n in range(11)
    )
    scale = Words(
        "this line must measure 100 mm; if not, print again at full size"
        if shrunk == 1
        else "this line must measure 100 mm; drawn 1 : {n}, it stands for {mm} mm",
        n=shrunk,
        mm=100 * shrunk,
    )
    return (
        Path(points=((x, y), (x + LONG_MM, y)), width=PLAIN),
        *ticks,
        Said(text=str(scale), at=(x, y + 4.2), size=SAID_MM),
    )
