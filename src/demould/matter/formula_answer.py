"""What a formula comes to, ``demould-formula-answer/1``."""

import math
from collections.abc import Callable, Iterator, Mapping
from dataclasses import dataclass

import numpy as np

from demould.larder.ingredient import Composition
from demould.larder.read import agent_of, bloom_of
from demould.matter.composition import PARTS as ALL_PARTS
from demould.matter.composition import energy_eu
from demould.matter.density import mix_density
from demould.matter.formula_case import (
    KINDS,
    PARTS,
    FormulaCase,
    What,
    read_formula_case,
)
from demould.matter.gelatin import as_bloom
from demould.matter.sweetness import antifreeze, sweetness
from demould.matter.water import (
    NEVER_C,
    SALT_PER_SODIUM,
    freezing_point_c,
    ice_share,
    serum_activity,
    wet_of,
)

SCHEMA = "demould-formula-answer/1"
SALT_PER_SODIUM_EU = 2.5
"""Salt by Regulation (EU) 1169/2011, Annex I: sodium x 2.5."""
SALT_G_MOL = 58.44
MOST_SALT = 2.0
"""Salt in the free water [mol/kg] up to which the activity is within 0.002 of the printed one."""
BY_ACTIVITY = (
    "ice where its activity is that of the serum, by Norrish 1966 for all solutes"
    " together; water held by protein and fibre, 0.3 of their mass, never freezes"
)

Answer = dict[str, object]


class _Unanswered(Exception):  # noqa: N818  # not an error: the reason goes into the answer
    """One question that cannot be answered, with the reason."""


@dataclass(frozen=True, slots=True)
class _Mix:
    case: FormulaCase
    grams: float
    made_of: Composition
    kinds: bool

    def kinds_or_why(self) -> Composition:
        if not self.kinds:
            raise _Unanswered(
                "the kinds of sugar are not known: one line gives carb alone"
            )
        return self.made_of


def answer(raw: Mapping[str, object]) -> tuple[Answer | None, list[str]]:
    """Answer a case, or give every fault in it, one sentence each."""
    case, faults = read_formula_case(raw)
    if case is None:
        return None, faults
    mix, faults = _mixed(case)
    if mix is None:
        return None, faults
    told: Answer = {"schema": SCHEMA, "id": case.id}
    for name in case.asks:
        try:
            told[name] = _ANSWERS[name](mix)
        except _Unanswered as why:
            told[name] = {"null": str(why)}
    return told, []


def _mixed(case: FormulaCase) -> tuple[_Mix | None, list[str]]:
    """Put the lines together, take the solids out, cook the water away."""
    left = list(case.lines)
    faults: list[str] = []
    for n, (solid, grams, _) in enumerate(case.strained):
        there = sum(g for what, g in left if what == solid)
        if there and there < grams - 1e-9:
            faults.append(
                f"strained_g[{n}].g: {grams:g} g are taken out of {there:g} g put in"
            )
        left = list(_without(left, solid, grams))
    mass = sum(grams for _, grams in left)
    kept = sum(grams * keeps for _, grams, keeps in case.strained)
    if kept >= mass and not faults:
        faults.append(
            f"strained_g: the solids keep {kept:g} g and the mix is {mass:g} g"
        )
    if faults:
        return None, faults
    parts = {
        part: sum(g * getattr(what.made_of, part) for what, g in left) / mass
        for part in ALL_PARTS
    }
    after = mass - kept
    if case.cooked_to is not None:
        water = after * parts["water"] / 100
        if after - case.cooked_to > water + 1e-9:
            return None, [
                f"cooked_to_g: {after:g} g hold {water:g} g water;"
                f" they cannot be cooked to {case.cooked_to:g} g"
            ]
        if case.cooked_to > after + 1e-9:
            return None, [
                f"cooked_to_g: {after:g} g cannot be cooked to {case.cooked_to:g} g,"
                " which is more"
            ]
        parts["water"] -= 100 * (after - case.cooked_to) / after
        parts = {part: value * after / case.cooked_to for part, value in parts.items()}
        after = case.cooked_to
    kinds = all(what.kinds for what, _ in left)
    return _Mix(case, after, Composition(**parts), kinds), []


def _without(
    lines: list[tuple[What, float]], solid: What, grams: float
) -> Iterator[tuple[What, float]]:
    for what, there in lines:
        if what != solid:
            yield what, there
            continue
        taken = min(there, grams)
        grams -= taken
        if there > taken:
            yield what, there - taken


def _composition(mix: _Mix) -> Answer:
    made_of = mix.made_of
    told: Answer = {"mass_g": mix.grams}
    for key, part in PARTS.items():
        if key != "sodium_mg":
            told[key] = getattr(made_of, part)
    told["sugars"] = made_of.sugars
    told["salt"] = made_of.sodium_mg / 1000 * SALT_PER_SODIUM_EU
    told["carb"] = (
        made_of.sugars
        + made_of.polyols
        + made_of.erythritol
        + made_of.starch
        + made_of.other_carb
    )
    if not mix.kinds:
        told |= dict.fromkeys((*KINDS, "sugars"))
        told["null"] = "one line gives carb alone, so its kinds are not known"
    return told


def _energy(mix: _Mix) -> Answer:
    kj, kcal = energy_eu(mix.made_of)
    return {
        "kj": kj,
        "kcal": kcal,
        "printed": {"kj": math.floor(kj + 0.5), "kcal": math.floor(kcal + 0.5)},
    }


def _sweetness(mix: _Mix) -> Answer:
    made_of = mix.kinds_or_why()
    return {"sweetness": sweetness(made_of), "antifreeze": antifreeze(made_of)}


def _freezing_point(mix: _Mix) -> Answer:
    at_c = freezing_point_c(wet_of(mix.kinds_or_why()))
    if at_c is None:
        raise _Unanswered("it has no water that freezes")
    return {"c": at_c, "method": BY_ACTIVITY}


def _ice(mix: _Mix) -> list[Answer] | Answer:
    wet = wet_of(mix.kinds_or_why())
    if wet.free_water <= 0:
        raise _Unanswered("it has no water that freezes")
    ice = ice_share(wet, np.array(mix.case.ice_at))
    stop = f"; no more ice forms below {wet.stop_c:.0f} °C" * (wet.stop_c > NEVER_C)
    return [
        {
            "c": at_c,
            "g": 100 * float(share),
            "share": float(share) / wet.free_water,
            "method": BY_ACTIVITY + stop,
        }
        for at_c, share in zip(mix.case.ice_at, ice, strict=True)
    ]


def _water_activity(mix: _Mix) -> Answer:
    wet = wet_of(mix.kinds_or_why())
    if wet.free_water <= 0:
        raise _Unanswered("it has no free water")
    salt = mix.made_of.sodium_mg / 1000 * SALT_PER_SODIUM / SALT_G_MOL
    if salt / (wet.free_water / 10) > MOST_SALT:
        raise _Unanswered(
            f"it is a brine of over {MOST_SALT:g} mol salt to the kg of water, where"
            " this law of solutions no longer holds"
        )
    return {
        "aw": serum_activity(wet, wet.free_water),
        "method": "Norrish 1966 with all solutes in the free water together, at 25 °C",
    }


def _density(mix: _Mix) -> Answer:
    return {"g_ml": mix_density(mix.made_of)}


def _setting(mix: _Mix) -> list[Answer]:
    water = mix.grams * mix.made_of.water / 100
    found: dict[str, list[tuple[float, float]]] = {}
    for what, grams in mix.case.lines:
        agent = agent_of(what.row) if what.row else None
        if what.row is None or agent is None:
            continue
        bloom = bloom_of(what.row).value if agent.name == "gelatin" else 0.0
        found.setdefault(agent.name, []).append((grams, bloom))
    return [
        {
            "agent": name,
            "g": sum(g for g, _ in doses),
            "of_whole": 100 * sum(g for g, _ in doses) / mix.grams,
            "of_water": 100 * sum(g for g, _ in doses) / water if water > 0 else None,
            "as_200_bloom": _as_200(doses, mix.grams) if name == "gelatin" else None,
        }
        for name, doses in found.items()
    ]


def _as_200(doses: list[tuple[float, float]], mass: float) -> Answer:
    both = [as_bloom(grams, bloom, 200.0) for grams, bloom in doses]
    return {
        "root": 100 * sum(one.root for one in both) / mass,
        "ratio": 100 * sum(one.ratio for one in both) / mass,
    }


def _allergens(mix: _Mix) -> Answer:
    eu: set[str] = set()
    us: set[str] = set()
    unknown: list[str] = []
    for n, (what, _) in enumerate(mix.case.lines):
        row = what.row
        if row is None:
            unknown.append(f"lines[{n}]")
            continue
        eu.update(row.allergens_eu or ())
        us.update(row.allergens_us or ())
        if row.allergens_eu is None or row.allergens_us is None:
            unknown.append(row.id)
    return {"eu": sorted(eu), "us": sorted(us), "unknown": unknown}


_ANSWERS: dict[str, Callable[[_Mix], object]] = {
    "composition": _composition,
    "energy_eu": _energy,
    "sweetness": _sweetness,
    "freezing_point": _freezing_point,
    "ice": _ice,
    "water_activity": _water_activity,
    "density": _density,
    "setting": _setting,
    "allergens": _allergens,
}
