"""Freezing by scikit-fem, for benchmarks that want a second opinion or a peer.

Newton on the heat content at quadrature points, two damping implicit stages a step (as
ours, so that nobody wins by the choice of scheme), steps halved where Newton does not
get through. The same property tables as ours.
"""

from collections.abc import Sequence

import numpy as np
from scipy.sparse.linalg import splu
from skfem import Basis, BilinearForm, FacetBasis, LinearForm
from skfem.helpers import dot, grad

from demould.matter.heat import Thermal

SILICONE_J_M3K, SILICONE_W_MK = 1150 * 1300, 0.2
AGREED_K = 0.02
LONGEST_S = 60_000.0


class Layers:
    """Volumetric heat, its slope and conductivity at points of known layer.

    The layer after the last table is the silicone wall.
    """

    def __init__(self, layer: np.ndarray, thermals: Sequence[Thermal]) -> None:
        self.parts = [
            (layer == n, t.at_c, t.enthalpy * t.density, t.conductivity)
            for n, t in enumerate(thermals)
        ]
        self.wall = layer == len(thermals)

    def at(self, t: np.ndarray) -> tuple[np.ndarray, np.ndarray, np.ndarray]:
        heat, slope, k = np.empty_like(t), np.empty_like(t), np.empty_like(t)
        for mine, at_c, content, conducts in self.parts:
            mine_t = t[mine]
            row = np.clip(np.searchsorted(at_c, mine_t) - 1, 0, at_c.size - 2)
            rise = (content[row + 1] - content[row]) / (at_c[row + 1] - at_c[row])
            heat[mine] = content[row] + rise * (mine_t - at_c[row])
            slope[mine] = rise
            k[mine] = np.interp(mine_t, at_c, conducts)
        heat[self.wall] = SILICONE_J_M3K * t[self.wall]
        slope[self.wall] = SILICONE_J_M3K
        k[self.wall] = SILICONE_W_MK
        return heat, slope, k


def cooled(
    basis: Basis,
    skin: FacetBasis,
    layer: np.ndarray,
    thermals: Sequence[Thermal],
    *,
    core: int,
    air: float,
    h: float,
    longest: float,
    targets: Sequence[float],
    start_c: float = 6.0,
    power: int = 0,
) -> list[float]:
    """Seconds at which the degree of freedom `core` passes the targets.

    `layer` of every element; `power` of the first coordinate that volumes go by: 0 in
    space, 2 along a radius.
    """
    points = np.repeat(layer[:, None], basis.X.shape[1], axis=1)
    layers = Layers(points, thermals)

    matrix = BilinearForm(
        lambda u, v, w: (
            w.x[0] ** power * (w["c"] * u * v + w["k"] * dot(grad(u), grad(v)))
        )
    )
    vector = LinearForm(
        lambda v, w: w.x[0] ** power * (w["f"] * v + w["k"] * dot(w["t"].grad, grad(v)))
    )
    film = BilinearForm(lambda u, v, w: w.x[0] ** power * h * u * v).assemble(skin)
    t = np.full(basis.N, start_c)
    part = 1 - 0.5**0.5
    step = 2.0
    moment, moments, cores = 0.0, [0.0], [start_c]
    while cores[-1] > targets[-1] and moment < LONGEST_S:
        # Small first steps, as ours are; half of one that Newton does not get through.
        step = min(longest, max(2.0, 0.3 * moment), 2 * step)
        heat = layers.at(np.asarray(basis.interpolate(t)))[0]
        while True:
            base, rates, begin, sound = heat, [], t, True
            for _ in range(2):
                guess = begin
                for _ in range(8):
                    seen = basis.interpolate(guess)
                    now, slope, k = layers.at(np.asarray(seen))
                    a = matrix.assemble(basis, c=slope / (part * step), k=k) + film
                    b = vector.assemble(
                        basis, f=(now - base) / (part * step), k=k, t=seen
                    )
                    b += film @ (guess - air)
                    change = splu(a.tocsc()).solve(-b)
                    guess = guess + change
                    if np.abs(change).max() < AGREED_K:
                        break
                else:
                    sound = False
                    break
                end = layers.at(np.asarray(basis.interpolate(guess)))[0]
                rates.append((end - base) / (part * step))
                base = heat + (1 - part) * step * rates[0]
                begin = guess
            if sound:
                break
            step /= 2
        t = begin
        moment += step
        moments.append(moment)
        cores.append(float(t[core]))
    return [float(np.interp(-c, -np.array(cores), moments)) for c in targets]
