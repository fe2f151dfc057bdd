"""Which step may hurt somebody, and what to mind at it."""

from collections.abc import Iterable
from dataclasses import dataclass

from demould.larder.cautions import Caution, cautions_at
from demould.mise.component import Component
from demould.mise.dessert import Dessert
from demould.mise.method import Step


@dataclass(frozen=True, slots=True, kw_only=True)
class Mind:
    """A caution and the steps it belongs to, by their keys."""

    caution: Caution
    steps: tuple[str, ...]


def at_steps(method: Iterable[Step]) -> tuple[Mind, ...]:
    """Give each caution of a method once, with its steps, in the order of the table."""
    found: dict[Caution, list[str]] = {}
    for step in method:
        told = [step.key.replace("-", " "), *step.remarks]
        for one in (*cautions_at("step", told), *cautions_at("tool", step.tools)):
            found.setdefault(one, []).append(step.key)
    return tuple(
        Mind(caution=one, steps=tuple(dict.fromkeys(steps)))
        for one, steps in found.items()
    )


def of_component(component: Component) -> tuple[Mind, ...]:
    """Give what to mind while a component is made."""
    return at_steps(component.method)


def of_dessert(dessert: Dessert) -> tuple[Mind, ...]:
    """Give what to mind in all steps of a dessert."""
    steps = [step for one in dessert.components for step in one.method]
    return at_steps((*steps, *dessert.method))
