"""``demould swap``: something else instead of an ingredient."""

from __future__ import annotations

from pathlib import Path
from typing import TYPE_CHECKING

import click

from demould.counter.cli.asking import (
    common,
    of_dessert,
    open_dessert,
    print_json,
)
from demould.counter.cli.meant import formula_line, part_called

if TYPE_CHECKING:
    from demould.advice.changes import Changes
    from demould.larder.ingredient import Ingredient
    from demould.matter.grams import Find
    from demould.matter.substitute.agents import NeverOneForOne, OtherGelatin
    from demould.matter.substitute.swap import Swapped
    from demould.mise.component import Component
    from demould.mise.dessert import Dessert
    from demould.mise.read_other import Other

WITH = "with"


@click.command()
@of_dessert
@click.argument("component")
@click.argument("words", nargs=-1, required=True, metavar="INGREDIENT with OTHER")
@click.option(
    "--hold",
    help="What stays as it is, with commas: mass, water, fat, sugars, sweetness,"
    " freezing, protein, acid, alcohol. Default: what is usual for what goes out.",
)
@common
def swap(
    dessert: str,
    component: str,
    words: tuple[str, ...],
    hold: str | None,
    kitchen: Path | None,
    now: str | None,
    *,
    as_json: bool,
) -> None:
    """Put OTHER in for INGREDIENT of a COMPONENT, and say what changes all the same.

    OTHER may be "raspberry purée + 10 % sugar". Gelatin goes to another bloom by both
    laws; any other setting agent is never exchanged one for one.
    """
    from demould.larder.read import agent_of
    from demould.mise.find import find_in
    from demould.mise.problem import UnreadableError
    from demould.mise.read_other import read_other

    out, into = _split(words)
    folder, found = open_dessert(dessert, kitchen, now)
    part = part_called(found, component)
    line = formula_line(part, out)
    find = find_in(folder.larder)
    try:
        other = read_other(into, [one.key for one in folder.larder])
    except UnreadableError as fault:
        raise click.BadParameter(
            f"{fault.wrong}. {fault.remedy}.", param_hint="OTHER"
        ) from None
    if line.ingredient is None:
        raise click.BadParameter(
            f"{line.what} is another part of {found.name}: swap in that one.",
            param_hint="INGREDIENT",
        )
    outgoing, new = find(line.ingredient), _ingredient(other, into, find)
    try:
        if agent_of(outgoing) or agent_of(new):
            _agents(part, outgoing, new, find, as_json=as_json)
        else:
            _plain(found, part, outgoing, new, hold, find, as_json=as_json)
    except ValueError as fault:
        raise click.UsageError(f"{fault}.") from None
    if other.frozen and not as_json:
        click.echo(
            "from the freezer: with its juice nothing changes; drained it loses 5 to"
            " 20 % as juice, so weigh it thawed"
        )


def _split(words: tuple[str, ...]) -> tuple[str, str]:
    said = " ".join(words).split()
    if said.count(WITH) != 1 or said[0] == WITH or said[-1] == WITH:
        raise click.UsageError(
            "write what goes out, the word with, and what comes in:"
            " cream 35 % with cream 30 %."
        )
    at = said.index(WITH)
    return " ".join(said[:at]), " ".join(said[at + 1 :])


def _ingredient(other: Other, said: str, find: Find) -> Ingredient:
    from dataclasses import replace

    from demould.matter.substitute.sugared import sugared

    new = find(other.ingredient)
    if other.share:
        new = sugared(new, other.share / 100, find(other.sugar))
    return replace(new, name=said)


def _agents(
    part: Component,
    outgoing: Ingredient,
    new: Ingredient,
    find: Find,
    *,
    as_json: bool,
) -> None:
    from demould.matter.substitute.agents import NeverOneForOne, other_agent
    from demould.sheets.plain import plain
    from demould.sheets.swap_page import gelatin_page, never_page

    found = other_agent(part, outgoing, new, find)
    if as_json:
        print_json(_of_agents(found))
        return
    out, into = outgoing.name, new.name
    page = (
        never_page(part.name, found, out=out, into=into)
        if isinstance(found, NeverOneForOne)
        else gelatin_page(part.name, found, out=out, into=into)
    )
    click.echo(plain(page), nl=False)


def _of_agents(found: OtherGelatin | NeverOneForOne) -> dict[str, object]:
    from demould.matter.substitute.agents import NeverOneForOne

    if isinstance(found, NeverOneForOne):
        return {
            "swap": None,
            "why": str(found.why),
            "start": {"agent": found.agent, "low": found.low, "high": found.high},
        }
    return {
        "before_g": found.before_g,
        "root_g": found.grams.root,
        "ratio_g": found.grams.ratio,
        "warn": str(found.warn) if found.warn else None,
    }


def _plain(
    dessert: Dessert,
    part: Component,
    outgoing: Ingredient,
    new: Ingredient,
    hold: str | None,
    find: Find,
    *,
    as_json: bool,
) -> None:
    from demould.advice.changes import changes
    from demould.matter.substitute.held import usual
    from demould.matter.substitute.swap import swapped
    from demould.sheets.plain import plain
    from demould.sheets.swap_page import swap_page

    held = (
        tuple(one.strip() for one in hold.split(",") if one.strip())
        if hold
        else usual(outgoing)
    )
    found = swapped(part, outgoing.id, new, held, find)
    straight = changes(part, found.gram_for_gram, dessert, find, found.find)
    balanced = changes(part, found.balanced, dessert, find, found.find)
    if as_json:
        print_json(_of_swap(found, straight, balanced))
        return
    page = swap_page(found, straight, balanced, out=outgoing.name, into=new.name)
    click.echo(plain(page), nl=False)


def _of_swap(found: Swapped, straight: Changes, balanced: Changes) -> dict[str, object]:
    return {
        "held": list(found.held),
        "lines": [
            {"what": one.what, "before_g": one.before_g, "after_g": one.after_g}
            for one in found.lines
        ],
        "gram_for_gram": _of_changes(straight),
        "balanced": _of_changes(balanced),
    }


def _of_changes(found: Changes) -> dict[str, object]:
    return {
        "effects": [
            {
                "name": one.name,
                "before": one.before,
                "after": one.after,
                "unit": one.unit,
            }
            for one in found.effects
        ],
        "allergens_in": list(found.allergens_in),
        "allergens_out": list(found.allergens_out),
        "out_of_band": [str(one.says) for one in found.out],
        "trial": str(found.trial) if found.trial else None,
    }
