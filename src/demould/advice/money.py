"""What the ingredients cost: of a component as written, of one piece."""

from collections.abc import Iterable, Mapping

from demould.amounts.counts.yields import Yield
from demould.matter.grams import Find, kept_by_solids, weighed_lines
from demould.mise.component import Component
from demould.mise.dessert import Dessert, component_of
from demould.mise.own_larder import Stocked
from demould.office.needs import as_bought
from demould.office.packs import price_a_bought_kg

Own = Mapping[str, Stocked]
"""The kitchen's own larder by key."""


def money_of(component: Component, find: Find, own: Own) -> float:
    """What the lines of a component cost, as written, that a price is known of.

    A liquid that is made up again after straining is paid twice where the solids keep
    it.
    """
    kept = kept_by_solids(component, find)
    money = 0.0
    for line, grams in weighed_lines(component.formula, find):
        weighed = grams.value
        if line.made_up and kept is not None:
            weighed, kept = weighed + kept.value, None
        money += _money(line.ingredient or "", weighed, own)
    return money


def money_a_piece(
    dessert: Dessert, given: Iterable[Yield], find: Find, own: Own
) -> float | None:
    """What the ingredients of one piece cost, as far as a price is known of them.

    Each component's money by the pieces it gives as written; what only stands in a jug
    to the end is not used up and is not counted. None where no price is known, or a
    component gives no piece.
    """
    total = 0.0
    for one in given:
        money = money_of(component_of(dessert, one.component), find, own)
        pieces = one.exact.value
        if money and pieces <= 0:
            return None
        if money:
            standing = 0.0 if one.standing is None else one.standing.value
            total += money / (pieces + standing / one.each.value)
    return total or None


def _money(ingredient: str, grams: float, own: Own) -> float:
    bought, times = as_bought(ingredient, own)
    stocked = own.get(bought)
    if stocked is None or stocked.price is None:
        return 0.0
    return grams * times / 1000 * float(price_a_bought_kg(stocked))
