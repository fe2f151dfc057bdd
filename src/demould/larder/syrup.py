"""Sugar syrups by their Brix: grams of sugar in 100 g of syrup."""

import re

from demould.larder.ingredient import Composition, Ingredient
from demould.larder.names import plain
from demould.larder.table import by_name, facts

HIGHEST_BRIX = 80.0
"""More sugar than this does not stay dissolved, hot or cold."""

_NAMED = re.compile(
    r"(?:sugar |simple |stock )?syrup (\d+(?:\.\d+)?) (?:degrees )?(?:brix|bx)"
)
_ID = re.compile(r"syrup_(\d+(?:p\d+)?)_brix")


def syrup(text: str) -> Ingredient | None:
    """The syrup that a name or an id means, or None.

    >>> found = syrup("sugar syrup 30 °Brix")
    >>> found.id, found.per_100g.sucrose, round(found.density_g_ml, 3)
    ('syrup_30_brix', 30.0, 1.127)
    """
    by_id = _ID.fullmatch(text)
    by_name = _NAMED.fullmatch(plain(text))
    if by_id is None and by_name is None:
        return None
    brix = float(by_id[1].replace("p", ".") if by_id else by_name[1] if by_name else 0)
    if not 0 < brix <= HIGHEST_BRIX:
        return None
    return Ingredient(
        id=f"syrup_{brix:g}_brix".replace(".", "p"),
        name=f"Sugar syrup {brix:g} Brix",
        category="sugar",
        per_100g=Composition(water=100 - brix, sucrose=brix),
        density_g_ml=density_of_brix(brix),
        allergens_eu=(),
        allergens_us=(),
        vegan=True,
        vegetarian=True,
        halal=True,
        source="definition",
        page="Brix is grams of sugar in 100 g of syrup",
    )


def density_of_brix(brix: float) -> float:
    """Density of a sugar syrup at 20 °C, between the table's tens. [g/ml].

    >>> round(density_of_brix(65), 3)
    1.317
    """
    known = {
        float(name): facts(group)["density"].value
        for name, group in by_name("syrup_densities").items()
    }
    below = max(at for at in known if at <= brix)
    above = min(at for at in known if at >= brix)
    if above == below:
        return known[below]
    part = (brix - below) / (above - below)
    return known[below] + part * (known[above] - known[below])
