"""Where the list, the totals and the method of a formula do not agree."""

from collections.abc import Iterator
from dataclasses import replace

from demould.advice.gaps.gap import Gap, only
from demould.advice.gaps.trying import Trying
from demould.larder.find import ingredient, ingredients
from demould.larder.names import plain
from demould.matter.grams import line_grams, weighed_lines
from demould.mise.component import Component
from demould.mise.figure import Figure
from demould.mise.formula import FormulaLine
from demould.mise.note.building import id_of
from demould.mise.note.spoken import ingredients_in
from demould.mise.words import Words

ROUNDING = 0.005
"""A written total may differ by this share: it was rounded."""

SUGAR = ingredient("sucrose").category
"""A syrup that the method speaks of is made of whatever sugar the list has."""

NAMED_AT_LEAST = 2
"""A method that names fewer of its ingredients does not go through the list."""


def agreement_gaps(trying: Trying) -> Iterator[Gap]:
    """Give what is called for and not made, and lists that disagree with themselves."""
    dessert = trying.dessert
    made = {one.key.casefold() for one in dessert.components}
    for called in dessert.called_for:
        name = called.split(";")[0].strip()
        if name.casefold() in made:
            continue
        yield Gap(
            key=f"called for: {name}",
            kind="called for",
            says=Words(
                "{name} is called for, and there is no formula for it", name=name
            ),
            takes=Words("left out of all counts, grams and the plan"),
            asks=Words("what goes into the {name}, and how much a piece?", name=name),
            lines=only(dessert.line),
        )
    for component in dessert.components:
        yield from _total(trying, component)
        yield from _method(component)


def _total(trying: Trying, component: Component) -> Iterator[Gap]:
    total = component.in_all
    if total is None:
        return
    weighed = weighed_lines(component.formula, trying.find)
    together = sum(grams.value for line, grams in weighed if not line.strained_out)
    open_ = [line for line in component.formula if line.amount is None]
    apart = together - total.value
    if abs(apart) <= ROUNDING * total.value and not open_:
        return
    if open_ and -apart > ROUNDING * total.value:
        says = Words(
            "{component}: {total:g} g in all leave {left:.0f} g for {what}",
            component=component.name,
            total=total.value,
            left=-apart,
            what=" and ".join(line.what for line in open_),
        )
    elif open_:
        says = Words(
            "{component}: its parts make {together:g} g before {what}, and {total:g} g in"
            " all is written",
            component=component.name,
            together=together,
            what=" and ".join(line.what for line in open_),
            total=total.value,
        )
    else:
        says = Words(
            "{component}: its parts make {together:g} g, and {total:g} g in all is written",
            component=component.name,
            together=together,
            total=total.value,
        )
    yield Gap(
        key=f"{component.key}: in all",
        kind="total",
        says=says,
        takes=Words("the parts are taken as they are written"),
        asks=Words("which is right: the parts, or the {total:g} g?", total=total.value),
        moves=trying.between(
            trying.as_taken,
            trying.with_component(_scaled(trying, component, total, together)),
        ),
        lines=only(
            total.origin.line if hasattr(total.origin, "line") else component.line
        ),
    )


def _scaled(
    trying: Trying, component: Component, total: Figure, together: float
) -> Component:
    factor = total.value / together if together else 1.0
    lines = []
    for line in component.formula:
        grams = line_grams(line, trying.find)
        if grams is None:
            lines.append(line)
            continue
        lines.append(replace(line, amount=replace(grams, value=grams.value * factor)))
    return replace(component, formula=tuple(lines))


def _method(component: Component) -> Iterator[Gap]:
    """What the method names and the list has not, and the other way round."""
    said = " ".join(words for step in component.method for words in step.remarks)
    named = ingredients_in(said)
    for id_, word in named.items():
        if not any(_same(id_, word, line) for line in component.formula):
            yield _not_listed(component, word)
    unused = [
        line
        for line in component.formula
        if not any(_same(id_, word, line) for id_, word in named.items())
    ]
    through = len(component.formula) - len(unused) >= NAMED_AT_LEAST
    if not through or len(unused) != 1:
        return
    (line,) = unused
    yield Gap(
        key=f"{component.key}: line {line.ordinal}, not used",
        kind="listed, not used",
        says=Words(
            "{component}: {what} is in the list, and the method never uses it",
            component=component.name,
            what=line.what,
        ),
        takes=Words("taken as going in with the rest"),
        asks=Words("when does the {what} go in?", what=line.what),
        lines=only(line.line),
    )


def _same(id_: str, word: str, line: FormulaLine) -> bool:
    """Whether a word of the method means this line: its name, or one of its kind."""
    if set(plain(word).split()) & set(plain(line.what).split()):
        return True
    listed = id_of(line.what) or line.ingredient or ""
    row = ingredients().get(listed)
    if id_.startswith("syrup_") and row is not None and row.category == SUGAR:
        return True
    categories = {
        ingredients()[one].category for one in (id_, listed) if one in ingredients()
    }
    return (
        id_ == listed
        or id_.split("_")[0] == listed.split("_")[0]
        or (listed in ingredients() and categories == {"chocolate"})
    )


def _not_listed(component: Component, what: str) -> Gap:
    return Gap(
        key=f"{component.key}: {what}, not listed",
        kind="used, not listed",
        says=Words(
            "{component}: the method uses {what}, and it is not in the list",
            component=component.name,
            what=what,
        ),
        takes=Words("left out until it is said"),
        asks=Words(
            "how much {what} goes into the {component}?",
            what=what,
            component=component.name,
        ),
        lines=only(component.line),
    )
