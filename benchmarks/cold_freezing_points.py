"""Three models of what sugars, spirit and salt do to water, against measured points.

Run: ``.venv/bin/python benchmarks/cold_freezing_points.py``. Measured: CRC Handbook,
"Concentrative properties of aqueous solutions", figures from memory. Ideal: Raoult;
hydration: h waters bound to each mole, one h fitted a solute to the same figures (least
squares of relative errors); Norrish: as `matter.water` has it, published constants for
sugars, fitted ones for spirit and salt.
"""

import math
from dataclasses import replace

import numpy as np
from scipy.optimize import minimize_scalar

from demould.matter.water import (
    HEAT_CAPACITY_GAP_J_MOL_K,
    SOLUTES,
    WATER_KG_MOL,
    Wet,
    freezing_point_c,
    ice_share,
    reference_a,
)

STRENGTHS = (5, 10, 15, 20, 30, 40)
MEASURED = {
    "sucrose": (0.29, 0.63, 1.01, 1.46, 2.64, 4.4),
    "glucose": (0.55, 1.16, 1.86, 2.70, 4.8, 7.9),
    "fructose": (0.55, 1.16, 1.86, 2.70, 4.8, 7.9),
    "alcohol": (2.09, 4.47, 7.36, 10.9, 20.5, 29.3),
    "salt": (3.05, 6.56, 10.89, 16.46),
}


def depression(wet: Wet) -> float:
    return -(freezing_point_c(wet) or math.nan)


def ideal(name: str, percent: float) -> Wet:
    kg_mol = 0.05844 / 2 if name == "salt" else SOLUTES[name].kg_mol
    share = percent / 100
    wet = reference_a(water=1 - share, carb=share, carb_kg_mol=kg_mol)
    return replace(wet, heat_capacity_gap=HEAT_CAPACITY_GAP_J_MOL_K)


def hydrated(name: str, percent: float, waters: float) -> Wet:
    wet = ideal(name, percent)
    return replace(wet, bound=min(wet.water, waters * WATER_KG_MOL * wet.particles))


def norrish(name: str, percent: float) -> Wet:
    wet = ideal(name, percent)
    particles = percent / 100 / SOLUTES[name].kg_mol
    pull = math.sqrt(SOLUTES[name].norrish) * particles
    return replace(wet, particles=particles, pull=pull)


def main() -> None:
    print("depression of the freezing point, K; worst and mean error, %")
    for name, measured in MEASURED.items():
        strengths = STRENGTHS[: len(measured)]

        def misses(waters: float, name: str = name) -> float:
            found = [depression(hydrated(name, p, waters)) for p in STRENGTHS]
            return sum(
                (f / m - 1) ** 2 for f, m in zip(found, MEASURED[name], strict=False)
            )

        waters = minimize_scalar(misses, bounds=(0, 8), method="bounded").x
        rows = {
            "measured": list(measured),
            "ideal": [depression(ideal(name, p)) for p in strengths],
            f"hydration {waters:.1f}": [
                depression(hydrated(name, p, waters)) for p in strengths
            ],
            "Norrish": [depression(norrish(name, p)) for p in strengths],
        }
        print(f"{name:20}" + "".join(f"{p:>7} %" for p in strengths))
        for model, values in rows.items():
            off = [100 * (v / m - 1) for v, m in zip(values, measured, strict=True)]
            worst, mean = max(off, key=abs), sum(map(abs, off)) / len(off)
            said = "" if model == "measured" else f"  {worst:+6.1f} {mean:5.1f}"
            print(f"  {model:18}" + "".join(f"{v:9.2f}" for v in values) + said)
    for at in (-18.0, -30.0):
        print(
            f"water left in sucrose serum at {at:g} °C, kg per kg of sucrose:", end=""
        )
        for wet in (
            ideal("sucrose", 40),
            hydrated("sucrose", 40, 5.6),
            norrish("sucrose", 40),
        ):
            left = wet.water - float(ice_share(wet, np.array([at]))[0])
            print(f" {left / 0.4:.3f}", end="")
        print("  (ideal, hydration, Norrish)")


if __name__ == "__main__":
    main()
