"""Halve cell and step at the defaults, for every kind of shape.

Run: ``.venv/bin/python benchmarks/cold_halving.py``. Against a converged answer: cells
of a sixth of the usual area and even steps of an eighth of the longest usual one.
"""

from cold_cases import KINDS, Case, answered, load, off, seconds


def finer(case: Case, like: Case, cells: float, steps: float) -> Case:
    """The same case with cells and steps so many times as fine as it took by itself."""
    how = {"cell_mm": like["cell_mm"] / cells, "step_s": like["step_s"] / steps}
    return answered(case, accuracy=how)


def main() -> None:
    print(load())
    print("worst of core at -10 and -15 °C, %; steps halved are even ones")
    print(
        f"{'kind':20} {'cells':>6} {'steps':>6} {'error':>7} {'cell/2':>7} {'step/2':>7}"
        f" {'both':>7} {'residual':>9}"
    )
    for name, case in KINDS.items():
        usual = answered(case)
        at = seconds(usual)
        exact = seconds(finer(case, usual, 2.5, 12))
        moved = [
            answered(case, accuracy={"cell_mm": usual["cell_mm"] / 2}),
            answered(case, accuracy={"step_s": usual["step_s"] / 2}),
            finer(case, usual, 2, 2),
        ]
        print(
            f"{name:20} {usual['cells']:6} {usual['steps']:6} {off(at, exact):+7.2f} "
            + " ".join(f"{off(at, seconds(each)):+7.2f}" for each in moved)
            + f" {max(each['energy_residual'] for each in (usual, *moved)):9.0e}"
        )


if __name__ == "__main__":
    main()
