"""What a new version names that the old one did not, for the guest who must not eat it."""

from dataclasses import dataclass

from demould.matter.grams import Find
from demould.mise.dessert import Dessert
from demould.mise.own_larder import Larder


@dataclass(frozen=True, slots=True, kw_only=True)
class Named:
    """Allergens that only one of two versions names.

    That one is `gone` from the formula says nothing of traces, nor of a kitchen's tools.
    """

    new: tuple[str, ...]
    gone: tuple[str, ...]


def allergens_changed(
    old: Dessert, new: Dessert, find: Find, larder: Larder = ()
) -> Named:
    """Give what the sheets of the ingredients name, in one version and not the other."""
    before, after = (_named(one, find, larder) for one in (old, new))
    return Named(new=tuple(sorted(after - before)), gone=tuple(sorted(before - after)))


def _named(dessert: Dessert, find: Find, larder: Larder) -> set[str]:
    own = {one.key: one for one in larder}
    found: set[str] = set()
    for component in dessert.components:
        for line in component.formula:
            if line.ingredient is None:
                continue
            row = find(line.ingredient)
            stocked = own.get(line.ingredient)
            said = stocked.allergens if stocked is not None else row.allergens_eu
            found.update(said or ())
            found.update(row.allergens_elsewhere)
    return found
