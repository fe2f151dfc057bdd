"""What a change does: pieces, what sets it, fat, sweetness, grams, hours, money."""

from collections.abc import Iterator, Mapping
from dataclasses import dataclass

from demould.advice.gaps.moves import NEWS, outcome_of
from demould.advice.money import Own, money_of
from demould.matter.composition import composition
from demould.matter.grams import Find
from demould.matter.sweetness import sweetness
from demould.mise.dessert import Dessert
from demould.mise.kitchen import Kitchen
from demould.mise.own_larder import Larder
from demould.mise.words import Words

_SAYS: Mapping[str, str] = {
    "pieces": "{name} as written gives {was} pieces, now {now}",
    "dose": "what sets {name}: {was:.2f} %, now {now:.2f} %",
    "fat": "fat of {name}: {was:.1f} %, now {now:.1f} %",
    "grams": "{name} as written makes {was:.0f} g, now {now:.0f} g",
    "hours": "from first to last {was:.1f} h, now {now:.1f} h",
    "cost": "ingredients of {name} as written: {was:.2f} of money, now {now:.2f}",
    "sweetness": "sweetness of {name}: {was:.1f}, now {now:.1f} (sugar is 100)",
}


@dataclass(frozen=True, slots=True, kw_only=True)
class Effect:
    """One number that moved. `what` is a kind of number, `component` a key or ""."""

    what: str
    component: str
    was: float
    now: float
    says: Words


def effects_of(
    old: Dessert, new: Dessert, kitchen: Kitchen, find: Find, larder: Larder = ()
) -> tuple[Effect, ...]:
    """Give every number of a dessert that differs between two versions.

    Under half a per cent is no news. A component that only one of them has is a change
    of lines, and is not weighed against nothing. Money is of the lines that `larder`
    has a price for.
    """
    own = {one.key: one for one in larder}
    before, after = (_numbers(one, kitchen, find, own) for one in (old, new))
    names = {one.key: one.name for one in (*old.components, *new.components)}
    return tuple(_moved(before, after, names))


_Numbers = Mapping[tuple[str, str], float]


def _numbers(dessert: Dessert, kitchen: Kitchen, find: Find, own: Own) -> _Numbers:
    found: dict[tuple[str, str], float] = {
        (point.what, point.component): value
        for point, value in outcome_of(dessert, kitchen, find).items()
    }
    for component in dessert.components:
        if (money := money_of(component, find, own)) > 0:
            found["cost", component.key] = money
        try:
            made_of = composition(component, find, dessert.components)
        except ValueError:
            continue
        found["sweetness", component.key] = sweetness(made_of)
    return found


def _moved(
    before: _Numbers, after: _Numbers, names: Mapping[str, str]
) -> Iterator[Effect]:
    for (what, component), was in before.items():
        now = after.get((what, component))
        if now is None or abs(now - was) <= NEWS * max(abs(was), 1e-9):
            continue
        if what == "pieces" and int(was + 1e-9) == int(now + 1e-9):
            continue
        whole = what == "pieces"
        yield Effect(
            what=what,
            component=component,
            was=was,
            now=now,
            says=Words(
                _SAYS[what],
                name=names.get(component, "the dessert"),
                was=int(was + 1e-9) if whole else was,
                now=int(now + 1e-9) if whole else now,
            ),
        )
