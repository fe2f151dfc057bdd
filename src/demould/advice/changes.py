"""What two versions of a component differ in that a cook would taste, see or be ill from."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from demould.advice.bands.judge import judged
from demould.advice.bands.judged import Judged
from demould.matter.acidity import acidity
from demould.matter.composition import composition
from demould.matter.density import mix_density
from demould.matter.grams import Find, after_cooking
from demould.matter.inside import inside
from demould.matter.setting import doses
from demould.matter.sweetness import antifreeze, sweetness
from demould.matter.water import freezing_point_c, wet_of
from demould.mise.component import Component
from demould.mise.dessert import Dessert
from demould.mise.words import Words

NEWS = {"%": 0.25, "g": 2.0, "K": 0.2, "g/ml": 0.01, "": 0.15, "of 100": 0.5}
"""The least change worth a line, by unit."""
DOSE_NEWS = 0.005


@dataclass(frozen=True, slots=True, kw_only=True)
class Effect:
    """One thing before and after, in its unit."""

    name: str
    before: float
    after: float
    unit: str

    @property
    def says(self) -> Words:
        """``fat 34.1 to 30.3 %``."""
        digits = 2 if self.unit == "g/ml" or abs(self.before) < 2 else 1
        return Words(
            "{name} {before:.{digits}f} to {after:.{digits}f}{unit}",
            name=self.name,
            before=self.before,
            after=self.after,
            digits=digits,
            unit=f" {_shown(self.unit)}" if self.unit else "",
        )


def _shown(unit: str) -> str:
    return "°C" if unit == "K" else unit


@dataclass(frozen=True, slots=True, kw_only=True)
class Changes:
    """What changes: effects worth a line, allergens that come and go, bands that are left.

    `trial` says why it must be tried first, where it must.
    """

    effects: tuple[Effect, ...]
    allergens_in: tuple[str, ...]
    allergens_out: tuple[str, ...]
    out: tuple[Judged, ...]
    trial: Words | None


def changes(
    before: Component,
    after: Component,
    dessert: Dessert,
    find: Find,
    find_after: Find | None = None,
) -> Changes:
    """Compare two versions of one component of a dessert."""
    look = find_after or find
    parts = dessert.components
    told = tuple(
        one
        for one in _effects(before, after, parts, find, look)
        if abs(one.after - one.before)
        >= (DOSE_NEWS if one.name.startswith("dose") else NEWS[one.unit])
    )
    was, now = _allergens(before, parts, find), _allergens(after, parts, look)
    already = {
        one.what for one in judged(before, dessert, find) if one.verdict != "inside"
    }
    return Changes(
        effects=told,
        allergens_in=tuple(sorted(now - was)),
        allergens_out=tuple(sorted(was - now)),
        out=tuple(
            one
            for one in judged(after, dessert, look)
            if one.verdict != "inside" and one.what not in already
        ),
        trial=_trial(after, told, parts, look) or _came_in(before, after),
    )


def _effects(
    before: Component,
    after: Component,
    parts: Sequence[Component],
    find: Find,
    look: Find,
) -> Iterator[Effect]:
    old, new = composition(before, find, parts), composition(after, look, parts)
    for name in ("water", "fat", "sugars", "protein", "alcohol"):
        yield Effect(
            name=name, before=getattr(old, name), after=getattr(new, name), unit="%"
        )
    yield Effect(
        name="batch",
        before=after_cooking(before, find).value,
        after=after_cooking(after, look).value,
        unit="g",
    )
    for name, of in (("sweetness", sweetness), ("keeping from freezing", antifreeze)):
        yield Effect(name=name, before=of(old), after=of(new), unit="of 100")
    was, now = freezing_point_c(wet_of(old)), freezing_point_c(wet_of(new))
    if was is not None and now is not None:
        yield Effect(name="begins to freeze", before=was, after=now, unit="K")
    yield Effect(
        name="density without air",
        before=mix_density(old),
        after=mix_density(new),
        unit="g/ml",
    )
    yield from _setting(before, after, parts, find, look)


def _setting(
    before: Component,
    after: Component,
    parts: Sequence[Component],
    find: Find,
    look: Find,
) -> Iterator[Effect]:
    was = {one.agent: one.to_judge.value for one in doses(before, find, parts)}
    now = {one.agent: one.to_judge.value for one in doses(after, look, parts)}
    for agent in dict.fromkeys((*was, *now)):
        yield Effect(
            name=f"dose of {agent}",
            before=was.get(agent, 0.0),
            after=now.get(agent, 0.0),
            unit="%",
        )
    old = acidity(inside(before, find, parts))
    new = acidity(inside(after, look, parts))
    if old is not None and new is not None:
        yield Effect(name="pH", before=old.likely, after=new.likely, unit="")


def _allergens(
    component: Component, parts: Sequence[Component], find: Find
) -> set[str]:
    return {
        allergen
        for what, _ in inside(component, find, parts)
        for allergen in (*(what.allergens_eu or ()), *what.allergens_elsewhere)
    }


def _came_in(before: Component, after: Component) -> Words | None:
    """A line that was not there is tried first, whatever it is."""
    was = {line.ingredient for line in before.formula}
    ordinals = {line.ordinal for line in before.formula}
    new = [
        line.what
        for line in after.formula
        if line.ingredient not in was and line.ordinal not in ordinals
    ]
    if not new:
        return None
    return Words("trial first: {what} was not in it before", what=" and ".join(new))


_TOUCH = ("water", "sugars", "pH", "alcohol")


def _trial(
    after: Component,
    told: Sequence[Effect],
    parts: Sequence[Component],
    look: Find,
) -> Words | None:
    """A set that has another dose, or is in other company, is tried first."""
    agents = [one.agent for one in doses(after, look, parts)]
    touched = [
        one.name
        for one in told
        if one.name.startswith("dose") or (agents and one.name in _TOUCH)
    ]
    if not touched:
        return None
    return Words(
        "trial first: {agents} in other company ({what})",
        agents=" and ".join(agents) or "what set it is gone",
        what=", ".join(touched),
    )
