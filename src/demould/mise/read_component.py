"""One component of a dessert."""

import re
from functools import partial

from demould.mise.component import (
    Component,
    InSteps,
    Loss,
    Making,
    Scaled,
    Sheet,
    Tray,
    WholeBatches,
)
from demould.mise.faults import Faults
from demould.mise.figure import Figure, Line
from demould.mise.keys import Keys, keys_of
from demould.mise.method import Method, Step
from demould.mise.number import NUMBER
from demould.mise.parts import after, at_column, parts_of
from demould.mise.problem import UnreadableError
from demould.mise.quantity import read_amount, read_figure
from demould.mise.read_formula import Names, read_formula
from demould.mise.read_step import Around, read_step
from demould.mise.tree import Branch
from demould.mise.unit import Kind
from demould.mise.words import Words

KEYS = (
    "name",
    "kind",
    "formula",
    "in all",
    "density",
    "whipped",
    "cooked away",
    "lost",
    "made",
    "sheet",
    "method",
)
_REQUIRED = {
    "formula": Words("Write formula: | and below it one ingredient a line"),
    "density": Words(
        "Weigh a cup of it, or write density: 1.05 g/ml (assumed 1 to 1.1)"
    ),
    "lost": Words("Write how much sticks, for example lost: 4 %, or lost: 0 %"),
}
_LOST = re.compile(
    r"(?P<share>[^,]*?%\s*(?:\([^)]*\))?)"
    r"(?:(?:,| and|, then|, and)\s+(?P<fixed>.*\S)\s+a\s+(?P<once>batch|whip))?"
)
SHIFTED = "shifted rows"
_TRAY = re.compile(rf"({NUMBER})\s*[x\u00d7*]\s*({NUMBER})\s*([a-z]+)", re.IGNORECASE)


def read_component(
    key: str, branch: Branch, names: Names, around: Around, faults: Faults
) -> Component | None:
    """The component below ``component KEY:``, or None where too much is missing."""
    keys = keys_of(branch, faults, known=KEYS, required=_REQUIRED)
    formula = read_formula(keys.lines("formula"), names, faults)
    density = _figure(keys, "density", "density", key)
    lost = keys.read("lost", _lost)
    in_all = _figure(keys, "in all", "mass", key)
    whipped = _figure(keys, "whipped", "density", key)
    cooked_away = _figure(keys, "cooked away", "share", key)
    making = keys.read("made", _made) or Scaled()
    sheet = keys.read("sheet", _sheet)
    method = read_method(keys, around)
    if density is None or lost is None:
        return None
    return Component(
        key=key,
        name=keys.text("name") or key,
        kind=keys.text("kind"),
        formula=formula,
        density=density,
        whipped=whipped,
        cooked_away=cooked_away,
        loss=lost,
        making=making,
        sheet=sheet,
        method=method,
        in_all=in_all,
        line=branch.line,
    )


def read_method(keys: Keys, around: Around) -> Method:
    """The steps below ``method``; two of one key are a fault."""
    steps = keys.each("method", partial(read_step, around=around))
    seen: dict[str, Step] = {}
    for step in steps:
        if step.key in seen and step.line:
            first = seen[step.key].line
            keys.faults.tell(
                step.line,
                Words(
                    "a step called {key!r} is on line {first} too",
                    key=step.key,
                    first=first.number if first else 0,
                ),
                Words("Give one of them another first word"),
            )
        seen.setdefault(step.key, step)
    return steps


def _figure(keys: Keys, key: str, kind: Kind, component: str) -> Figure | None:
    name = {"whipped": "density when whipped"}.get(key, key)

    def read(line: Line) -> Figure:
        return read_figure(
            line.text,
            name=f"{name} of the {component}",
            kinds=(kind,),
            line=line,
            zero=kind == "share",
        )

    return keys.read(key, read)


def _lost(line: Line) -> Loss:
    """``4 %, then 40 g a whip``."""
    text = line.text.replace(", then ", ", ").replace(" and ", ", ")
    found = _LOST.fullmatch(text)
    if not found:
        raise UnreadableError(
            Words("{found!r} does not say what is lost", found=line.text),
            Words("Write it like 4 %, then 40 g a whip, or 2 %, then 20 g a batch"),
        )
    share = read_figure(
        found["share"], name="share lost", kinds=("share",), line=line, zero=True
    )
    if found["fixed"] is None:
        return Loss(share=share)
    fixed = read_figure(found["fixed"], name="grams lost", kinds=("mass",), line=line)
    return Loss(
        share=share,
        fixed=fixed,
        once_a="whip" if found["once"] == "whip" else "batch",
    )


def _made(line: Line) -> Making:
    """``whole batches``, ``in steps of 10 g``, ``by its own factor``."""
    if line.text == "whole batches":
        return WholeBatches()
    if line.text == "by its own factor":
        return Scaled()
    if step := after(line.text, "in steps of"):
        return InSteps(of=read_figure(step, name="step", kinds=("mass",), line=line))
    raise UnreadableError(
        Words("{found!r} is no way of making it", found=line.text),
        Words("Write whole batches, in steps of 10 g, or by its own factor"),
    )


def _sheet(line: Line) -> Sheet:
    """``400 x 300 mm; gap 2 mm``, or with ``shifted rows`` behind."""
    parts = parts_of(line.text)
    shifted = len(parts) == 3 and parts[2].text == SHIFTED
    found = _TRAY.fullmatch(parts[0].text) if parts else None
    gap = after(parts[1].text, "gap") if len(parts) == 2 or shifted else None
    if not found or gap is None:
        raise UnreadableError(
            Words("{found!r} is not a tray and a gap", found=line.text),
            Words("Write it like 400 x 300 mm; gap 2 mm"),
        )
    sides = []
    for side in found.groups()[:2]:
        amount = read_amount(f"{side} {found[3]}", name="tray", kinds=("length",))
        if amount.value <= 0:
            raise UnreadableError(
                Words("a tray of {found!r} holds nothing", found=parts[0].text),
                Words("Write its inside length and width"),
            )
        sides.append(amount.value)
    with at_column(parts[1].column):
        between = read_figure(
            gap, name="gap between cuts", kinds=("length",), line=line, zero=True
        )
    tray = Tray(length_mm=sides[0], width_mm=sides[1])
    return Sheet(tray=tray, gap=between, shifted=shifted)
