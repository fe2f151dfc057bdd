"""How often the moulds are filled, and with how many pieces each time."""

import re
from collections.abc import Iterable
from dataclasses import dataclass

from demould.mise.mould import Mould


@dataclass(frozen=True, slots=True, kw_only=True)
class Rounds:
    """Fillings of one kind of mould.

    `each` is pieces a round, in order. `borrow` is how many more trays of the mould
    would make it one round. `cavities` is how many pieces they take at once, borrowed
    ones included: of a piece joined from halves one to two cavities.
    """

    mould: str
    cavities: int
    each: tuple[int, ...]
    borrow: int

    @property
    def count(self) -> int:
        """How many rounds."""
        return len(self.each)


def rounds(
    pieces: int, mould: Mould, *, evenly: bool = False, borrowed: int = 0
) -> Rounds:
    """Full rounds first and the remainder last, or as even as they come.

    Parameters
    ----------
    borrowed
        Trays on loan, on top of the kitchen's own.

    Raises
    ------
    ValueError
        If there is no cavity to fill.
    """
    cavities = (
        mould.cavities + borrowed * mould.cavities_each
    ) // mould.cavities_a_piece
    if cavities <= 0:
        raise ValueError(f"the {mould.key} mould has no cavity to fill")
    count = -(-pieces // cavities)
    if evenly and count:
        few, over = divmod(pieces, count)
        each = (few + 1,) * over + (few,) * (count - over)
    else:
        full, rest = divmod(pieces, cavities)
        each = (cavities,) * full + ((rest,) if rest else ())
    short = max(0, pieces - cavities)
    return Rounds(
        mould=mould.key,
        cavities=cavities,
        each=each,
        borrow=-(-short * mould.cavities_a_piece // mould.cavities_each),
    )


_COUNTS = {"a": 1, "one": 1, "two": 2, "three": 3, "four": 4}


def rounds_as_chosen(pieces: int, mould: Mould, choices: Iterable[str]) -> Rounds:
    """Rounds by what the order's choices say: ``even rounds``, ``borrow one mould``."""
    evenly, borrowed = False, 0
    for choice in choices:
        said = choice.casefold()
        evenly = evenly or bool(re.search(r"\beven(ly)?\b", said))
        if loan := re.search(r"\bborrow(?:ed)?\s+(\d+|[a-z]+)", said):
            word = loan[1]
            borrowed += int(word) if word.isdigit() else _COUNTS.get(word, 1)
    return rounds(pieces, mould, evenly=evenly, borrowed=borrowed)
