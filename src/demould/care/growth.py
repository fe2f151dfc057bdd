"""How much may have grown: an estimate for planning, on the safe side, never a release.

Cardinal values with interaction; no lag is counted, though there mostly is one. It knows
nothing of other germs, of what was there at the start, or of what competes with it.
"""

import math
from collections.abc import Sequence
from itertools import pairwise

from demould.larder.hygiene import growth_facts
from demould.mise.read_temperatures import Reading

SAFE_PH = 7.1
SAFE_AW = 1.0
"""Taken where nobody measured: what suits the germ best."""


def growth_rate(c: float, ph: float = SAFE_PH, aw: float = SAFE_AW) -> float:
    """Give the growth rate of Listeria monocytogenes, in 1/h; 0 outside its bounds.

    Augustin et al. 2005, with the fastest of the range of rates in milk: rate x gamma(T) x gamma(pH) x gamma(aw) x interaction.
    """
    known = {name: fact.value for name, fact in growth_facts().items()}
    t = (
        known["temperature least"],
        known["temperature best"],
        known["temperature most"],
    )
    p = (known["ph least"], known["ph best"], known["ph most"])
    least_aw, best_aw = known["aw least"], known["aw best"]
    if not (t[0] < c < t[2] and p[0] < ph < p[2] and aw > least_aw):
        return 0.0
    temperature = (
        (c - t[2])
        * (c - t[0]) ** 2
        / (
            (t[1] - t[0])
            * ((t[1] - t[0]) * (c - t[1]) - (t[1] - t[2]) * (t[1] + t[0] - 2 * c))
        )
    )
    both = (ph - p[0]) * (ph - p[2])
    acid = both / (both - (ph - p[1]) ** 2)
    water = min(1.0, (aw - least_aw) / (1 - least_aw))
    phis = (
        max(0.0, (t[1] - c) / (t[1] - t[0])) ** 3,
        max(0.0, (p[1] - ph) / (p[1] - p[0])) ** 3,
        max(0.0, (best_aw - aw) / (best_aw - least_aw)) ** 3,
    )
    return (
        growth_facts()["rate best"].high
        * temperature
        * acid
        * water
        * _interaction(phis)
    )


def _interaction(phis: tuple[float, ...]) -> float:
    psi = 0.0
    for at, phi in enumerate(phis):
        others = math.prod(1 - other for n, other in enumerate(phis) if n != at)
        if others <= 0:
            return 0.0
        psi += phi / (2 * others)
    return 1.0 if psi <= 0.5 else max(0.0, 2 * (1 - psi))


def grown_log10(
    log: Sequence[Reading], ph: float = SAFE_PH, aw: float = SAFE_AW
) -> float:
    """Give powers of ten that may have grown over a log, the warmer end of each step."""
    return sum(
        growth_rate(min(max(a.c, b.c), 37.0), ph, aw)
        * (b.at - a.at).total_seconds()
        / 3600
        for a, b in pairwise(log)
    ) / math.log(10)


def lets_listeria_grow(
    ph: float | None, aw: float | None, shelf_life_d: float | None
) -> bool:
    """Say whether a food counts as one in which Listeria can grow.

    Regulation (EC) 2073/2005, Annex I 1.3: not where pH is at most 4.4, or aw at most
    0.92, or pH at most 5.0 and aw at most 0.94, or the shelf life is under 5 days. What
    nobody measured does not help.
    """
    known = {name: fact.value for name, fact in growth_facts().items()}
    ph = math.inf if ph is None else ph
    aw = math.inf if aw is None else aw
    life = math.inf if shelf_life_d is None else shelf_life_d
    return not (
        ph <= known["no growth ph"]
        or aw <= known["no growth aw"]
        or (ph <= known["both ph"] and aw <= known["both aw"])
        or life < known["short life"]
    )
