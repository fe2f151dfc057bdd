"""``demould call``: what to call, from whom, how much, and by when."""

from pathlib import Path

import click

from demould.counter.cli.asking import common, open_folder, print_json, say


@click.command()
@click.argument("folder", type=click.Path(path_type=Path), default=Path())
@common
def call(folder: Path, now: str | None, *, as_json: bool) -> None:
    """Say what the kitchen FOLDER has to call in, and the last moment to do it."""
    from demould.counter.cli.office_answer import of_bank, of_buying, of_use_up
    from demould.mise.find import find_in
    from demould.sheets.call_page import call_page
    from demould.sheets.plain import plain
    from demould.week.office import buying_of_week, use_up_of_week
    from demould.week.orders import allotted_of, makings_of
    from demould.week.sections import planned

    read, moment = open_folder(folder, now)
    find = find_in(read.larder)
    makings = makings_of(read, moment)
    bank = allotted_of(read, moment)
    timing = None
    if makings:
        say("planning, for the last moment to call ...")
        timing = planned(read, makings, moment)
    buying = buying_of_week(read, makings, timing, moment, find)
    use_up = use_up_of_week(read, makings, buying, bank, find)
    if as_json:
        print_json(
            {
                **of_buying(buying, moment),
                "bank": of_bank(bank),
                "use_up": [of_use_up(one) for one in use_up],
            }
        )
        return
    page = call_page(read.kitchen, buying, bank, use_up, moment)
    click.echo(plain(page), nl=False)
