"""All clashes of a dessert."""

from dataclasses import replace

from demould.advice.bands.quantity import has_weight
from demould.advice.clashes.acid import acid
from demould.advice.clashes.agents import setting
from demould.advice.clashes.clash import Clash
from demould.advice.clashes.enzymes import raw_fruit
from demould.advice.clashes.fat import fat
from demould.advice.clashes.through import through
from demould.matter.grams import Find
from demould.mise.dessert import Dessert


def clashes(dessert: Dessert, find: Find) -> tuple[Clash, ...]:
    """Everything that fights, what the card says for certain first."""
    weighed = tuple(
        one for one in dessert.components if has_weight(one, find, dessert.components)
    )
    dessert = replace(dessert, components=weighed)
    found = [look(dessert, find) for look in (raw_fruit, acid, setting, fat, through)]
    each = [clash for some in found for clash in some]
    return tuple(sorted(each, key=lambda one: not one.certain))
