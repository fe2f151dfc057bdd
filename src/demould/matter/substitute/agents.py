"""Another setting agent: gelatin of another bloom by both laws, all else a trial."""

from dataclasses import dataclass

from demould.larder.fact import Fact
from demould.larder.ingredient import Ingredient
from demould.larder.read import agent_of, agents, bands, bloom_of
from demould.matter.gelatin import BothLaws, as_bloom, within_the_law
from demould.matter.grams import Find, after_cooking, weighed_lines
from demould.mise.component import Component
from demould.mise.words import Words


@dataclass(frozen=True, slots=True, kw_only=True)
class OtherGelatin:
    """Gelatin for gelatin: grams by the root law and by the straight ratio."""

    before_g: float
    from_bloom: Fact
    to_bloom: Fact
    grams: BothLaws
    warn: Words | None


@dataclass(frozen=True, slots=True, kw_only=True)
class NeverOneForOne:
    """Another agent altogether: where a trial may start, and why it is one.

    `low_g` and `high_g` are the starting band in this batch.
    """

    agent: str
    low: float
    high: float
    low_g: float
    high_g: float
    why: Words


def other_agent(
    component: Component, outgoing: Ingredient, new: Ingredient, find: Find
) -> OtherGelatin | NeverOneForOne:
    """Give grams of another gelatin, or where a trial with another agent starts.

    Raises
    ------
    ValueError
        If what goes out sets and what comes in does not, or the other way round.
    """
    old, to = agent_of(outgoing), agent_of(new)
    if old is None or to is None:
        sets, other = (outgoing, new) if old else (new, outgoing)
        raise ValueError(f"{sets.name} sets and {other.name} does not")
    grams = sum(
        amount.value
        for line, amount in weighed_lines(component.formula, find)
        if line.ingredient == outgoing.id and not line.strained_out
    )
    if grams <= 0:
        raise ValueError(f"nothing of it in {component.name} can be weighed")
    if old.name == to.name == "gelatin":
        first, second = bloom_of(outgoing), bloom_of(new)
        inside = within_the_law(first.value, second.value)
        warn = Words("the root law was found for 140 to 260 bloom: trial first")
        return OtherGelatin(
            before_g=grams,
            from_bloom=first,
            to_bloom=second,
            grams=as_bloom(grams, first.value, second.value),
            warn=None if inside else warn,
        )
    return _start(component, to.name, find)


def _start(component: Component, agent: str, find: Find) -> NeverOneForOne:
    """The usual dose of the agent: in this kind where it has one, else anywhere."""
    whole = after_cooking(component, find).value
    band = bands(component.kind) if component.kind else None
    if band and band.agent and band.dose and agent.startswith(band.agent):
        low, high = band.dose.low, band.dose.high
    else:
        low, high = _usual_dose(agent)
    return NeverOneForOne(
        agent=agent,
        low=low,
        high=high,
        low_g=low * whole / 100,
        high_g=high * whole / 100,
        why=Words(
            "{agent} sets in another way, at another heat, with another bite: no grams"
            " of one are grams of the other",
            agent=agent,
        ),
    )


def _usual_dose(agent: str) -> tuple[float, float]:
    facts = agents()[agent].facts
    if agent == "agar":
        sliced = bands("agar centre")
        assert sliced is not None
        assert sliced.dose is not None
        return sliced.dose.low, sliced.dose.high
    fact = facts.get("dose", facts.get("valid"))
    assert fact is not None
    return fact.low, fact.high
