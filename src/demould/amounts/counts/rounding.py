"""Counts go down, factors go up."""

import math

SPECK = 1e-5
NEWS_MM = 0.5


def whole_pieces(pieces: float) -> int:
    """Count whole pieces: always down, but 13.999999 is 14.

    A hundred-thousandth of a piece is forgiven. Of the heaviest piece made here, a cake
    of 1 kg, that is 10 mg, the step of the finest scale in a kitchen; sums of a hundred
    floating-point numbers are off by a thousand-millionth of that.

    >>> whole_pieces(13.92), whole_pieces(13.999999), whole_pieces(14.0)
    (13, 14, 14)
    """
    return max(0, math.floor(pieces + SPECK))


def filled_pieces(pieces: float, each_ml: float, opening_mm2: float) -> int:
    """Count pieces of a poured filler: the last may be short by under 0.5 mm at the rim.

    That is less than a palette knife takes off. `each_ml` is what one piece takes,
    `opening_mm2` the open face over which the shortage spreads.
    """
    whole = whole_pieces(pieces)
    short_ml = (whole + 1 - pieces) * each_ml
    return whole + 1 if short_at_rim_mm(short_ml, opening_mm2) < NEWS_MM else whole


def short_at_rim_mm(short_ml: float, opening_mm2: float) -> float:
    """How far under the rim a piece stays that lacks so many ml [mm]."""
    return 1000 * short_ml / opening_mm2


def up_to_thousandths(factor: float) -> float:
    """Round a factor up to 3 decimals; one that is there already stays.

    >>> up_to_thousandths(1.00605), up_to_thousandths(1.307)
    (1.007, 1.307)
    """
    return math.ceil(round(factor * 1000, 6)) / 1000
