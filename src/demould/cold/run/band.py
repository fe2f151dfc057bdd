"""How a narrow symmetric system is solved: no pivoting, its band only."""

from demould.cold.body.cut import Floats
from demould.cold.compiled import compiled


@compiled
def solve_band(band: Floats, right: Floats) -> int:
    r"""Solve in place: `right` becomes the answer, `band` its factors.

    ``band[j, d]`` is the matrix at row `j + d`, column `j`; shape (n, width), what lies
    below the last row is not read. Symmetric and positive, as balances of heat are: by
    :math:`L D L^T`, column after column.

    Returns
    -------
    int
        0, or the number of the first column whose pivot is not above 0.
    """
    n, width = band.shape
    for j in range(n):
        pivot = band[j, 0]
        if not pivot > 0:
            return j + 1
        reach = min(width, n - j)
        for d in range(1, reach):
            share = band[j, d] / pivot
            if share != 0:
                row = band[j + d]
                for e in range(d, reach):
                    row[e - d] -= share * band[j, e]
                right[j + d] -= share * right[j]
    for j in range(n - 1, -1, -1):
        rest = right[j]
        for d in range(1, min(width, n - j)):
            rest -= band[j, d] * right[j + d]
        right[j] = rest / band[j, 0]
    return 0
