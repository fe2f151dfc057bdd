"""``demould amiss``: it went wrong, why, and what now."""

from __future__ import annotations

from pathlib import Path
from typing import TYPE_CHECKING

import click

from demould.counter.cli.asking import common, of_dessert, open_dessert, print_json
from demould.counter.cli.meant import part_called

if TYPE_CHECKING:
    from demould.advice.troubles.ranked import Trouble


@click.command()
@of_dessert
@click.argument("sign")
@click.argument("readings", nargs=-1, metavar="[READING]...")
@click.option("--part", help="The component it is seen on.")
@common
def amiss(
    dessert: str,
    sign: str,
    readings: tuple[str, ...],
    part: str | None,
    kitchen: Path | None,
    now: str | None,
    *,
    as_json: bool,
) -> None:
    """Say why DESSERT went wrong: "glaze slid off" "piece -9 °C" "glaze 33 °C".

    SIGN is what you see. Each READING is what you measured. The causes come ranked by
    your readings, then by the card and its formula, with the test that tells them apart.
    """
    from demould.advice.troubles.ranked import (
        reading_called,
        sign_called,
        spoken_of,
        troubles,
    )
    from demould.mise.find import find_in
    from demould.mise.problem import UnreadableError
    from demould.mise.read_reading import reading_value, split_reading
    from demould.sheets.amiss_page import amiss_page
    from demould.sheets.plain import plain

    folder, found = open_dessert(dessert, kitchen, now)
    seen_on = part_called(found, part) if part else spoken_of(sign, found)
    try:
        meant = sign_called(sign)
        read = {}
        for text in readings:
            said = split_reading(text)
            kind = reading_called(said.name)
            read[kind.name] = reading_value(said, kind.unit)
    except UnreadableError as fault:
        raise click.UsageError(f"{fault.wrong}. {fault.remedy}.") from None
    trouble = troubles(
        meant, found, folder.kitchen, find_in(folder.larder), read, seen_on
    )
    if as_json:
        print_json(_of_trouble(trouble))
        return
    click.echo(plain(amiss_page(trouble, found.name)), nl=False)


def _of_trouble(found: Trouble) -> dict[str, object]:
    return {
        "sign": found.sign.name,
        "component": found.component.key if found.component else None,
        "now": found.sign.rescue,
        "caution": found.sign.caution or None,
        "causes": [
            {
                "cause": one.cause.name,
                "reading": one.cause.reading or None,
                "value": one.value,
                "by": one.by or None,
                "weighed": one.weighed,
                "test": one.cause.test,
                "prevent": one.cause.prevent,
            }
            for one in found.suspects
        ],
    }
