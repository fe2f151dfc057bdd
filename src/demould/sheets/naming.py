"""What a planned step is called, short, and never the same for two things."""

from demould.plan.kitchen.from_kitchen import Laid
from demould.plan.kitchen.parts import Part


def doing(laid: Laid, part: Part) -> str:
    """Give ``cook rhubarb centre``: by its key where only one dessert has such a part."""
    return f"{part.step.key.replace('-', ' ')} {thing(laid, part)}"


def thing(laid: Laid, part: Part) -> str:
    """Give what the step is done to: a component, or the dessert itself."""
    component = part.component
    if component is None:
        return part.make.dessert.name
    desserts = {
        other.make.dessert.key
        for other in laid.parts.values()
        if other.component is not None and other.component.key == component.key
    }
    if len(desserts) == 1:
        return component.key
    return component.name[:1].lower() + component.name[1:]
