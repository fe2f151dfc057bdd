"""``demould next``: only the next thing."""

from pathlib import Path

import click

from demould.counter.cli.asking import common, print_json
from demould.counter.cli.running import open_running


@click.command()
@click.argument("folder", type=click.Path(path_type=Path), default=Path())
@click.option("--who", help="For whom. Default: whoever is first.")
@common
def next(folder: Path, who: str | None, now: str | None, *, as_json: bool) -> None:
    """Tell only the next thing: its start, and what has to be set out for it now.

    Read from the agreed plan, and from what has been said to be done.
    """
    from demould.counter.cli.answer import of_next
    from demould.sheets.next_page import next_page
    from demould.sheets.plain import plain
    from demould.week.next_thing import next_thing

    read, week, moment = open_running(folder, now)
    people = [one.name for one in read.kitchen.people]
    if who is not None and who not in people:
        raise click.BadParameter(
            f"nobody is called {who!r}; there are: {', '.join(people) or 'none'}.",
            param_hint="--who",
        )
    found = next_thing(week.laid, week.entries, week.done, moment, who)
    if as_json:
        print_json(of_next(found))
        return
    click.echo(plain(next_page(week, found, who, moment)), nl=False)
