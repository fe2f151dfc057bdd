"""``demould check``: what is wrong or unsaid, worst first."""

import sys
from pathlib import Path

import click

from demould.counter.cli.answer import of_finding, of_makeup, of_sure
from demould.counter.cli.asking import FAULTS, common, print_json, read_as_at, tell


@click.command()
@click.argument("folder", type=click.Path(path_type=Path), default=Path())
@common
def check(folder: Path, now: str | None, *, as_json: bool) -> None:
    """Say what is wrong in the kitchen FOLDER, then what is only assumed.

    Faults come first, each with its line and what to do; then what is outside its
    usual band or will not hold; then every assumed figure, the one that moves most
    first, with the measurement that settles it.
    """
    from demould.advice.makeup import makeups
    from demould.counter.cli.care_answer import of_guests
    from demould.mise.find import find_in
    from demould.sheets.care_blocks import all_that_is_told
    from demould.sheets.check_page import check_page
    from demould.sheets.plain import plain
    from demould.sheets.will_it import all_of_it, made_of
    from demould.week.caring import every_variant
    from demould.week.orders import makings_of
    from demould.week.sure import sure_of
    from demould.week.unsaid import unsaid_of
    from demould.week.will_it import will_it_of

    read, problems, moment = read_as_at(folder, now)
    if problems or read is None:
        tell(problems)
        sys.exit(FAULTS)
    makings = makings_of(read, moment)
    find = find_in(read.larder)
    sure = sure_of(makings, read.kitchen, find, read.larder)
    unsaid = unsaid_of(read)
    found = will_it_of(read.desserts, read.kitchen, find)
    makeup = [one for dessert in read.desserts for one in makeups(dessert, find)]
    guests = every_variant(read)
    if as_json:
        said = [
            {
                "says": str(one.says),
                "asks": str(one.asks),
                "takes": str(one.takes) if one.takes else None,
                "moves": [str(words) for words in one.moves],
            }
            for one in unsaid
        ]
        will_it = [of_finding(one) for one in found]
        answer = {"faults": [], "unsaid": said, "will_it": will_it, **of_sure(sure)}
        answer |= {"made_of": [of_makeup(one) for one in makeup]}
        print_json(answer | {"guests": [of_guests(one) for one in guests]})
        return
    names = {one.key: one.name for one in read.desserts}
    speaks_up = (*all_of_it(found, names), *all_that_is_told(guests))
    page = check_page(read.kitchen.name, sure, unsaid, speaks_up, made_of(makeup))
    click.echo(plain(page), nl=False)
