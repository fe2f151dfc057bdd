"""``demould demo``: the demo kitchen, copied here, and its week."""

from importlib.resources import as_file, files
from pathlib import Path
from shutil import copytree

import click

from demould.counter.cli.asking import common, open_folder
from demould.counter.cli.week import show_week
from demould.demo import NAME, NOW


@click.command()
@click.option(
    "--here",
    type=click.Path(path_type=Path, file_okay=False),
    default=Path(),
    help="Where the kitchen folder goes. Default: this folder.",
)
@common
def demo(here: Path, now: str | None, *, as_json: bool) -> None:
    """Copy the demo kitchen here, work its week out and print the papers.

    A copy that is already there is not touched: it may have your changes in it.
    """
    kitchen = here / NAME
    if kitchen.exists():
        click.echo(f"{kitchen} is here already; it is read as it is.", err=True)
    else:
        with as_file(files("demould.demo") / NAME) as original:
            copytree(original, kitchen)
        click.echo(f"The demo kitchen is now in {kitchen}: change it.", err=True)
    moment = now or f"{NOW:%Y-%m-%d %H:%M}"
    read, at = open_folder(kitchen, moment)
    show_week(read, at, kitchen / "papers", as_json=as_json)
    click.echo(f'Next: demould check {kitchen} --now "{moment}"', err=True)
