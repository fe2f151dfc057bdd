"""``demould cost``: what orders cost, and what to charge."""

from decimal import Decimal
from pathlib import Path

import click

from demould.counter.cli.asking import common, open_folder, print_json


@click.command()
@click.argument("folder", type=click.Path(path_type=Path), default=Path())
@click.option(
    "--share",
    type=click.FloatRange(0, 100, min_open=True),
    metavar="PERCENT",
    help="What ingredients may be of the price before tax. Default: cost share.",
)
@click.option(
    "--margin",
    type=click.FloatRange(0, 100, max_open=True),
    metavar="PERCENT",
    help="What is to be left of the price over all costs. Default: margin.",
)
@click.option(
    "--tax",
    type=click.FloatRange(0, 1000),
    metavar="PERCENT",
    help="Tax on top of the price. Default: tax, in kitchen.yaml.",
)
@click.option(
    "--at",
    "sizes",
    type=click.IntRange(1, 9999),
    multiple=True,
    help="What another number would mean, as often as you like. Default: 24, 50, 200.",
)
@common
def cost(
    folder: Path,
    share: float | None,
    margin: float | None,
    tax: float | None,
    sizes: tuple[int, ...],
    now: str | None,
    *,
    as_json: bool,
) -> None:
    """Cost every order of the kitchen FOLDER and say what to charge."""
    from demould.counter.cli.office_answer import of_costing
    from demould.sheets.cost_page import cost_page
    from demould.sheets.plain import plain
    from demould.week.costing import SIZES, costings_of
    from demould.week.orders import makings_of

    read, moment = open_folder(folder, now)
    if not read.orders:
        raise click.UsageError("there is no order to cost. Write one in orders.yaml.")
    found = costings_of(
        makings_of(read, moment),
        read,
        moment,
        share=_percent(share),
        margin=_percent(margin),
        tax=_percent(tax),
        sizes=sizes or SIZES,
    )
    if as_json:
        print_json({"costs": [of_costing(one) for one in found]})
        return
    click.echo(plain(cost_page(read.kitchen, found, moment)), nl=False)


def _percent(value: float | None) -> Decimal | None:
    return None if value is None else Decimal(str(value))
