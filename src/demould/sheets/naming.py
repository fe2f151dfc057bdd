"""What a planned step is called, short, and never the same for two things."""

from demould.mise.dessert import Dessert
from demould.plan.kitchen.from_kitchen import Laid
from demould.plan.kitchen.parts import Part


def doing(laid: Laid, part: Part) -> str:
    """Give ``cook domes centre``: by its key where only one dessert has such a part."""
    return f"{part.step.key.replace('-', ' ')} {thing(laid, part)}"


def thing(laid: Laid, part: Part) -> str:
    """Give what the step is done to: a component, or the dessert itself, short.

    A component two desserts have has its dessert before it: ``pebble centre``.
    """
    component, dessert = part.component, part.make.dessert
    short = _short(laid, dessert)
    if component is None:
        return short
    desserts = {
        other.make.dessert.key
        for other in laid.parts.values()
        if other.component is not None and other.component.key == component.key
    }
    return component.key if len(desserts) == 1 else f"{short} {component.key}"


def _short(laid: Laid, dessert: Dessert) -> str:
    """Give the last word of a dessert's name, or all where two end alike."""
    last = dessert.name.split()[-1].casefold()
    alike = {
        other.make.dessert.key
        for other in laid.parts.values()
        if other.make.dessert.name.split()[-1].casefold() == last
    }
    return last if len(alike) == 1 else dessert.name
