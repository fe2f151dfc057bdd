"""A supplier's sheet, per 100 g, filled from a like ingredient where it is silent."""

from dataclasses import fields

from demould.larder.ingredient import Composition
from demould.mise.number import read_number, written
from demould.mise.parts import at_column, parts_of
from demould.mise.problem import UnreadableError
from demould.mise.spelling import one_of
from demould.mise.words import Words

Sheet = tuple[tuple[str, float], ...]

OTHER = (
    "polyols",
    "erythritol",
    "starch",
    "other_carb",
    "fibre",
    "acid",
    "alcohol",
    "ash",
)
"""What a sheet's "other" may be made of, unless it says so itself."""

_PLAIN = ("water", "fat", "protein", "sugars", "saturates", "other")
SHEET_WORDS = (*_PLAIN, "polyols", "starch", "fibre", "acid", "alcohol", "ash")
SUGARS = ("sucrose", "glucose", "fructose", "lactose", "maltose", "trehalose")
BOTH = "glucose and fructose"
SUGAR_WORDS = (BOTH, *SUGARS, "other sugar")
_FATS = ("milk_fat", "cocoa_butter", "saturates")

WHOLE_WITHIN = 2.0
SUGARS_WITHIN = 0.2


def read_sheet(text: str) -> Sheet:
    """``water 58.9, fat 35, sugars 3, protein 2.2, other 0.9``, grams in 100 g.

    Raises
    ------
    UnreadableError
        If a part is not known or no number, or the whole is not 100 within 2.
    """
    sheet = _numbers(text, SHEET_WORDS, "part of a sheet")
    total = sum(grams for word, grams in sheet if word != "saturates")
    if abs(total - 100) > WHOLE_WITHIN:
        raise UnreadableError(
            Words("the sheet adds up to {total:g} g in 100 g", total=round(total, 3)),
            Words("Look at the sheet again; what it does not name is 'other'"),
        )
    return sheet


def read_sugars(text: str, sheet: Sheet) -> Sheet:
    """``sucrose 46, lactose 10``, which are the sheet's sugars within 0.2.

    Raises
    ------
    UnreadableError
        If a sugar is not known or no number, or they do not add up.
    """
    sugars = _numbers(text, SUGAR_WORDS, "sugar")
    found = sum(grams for _, grams in sugars)
    stated = dict(sheet).get("sugars")
    if stated is not None and abs(found - stated) > SUGARS_WITHIN:
        raise UnreadableError(
            Words(
                "these sugars add up to {found:g} g, the sheet has {stated:g} g",
                found=round(found, 3),
                stated=stated,
            ),
            Words("Make the two agree; what is not known is 'other sugar'"),
        )
    return sugars


def _numbers(text: str, words: tuple[str, ...], what: str) -> Sheet:
    found: dict[str, float] = {}
    for part in parts_of(text, ","):
        with at_column(part.column):
            word, _, number = part.text.rpartition(" ")
            if number == "g":
                word, _, number = word.rpartition(" ")
            value = float(read_number(number))
            name = one_of(word, words, what)
            if value < 0:
                raise UnreadableError(
                    Words("{found!r} is less than 0", found=part.text),
                    Words("Write it without the minus sign"),
                )
            if name in found:
                raise UnreadableError(
                    Words("{name!r} is here twice", name=name),
                    Words("Keep one of them"),
                )
            found[name] = value
    return tuple(found.items())


def composition_from(
    sheet: Sheet, sugars: Sheet, like: Composition | None
) -> Composition:
    """What a sheet says, filled from the like row.

    Glucose and fructose together are split as in the like row, else in halves; sugars
    of no named kind go by the like row's, else they are `other_sugar`. "Other" is spread
    over `OTHER` in the like row's proportions, else it is `other_carb`. Kinds of fat are
    the like row's shares of the fat, sodium its share of the dry matter.
    """
    said = dict(sheet)
    if not said:
        return like or Composition()
    parts = {word: grams for word, grams in sheet if word in _names()}
    parts |= _kinds_of_sugar(said.get("sugars", 0.0), sugars, like)
    for name, grams in _kinds_of_other(said, like).items():
        parts[name] = parts.get(name, 0.0) + grams
    if like and like.fat:
        share = {name: getattr(like, name) / like.fat for name in _FATS}
        fat = said.get("fat", 0.0)
        parts = {name: of * fat for name, of in share.items()} | parts
    if like and like.water < 100:
        dry = (100 - said.get("water", 0.0)) / (100 - like.water)
        parts["sodium_mg"] = like.sodium_mg * dry
    return Composition(**parts)


def _names() -> frozenset[str]:
    return frozenset(part.name for part in fields(Composition))


def _kinds_of_sugar(
    total: float, sugars: Sheet, like: Composition | None
) -> dict[str, float]:
    kinds = dict(sugars)
    both = kinds.pop(BOTH, 0.0)
    named = {word.replace(" ", "_"): grams for word, grams in kinds.items()}
    if not sugars:
        if like is None or not like.sugars:
            return {"other_sugar": total}
        names = (*SUGARS, "other_sugar")
        return {name: total * getattr(like, name) / like.sugars for name in names}
    glucose, fructose = (like.glucose, like.fructose) if like else (0.0, 0.0)
    part = glucose / (glucose + fructose) if glucose + fructose else 0.5
    named["glucose"] = named.get("glucose", 0.0) + both * part
    named["fructose"] = named.get("fructose", 0.0) + both * (1 - part)
    return named


def _kinds_of_other(
    said: dict[str, float], like: Composition | None
) -> dict[str, float]:
    """Spread over what the sheet does not name itself."""
    other = said.get("other", 0.0)
    names = [name for name in OTHER if name not in said]
    weights = {name: getattr(like, name) if like else 0.0 for name in names}
    total = sum(weights.values())
    if not total:
        return {"other_carb": other}
    return {name: other * weight / total for name, weight in weights.items() if weight}


def write_sheet(sheet: Sheet) -> str:
    """A sheet as `read_sheet` and `read_sugars` read it."""
    return ", ".join(f"{word} {written(grams)}" for word, grams in sheet)
