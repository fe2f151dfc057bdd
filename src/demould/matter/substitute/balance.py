r"""Grams that hold what is chosen: a small least-squares problem with bounds.

Of lines that may move, grams :math:`x \ge 0` minimise

.. math:: \sum_q \left(\frac{a_q \cdot x - b_q}{s}\right)^2
          + \sum_j c_j \left(\frac{x_j - x_j^0}{M}\right)^2

with what each held quantity was (:math:`b_q`), a fine scale `s` of a thousandth of the
batch `M`, so that what can be held is, and a cost of moving that is small beside it.
Water and sugar give way first; lines that bring taste hardly. What comes in new moves
freely where grams of the whole are held, and stays at its grams where they are not.
"""

from collections.abc import Sequence
from dataclasses import dataclass

import numpy as np
from scipy.optimize import lsq_linear

from demould.larder.ingredient import Composition
from demould.matter.substitute.held import HELD

FINE = 0.001
NEW_STAYS, NEW_MOVES = 25.0, 0.3
NEUTRAL, HELPER, TASTE = 1.0, 2.0, 10.0
"""What moving costs: water and sugar, what comes in to help, lines that bring taste."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Moving:
    """One line that may move: what it is made of, its grams so far, what moving costs."""

    key: str
    made_of: Composition
    grams: float
    cost: float = 1.0
    least: float = 0.0


def balanced(
    moving: Sequence[Moving], wanted: dict[str, float], batch_g: float
) -> dict[str, float]:
    """Grams of each moving line that hold `wanted` (grams of each held quantity).

    Sweetness and freezing count in hundredths, like grams of sugar.
    """
    brings = np.array(
        [[HELD[name](one.made_of) / 100 for one in moving] for name in wanted]
    )
    before = np.array([one.grams for one in moving])
    costs = np.sqrt([one.cost for one in moving])
    rows = np.vstack([brings / (FINE * batch_g), np.diag(costs) / batch_g])
    right = np.concatenate(
        [np.array(list(wanted.values())) / (FINE * batch_g), costs * before / batch_g]
    )
    least = np.array([one.least for one in moving])
    found = lsq_linear(rows, right, bounds=(least, np.inf), tol=1e-12)
    return {one.key: float(grams) for one, grams in zip(moving, found.x, strict=True)}
