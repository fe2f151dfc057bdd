"""What each component is made of, as a cook compares them: one line a component."""

from dataclasses import dataclass

from demould.advice.bands.quantity import has_weight
from demould.advice.colour import Colour, colours
from demould.larder.ingredient import Composition
from demould.matter.acidity import Acidity, acidity
from demould.matter.composition import composition
from demould.matter.density import mix_density
from demould.matter.grams import Find
from demould.matter.inside import inside
from demould.matter.setting import Dose, doses
from demould.matter.sweetness import antifreeze, sweetness
from demould.mise.dessert import Dessert


@dataclass(frozen=True, slots=True, kw_only=True)
class Makeup:
    """One component after straining and cooking, per 100 g; pH as a band or None.

    `density` is by composition, without air. [g/ml] Sweetness and what keeps from
    freezing are the trade's numbers, sucrose 100. `colours` are those of a dip, a glaze or
    a spray.
    """

    component: str
    name: str
    made_of: Composition
    sweetness: float
    antifreeze: float
    density: float
    acidity: Acidity | None
    doses: tuple[Dose, ...]
    colours: tuple[Colour, ...] = ()


def makeups(dessert: Dessert, find: Find) -> tuple[Makeup, ...]:
    """Give the make-up of every component that can be weighed."""
    parts = dessert.components
    found = []
    for component in parts:
        if not has_weight(component, find, parts):
            continue
        made_of = composition(component, find, parts)
        found.append(
            Makeup(
                component=component.key,
                name=component.name,
                made_of=made_of,
                sweetness=sweetness(made_of),
                antifreeze=antifreeze(made_of),
                density=mix_density(made_of),
                acidity=acidity(inside(component, find, parts)),
                doses=doses(component, find, parts),
                colours=tuple(colours(component, find)),
            )
        )
    return tuple(found)
