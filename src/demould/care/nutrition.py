"""The energy table: by the law's factors, rounded once, as its panel prints it."""

from dataclasses import dataclass, fields

from demould.amounts.layers.piece import Piece
from demould.larder.ingredient import Composition
from demould.larder.labels import printed
from demould.matter.composition import composition, energy_eu
from demould.matter.grams import Find
from demould.mise.dessert import Dessert, component_of

SALT_OF_SODIUM = 2.5
"""Salt equivalent, g per g of sodium: Regulation (EU) 1169/2011, Annex I 11."""
NEEDS_ANALYSIS = "to be filled in: not in the sheets"


@dataclass(frozen=True, slots=True, kw_only=True)
class Row:
    """One line of a panel: per 100 g and for one piece, as printed."""

    name: str
    per_100g: str
    a_piece: str


def made_of(dessert: Dessert, piece: Piece, find: Find) -> Composition:
    """Give grams of each constituent in 100 g of a whole piece.

    Raises
    ------
    ValueError
        If nothing of a component can be weighed.
    """
    parts = [
        (
            part.grams.value,
            composition(
                component_of(dessert, part.component), find, dessert.components
            ),
        )
        for part in piece.parts
    ]
    whole = sum(grams for grams, _ in parts)
    return Composition(
        **{
            field.name: sum(grams * getattr(of, field.name) for grams, of in parts)
            / whole
            for field in fields(Composition)
        }
    )


def eu_panel(of: Composition, piece_g: float) -> tuple[Row, ...]:
    """Give the table of Regulation (EU) 1169/2011, Annex XV, in its order."""
    kj, kcal = energy_eu(of)
    carbohydrate = of.sugars + of.polyols + of.erythritol + of.starch + of.other_carb
    rows = (
        ("fat", "fat", of.fat),
        ("of which saturates", "saturates", of.saturates),
        ("carbohydrate", "fat", carbohydrate),
        ("of which sugars", "fat", of.sugars),
        ("fibre", "fat", of.fibre),
        ("protein", "fat", of.protein),
        ("salt", "salt", of.sodium_mg / 1000 * SALT_OF_SODIUM),
    )
    return (
        Row(
            name="energy",
            per_100g=_energy(kj, kcal),
            a_piece=_energy(kj * piece_g / 100, kcal * piece_g / 100),
        ),
        *(
            Row(
                name=name,
                per_100g=printed("eu", rule, value),
                a_piece=printed("eu", rule, value * piece_g / 100),
            )
            for name, rule, value in rows
        ),
    )


def _energy(kj: float, kcal: float) -> str:
    calories = printed("eu", "energy", kcal).partition(" ")[0]
    return f"{printed('eu', 'energy', kj)} / {calories} kcal"


def us_panel(of: Composition, piece_g: float) -> tuple[Row, ...]:
    """Give what a United States panel needs and the sheets can tell, a serving a piece.

    Energy by the general factors 4, 4, 9 and 7; carbohydrate holds the fibre. What the
    sheets do not hold is said to be missing.
    """
    carbohydrate = (
        of.sugars
        + of.polyols
        + of.erythritol
        + of.starch
        + of.other_carb
        + of.fibre
        + of.acid
    )
    kcal = 4 * (carbohydrate + of.protein) + 9 * of.fat + 7 * of.alcohol
    rows = (
        ("calories", "energy", kcal),
        ("total fat", "fat", of.fat),
        ("saturated fat", "fat", of.saturates),
        ("trans fat", "", 0.0),
        ("cholesterol", "", 0.0),
        ("sodium", "sodium", of.sodium_mg),
        ("total carbohydrate", "carbohydrate", carbohydrate),
        ("dietary fiber", "carbohydrate", of.fibre),
        ("total sugars", "carbohydrate", of.sugars),
        ("added sugars", "", 0.0),
        ("protein", "carbohydrate", of.protein),
        ("vitamin D, calcium, iron, potassium", "", 0.0),
    )
    return tuple(
        Row(
            name=name,
            per_100g=printed("us", rule, value) if rule else NEEDS_ANALYSIS,
            a_piece=printed("us", rule, value * piece_g / 100)
            if rule
            else NEEDS_ANALYSIS,
        )
        for name, rule, value in rows
    )
