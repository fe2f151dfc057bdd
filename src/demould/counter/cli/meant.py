"""Which part, which line, which ingredient a command is about."""

from collections.abc import Callable
from pathlib import Path

import click

from demould.counter.cli.asking import open_folder
from demould.larder.ingredient import Ingredient
from demould.mise.component import Component
from demould.mise.dessert import Dessert
from demould.mise.folder import Folder
from demould.mise.formula import FormulaLine
from demould.mise.problem import UnreadableError


def look_up(
    kitchen: Path | None, now: str | None
) -> tuple[Callable[[str], Ingredient], tuple[str, ...]]:
    """Give the look-up of ingredients and the own ones' names; the table without a kitchen."""
    from demould.larder.read import ingredient
    from demould.mise.find import find_in

    if kitchen is None and not Path("kitchen.yaml").exists():
        return ingredient, ()
    folder, _ = open_folder(kitchen or Path(), now, only="")
    return find_in(folder.larder), tuple(one.key for one in folder.larder)


def height_here(kitchen: Path | None, now: str | None) -> float:
    """Give the height the kitchen says [m]; 0 where there is none."""
    if kitchen is None and not Path("kitchen.yaml").exists():
        return 0.0
    folder, _ = open_folder(kitchen or Path(), now, only="")
    return folder.kitchen.height.value if folder.kitchen.height else 0.0


def part_called(dessert: Dessert, name: str) -> Component:
    """Give the component of that key or name; leave with what there is."""
    for one in dessert.components:
        if name.casefold() in (one.key.casefold(), one.name.casefold()):
            return one
    has = ", ".join(one.key for one in dessert.components)
    raise click.BadParameter(
        f"{dessert.name} has no component {name!r}; it has: {has}.",
        param_hint="COMPONENT",
    )


def formula_line(component: Component, what: str) -> FormulaLine:
    """Give the line of a component that takes this, the largest of several."""
    from demould.larder.names import plain

    meant = [one for one in component.formula if plain(one.what) == plain(what)]
    if not meant:
        has = ", ".join(dict.fromkeys(one.what for one in component.formula))
        raise click.BadParameter(
            f"{component.name} has no {what!r}; it has: {has}.",
            param_hint="INGREDIENT",
        )
    return max(meant, key=lambda one: one.amount.value if one.amount else 0.0)


def line_called(
    component: Component, text: str, folder: Folder
) -> tuple[FormulaLine, float]:
    """Give the line that ``400 g blackcurrant purée`` is about, and those grams."""
    from demould.matter.grams import line_grams
    from demould.mise.figure import Line
    from demould.mise.find import find_in
    from demould.mise.read_formula import Names, read_formula_line

    own = tuple(one.key for one in folder.larder)
    try:
        read = read_formula_line(Line("it", 0, text), 1, Names(own=own))
    except UnreadableError as fault:
        raise click.BadParameter(
            f"{fault.wrong}. {fault.remedy}.", param_hint="LINE"
        ) from None
    grams = line_grams(read, find_in(folder.larder))
    if grams is None:
        raise click.BadParameter(
            f"{text!r} does not say how many grams.", param_hint="LINE"
        )
    return formula_line(component, read.what), grams.value
