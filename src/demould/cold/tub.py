r"""How deep a tray may be filled to cool in time: a wide layer between two films.

SI, °C. The series of a slab with even properties and no ice,
:math:`\theta = \sum_n C_n e^{-z_n^2 Fo}` in its warmest plane.

References
----------
.. [1] F. P. Incropera, D. P. DeWitt, T. L. Bergman and A. S. Lavine, Fundamentals of
   Heat and Mass Transfer, 6th ed., Wiley, 2007, section 5.5.
"""

from dataclasses import dataclass
from typing import Literal

import numpy as np
from scipy.optimize import brentq

from demould.cold.body.cut import Floats

TERMS = 30
Shelf = Literal["wire shelf", "solid shelf"]
"""A wire shelf cools both faces, on a solid one only the top is reckoned with."""
CONDUCTIVITY = 0.40
HEAT_J_M3K = 3.1e6
"""Of a cream or ganache base, unwhipped. Estimates."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Layer:
    """What is cooled, down to what, in which air.

    `film` in W/(m2 K) on each cooled face.
    """

    start_c: float
    target_c: float
    air_c: float
    film: float
    shelf: Shelf = "wire shelf"
    conductivity: float = CONDUCTIVITY
    heat: float = HEAT_J_M3K

    def __post_init__(self) -> None:
        if not self.air_c < self.target_c < self.start_c:
            raise ValueError(
                f"a layer of {self.start_c:g} °C comes to {self.target_c:g} °C only in"
                f" colder air than that, and this is {self.air_c:g} °C"
            )


def hours_to_cool(layer: Layer, depth: float) -> float:
    """Hours until nowhere in a layer so deep is warmer than the target [m].

    Stirring, evaporation and the tray itself are not counted.
    """
    half = depth / 2 if layer.shelf == "wire shelf" else depth
    roots = slab_roots(layer.film * half / layer.conductivity, TERMS)
    weights = 4 * np.sin(roots) / (2 * roots + np.sin(2 * roots))
    goal = (layer.target_c - layer.air_c) / (layer.start_c - layer.air_c)

    def over(fourier: float) -> float:
        return float((weights * np.exp(-(roots**2) * fourier)).sum()) - goal

    latest = float(np.log(2 * weights[0] / goal) / roots[0] ** 2)
    fourier = float(brentq(over, 0.0, latest))
    return fourier * half**2 * layer.heat / layer.conductivity / 3600


def deepest(layer: Layer, hours: float, most: float = 0.3) -> float:
    """How deep a tray may be filled to get there in so many hours, up to `most` [m]."""
    if hours_to_cool(layer, most) <= hours:
        return most
    return float(brentq(lambda d: hours_to_cool(layer, d) - hours, 1e-4, most))


def slab_roots(biot: float, count: int) -> Floats:
    """The first roots of z tan z = Bi, one in each of (n pi, n pi + pi/2)."""
    return np.array(
        [
            brentq(
                lambda z: z * np.sin(z) - biot * np.cos(z),
                n * np.pi,
                (n + 0.5) * np.pi,
            )
            for n in range(count)
        ]
    )
