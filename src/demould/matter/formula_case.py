"""One formula as machines write it, ``demould-formula-case/1``."""

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass

from demould.larder.ingredient import Composition, Ingredient
from demould.larder.read import ingredients, near_ingredients
from demould.mise.json_keys import Bounds, Keys, as_keys, number, numbers, only, shown
from demould.mise.json_keys import text as text_of

SCHEMA = "demould-formula-case/1"
KEYS = ("schema", "id", "lines", "cooked_to_g", "strained_g", "ask")
ASKS = (
    "composition",
    "energy_eu",
    "sweetness",
    "freezing_point",
    "ice",
    "water_activity",
    "density",
    "setting",
    "allergens",
)
PARTS = {
    "water": "water",
    "protein": "protein",
    "fat": "fat",
    "milk_fat": "milk_fat",
    "cocoa_butter": "cocoa_butter",
    "sat_fat": "saturates",
    "sucrose": "sucrose",
    "glucose": "glucose",
    "fructose": "fructose",
    "lactose": "lactose",
    "maltose": "maltose",
    "polyols": "polyols",
    "erythritol": "erythritol",
    "starch": "starch",
    "other_carb": "other_carb",
    "fibre": "fibre",
    "acid": "acid",
    "alcohol": "alcohol",
    "ash": "ash",
    "sodium_mg": "sodium_mg",
}
"""Keys of a composition, and what the larder calls them."""
KINDS = (
    "sucrose",
    "glucose",
    "fructose",
    "lactose",
    "maltose",
    "polyols",
    "erythritol",
    "starch",
    "other_carb",
)
ROUNDING_G = 2.0
_GRAMS = Bounds(above=0, unit="g")
_PER_100 = Bounds(least=0, most=100, unit="g")
_MG = Bounds(least=0, most=39_400, unit="mg")


@dataclass(frozen=True, slots=True, kw_only=True)
class What:
    """One article: its composition, the row it is (None: given as a composition).

    `kinds` is False where its carbohydrate is told as one number of unknown kind; then
    that number stands in `other_carb`.
    """

    made_of: Composition
    row: Ingredient | None
    kinds: bool = True


@dataclass(frozen=True, slots=True, kw_only=True)
class FormulaCase:
    """A sound case. Grams; `strained` are solids, their grams and the liquid kept."""

    id: str
    lines: tuple[tuple[What, float], ...]
    strained: tuple[tuple[What, float, float], ...]
    cooked_to: float | None
    asks: tuple[str, ...]
    ice_at: tuple[float, ...]


def read_formula_case(
    raw: Mapping[str, object],
) -> tuple[FormulaCase | None, list[str]]:
    """Read a case; give it, or None and every fault found, one sentence each."""
    keys = Keys(said=raw, place="", faults=[])
    only(keys, KEYS)
    text_of(keys, "schema", (SCHEMA,))
    name = text_of(keys, "id") if "id" in raw else ""
    lines = tuple(
        (what, number(line, "g", _GRAMS))
        for line, what in _listed(keys, "lines", ("g", "what"))
    )
    if "lines" not in raw or raw["lines"] == []:
        keys.wrong("lines", 'no line; write at least one {"g": 500, "what": "milk"}')
    strained = tuple(
        (what, number(line, "g", _GRAMS), number(line, "keeps", Bounds(least=0)))
        for line, what in _listed(keys, "strained_g", ("g", "what", "keeps"))
    )
    cooked = None
    if raw.get("cooked_to_g") is not None:
        cooked = number(keys, "cooked_to_g", _GRAMS)
    asks, ice_at = _asked(keys)
    if keys.faults:
        return None, keys.faults
    case = FormulaCase(
        id=name,
        lines=lines,
        strained=strained,
        cooked_to=cooked,
        asks=asks,
        ice_at=ice_at,
    )
    return case, []


def _listed(keys: Keys, name: str, known: Sequence[str]) -> Iterator[tuple[Keys, What]]:
    said = keys.said.get(name, ())
    if not isinstance(said, Sequence) or isinstance(said, str):
        keys.wrong(name, f"{shown(said)} is no list; write objects in brackets")
        return
    for n, each in enumerate(said):
        line = as_keys(keys, f"{name}[{n}]", each)
        if line is not None:
            only(line, known)
            yield line, _what(line)


_NOTHING = What(made_of=Composition(), row=None)


def _what(line: Keys) -> What:
    said = line.said.get("what")
    if isinstance(said, str):
        row = ingredients().get(said)
        if row is None:
            near = ", ".join(one.id for one in near_ingredients(said.replace("_", " ")))
            hint = f"; the nearest are {near}" if near else ""
            line.wrong("what", f"no ingredient has the id {said!r}{hint}")
            return _NOTHING
        return What(made_of=row.per_100g, row=row)
    if isinstance(said, Mapping):
        return _composition(
            Keys(said=said, place=f"{line.place}what.", faults=line.faults)
        )
    found = "this key is missing" if "what" not in line.said else shown(said)
    line.wrong("what", f"{found}; write an id of the table, or a composition per 100 g")
    return _NOTHING


def _composition(keys: Keys) -> What:
    only(keys, (*PARTS, "carb"))
    before = len(keys.faults)
    grams = {
        part: number(keys, key, _MG if key == "sodium_mg" else _PER_100)
        for key, part in PARTS.items()
        if keys.said.get(key) is not None
    }
    carb = None
    if keys.said.get("carb") is not None:
        carb = number(keys, "carb", _PER_100)
    if len(keys.faults) > before:
        return _NOTHING
    kinds = sum(grams.get(kind, 0.0) for kind in KINDS)
    told = any(kind in grams for kind in KINDS)
    if carb is not None and told and abs(carb - kinds) > 0.5:
        keys.wrong(
            "carb",
            f"{carb:g} g, but its kinds add up to {kinds:g} g;"
            " leave carb out, or write it alone",
        )
    if carb is not None and not told:
        grams["other_carb"] = carb
    made_of = Composition(**grams)
    _check_sum(keys, made_of)
    return What(made_of=made_of, row=None, kinds=carb is None or told or carb == 0)


def _check_sum(keys: Keys, made_of: Composition) -> None:
    place = keys.place.removesuffix(".")
    if made_of.total <= 0:
        keys.faults.append(f"{place}: a composition of nothing; write its parts")
    if made_of.total > 100 + ROUNDING_G:
        keys.faults.append(
            f"{place}: its parts add up to {made_of.total:g} g in 100 g;"
            " milk_fat, cocoa_butter and sat_fat count within fat"
        )
    for parts, named in (
        (made_of.milk_fat + made_of.cocoa_butter, "milk_fat and cocoa_butter"),
        (made_of.saturates, "sat_fat"),
    ):
        if parts > made_of.fat + 0.05:
            keys.faults.append(
                f"{place}: {named} are {parts:g} g of {made_of.fat:g} g fat;"
                " they are parts of fat"
            )


def _asked(keys: Keys) -> tuple[tuple[str, ...], tuple[float, ...]]:
    if "ask" not in keys.said:
        keys.wrong("ask", f"this key is missing; write any of {', '.join(ASKS)}")
        return (), ()
    asked = as_keys(keys, "ask", keys.said["ask"])
    if asked is None:
        return (), ()
    only(asked, ASKS)
    ice_at: tuple[float, ...] = ()
    wanted: list[str] = []
    for name in ASKS:
        value = asked.said.get(name)
        if name == "ice" and isinstance(value, Mapping):
            at = Keys(said=value, place=f"{asked.place}ice.", faults=asked.faults)
            only(at, ("at_c",))
            ice_at = tuple(numbers(at, "at_c", Bounds(least=-60, most=60, unit="°C")))
            if not ice_at and not asked.faults:
                at.wrong("at_c", "no temperature; write at least one, in °C")
            wanted.append(name)
        elif value is True and name != "ice":
            wanted.append(name)
        elif value is not None and value is not False:
            write = '{"at_c": [-5, -10]}' if name == "ice" else "true, or leave it out"
            asked.wrong(name, f"{shown(value)} is no question; write {write}")
    return tuple(wanted), ice_at
