"""The door of the larder: every question it answers, from one place."""

from demould.larder.agents import agent_of, agents, bloom_of
from demould.larder.allergens import (
    allergen,
    allergen_lists,
    allergens,
    allergens_in,
    exemptions,
    find_allergen,
)
from demould.larder.cautions import cautions, cautions_at
from demould.larder.curve import curve, melting_heat
from demould.larder.enzymes import enzyme_in
from demould.larder.find import (
    find_ingredient,
    ingredient,
    ingredients,
    near_ingredients,
)
from demould.larder.heat import constituents, film, film_kinds, material
from demould.larder.law import energy_factors
from demould.larder.practice import (
    bands,
    component_kinds,
    density,
    hold,
    holds,
    unit_weight,
)
from demould.larder.stiffness import look_in, stiffness
from demould.larder.sweet import scale
from demould.larder.table import sources
from demould.larder.troubles import find_sign, near_signs, reading_kinds, signs

__all__ = [
    "agent_of",
    "agents",
    "allergen",
    "allergen_lists",
    "allergens",
    "allergens_in",
    "bands",
    "bloom_of",
    "cautions",
    "cautions_at",
    "component_kinds",
    "constituents",
    "curve",
    "density",
    "energy_factors",
    "enzyme_in",
    "exemptions",
    "film",
    "film_kinds",
    "find_allergen",
    "find_ingredient",
    "find_sign",
    "hold",
    "holds",
    "ingredient",
    "ingredients",
    "look_in",
    "material",
    "melting_heat",
    "near_ingredients",
    "near_signs",
    "reading_kinds",
    "scale",
    "signs",
    "sources",
    "stiffness",
    "unit_weight",
]
