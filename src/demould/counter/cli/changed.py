"""``demould changed``: two versions of a dessert, line by line and in effect."""

import sys
from dataclasses import replace
from pathlib import Path

import click

from demould.counter.cli.asking import FAULTS, common, open_folder, print_json, tell
from demould.counter.text.read_tree import read_tree
from demould.mise.dessert import Dessert
from demould.mise.faults import Faults
from demould.mise.folder import Folder
from demould.mise.known import Known
from demould.mise.read_dessert import read_dessert


@click.command()
@click.argument("old", type=click.Path(exists=True, dir_okay=False, path_type=Path))
@click.argument("new", type=click.Path(exists=True, dir_okay=False, path_type=Path))
@click.option(
    "--kitchen",
    type=click.Path(path_type=Path, file_okay=False),
    help="The kitchen folder. Default: the one NEW is in.",
)
@common
def changed(
    old: Path, new: Path, kitchen: Path | None, now: str | None, *, as_json: bool
) -> None:
    """Say what changed from the dessert file OLD to NEW, and what that does.

    Both are read with the moulds and the larder of one kitchen folder.
    """
    from demould.advice.versions.allergens import allergens_changed
    from demould.advice.versions.effects import effects_of
    from demould.advice.versions.lines import lines_changed
    from demould.mise.find import find_in
    from demould.sheets.changed_page import changed_page
    from demould.sheets.plain import plain

    folder, _ = open_folder(kitchen or new.resolve().parent.parent, now, only=new.stem)
    after = _read(new, folder)
    before = replace(_read(old, folder), key=after.key)
    lines = lines_changed(before, after)
    find = find_in(folder.larder)
    effects = effects_of(before, after, folder.kitchen, find, folder.larder)
    named = allergens_changed(before, after, find, folder.larder)
    if as_json:
        print_json(
            {
                "lines": [
                    {"where": one.where, "was": one.was, "now": one.now}
                    for one in lines
                ],
                "now_names": list(named.new),
                "no_longer_named": list(named.gone),
                "effects": [
                    {
                        "what": one.what,
                        "component": one.component,
                        "was": one.was,
                        "now": one.now,
                        "says": str(one.says),
                    }
                    for one in effects
                ],
            }
        )
        return
    click.echo(plain(changed_page(after.name, lines, effects, named)), nl=False)


def _read(file: Path, folder: Folder) -> Dessert:
    """An older file of a dessert, read in the kitchen as it is now."""
    kitchen = folder.kitchen
    known = Known(
        moulds=tuple(one.key for one in kitchen.moulds),
        tools=tuple(one.key for one in kitchen.tools),
        cold=tuple(one.key for one in kitchen.cold),
        own=tuple(one.key for one in folder.larder),
    )
    tree, problems = read_tree(file.read_text("utf-8", errors="replace"), file.name)
    faults = Faults()
    dessert = read_dessert(tree, file.stem, known, faults) if tree is not None else None
    if dessert is None or problems:
        tell((*problems, *faults.found))
        sys.exit(FAULTS)
    return dessert
