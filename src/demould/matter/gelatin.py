r"""Gelatin of another strength, by both laws in use.

Bloom is the force in grams that pushes a plunger of 12.7 mm 4 mm deep into a gel of
6.67 % matured 16 to 18 h at 10 °C. That force grows with the square of the
concentration, so equal strength asks for :math:`m_2 = m_1\sqrt{B_1/B_2}`. Much of the
trade goes by the straight ratio :math:`m_1 B_1/B_2`; leaves are made to that.

References
----------
.. [1] A. G. Ward and A. Courts (eds.), The Science and Technology of Gelatin, Academic
   Press, 1977 (as quoted; the square law holds roughly from 0.5 to 3 %, 140 to 260 bloom).
"""

import math
from typing import Literal, NamedTuple

from demould.larder.read import agents

Law = Literal["root", "ratio"]
APART = 0.10
"""Where the two laws are further apart than this, both are said."""


class BothLaws(NamedTuple):
    """Grams by the root law (the default) and by the straight ratio."""

    root: float
    ratio: float

    @property
    def apart(self) -> float:
        """How far the laws are apart, as a share of the smaller."""
        return max(self.root, self.ratio) / min(self.root, self.ratio) - 1


def as_bloom(grams: float, bloom: float, wanted: float) -> BothLaws:
    """Grams of `wanted` bloom that set like `grams` of `bloom`.

    >>> [round(g, 2) for g in as_bloom(10, 200, 160)]
    [11.18, 12.5]
    """
    if bloom <= 0 or wanted <= 0:
        raise ValueError(
            f"a gelatin of {min(bloom, wanted):g} bloom; it must be more than 0"
        )
    return BothLaws(grams * math.sqrt(bloom / wanted), grams * bloom / wanted)


def within_the_law(bloom: float, wanted: float) -> bool:
    """Whether both strengths are in the range the square law was found for."""
    usual = agents()["gelatin"].facts["bloom"]
    return all(usual.low <= one <= usual.high for one in (bloom, wanted))


def water_for(grams: float) -> tuple[float, float, float]:
    """Cold water that soaks so much gelatin: least, usual, most. [g] Count it once.

    >>> water_for(4.7)[1]
    23.5
    """
    soak = agents()["gelatin"].facts["soak"]
    return grams * soak.low, grams * soak.value, grams * soak.high
