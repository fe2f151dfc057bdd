"""What must be there of one component for all rounds, its losses with it."""

from dataclasses import dataclass, replace

from demould.amounts.counts.demand import Demand, cuts_of
from demould.amounts.counts.losses import to_make_g, usable
from demould.amounts.layers.piece import in_the_mould
from demould.amounts.tools.bowl import whips_of_rounds
from demould.amounts.tools.rounds import Rounds
from demould.amounts.tools.sheet import cuts_of_a_batch
from demould.matter.grams import Find, after_cooking, batch, share
from demould.mise.component import Component
from demould.mise.dessert import Dessert
from demould.mise.figure import Figure, worked
from demould.mise.kitchen import Kitchen, Tool
from demould.mise.words import Words


@dataclass(frozen=True, slots=True, kw_only=True)
class Ask:
    """One component, asked for by all pieces of some rounds.

    `written` and `cooked` are the batch as written before and after cooking, in g;
    `cuts` pieces from a batch where it is cut from a sheet.
    """

    dessert: Dessert
    component: Component
    demand: Demand
    rounds: Rounds
    mixer: Tool | None
    written: Figure
    cooked: Figure
    cuts: Figure | None

    @property
    def pieces(self) -> int:
        """All pieces of all rounds."""
        return sum(self.rounds.each)

    @property
    def standing_g(self) -> float:
        """What must stand in the jug whatever the number."""
        return 0.0 if self.demand.standing is None else self.demand.standing.value


def ask_for(
    dessert: Dessert,
    kitchen: Kitchen,
    component: Component,
    asked: Demand,
    find: Find,
    rounds: Rounds,
) -> Ask:
    """Gather what the need of one component hangs on.

    Raises
    ------
    ValueError
        If nothing of it can be weighed, or no cut comes out of its tray.
    """
    cooked = after_cooking(component, find)
    if cooked.value <= 0:
        raise ValueError(f"nothing in {component.name} can be weighed")
    return Ask(
        dessert=dessert,
        component=component,
        demand=asked,
        rounds=rounds,
        mixer=mixer_of(kitchen),
        written=batch(component, find),
        cooked=cooked,
        cuts=_cuts(dessert, component, find),
    )


def mixer_of(kitchen: Kitchen) -> Tool | None:
    """The tool that whips: the one with the largest bowl."""
    bowls = [(tool.bowl.value, tool) for tool in kitchen.tools if tool.bowl is not None]
    return max(bowls, key=lambda pair: pair[0])[1] if bowls else None


def _cuts(dessert: Dessert, component: Component, find: Find) -> Figure | None:
    cuts = cuts_of(dessert, component)
    if component.sheet is None or not cuts:
        return None
    of_a_batch = cuts_of_a_batch(component, component.sheet, cuts[0], find)
    if of_a_batch.value < 1:
        raise ValueError(f"no cut of {component.name} comes out of its tray")
    name = f"pieces of {component.name} from a batch"
    rule = Words("cuts of a batch, {n} in a piece", n=len(cuts))
    return worked(name, of_a_batch.value / len(cuts), "pieces", rule, of_a_batch)


def round_g(component: Component, each_g: float, pieces: int) -> float:
    """What one round needs in the bowl, its own loss with it [g]."""
    return to_make_g(component, each_g * pieces)


def whips_for(
    component: Component, each_g: float, rounds: Rounds, mixer: Tool | None
) -> int:
    """How often the fixed loss of a scaled component counts over all rounds."""
    if component.loss.once_a == "batch":
        return 1
    masses = [round_g(component, each_g, pieces) for pieces in rounds.each]
    return whips_of_rounds(masses, mixer, in_the_mould(component))


def need(ask: Ask, times: int) -> Figure:
    """What must be there after cooking, losses and all, the fixed ones `times` [g]."""
    component, asked = ask.component, ask.demand
    value = to_make_g(component, ask.pieces * asked.each.value + ask.standing_g, times)
    parts = [asked.each, component.loss.share, asked.standing, component.loss.fixed]
    return worked(
        f"{component.name} for {ask.pieces}",
        value,
        "g",
        _need_rule(ask, times),
        *(part for part in parts if part is not None),
    )


def _need_rule(ask: Ask, times: int) -> Words:
    loss, standing = ask.component.loss, ask.standing_g
    more: tuple[Words, ...] = ()
    if standing:
        more += (Words(" + {standing:.0f} g that stand in the jug", standing=standing),)
    if loss.fixed is not None:
        fixed, once = loss.fixed.value, loss.once_a
        more += (
            Words(
                " + {times} x {fixed:g} g, once a {once}",
                times=times,
                fixed=fixed,
                once=once,
            ),
        )
    template = "({n} x {each:.2f} g" + "".join(f"{{more{i}}}" for i in range(len(more)))
    return Words(
        template + ") by (1 - {lost:g} %)",
        n=ask.pieces,
        each=ask.demand.each.value,
        lost=100 * share(loss.share),
        **{f"more{i}": part for i, part in enumerate(more)},
    )


def pieces_at(ask: Ask, factor: float, times: int) -> float:
    """Pieces, not rounded, that so many times the batch as written gives."""
    made = replace(ask.cooked, value=ask.cooked.value * factor)
    ready = usable(ask.component, made, times).value - ask.standing_g
    return ready / ask.demand.each.value
