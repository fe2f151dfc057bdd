"""What one ingredient is made of, per 100 g."""

from dataclasses import dataclass


@dataclass(frozen=True, slots=True, kw_only=True)
class Composition:
    """Grams of each constituent in 100 g. Disjoint but for the "of which" ones.

    `milk_fat`, `cocoa_butter` and `saturates` are parts of `fat`; the rest of the fat
    is of other origin. `sodium_mg` is in milligrams. Acid is counted as citric acid.
    `erythritol` stands apart from the other `polyols`: by the law's factors it has no
    energy, and weight for weight it lowers the freezing point more than they do.
    """

    water: float = 0.0
    protein: float = 0.0
    fat: float = 0.0
    sucrose: float = 0.0
    glucose: float = 0.0
    fructose: float = 0.0
    lactose: float = 0.0
    maltose: float = 0.0
    trehalose: float = 0.0
    other_sugar: float = 0.0
    polyols: float = 0.0
    erythritol: float = 0.0
    starch: float = 0.0
    other_carb: float = 0.0
    fibre: float = 0.0
    acid: float = 0.0
    alcohol: float = 0.0
    ash: float = 0.0
    # of which
    milk_fat: float = 0.0
    cocoa_butter: float = 0.0
    saturates: float = 0.0
    sodium_mg: float = 0.0

    @property
    def sugars(self) -> float:
        """All sugars, in g per 100 g."""
        return (
            self.sucrose
            + self.glucose
            + self.fructose
            + self.lactose
            + self.maltose
            + self.trehalose
            + self.other_sugar
        )

    @property
    def total(self) -> float:
        """Everything, each gram once: 100 within the rounding of the sheet."""
        return (
            self.water
            + self.protein
            + self.fat
            + self.sugars
            + self.polyols
            + self.erythritol
            + self.starch
            + self.other_carb
            + self.fibre
            + self.acid
            + self.alcohol
            + self.ash
        )


@dataclass(frozen=True, slots=True, kw_only=True)
class Ingredient:
    """One row of the ingredient table, or one entry of a kitchen's own larder.

    `id` is what the tool calls it (``cream_35``), `names` what people write. `source`
    is a key of ``sources.toml`` for a row of the table, or the file and line for a
    kitchen's own; `page` is the place in the source, `note` what the row says of
    itself. Densities in g/ml, of powders in bulk, None where nobody knows.

    Allergens: None means nobody has said, which is not "none". `allergens_elsewhere`
    are allergens by law in some other countries (buckwheat), to be named everywhere.
    `ask` is what only the supplier can tell: "may contain", "animal" (whose gelatin),
    "sulphites", "wheat starch", "additives". `vegan`, `vegetarian` and `halal` are of
    the plain article; None means ask.
    """

    id: str
    name: str
    names: tuple[str, ...] = ()
    category: str = ""
    per_100g: Composition
    density_g_ml: float | None = None
    ph: float | None = None
    allergens_eu: tuple[str, ...] | None = None
    allergens_us: tuple[str, ...] | None = None
    allergens_elsewhere: tuple[str, ...] = ()
    ask: tuple[str, ...] = ()
    vegan: bool | None = None
    vegetarian: bool | None = None
    halal: bool | None = None
    energy_kcal_source: float | None = None
    source: str
    page: str = ""
    note: str = ""
