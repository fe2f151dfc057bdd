"""How a narrow symmetric system is solved: no pivoting, its band only."""

import numpy as np

from demould.cold.body.cut import Floats, Whole
from demould.cold.compiled import compiled


@compiled
def solve_band(band: Floats, reach: Whole, right: Floats) -> int:
    r"""Solve in place: `right` becomes the answer, `band` its factors.

    ``band[j, d]`` is the matrix at row `j + d`, column `j`, for `d` below ``reach[j]``;
    what lies beyond is not read. Symmetric and positive, as balances of heat are: by
    :math:`L D L^T`, column after column.

    Returns
    -------
    int
        0, or the number of the first column whose pivot is not above 0.
    """
    n = right.size
    for j in range(n):
        if not band[j, 0] > 0:
            return j + 1
        inverse, mine, far = 1 / band[j, 0], right[j], reach[j]
        for d in range(1, far):
            share = band[j, d] * inverse
            for e in range(far - d):
                band[j + d, e] -= share * band[j, e + d]
            right[j + d] -= share * mine
    for j in range(n - 1, -1, -1):
        rest = right[j]
        for d in range(1, reach[j]):
            rest -= band[j, d] * right[j + d]
        right[j] = rest / band[j, 0]
    return 0


@compiled
def reach_of(low: Whole, high: Whole, n: int) -> Whole:
    """How far down from the diagonal each column of a system of links may fill; (n,).

    Factors fill a column no further down than the one before it reaches.
    """
    reach = np.ones(n, np.int64)
    for m in range(low.size):
        reach[low[m]] = max(reach[low[m]], high[m] - low[m] + 1)
    for j in range(1, n):
        reach[j] = max(reach[j], reach[j - 1] - 1)
    return reach
