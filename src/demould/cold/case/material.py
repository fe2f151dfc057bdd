"""What a case's components are made of, by the two models a case may ask for."""

import math
from functools import lru_cache

from demould.matter.heat import Thermal, thermal
from demould.matter.water import SOLUTES, Wet, reference_a
from demould.mise.json_keys import Bounds, Keys, inner, number, only

MODELS = ("reference-a", "default")
SHARE = Bounds(least=0, most=1)
FRACTIONS = ("water", "carb", "protein", "fat", "fibre", "ash")
KNOWN = (*FRACTIONS, "carb_kg_per_mol", "ash_kg_per_mol", "air_fraction")
WHOLE = 0.005
NAMED: dict[str, dict[str, object]] = {
    "insert": {
        "water": 0.62,
        "carb": 0.355,
        "carb_kg_per_mol": 0.260,
        "protein": 0.003,
        "fat": 0.002,
        "fibre": 0.012,
        "ash": 0.008,
        "ash_kg_per_mol": 0.060,
    },
    "mousse": {
        "water": 0.50,
        "carb": 0.20,
        "carb_kg_per_mol": 0.300,
        "protein": 0.025,
        "fat": 0.27,
        "ash": 0.005,
        "ash_kg_per_mol": 0.060,
        "air_fraction": 0.25,
    },
}
"""Two materials that printed cases use by name: mass fractions, air of the volume."""


def read_material(keys: Keys, name: str, model: str) -> Wet | None:
    """Read one component; None where something is wrong, which is then said."""
    said = keys.said.get(name)
    if isinstance(said, str):
        if said not in NAMED:
            keys.wrong(
                name,
                f"no material is called {said!r}; write {' or '.join(NAMED)}, or its"
                " mass fractions in braces",
            )
            return None
        return _wet(NAMED[said], model)
    parts = inner(keys, name)
    if parts is None:
        return None
    only(parts, KNOWN)
    before = len(parts.faults)
    values: dict[str, object] = {
        each: number(parts, each, SHARE, 0.0 if each != "water" else None)
        for each in FRACTIONS
    }
    for solute in ("carb", "ash"):
        mass = Bounds(above=0.01, most=1000, unit="kg/mol")
        key = f"{solute}_kg_per_mol"
        needed = values[solute] != 0 and solute == "carb"
        values[key] = number(parts, key, mass, None if needed else 0.06)
    air = Bounds(least=0, most=0.95)
    values["air_fraction"] = number(parts, "air_fraction", air, 0.0)
    if len(parts.faults) > before:
        return None
    total = sum(float(str(values[each])) for each in FRACTIONS)
    if abs(total - 1) > WHOLE:
        keys.wrong(
            name,
            f"the mass fractions sum to {total:g}; they must sum to 1 within 0.005",
        )
        return None
    return _wet(values, model)


@lru_cache(maxsize=64)
def table_of(wet: Wet, model: str) -> Thermal:
    """Tabulate a component as the model has it, kept: what-ifs ask for the same few."""
    return thermal(wet, "parallel" if model == "reference-a" else "effective medium")


def _wet(values: dict[str, object], model: str) -> Wet:
    parts = {name: float(str(value)) for name, value in values.items()}
    if model == "reference-a":
        return reference_a(
            water=parts["water"],
            carb=parts["carb"],
            carb_kg_mol=parts["carb_kg_per_mol"],
            protein=parts["protein"],
            fat=parts["fat"],
            fibre=parts.get("fibre", 0.0),
            ash=parts["ash"],
            ash_kg_mol=parts["ash_kg_per_mol"],
            air=parts.get("air_fraction", 0.0),
        )
    return own_model(parts)


def own_model(parts: dict[str, float]) -> Wet:
    """Give the tool's own model of a component known by fractions and molar masses.

    What sugars do beyond an ideal solution, and where their serum stops giving ice,
    runs with molar mass between glucose and sucrose (and on to small oligomers, K at
    most 10): K by a power, the stop straight. Water is bound as in `water.wet_of`.
    """
    glucose, sucrose, ash = (SOLUTES[name] for name in ("glucose", "sucrose", "ash"))
    heavy = parts["carb_kg_per_mol"]
    steep = math.log(sucrose.norrish / glucose.norrish)
    steep /= math.log(sucrose.kg_mol / glucose.kg_mol)
    norrish = min(10.0, sucrose.norrish * (heavy / sucrose.kg_mol) ** steep)
    along = (heavy - glucose.kg_mol) / (sucrose.kg_mol - glucose.kg_mol)
    stop = glucose.stop_c + min(1.5, max(0.0, along)) * (
        sucrose.stop_c - glucose.stop_c
    )
    sugar, salt = parts["carb"] / heavy, parts["ash"] / parts["ash_kg_per_mol"]
    solids = parts["carb"] + parts["ash"]
    fibre, protein = parts.get("fibre", 0.0), parts["protein"]
    return Wet(
        water=parts["water"],
        protein=protein,
        fat=parts["fat"],
        carb=parts["carb"],
        fibre=fibre,
        ash=parts["ash"],
        particles=sugar + salt,
        pull=math.sqrt(norrish) * sugar + math.sqrt(ash.norrish) * salt,
        bound=min(parts["water"], 0.3 * (protein + fibre)),
        air=parts.get("air_fraction", 0.0),
        stop_c=(parts["carb"] * stop + parts["ash"] * ash.stop_c) / solids
        if solids > 0
        else -200.0,
    )
