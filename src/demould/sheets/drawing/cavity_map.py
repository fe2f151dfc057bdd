"""Which cavity holds what: a mould's trays with the pieces of each kind counted in."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from demould.mise.mould import Mould
from demould.mise.words import Words
from demould.sheets.drawing.lettering import width_mm
from demould.sheets.drawing.picture import (
    BOLD,
    PLAIN,
    Disc,
    Mark,
    Path,
    Pattern,
    Picture,
    Said,
)

PAPER_MM = 180.0
MARGIN_MM, APART_MM = 2.0, 6.0
CAVITY_MM, STEP_MM = 11.0, 14.0
TITLE_MM, TEXT_MM, LETTER_MM = 4.4, 3.2, 4.0
TOP_MM, HEAD_MM, KEY_MM = 12.0, 5.5, 6.0
WIDEST = 1.6
LETTERS = "ABCDEFGHIJKLMNOPQRSTUVWXYZ"
PATTERNS: tuple[Pattern, ...] = ("white", "strokes", "dots", "level", "cross")


@dataclass(frozen=True, slots=True, kw_only=True)
class Kind:
    """So many pieces of one kind: a variant, an order, the spares of either."""

    name: str | Words
    pieces: int


def rows_of(cavities: int) -> tuple[int, int]:
    """Rows and columns of a tray: full ones where they divide, wider than deep.

    >>> rows_of(8), rows_of(15), rows_of(24), rows_of(7)
    ((2, 4), (3, 5), (4, 6), (2, 4))
    """
    for rows in range(int(cavities**0.5), 0, -1):
        if cavities % rows == 0 and cavities / rows <= WIDEST * rows + 1:
            return rows, cavities // rows
    rows = max(1, round((cavities / 1.5) ** 0.5))
    return rows, -(-cavities // rows)


def cavity_map(
    mould: Mould, each: Sequence[int], kinds: Sequence[Kind], key: str
) -> Picture:
    """Draw each round's trays; not to scale, in the order filled.

    Cavities are filled row by row from the back left. Kinds follow each other as given,
    so that a knife and a bag meet each kind once.

    Parameters
    ----------
    each
        Pieces a round, as `Rounds.each`.
    kinds
        Together as many pieces as the rounds.

    Raises
    ------
    ValueError
        If they are not.
    """
    if sum(each) != sum(kind.pieces for kind in kinds):
        raise ValueError(
            f"{sum(kind.pieces for kind in kinds)} pieces of all kinds in rounds of"
            f" {sum(each)}"
        )
    letters = [n for n, kind in enumerate(kinds) for _ in range(kind.pieces)]
    rows, columns = rows_of(mould.cavities_each)
    wide, deep = columns * STEP_MM, rows * STEP_MM
    abreast = max(1, int((PAPER_MM - 2 * MARGIN_MM + APART_MM) // (wide + APART_MM)))
    marks: list[Mark] = []
    down = TOP_MM
    start = 0
    for number, pieces in enumerate(each, start=1):
        marks.append(_head(number, pieces, down))
        down += HEAD_MM
        held = letters[start : start + pieces]
        start += pieces
        trays = _trays(held, mould.cavities_each)
        for n, tray in enumerate(trays):
            row, place = divmod(n, abreast)
            right = MARGIN_MM + place * (wide + APART_MM)
            at = down + row * (deep + APART_MM)
            marks.extend(_tray(tray, rows, columns, right, at))
        down += -(-len(trays) // abreast) * (deep + APART_MM) + APART_MM
    marks.extend(_key(kinds, down))
    title = Words("{mould} mould: which cavity holds what", mould=mould.key)
    return Picture(
        key=key,
        title=title,
        told=Words(
            "{title}: {kinds}",
            title=str(title),
            kinds=", ".join(f"{kind.pieces} {kind.name}" for kind in kinds),
        ),
        width=PAPER_MM,
        height=down + len(kinds) * KEY_MM + MARGIN_MM,
        marks=(
            Said(
                text=str(title), at=(MARGIN_MM, TITLE_MM + 1), size=TITLE_MM, bold=True
            ),
            *marks,
        ),
    )


def _trays(held: Sequence[int], cavities: int) -> list[list[int | None]]:
    trays: list[list[int | None]] = []
    for start in range(0, len(held), cavities):
        tray = list(held[start : start + cavities])
        trays.append([*tray, *[None] * (cavities - len(tray))])
    return trays


def _head(number: int, pieces: int, down: float) -> Said:
    said = Words("round {n}: {pieces} pieces", n=number, pieces=pieces)
    return Said(text=str(said), at=(MARGIN_MM, down + 2.5), size=TEXT_MM)


def _tray(
    held: Sequence[int | None], rows: int, columns: int, right: float, down: float
) -> Iterator[Mark]:
    wide, deep = columns * STEP_MM, rows * STEP_MM
    yield Path(
        points=(
            (right, down),
            (right + wide, down),
            (right + wide, down + deep),
            (right, down + deep),
        ),
        closed=True,
        width=BOLD,
    )
    for n, kind in enumerate(held):
        row, column = divmod(n, columns)
        at = right + (column + 0.5) * STEP_MM, down + (row + 0.5) * STEP_MM
        yield from _cavity(kind, at)


def _cavity(kind: int | None, at: tuple[float, float]) -> Iterator[Mark]:
    pattern: Pattern = "none" if kind is None else PATTERNS[kind % len(PATTERNS)]
    yield Disc(at=at, radius=CAVITY_MM / 2, fill=pattern, width=PLAIN)
    if kind is None:
        return
    letter = _letter(kind)
    across = max(width_mm(letter, LETTER_MM, bold=True), LETTER_MM)
    yield Disc(at=at, radius=across * 0.75, fill="white", width=0)
    yield Said(
        text=letter,
        at=(at[0], at[1] + LETTER_MM * 0.35),
        size=LETTER_MM,
        anchor="middle",
        bold=True,
    )


def _letter(kind: int) -> str:
    turn, letter = divmod(kind, len(LETTERS))
    return LETTERS[letter] + (str(turn + 1) if turn else "")


def _key(kinds: Sequence[Kind], down: float) -> Iterator[Said]:
    for n, kind in enumerate(kinds):
        said = Words("{pieces} {name}", pieces=kind.pieces, name=str(kind.name))
        at = down + (n + 0.5) * KEY_MM
        yield Said(text=_letter(n), at=(MARGIN_MM, at), size=LETTER_MM, bold=True)
        yield Said(text=str(said), at=(MARGIN_MM + 8, at), size=TEXT_MM)
