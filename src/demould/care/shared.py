"""What comes in from outside the formula: tools, the house, a dip that was used before."""

from collections.abc import Iterable, Iterator
from dataclasses import dataclass, replace

from demould.care.allergens import May, Present, allergens_of
from demould.larder.allergens import Allergen, allergens_in
from demould.mise.component import Component
from demould.mise.dessert import Dessert
from demould.mise.method import Method
from demould.mise.own_larder import Larder
from demould.mise.words import Words


@dataclass(frozen=True, slots=True, kw_only=True)
class Dipped:
    """A dessert whose pieces were, or are, in the same dip or glaze, its variant in place."""

    component: str
    dessert: Dessert
    where: Words


def by_tools(
    dessert: Dessert, others: Iterable[Dessert], larder: Larder
) -> tuple[May, ...]:
    """Give what a tool brings that another component of the week goes through too."""
    own = set(_tools(dessert.method))
    for component in dessert.components:
        own |= set(_tools(component.method))
    found: dict[tuple[str, str], May] = {}
    for other in others:
        for component in other.components:
            shared = [tool for tool in _tools(component.method) if tool in own]
            if not shared or component in dessert.components:
                continue
            for present in _of_component(other, component, larder):
                found.setdefault(
                    (present.allergen.name, component.name),
                    May(
                        allergen=present.allergen,
                        why=Words(
                            "the {tool} makes {component} too",
                            tool=" and the ".join(shared),
                            component=component.name,
                        ),
                    ),
                )
    return tuple(found.values())


def by_dip(
    dessert: Dessert, dipped: Iterable[Dipped], larder: Larder
) -> tuple[May, ...]:
    """Give what a dip or glaze brings that has touched other pieces: all they hold."""
    finishes = {finish.component for finish in dessert.finish}
    return tuple(
        May(allergen=present.allergen, why=one.where)
        for one in dipped
        if one.component in finishes
        for present in allergens_of(one.dessert, larder).present
    )


def handled(larder: Larder) -> tuple[Allergen, ...]:
    """Give every allergen of the larder: what is in the house is in its air."""
    found = {
        one.name: one for entry in larder for one in allergens_in(entry.ingredient)
    }
    return tuple(found.values())


def _of_component(
    dessert: Dessert, component: Component, larder: Larder
) -> Iterator[Present]:
    only = replace(dessert, components=(component,), plate=(), finish=())
    yield from allergens_of(only, larder).present


def _tools(method: Method) -> tuple[str, ...]:
    return tuple(dict.fromkeys(tool for step in method for tool in step.tools))
