"""Curves drawn with signs, for a screen of 80 columns."""

from collections.abc import Sequence
from math import ceil, floor

import numpy as np

Row = tuple[float, float, float, float]
CORE, SKIN, BOTH = "#", ".", "+"
WIDE, HIGH = 58, 12
HELD = "\u00a0"
"""A blank that keeps its place until a page is printed."""


def chart(curve: Sequence[Row], wide: int = WIDE, high: int = HIGH) -> tuple[str, ...]:
    """Draw core, skin and ice over the hours; rows are hours, core, skin °C, share of ice.

    The degrees stand at the right of every third line, tenths of the ice below, and the
    hours under them. One reading alone gives nothing to draw.
    """
    if len(curve) < 2 or curve[-1][0] <= 0:
        return ()
    hours, core, skin, ice = (np.array(column) for column in zip(*curve, strict=True))
    at = np.linspace(hours[0], hours[-1], wide)
    top = ceil(max(core.max(), skin.max()))
    low = min(floor(min(core.min(), skin.min())), top - 1)
    signs = [[HELD] * wide for _ in range(high)]
    for values, sign in ((skin, SKIN), (core, CORE)):
        shown = np.interp(at, hours, values)
        lines = np.rint((top - shown) / (top - low) * (high - 1)).astype(int)
        for column, line in enumerate(lines.tolist()):
            there = signs[line][column]
            signs[line][column] = sign if there in (HELD, sign) else BOTH
    drawn = [
        "|" + "".join(row) + _degrees(n, top, low, high) for n, row in enumerate(signs)
    ]
    tenths = np.floor(np.interp(at, hours, ice) * 10 + 1e-9).astype(int).clip(0, 9)
    drawn.append(
        "|"
        + "".join(str(one) for one in tenths.tolist())
        + f"{HELD}ice, tenths".replace(" ", HELD)
    )
    end = f"{hours[-1]:.1f}{HELD}h"
    drawn.append("0" + HELD * (wide - len(end)) + end)
    return tuple(drawn)


def _degrees(line: int, top: int, low: int, high: int) -> str:
    if line % 3 and line != high - 1:
        return ""
    return f"{HELD}{top + (low - top) * line / (high - 1):.0f}{HELD}°C"
