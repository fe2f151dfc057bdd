"""What moves with a gap, in a cook's words."""

from collections.abc import Iterator

from demould.advice.gaps.gap import Gap, Moved
from demould.mise.words import Words

LAST = ("freezing", "cost")


def told(move: Moved) -> Words:
    """One move: ``ganache 11 to 72 pieces, not 24``."""
    low, high = sorted((move.low, move.high))
    values = {"name": move.name, "low": low, "high": high, "likely": move.likely}
    match move.what:
        case "pieces":
            return Words(
                "{name}: {low} to {high} pieces, not {likely}",
                name=move.name,
                low=int(low + 1e-9),
                high=int(high + 1e-9),
                likely=int(move.likely + 1e-9),
            )
        case "dose":
            return Words(
                "{name}: sets with {low:.2f} to {high:.2f} %, not {likely:.2f}",
                **values,
            )
        case "cost" if f"{low:.2f}" == f"{high:.2f}":
            return Words(
                "ingredients {high:.2f} of money a piece, not {likely:.2f}", **values
            )
        case "cost":
            return Words(
                "ingredients {low:.2f} to {high:.2f} of money a piece, not {likely:.2f}",
                **values,
            )
        case "fat":
            return Words(
                "{name}: fat {low:.0f} to {high:.0f} %, not {likely:.0f}", **values
            )
        case "freezing" if f"{low:.1f}" == f"{high:.1f}":
            return Words("freezes {high:.1f} h, not {likely:.1f}", **values)
        case "freezing":
            return Words(
                "freezes {low:.1f} to {high:.1f} h, not {likely:.1f}", **values
            )
        case "grams":
            return Words(
                "{name}: {low:.0f} to {high:.0f} g, not {likely:.0f}", **values
            )
        case _:
            return Words(
                "{low:.0f} to {high:.0f} h from first to last, not {likely:.0f}",
                **values,
            )


def moves_told(gap: Gap, most: int = 2) -> Iterator[Words]:
    """The largest moves of a gap that a cook can see in whole pieces or figures.

    Freezing hours and money come last, whatever else moves: they are never crowded out.
    """
    shown: list[str] = []
    others = [move for move in gap.moves if move.what not in LAST]
    seen_as = [move for move in others if move.what != "grams"]
    for move in seen_as or others:
        words = told(move)
        seen = _seen(move)
        if seen and str(words) not in shown:
            shown.append(str(words))
            yield words
        if len(shown) == most:
            break
    for what in LAST:
        yield from (told(one) for one in gap.moves if one.what == what and _seen(one))


def _seen(move: Moved) -> bool:
    """Whether it shows once it is rounded to be read."""
    digits = {"dose": 2, "cost": 2, "freezing": 1}.get(move.what, 0)
    ends = (move.low, move.high)
    if move.what == "pieces":
        return any(int(end + 1e-9) != int(move.likely + 1e-9) for end in ends)
    return any(round(end, digits) != round(move.likely, digits) for end in ends)
