"""``demould check``: what is wrong or unsaid, worst first."""

import sys
from pathlib import Path

import click

from demould.counter.cli.answer import of_problem, of_sure
from demould.counter.cli.asking import FAULTS, common, print_json, read_as_at, tell


@click.command()
@click.argument("folder", type=click.Path(path_type=Path), default=Path())
@common
def check(folder: Path, now: str | None, *, as_json: bool) -> None:
    """Say what is wrong in the kitchen FOLDER, then what is only assumed.

    Faults come first, each with its line and what to do; then every assumed figure,
    the one that moves most first, with the measurement that settles it.
    """
    from demould.mise.find import find_in
    from demould.sheets.check_page import check_page
    from demould.sheets.plain import plain
    from demould.week.orders import makings_of
    from demould.week.sure import sure_of
    from demould.week.unsaid import unsaid_of

    read, problems, _ = read_as_at(folder, now)
    if problems or read is None:
        if as_json:
            print_json({"faults": [of_problem(one) for one in problems]})
        else:
            tell(problems)
        sys.exit(FAULTS)
    makings = makings_of(read)
    sure = sure_of(makings, read.kitchen, find_in(read.larder))
    unsaid = unsaid_of(read)
    if as_json:
        said = [{"says": str(one.says), "asks": str(one.asks)} for one in unsaid]
        print_json({"faults": [], "unsaid": said, **of_sure(sure)})
        return
    click.echo(plain(check_page(read.kitchen.name, sure, unsaid)), nl=False)
