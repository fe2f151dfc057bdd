"""``demould late``: I am late, what now."""

from pathlib import Path

import click

from demould.counter.cli.asking import common, print_json, say
from demould.counter.cli.running import open_running, step_or_say


@click.command()
@click.argument("folder", type=click.Path(path_type=Path))
@click.argument("step")
@click.argument("minutes", type=click.IntRange(1, 7 * 24 * 60))
@common
def late(
    folder: Path, step: str, minutes: int, now: str | None, *, as_json: bool
) -> None:
    """Slip STEP of the agreed plan by MINUTES: what moves, or what gives.

    STEP is a few words of its name: "fill pebble 24", "glaze domes". Inside its spare
    time nothing moves. Past it as few steps as can be do, and quicker roads are tried.
    """
    from demould.counter.cli.answer import of_late
    from demould.plan.kitchen.clock import minutes_since
    from demould.plan.running.late import late as slip
    from demould.sheets.late_page import late_page
    from demould.sheets.plain import plain

    _, week, moment = open_running(folder, now)
    name = step_or_say(week.laid, step, week.agreed)
    say("planning ...")
    minute = minutes_since(week.laid.origin, moment)
    found = slip(week.laid, week.agreed, name, minutes, minute)
    if as_json:
        print_json(of_late(found))
        return
    click.echo(plain(late_page(week, found, moment)), nl=False)
