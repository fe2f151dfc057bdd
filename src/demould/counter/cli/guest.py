"""``demould guest``: what to tell a guest, and what can be offered instead."""

from pathlib import Path

import click

from demould.counter.cli.asking import (
    common,
    folder_of,
    of_dessert,
    open_folder,
    print_json,
    the_dessert,
)


@click.command()
@of_dessert
@click.option("--variant", metavar="NAME", help="One of its variants. Default: none.")
@click.option(
    "--for",
    "asked",
    multiple=True,
    metavar="REQUEST",
    help='Such as "no nuts", vegan, halal, pregnancy; as often as you like.',
)
@common
def guest(
    dessert: str,
    kitchen: Path | None,
    variant: str | None,
    asked: tuple[str, ...],
    now: str | None,
    *,
    as_json: bool,
) -> None:
    """Say what is in DESSERT, what may be and what nobody said; and can we, for a guest.

    Nothing is ever "free from": made without is not a promise, and the packs are read
    by whoever answers a guest.
    """
    from demould.care.guest import for_guests
    from demould.care.requests import answer
    from demould.counter.cli.care_answer import of_answered, of_guests
    from demould.larder.requests import find_request, requests
    from demould.mise.problem import UnreadableError
    from demould.mise.spelling import one_of
    from demould.sheets.care_blocks import guest_page
    from demould.sheets.plain import plain

    folder, _ = open_folder(folder_of(dessert, kitchen), now)
    found = the_dessert(folder, dessert)
    wanted = []
    try:
        if variant is not None:
            variant = one_of(variant, [one.name for one in found.variants], "variant")
        for text in asked:
            request = find_request(text)
            wanted.append(request or requests()[one_of(text, requests(), "request")])
    except UnreadableError as fault:
        raise click.UsageError(f"{fault.wrong}. {fault.remedy}.") from None
    guests = for_guests(found, variant, folder.larder)
    answers = [
        answer(request, found, folder.larder, folder.desserts)
        for request in wanted or requests().values()
    ]
    if as_json:
        print_json(
            {**of_guests(guests), "requests": [of_answered(one) for one in answers]}
        )
        return
    click.echo(plain(guest_page(guests, answers)), nl=False)
