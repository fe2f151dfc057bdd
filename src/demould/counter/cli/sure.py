"""``demould sure``: how sure is Saturday."""

from functools import partial
from pathlib import Path

import click

from demould.counter.cli.asking import common, open_folder, print_json, say

USUAL_WEEKS = 400
MOST_WEEKS = 100_000


@click.command()
@click.argument("folder", type=click.Path(path_type=Path), default=Path())
@click.option(
    "--weeks",
    type=click.IntRange(1, MOST_WEEKS),
    default=USUAL_WEEKS,
    show_default=True,
    help="How often the week is worked off.",
)
@click.option("--seed", type=int, default=0, help="Another seed, other luck.")
@common
def sure(
    folder: Path, weeks: int, seed: int, now: str | None, *, as_json: bool
) -> None:
    """Work the week of the kitchen FOLDER off many times, with other luck each time.

    Steps take longer or shorter, what freezes has its spread, pieces break. Counted is
    in how many weeks every order stands, and which step decides where one does not.
    """
    from demould.counter.many import in_parts, on_all_cores
    from demould.plan.running.sampled import sampled, together
    from demould.sheets.page import Page
    from demould.sheets.plain import plain
    from demould.sheets.sure_page import sure_page
    from demould.sheets.verdict import verdict
    from demould.week.how_sure import odds_of
    from demould.week.sections import week_of

    read, moment = open_folder(folder, now)
    if not read.orders:
        raise click.UsageError("there is no order to plan. Write one in orders.yaml.")
    say("working the week out ...")
    week = week_of(read, moment)
    if not week.timing.stands:
        blocks = tuple(verdict(week.makings, week.timing))
        page = Page(key="sure", title="how sure it is", blocks=blocks)
        click.echo(plain(page), nl=False)
        return
    odds = odds_of(week)
    say(f"working {weeks} weeks off ...")
    work = partial(sampled, odds.bends, odds.spreads, odds.breaks, seed=seed)
    tally = together(on_all_cores(work, in_parts(weeks)))
    if as_json:
        print_json(
            {
                "weeks": tally.weeks,
                "stood": tally.stood,
                "by_order": dict(tally.by_order),
                "decides": dict(tally.decides),
            }
        )
        return
    page = sure_page(week.makings, week.timing.laid, tally, moment)
    click.echo(plain(page), nl=False)
