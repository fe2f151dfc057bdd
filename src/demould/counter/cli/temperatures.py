"""``demould temperatures``: a temperature log against the rule you chose."""

from pathlib import Path

import click

from demould.counter.cli.asking import (
    FAULTS,
    common,
    moment_at,
    print_json,
    tell,
)


@click.command()
@click.argument("log", type=click.Path(exists=True, dir_okay=False, path_type=Path))
@click.option(
    "--rule", "name", default="us cooling", show_default=True, help="Which rule."
)
@click.option("--ph", type=click.FloatRange(1, 14), help="pH, where it was measured.")
@click.option("--aw", type=click.FloatRange(0, 1), help="Water activity, measured.")
@click.option(
    "--ice-water",
    type=float,
    metavar="DEGREES",
    help="What the thermometer reads in ice water; 0, give or take 1 °C.",
)
@common
def temperatures(
    log: Path,
    name: str,
    ph: float | None,
    aw: float | None,
    ice_water: float | None,
    now: str | None,
    *,
    as_json: bool,
) -> None:
    """Judge a temperature LOG, a moment and °C a line: 2026-11-20 14:00, 57.

    The rule is yours to choose and to confirm with your own food-safety plan. Gaps are
    shown as gaps; what is not shown is not taken as sound. Nothing here certifies.
    """
    import sys

    from demould.care.growth import SAFE_AW, SAFE_PH, grown_log10, lets_listeria_grow
    from demould.care.hygiene import fresh_minutes, judge, thermometer_fits
    from demould.counter.text.read_folder import zone_of
    from demould.larder.hygiene import hygiene_rules
    from demould.mise.problem import UnreadableError
    from demould.mise.read_temperatures import read_temperatures
    from demould.mise.spelling import one_of
    from demould.sheets.hygiene_page import hygiene_page
    from demould.sheets.plain import plain

    try:
        rule = hygiene_rules()[one_of(name, hygiene_rules(), "rule")]
    except UnreadableError as fault:
        raise click.BadParameter(
            f"{fault.wrong}. {fault.remedy}.", param_hint="--rule"
        ) from None
    zone = zone_of(Path())
    moment_at(now, zone)
    text = log.read_text("utf-8", errors="replace")
    readings, problems = read_temperatures(text, log.name, zone)
    if problems:
        tell(problems)
        sys.exit(FAULTS)
    judged = judge(readings, rule)
    grown = grown_log10(readings, ph or SAFE_PH, aw or SAFE_AW)
    fresh = fresh_minutes(readings)
    fits = None if ice_water is None else thermometer_fits(ice_water)
    if as_json:
        print_json(
            {
                "rule": rule.name,
                "says": rule.says,
                "source": rule.source,
                "verdict": judged.verdict,
                "stages": [str(one) for one in judged.says],
                "gaps": [[a.isoformat(), b.isoformat()] for a, b in judged.gaps],
                "asks": [str(one) for one in judged.asks],
                "fresh_h": fresh / 60,
                "grown_log10": grown,
                "lets_listeria_grow": lets_listeria_grow(ph, aw, None),
                "thermometer_fits": fits,
            }
        )
        return
    page = hygiene_page(
        judged, fresh / 60, grown, can_grow=lets_listeria_grow(ph, aw, None), fits=fits
    )
    click.echo(plain(page), nl=False)
