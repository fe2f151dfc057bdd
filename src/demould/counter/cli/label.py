"""``demould label``: a label, drafted for a person to read and sign."""

from datetime import date
from pathlib import Path
from typing import TYPE_CHECKING

import click

from demould.counter.cli.asking import (
    common,
    folder_of,
    of_dessert,
    open_folder,
    print_json,
    the_dessert,
)

if TYPE_CHECKING:
    from demould.care.label import Label
    from demould.counter.cli.answer import Answer

DAY = click.DateTime(["%Y-%m-%d"])


@click.command()
@of_dessert
@click.option(
    "--rules",
    type=click.Choice(["eu", "uk", "us"]),
    default="eu",
    show_default=True,
    help="Whose rules. uk: prepacked for direct sale.",
)
@click.option("--variant", metavar="NAME", help="One of its variants. Default: none.")
@click.option("--sold-as", default="", help="The name of the food that describes it.")
@click.option("--made", type=DAY, help="The day it was made, for example 2026-11-20.")
@click.option("--use-by", type=DAY, help="By your own food-safety plan.")
@click.option("--keep", default="", help='For example "3 °C".')
@click.option("--lot", default="", help="The lot's name.")
@click.option("--maker", default="", help="Name and address.")
@click.option("--signed", default="", help="Who has read all of it and stands by it.")
@click.option(
    "--pdf", type=click.Path(path_type=Path, dir_okay=False), help="As PDF too."
)
@common
def label(
    dessert: str,
    kitchen: Path | None,
    rules: str,
    variant: str | None,
    now: str | None,
    pdf: Path | None,
    *,
    as_json: bool,
    **said: str | date | None,
) -> None:
    """Draft the label of one piece of DESSERT; a draft until a person signs.

    What goes beside it on the plate is not on the label.
    """
    from demould.amounts.layers.piece import piece
    from demould.care.label import Said, label_of
    from demould.larder.labels import rule_sets
    from demould.mise.find import find_in
    from demould.mise.problem import UnreadableError
    from demould.mise.spelling import one_of
    from demould.mise.variant import as_variant
    from demould.sheets.label_page import label_page
    from demould.sheets.plain import plain

    folder, moment = open_folder(folder_of(dessert, kitchen), now)
    written = the_dessert(folder, dessert)
    try:
        if variant is not None:
            variant = one_of(variant, [one.name for one in written.variants], "variant")
    except UnreadableError as fault:
        raise click.UsageError(f"{fault.wrong}. {fault.remedy}.") from None
    days = {key: said.pop(key) for key in ("made", "use_by")}
    try:
        words = Said(
            **{key: value.date() if value else None for key, value in days.items()},  # type: ignore[union-attr, arg-type]  # click gives moments
            **said,  # type: ignore[arg-type]  # the rest is text
        )
    except ValueError as fault:
        raise click.UsageError(f"{fault}.") from None
    find = find_in(folder.larder)
    made = as_variant(written, variant, (one.key for one in folder.larder))
    drafted = label_of(
        made,
        variant,
        piece(made, folder.kitchen),
        folder.larder,
        find,
        rule_sets()[rules],
        words,
        moment.date(),
    )
    page = label_page(drafted)
    if pdf is not None:
        from demould.counter.paper.papers import print_page

        print_page(page, pdf, printed=moment)
    if as_json:
        print_json(_answer(drafted))
        return
    click.echo(plain(page), nl=False)


def _answer(drafted: "Label") -> "Answer":
    from demould.sheets.label_page import list_text

    return {
        "dessert": drafted.name,
        "variant": drafted.variant,
        "rules": drafted.rules.name,
        "draft": drafted.is_draft,
        "open": [str(one) for one in drafted.open],
        "net_g": drafted.net_g,
        "defrosted": drafted.defrosted,
        "ingredients": list_text(drafted),
        "listed": [
            {"name": one.name, "text": one.text, "grams": one.grams, "share": one.share}
            for one in drafted.listed
        ],
        "quantities": dict(drafted.quantities),
        "contains": list(drafted.contains),
        "panel": [
            {"name": row.name, "per_100g": row.per_100g, "a_piece": row.a_piece}
            for row in drafted.panel
        ],
        "from_memory": list(drafted.from_memory),
        "signed": drafted.said.signed or None,
    }
