"""``demould mix``: what temperature things have when they are mixed."""

from pathlib import Path

import click

from demould.counter.cli.answer import of_estimate
from demould.counter.cli.asking import common, print_json
from demould.counter.cli.meant import look_up
from demould.mise.problem import UnreadableError
from demould.mise.read_mix import MixPart, read_mix_part


@click.command()
@click.argument("parts", nargs=-1, required=True, metavar="PART...")
@click.option("--into", help="What it is for, to compare: whipped ganache.")
@click.option(
    "--kitchen",
    type=click.Path(path_type=Path, file_okay=False),
    help="The kitchen folder, for its own larder. Default: this one.",
)
@common
def mix(
    parts: tuple[str, ...],
    into: str | None,
    kitchen: Path | None,
    now: str | None,
    *,
    as_json: bool,
) -> None:
    """Tell how warm a mix is: PART... like "280 g cream 35 % at 78 °C".

    Couverture in pieces is "190 g white couverture 35 % at 20 °C, unmelted": what melts
    it is counted. With --into, the result is held against the window of its kind.
    """
    from demould.larder.read import bands, component_kinds
    from demould.matter.grams import line_grams
    from demould.matter.mixing import Poured, mixed_c
    from demould.sheets.plain import plain
    from demould.sheets.sums_page import mix_page

    find, own = look_up(kitchen, now)
    band = bands(into) if into else None
    if into and band is None:
        kinds = ", ".join(component_kinds())
        raise click.BadParameter(f"{into!r} is none of: {kinds}.", param_hint="--into")
    poured = []
    for text in parts:
        part = _read(text, own)
        grams = line_grams(part.line, find)
        if grams is None or part.line.ingredient is None:
            raise click.BadParameter(
                f"nobody knows what {text!r} weighs. Write it in grams.",
                param_hint="PART",
            )
        try:
            poured.append(
                Poured(
                    made_of=find(part.line.ingredient).per_100g,
                    grams=grams.value,
                    at_c=part.at_c,
                    unmelted=part.unmelted,
                )
            )
        except ValueError as fault:
            raise click.BadParameter(f"{fault}.", param_hint="PART") from None
    found = mixed_c(poured)
    if as_json:
        print_json({"mixed": of_estimate(found)})
        return
    window = band.more.get("final mix temperature") if band else None
    click.echo(plain(mix_page(parts, found, window)), nl=False)


def _read(text: str, own: tuple[str, ...]) -> MixPart:
    try:
        return read_mix_part(text, own)
    except UnreadableError as fault:
        raise click.BadParameter(
            f"{fault.wrong}. {fault.remedy}.", param_hint="PART"
        ) from None
