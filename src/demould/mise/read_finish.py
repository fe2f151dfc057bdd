"""What goes over a piece: dipped, poured or sprayed."""

import re
from dataclasses import dataclass, field
from typing import Literal, cast

from demould.mise.dessert import Dip, Finish, Glaze, Laid, Spray
from demould.mise.figure import Figure, Line
from demould.mise.known import component_called
from demould.mise.number import NUMBER
from demould.mise.parts import Part, after, at_column, name_and_rest
from demould.mise.problem import UnreadableError
from demould.mise.quantity import read_figure
from demould.mise.words import Words

_POURED = re.compile(rf"poured ({NUMBER}(?: times)?)(\s*\(.*\))?")
_ON = re.compile(r"on (?:the )?(face|sides|all round|cut edges)")
_LANDS = re.compile(r"(.*\S)\s+lands(\s*\(.*\))?")
_EXAMPLES = {
    "film": "film 0.8 mm (assumed 0.6 to 1)",
    "clearance": "clearance 15 mm",
    "heel": "heel 10 g",
    "lands": "50 % lands",
    "pour": "poured 2.5 times",
}


@dataclass(slots=True)
class _Found:
    how: str = ""
    figures: dict[str, Figure] = field(default_factory=dict)
    both_ends: bool = False
    on: Literal["face", "sides", "all round", "cut edges"] = "face"
    remarks: list[str] = field(default_factory=list)


def read_finish(line: Line, components: tuple[str, ...]) -> Finish:
    """``dip; dipped; film 0.8 mm; clearance 15 mm; heel 10 g``.

    ``glaze; poured 2.5 times; film 1.7 mm; both ends``, ``velvet; sprayed; film 0.12
    mm; 50 % lands``.

    Raises
    ------
    UnreadableError
        If nobody makes the component, it is not said how it goes on, or a figure that
        this needs is missing.
    """
    name, rest = name_and_rest(line.text)
    with at_column(name.column):
        component = component_called(name.text, components)
    found = _Found()
    for part in rest:
        with at_column(part.column):
            _take(part, found, line, component)
    remarks = tuple(found.remarks)
    match found.how:
        case "dipped":
            return Dip(
                component=component,
                film=_needed(found, "film", component),
                clearance=_needed(found, "clearance", component),
                heel=_needed(found, "heel", component),
                depth=found.figures.get("depth"),
                remarks=remarks,
                line=line,
            )
        case "poured":
            return Glaze(
                component=component,
                film=_needed(found, "film", component),
                pour=_needed(found, "pour", component),
                faces="face and ends" if found.both_ends else "face",
                remarks=remarks,
                line=line,
            )
        case "sprayed":
            return Spray(
                component=component,
                film=_needed(found, "film", component),
                lands=_needed(found, "lands", component),
                remarks=remarks,
                line=line,
            )
        case "brushed" | "rolled" | "spattered":
            return Laid(
                component=component,
                how=found.how,
                film=_needed(found, "film", component),
                covers=found.figures.get("covers"),
                on=found.on,
                remarks=remarks,
                line=line,
            )
    raise UnreadableError(
        Words("how {name!r} goes on is missing", name=component),
        Words(
            "Write dipped, poured N times, sprayed, brushed, rolled or spattered after"
            " its name"
        ),
    )


def _needed(found: _Found, key: str, component: str) -> Figure:
    if key not in found.figures:
        raise UnreadableError(
            Words("the {key} of {name!r} is missing", key=_WORDS[key], name=component),
            Words("Write it, for example: {example}", example=_EXAMPLES[key]),
        )
    return found.figures[key]


_WORDS = {
    "film": "film",
    "clearance": "clearance",
    "heel": "heel",
    "depth": "depth",
    "lands": "share that lands",
    "pour": "factor for pouring",
}


def _take(part: Part, found: _Found, line: Line, component: str) -> None:
    """Put one part of the line where it belongs."""
    for key in ("film", "clearance", "depth"):
        if size := after(part.text, key):
            found.figures[key] = read_figure(
                size,
                name=f"{key} of the {component}" if key == "film" else key,
                kinds=("length",),
                line=line,
                zero=key == "clearance",
            )
            return
    if heel := after(part.text, "heel"):
        found.figures["heel"] = read_figure(
            heel, name="heel", kinds=("mass",), line=line, zero=True
        )
    elif lands := _LANDS.fullmatch(part.text):
        found.figures["lands"] = read_figure(
            lands[1] + (lands[2] or ""),
            name="share that lands",
            kinds=("share",),
            line=line,
        )
    elif poured := _POURED.fullmatch(part.text):
        found.how = "poured"
        times = poured[1] if poured[1].endswith("times") else f"{poured[1]} times"
        found.figures["pour"] = read_figure(
            times + (poured[2] or ""), name="poured", kinds=("times",), line=line
        )
    elif part.text in ("dipped", "sprayed", "brushed", "rolled", "spattered"):
        found.how = part.text
    elif covers := after(part.text, "covers"):
        found.figures["covers"] = read_figure(
            covers, name="share that is covered", kinds=("share",), line=line
        )
    elif where := _ON.fullmatch(part.text):
        found.on = cast("Literal['face', 'sides', 'all round', 'cut edges']", where[1])
    elif part.text == "both ends":
        found.both_ends = True
    else:
        found.remarks.append(part.text)
