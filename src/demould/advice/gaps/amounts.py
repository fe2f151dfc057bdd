"""Amounts that are not said, or not in grams: volumes, leaves, spoons, salt, steeping."""

from collections.abc import Iterator
from dataclasses import replace

from demould.advice.gaps.gap import Gap, only
from demould.advice.gaps.trying import Trying
from demould.larder.fact import Fact
from demould.larder.read import bands
from demould.larder.starts import vague
from demould.larder.usual import STEEPED, usual_share
from demould.matter.grams import KEPT, batch, counted, kept_by_solids, line_grams
from demould.mise.component import Component
from demould.mise.figure import Assumed, Figure
from demould.mise.formula import FormulaLine
from demould.mise.words import Words

ONLY_METHOD = "only the method names it"
"""The remark of a draft's line that the list of the note did not have."""

NOT_MADE_UP = "not made up"
"""The remark that says nothing is topped up after straining."""

VOLUMES = ("ml", "cl", "dl", "l")
_SPOONS = ("spoon", "teaspoon", "cup", "pinch")
_GRAMS_APART = 0.015
"""Volumes and grams of a liquid differ by so much or less with its own temperature."""


def amount_gaps(trying: Trying) -> Iterator[Gap]:
    """Give every amount of a formula that is missing or is no weight."""
    for component in trying.dessert.components:
        yield from _in_volume(trying, component)
        for line in component.formula:
            if line.amount is None:
                yield _missing(trying, component, line)
            elif line.amount.unit == "leaf":
                yield _leaves(trying, component, line, line.amount)
            elif line.amount.unit in _SPOONS or line.amount.unit == "pieces":
                yield from _counted(trying, component, line, line.amount)
        yield from _made_up(trying, component)


def _in_volume(trying: Trying, component: Component) -> Iterator[Gap]:
    """Liquids written in ml or cl: one gap for all of them in a component."""
    lines = [
        (line, grams)
        for line in component.formula
        if line.amount is not None
        and line.amount.unit in VOLUMES
        and (grams := line_grams(line, trying.find)) is not None
    ]
    if not lines:
        return
    ends = []
    for factor in (1 - _GRAMS_APART, 1 + _GRAMS_APART):
        changed = component
        for line, grams in lines:
            weighed = replace(grams, value=grams.value * factor)
            changed = _with_line(changed, line, replace(line, amount=weighed))
        ends.append(trying.with_component(changed))
    first, grams = lines[0]
    assert first.amount is not None
    yield Gap(
        key=f"{component.key}: volumes",
        kind="unit",
        says=Words(
            "{component}: {what} is written in volume, {ml:g} ml",
            component=component.name,
            what=" and ".join(dict.fromkeys(line.what for line, _ in lines)),
            ml=first.amount.value,
        ),
        takes=Words("taken as {grams:.0f} g, by its density", grams=grams.value),
        asks=Words(
            "are these millilitres, or grams? weigh {what} once", what=first.what
        ),
        moves=trying.between(*ends),
        ends=(ends[0], ends[1]),
        lines=only(first.line),
    )


def _leaves(
    trying: Trying, component: Component, line: FormulaLine, amount: Figure
) -> Gap:
    """Leaves of gelatin: neither what one weighs nor how strong it is."""
    each = counted(line)
    assert each is not None
    assert isinstance(each.origin, Assumed)
    low, high = (
        trying.with_line(
            component,
            line,
            replace(line, amount=_grams(amount, end * amount.value), ingredient=which),
        )
        for end, which in zip(
            (each.origin.low, each.origin.high), _strengths(line), strict=True
        )
    )
    strength = vague(line.what) is not None
    says = "{component}: {n:g} leaves of gelatin, their weight and strength not said"
    takes = "taken as {each:g} g a leaf ({low:g} to {high:g}), 200 bloom (160 to 250)"
    if not strength:
        says = "{component}: {n:g} leaves of gelatin, their weight not said"
        takes = "taken as {each:g} g a leaf ({low:g} to {high:g})"
    return Gap(
        key=f"{component.key}: line {line.ordinal}, leaves",
        kind="leaf",
        says=Words(says, component=component.name, n=amount.value),
        takes=Words(
            takes,
            each=each.value,
            low=each.origin.low,
            high=each.origin.high,
        ),
        asks=Words("what does one leaf weigh, and what bloom stands on the packet?"),
        moves=trying.between(low, high),
        ends=(low, high),
        lines=only(line.line),
    )


def _strengths(line: FormulaLine) -> tuple[str | None, str | None]:
    """The weakest and the strongest it may be, or what it says it is."""
    which = vague(line.what)
    if which is None:
        return line.ingredient, line.ingredient
    return which.low, which.high


def _counted(
    trying: Trying, component: Component, line: FormulaLine, amount: Figure
) -> Iterator[Gap]:
    """Spoons, cups, eggs: what one weighs is only usual."""
    each = counted(line)
    grams = line_grams(line, trying.find)
    if each is None or grams is None:
        yield _missing(trying, component, line)
        return
    assert isinstance(each.origin, Assumed)
    low, high = (
        trying.with_line(
            component,
            line,
            replace(
                line, amount=replace(amount, value=amount.value * end / each.value)
            ),
        )
        for end in (each.origin.low, each.origin.high)
    )
    yield Gap(
        key=f"{component.key}: line {line.ordinal}, {amount.unit}",
        kind="unit",
        says=Words(
            "{component}: {n:g} {unit} of {what} is no weight",
            component=component.name,
            n=amount.value,
            unit=amount.unit,
            what=line.what,
        ),
        takes=Words(
            "taken as {grams:.1f} g ({low:.1f} to {high:.1f})",
            grams=grams.value,
            low=grams.value * each.origin.low / each.value,
            high=grams.value * each.origin.high / each.value,
        ),
        asks=Words("what does that weigh, in grams?"),
        moves=trying.between(low, high),
        ends=(low, high),
        lines=only(line.line),
    )


def _missing(trying: Trying, component: Component, line: FormulaLine) -> Gap:
    """No amount: the usual share of the whole, left out until somebody says."""
    usual = _usual(component, line)
    whole = batch(component, trying.find).value
    grams = [share / 100 * whole for share in (usual.value, usual.low, usual.high)]
    low, high = (
        trying.with_line(
            component, line, replace(line, amount=_grams(line.amount, end, line.what))
        )
        for end in grams[1:]
    )
    until = next((one for one in line.remarks if one and one != ONLY_METHOD), "")
    template = "{component}: how much {what} is not said"
    if ONLY_METHOD in line.remarks:
        template = "{component}: the method uses {what}, the list does not have it"
    elif until:
        template += ', only "{until}"'
    says = Words(template, component=component.name, what=line.what, until=until)
    return Gap(
        key=f"{component.key}: line {line.ordinal}, amount",
        kind="used, not listed" if ONLY_METHOD in line.remarks else "amount",
        says=says,
        takes=Words(
            "left out until it is said; usual is {usual:.3g} g ({low:.2g} to {high:.3g})",
            usual=grams[0],
            low=grams[1],
            high=grams[2],
        ),
        asks=Words("how many grams of {what}?", what=line.what),
        moves=trying.between(low, high),
        ends=(low, high),
        lines=only(line.line),
    )


def _usual(component: Component, line: FormulaLine) -> Fact:
    """A band for what sets the component; else what is usual of the thing."""
    band = bands(component.kind)
    sets = (
        band is not None
        and band.agent
        and (line.ingredient or "").startswith(band.agent)
    )
    if band is not None and band.dose and sets:
        return band.dose
    return usual_share(STEEPED if line.strained_out else line.what)


def _made_up(trying: Trying, component: Component) -> Iterator[Gap]:
    """Solids are strained out, and nobody says whether the liquid is made up again."""
    if any(line.made_up or NOT_MADE_UP in line.remarks for line in component.formula):
        return
    steeped = [line for line in component.formula if line.strained_out]
    if not steeped:
        return
    kept = kept_by_solids(component, trying.find)
    whole = batch(component, trying.find).value
    share = usual_share(STEEPED)
    grams = kept.value if kept else whole * share.value / 100 * KEPT.value
    made = component
    for line in component.formula:
        if not line.strained_out:
            made = _with_line(made, line, replace(line, made_up=True))
            break
    amounts = [
        line
        if line.amount is not None
        else replace(line, amount=_grams(None, grams / KEPT.value, line.what))
        for line in component.formula
    ]
    kept_as = replace(component, formula=tuple(amounts))
    ends = trying.with_component(kept_as), trying.with_component(made)
    yield Gap(
        key=f"{component.key}: made up",
        kind="make-up",
        says=Words(
            "{component}: after {what} is strained out, nobody says whether the liquid is"
            " made up again",
            component=component.name,
            what=steeped[0].what,
        ),
        takes=Words(
            "taken as not made up: about {grams:.0f} g stay in the solids", grams=grams
        ),
        asks=Words("is it made up again to the weight written?"),
        moves=trying.between(*ends),
        ends=ends,
        lines=only(_liquid(component).line),
    )


def _liquid(component: Component) -> FormulaLine:
    """What would be made up: the first line that is not strained out."""
    stays = [line for line in component.formula if not line.strained_out]
    return next(iter(stays), component.formula[0])


def _grams(was: Figure | None, value: float, name: str = "") -> Figure:
    if was is not None:
        return replace(was, value=value, unit="g")
    return Figure(name=name, value=value, unit="g")


def _with_line(component: Component, old: FormulaLine, new: FormulaLine) -> Component:
    lines = tuple(
        new if line.ordinal == old.ordinal else line for line in component.formula
    )
    return replace(component, formula=lines)
