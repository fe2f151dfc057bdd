"""Too much of one line is in the bowl: what the others become, or how to go on."""

from dataclasses import dataclass, replace

from demould.advice.bands.judge import judged
from demould.advice.bands.judged import Judged
from demould.amounts.counts.factors import makes
from demould.amounts.counts.weighable import Weighing, weighings
from demould.amounts.counts.yields import yields
from demould.amounts.tools.rounds import Rounds
from demould.larder.read import bands
from demould.matter.grams import Find
from demould.mise.component import Component
from demould.mise.dessert import Dessert, component_of
from demould.mise.figure import Figure, Stated, worked
from demould.mise.formula import FormulaLine
from demould.mise.kitchen import Kitchen
from demould.mise.words import Words

ONCE = Figure(name="as written", value=1.0, unit="times")


@dataclass(frozen=True, slots=True, kw_only=True)
class Others:
    """The others in proportion: each line's grams, and what the batch gives then."""

    times: float
    lines: tuple[Weighing, ...]
    pieces: int


@dataclass(frozen=True, slots=True, kw_only=True)
class AsItIs:
    """Going on with the others as they were: what it gives, what leaves its band.

    `refused` says why not, where what sets it leaves its band.
    """

    pieces: int
    out: tuple[Judged, ...]
    refused: Words | None


@dataclass(frozen=True, slots=True, kw_only=True)
class Poured:
    """`poured_g` instead of `wanted_g` of one line, and the two ways on."""

    component: Component
    line: FormulaLine
    wanted_g: float
    poured_g: float
    pieces: int
    others: Others
    as_it_is: AsItIs


def poured(
    dessert: Dessert,
    key: str,
    ordinal: int,
    grams: float,
    kitchen: Kitchen,
    find: Find,
    rounds: Rounds | None = None,
) -> Poured:
    """Work out both ways on with `grams` of a line in the bowl.

    `rounds` are the pieces the batch was weighed for; None: the batch as written.

    Raises
    ------
    ValueError
        If nothing was poured, or the line has no amount.
    """
    if grams <= 0:
        raise ValueError(f"{grams:g} g in the bowl; it must be more than 0")
    component = component_of(dessert, key)
    factor = _factor(dessert, key, kitchen, find, rounds)
    before = weighings(component, factor, kitchen.scales, find)
    shown = next((one for one in before if one.line.ordinal == ordinal), None)
    if shown is None or shown.grams.value <= 0:
        raise ValueError("that line has no amount to compare with")
    times = grams / shown.grams.value
    rule = "factor x what is in the bowl by what was wanted"
    wider = worked("factor", factor.value * times, "times", rule, factor)
    as_it_is = _with(_at(component, before), ordinal, grams)
    return Poured(
        component=component,
        line=shown.line,
        wanted_g=shown.grams.value,
        poured_g=grams,
        pieces=_gives(dessert, _times(component, factor.value), kitchen, find),
        others=Others(
            times=times,
            lines=tuple(
                one
                for one in weighings(component, wider, kitchen.scales, find)
                if one.line.ordinal != ordinal
            ),
            pieces=_gives(dessert, _times(component, wider.value), kitchen, find),
        ),
        as_it_is=_going_on(dessert, component, as_it_is, kitchen, find),
    )


def _factor(
    dessert: Dessert, key: str, kitchen: Kitchen, find: Find, rounds: Rounds | None
) -> Figure:
    if rounds is None:
        return ONCE
    made = (make for make in makes(dessert, kitchen, find, rounds))
    return next((make.factor for make in made if make.component == key), ONCE)


def _times(component: Component, times: float) -> Component:
    """The component with every line times so much, not rounded."""
    return replace(
        component,
        formula=tuple(
            replace(line, amount=replace(line.amount, value=line.amount.value * times))
            if line.amount is not None
            else line
            for line in component.formula
        ),
    )


def _at(component: Component, lines: tuple[Weighing, ...]) -> Component:
    """The component with its lines at what was weighed."""
    grams = {one.line.ordinal: one.grams.value for one in lines}
    return replace(
        component,
        formula=tuple(
            replace(line, amount=_stated(line, grams[line.ordinal]))
            if line.ordinal in grams
            else line
            for line in component.formula
        ),
    )


def _with(component: Component, ordinal: int, grams: float) -> Component:
    return replace(
        component,
        formula=tuple(
            replace(line, amount=_stated(line, grams))
            if line.ordinal == ordinal
            else line
            for line in component.formula
        ),
    )


def _stated(line: FormulaLine, grams: float) -> Figure:
    return Figure(name=line.what, value=grams, unit="g", origin=Stated(line=line.line))


def _put(dessert: Dessert, component: Component) -> Dessert:
    return replace(
        dessert,
        components=tuple(
            component if one.key == component.key else one for one in dessert.components
        ),
    )


def _gives(dessert: Dessert, component: Component, kitchen: Kitchen, find: Find) -> int:
    given = yields(_put(dessert, component), kitchen, find)
    return next(
        (int(one.gives.value) for one in given if one.component == component.key), 0
    )


def _going_on(
    dessert: Dessert, before: Component, now: Component, kitchen: Kitchen, find: Find
) -> AsItIs:
    was = {one.what for one in judged(before, dessert, find) if one.verdict != "inside"}
    found = judged(now, _put(dessert, now), find)
    out = tuple(one for one in found if one.verdict != "inside" and one.what not in was)
    return AsItIs(
        pieces=_gives(dessert, now, kitchen, find),
        out=out,
        refused=_refused(now, out),
    )


def _refused(component: Component, out: tuple[Judged, ...]) -> Words | None:
    band = bands(component.kind) if component.kind else None
    agent = band.agent if band else None
    for one in out:
        if agent is not None and one.what.startswith(agent):
            return Words("not as it is: {says}", says=one.says)
    return None
