"""The command line. Each command's file is read when it is asked for."""

import sys
import tempfile
import traceback
from importlib import import_module
from keyword import iskeyword
from pathlib import Path

import click

from demould import __version__

GROUPS = {
    "The week": {
        "demo": "The demo kitchen, copied here, and its week.",
        "week": "The week on one page: what to make, when, by whom.",
        "plan": "One plan for all orders, or what stands in the way.",
        "papers": "The sheets for the wall and the bench, as PDF.",
        "check": "What is wrong or unsaid, worst first.",
        "sure": "How sure is Saturday: weeks in a hundred, and what decides.",
    },
    "A dessert": {
        "note": "A draft dessert from a scribbled note, no word dropped.",
        "count": "Pieces of each component side by side, and its own factor.",
        "film": "Your own film of a dip, from pieces weighed before and after.",
        "cold": "How long to freeze and to thaw.",
        "draw": "The cut of a piece 1 : 1, its jug, its moulds, as SVG and PDF.",
        "try": "One thing changed: what moves, the two weeks side by side.",
        "ledger": "Where every gram goes: sold, lost, left over, strained out.",
        "changed": "Two versions of a dessert, line by line and in effect.",
    },
    "The order book": {
        "can": "Can we? An order on the phone: yes and by when, or what stops it.",
        "sizes": "10, 50, 500: each size, what stops it first, and next.",
        "now": "I start now: the earliest plate, and what each visit leaves behind.",
        "more": "What one more mould, jug, level or pair of hands would buy.",
    },
    "While it runs": {
        "next": "Only the next thing, and what to set out for it now.",
        "done": "Write down that a step is over, or has begun.",
        "late": "I am late: what moves, or what gives.",
        "amiss": "It went wrong: why, and what now.",
    },
    "At the stove": {
        "swap": "Something else instead: grams, and what changes all the same.",
        "mix": "How warm a mix comes out.",
        "poured": "Too much of one line in the bowl: how to go on.",
        "sugar": "What to cook sugar to, up the mountain.",
        "trial": "The smallest honest trial of a dessert.",
    },
    "Who eats it": {
        "guest": "Who must not eat it, and can we: no nuts, no gelatin, vegan ...",
        "label": "A label, drafted: ingredients, allergens, energy, for a person to sign.",
        "temperatures": "A temperature log against the cooling or cold rule you chose.",
        "lots": "Which lot went into what, both ways, and who has it.",
    },
    "Buying": {
        "call": "What to call, from whom, how much, and by when.",
        "cost": "What orders cost, what to charge, what other numbers mean.",
    },
    "For programs": {
        "case": "One JSON case in, one JSON answer out, for programs.",
    },
}
COMMANDS = {name: told for group in GROUPS.values() for name, told in group.items()}


class Commands(click.Group):
    """Commands by name, imported one at a time so that ``--help`` is instant."""

    def list_commands(self, _: click.Context) -> list[str]:
        """Name the commands, the main job first."""
        return list(COMMANDS)

    def get_command(self, _: click.Context, cmd_name: str) -> click.Command | None:
        """Import the one command asked for."""
        if cmd_name not in COMMANDS:
            return None
        name = f"{cmd_name}_it" if iskeyword(cmd_name) else cmd_name
        module = import_module(f"demould.counter.cli.{name}")
        command: click.Command = getattr(module, name)
        return command

    def format_commands(self, _: click.Context, formatter: click.HelpFormatter) -> None:
        """List the commands by when they are needed, without importing them."""
        for moment, commands in GROUPS.items():
            with formatter.section(moment):
                formatter.write_dl(list(commands.items()))


@click.group(
    cls=Commands,
    epilog="Every command but case takes --json and --now; all take --help.",
)
@click.version_option(__version__, prog_name="demould")
def demould() -> None:
    """From a cook's written formula to N frozen desserts at the pass, on time.

    A kitchen FOLDER holds kitchen.yaml, larder.yaml, orders.yaml and desserts/*.yaml.
    Start with `demould demo`. The tool advises; the cook decides.
    """


def main() -> None:
    """Run the command line; a fault of ours ends in a sentence and a file, never here."""
    try:
        demould()
    except Exception:  # noqa: BLE001  # the last door: a cook never sees a traceback
        with tempfile.NamedTemporaryFile(
            "w", prefix="demould-", suffix=".txt", delete=False, encoding="utf-8"
        ) as kept:
            traceback.print_exc(file=kept)
        click.echo(
            "Something in demould itself went wrong; nothing you wrote is touched."
            f" What we need to mend it is in {Path(kept.name)}.",
            err=True,
        )
        sys.exit(70)
