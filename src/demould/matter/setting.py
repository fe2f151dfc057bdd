"""What sets a component, and how much of it there is."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from demould.larder.fact import Fact
from demould.larder.ingredient import Ingredient
from demould.larder.read import agent_of, agents, bloom_of
from demould.matter.composition import composition
from demould.matter.gelatin import BothLaws, as_bloom
from demould.matter.grams import Find, after_cooking, weighed_lines
from demould.mise.component import Component
from demould.mise.figure import Assumed, Figure, Stated, worked

REFERENCE_BLOOM = 200.0
"""Doses of gelatin are said as this much bloom."""
HELPERS = ("xanthan", "locust bean gum")
SUGARS_HELP = 30.0


@dataclass(frozen=True, slots=True, kw_only=True)
class Dose:
    """How much of one agent, in % of the whole as it is used.

    `at_200` is the same as gelatin of 200 bloom, by both laws; None for other agents.
    """

    agent: str
    whole: Figure
    at_200: BothLaws | None = None
    by_root: Figure | None = None

    @property
    def to_judge(self) -> Figure:
        """What a band is held against: gelatin as 200 bloom by the root law."""
        return self.by_root or self.whole


@dataclass(frozen=True, slots=True)
class _Weighed:
    grams: Figure
    what: Ingredient
    agent: str


def doses(
    component: Component, find: Find, parts: Sequence[Component] = ()
) -> tuple[Dose, ...]:
    """Dose of everything that sets or thickens, each agent once, in order as written.

    `parts` are the dessert's components, for lines that take one of them.
    """
    found: dict[str, list[_Weighed]] = {}
    for one in _weighed(component, find, parts):
        found.setdefault(one.agent, []).append(one)
    cooked = after_cooking(component, find)
    return tuple(_dose(name, each, cooked, component) for name, each in found.items())


def _weighed(
    component: Component, find: Find, parts: Sequence[Component]
) -> Iterator[_Weighed]:
    for line, grams in weighed_lines(component.formula, find):
        if line.strained_out:
            continue
        if line.ingredient is not None:
            what = find(line.ingredient)
            agent = agent_of(what)
            if agent is not None:
                yield _Weighed(grams, what, agent.name)
            continue
        part = next((one for one in parts if one.key == line.component), None)
        if part is not None:
            yield from _of_part(part, grams, find, parts)


def _of_part(
    part: Component, taken: Figure, find: Find, parts: Sequence[Component]
) -> Iterator[_Weighed]:
    whole = after_cooking(part, find)
    for one in _weighed(part, find, parts):
        value = one.grams.value * taken.value / whole.value
        rule = "its share of what is taken"
        grams = worked(one.grams.name, value, "g", rule, one.grams, taken, whole)
        yield _Weighed(grams, one.what, one.agent)


def _dose(
    name: str, each: list[_Weighed], cooked: Figure, component: Component
) -> Dose:
    total = sum(one.grams.value for one in each)
    whole = worked(
        f"{name} in {component.name}",
        100 * total / cooked.value,
        "%",
        "grams in 100 g of what is left after cooking",
        *(one.grams for one in each),
        cooked,
    )
    if name != "gelatin":
        return Dose(agent=name, whole=whole)
    blooms = [bloom_of(one.what) for one in each]
    both = [
        as_bloom(one.grams.value, bloom.value, REFERENCE_BLOOM)
        for one, bloom in zip(each, blooms, strict=True)
    ]
    at_200 = BothLaws(
        100 * sum(one.root for one in both) / cooked.value,
        100 * sum(one.ratio for one in both) / cooked.value,
    )
    if all(bloom.value == REFERENCE_BLOOM == bloom.low for bloom in blooms):
        return Dose(agent=name, whole=whole, at_200=at_200)
    by_root = worked(
        f"gelatin in {component.name}, as 200 bloom",
        at_200.root,
        "%",
        "dose x square root of its bloom by 200",
        whole,
        *(_strength(one.what, bloom) for one, bloom in zip(each, blooms, strict=True)),
    )
    return Dose(agent=name, whole=whole, at_200=at_200, by_root=by_root)


def _strength(what: Ingredient, bloom: Fact) -> Figure:
    known = Assumed(low=bloom.low, high=bloom.high, source=bloom.source)
    return Figure(
        name=f"bloom of {what.name}",
        value=bloom.value,
        unit=bloom.unit,
        origin=Stated(by=bloom.source) if bloom.low == bloom.high else known,
    )


@dataclass(frozen=True, slots=True, kw_only=True)
class Weeps:
    """How a gel takes freezing: the rank of its worst agent, 1 the least, 9 the most.

    `helped` where sugar or a gum that holds water is in it too.
    """

    agent: str
    rank: float
    helped: bool

    @property
    def much(self) -> bool:
        """Whether it must be expected to weep after thawing."""
        return self.rank >= (8.0 if self.helped else 5.0)


def weeps(
    component: Component, find: Find, parts: Sequence[Component] = ()
) -> Weeps | None:
    """Whether what is set weeps after freezing; None where nothing sets it."""
    setting = [one.agent for one in doses(component, find, parts)]
    ranked = {
        name: agents()[name].facts["weeps"].value
        for name in setting
        if name not in HELPERS
    }
    if not ranked:
        return None
    worst = max(ranked, key=lambda name: ranked[name])
    sweet = composition(component, find, parts).sugars >= SUGARS_HELP
    helped = sweet or any(name in HELPERS for name in setting)
    return Weeps(agent=worst, rank=ranked[worst], helped=helped)
