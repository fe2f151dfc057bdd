"""What the law counts with."""

from collections.abc import Mapping
from functools import cache

from demould.larder.fact import EnergyFactor
from demould.larder.table import rows


@cache
def energy_factors() -> Mapping[str, EnergyFactor]:
    """Energy of one gram by European law, by constituent."""
    return {
        row["name"]: EnergyFactor(
            constituent=row["name"],
            kj=float(row["kj"]),
            kcal=float(row["kcal"]),
            source=row["source"],
            page=row["page"],
        )
        for row in rows("energy_factors")
    }
