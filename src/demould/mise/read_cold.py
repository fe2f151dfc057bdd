"""Lines of tools, dip jugs, cold places and scales."""

import re

from demould.mise.figure import Figure, Line
from demould.mise.kitchen import ColdPlace, Jug, Scale, Shelves, Tool
from demould.mise.number import NUMBER
from demould.mise.parts import after, at_column, name_and_rest
from demould.mise.problem import UnreadableError
from demould.mise.quantity import read_amount, read_count, read_figure
from demould.mise.spelling import one_of
from demould.mise.words import Words

COLD_KINDS = (
    "blast chiller",
    "upright freezer",
    "still freezer",
    "fan fridge",
    "still fridge",
)
MOST_SHELVES = 999
_SHELVES = re.compile(r"(\d+) (?:shelf|shelves|levels?) of (.*\S)\s*x\s*(.*\S)")

_HUMID = re.compile(r"(.*\S)\s+(?:humid|humidity|RH)\b(\s*\(.*\))?")


def read_tool(line: Line) -> Tool:
    """``mixer; bowl 4.8 l; full to 70 %; at least 400 g``.

    Raises
    ------
    UnreadableError
        If an amount cannot be read.
    """
    name, rest = name_and_rest(line.text)
    bowl = fill = least = None
    remarks = []
    for part in rest:
        with at_column(part.column):
            if held := after(part.text, "bowl", "jug"):
                bowl = read_figure(held, name="bowl", kinds=("volume",), line=line)
            elif share := after(part.text, "full to"):
                fill = read_figure(
                    share, name="share that may be full", kinds=("share",), line=line
                )
            elif small := after(part.text, "at least"):
                least = read_figure(
                    small, name="least it takes", kinds=("mass",), line=line
                )
            else:
                remarks.append(part.text)
    return Tool(
        key=name.text,
        bowl=bowl,
        fill=fill,
        least=least,
        remarks=tuple(remarks),
        line=line,
    )


def read_jug(line: Line) -> Jug:
    """``80 mm wide, 160 mm high``.

    Raises
    ------
    UnreadableError
        If it is not these two.
    """
    found = re.fullmatch(r"(.*\S)\s+wide[,;]\s*(.*\S)\s+high", line.text)
    if not found:
        raise UnreadableError(
            Words("{found!r} is not a jug with its sizes", found=line.text),
            Words("Write both, inside: 100 mm wide, 160 mm high"),
        )
    across, high = (
        read_figure(size, name=name, kinds=("length",), line=line)
        for size, name in zip(
            found.groups(), ("width of the jug", "height of the jug"), strict=True
        )
    )
    return Jug(diameter=across, height=high, line=line)


def read_scale(line: Line) -> Scale:
    """``5 kg in steps of 1 g``.

    Raises
    ------
    UnreadableError
        If it is not these two.
    """
    found = re.fullmatch(r"(.*\S)\s+in steps of\s+(\S.*)", line.text)
    if not found:
        raise UnreadableError(
            Words("{found!r} is not a scale", found=line.text),
            Words("Write it like 5 kg in steps of 1 g"),
        )
    most, step = (
        read_figure(size, name=name, kinds=("mass",), line=line)
        for size, name in zip(
            found.groups(), ("most the scale takes", "step of the scale"), strict=True
        )
    )
    return Scale(most=most, step=step, line=line)


def read_cold_place(line: Line) -> ColdPlace:
    """``blast; -35 °C; blast chiller; 5 kg a cycle; 3 levels of 530 x 325 mm``.

    Measured there: ``film 31 W/m2K (measured)``, ``80 % humid (measured)``.

    Raises
    ------
    UnreadableError
        If air or kind are missing, or the kind is not one of `COLD_KINDS`.
    """
    name, rest = name_and_rest(line.text)
    air: Figure | None = None
    load: Figure | None = None
    shelves: Shelves | None = None
    film: Figure | None = None
    humidity: Figure | None = None
    kind, remarks = None, []
    for part in rest:
        with at_column(part.column):
            if air is None and re.match(
                rf"{NUMBER}\s*(?:°|[a-z]*\s*[CF]\b)", part.text
            ):
                air = read_figure(
                    part.text,
                    name=f"air of the {name.text}",
                    kinds=("temperature",),
                    line=line,
                )
            elif found := re.fullmatch(r"(.*\S)\s+(?:a|per) cycle", part.text):
                load = read_figure(
                    found[1], name="load of a cycle", kinds=("mass",), line=line
                )
            elif sizes := _SHELVES.fullmatch(part.text):
                shelves = _shelves(*sizes.groups())
            elif told := after(part.text, "film"):
                film = read_figure(
                    told, name=f"film of the {name.text}", kinds=("film",), line=line
                )
            elif damp := _HUMID.fullmatch(part.text):
                humidity = read_figure(
                    "".join(damp.groups("")),
                    name=f"humidity of the {name.text}",
                    kinds=("share",),
                    line=line,
                )
            elif kind is None:
                kind = one_of(part.text, COLD_KINDS, "kind of cold place")
            else:
                remarks.append(part.text)
    if air is None or kind is None:
        missing = "air" if air is None else "kind"
        raise UnreadableError(
            Words(
                "the {missing} of {name!r} is missing", missing=missing, name=name.text
            ),
            Words("Write it like fridge; 3 °C; fan fridge"),
        )
    return ColdPlace(
        key=name.text,
        air=air,
        kind=kind,
        load=load,
        shelves=shelves,
        film=film,
        humidity=humidity,
        remarks=tuple(remarks),
        line=line,
    )


def _shelves(count: str, one: str, other: str) -> Shelves:
    """``6 shelves of 600 x 400 mm``: a unit once stands for both."""
    unit = re.search(r"[^\d.,\s]+$", other)
    if unit is not None and not re.search(r"[^\d.,\s]$", one):
        one = f"{one} {unit[0]}"
    length, width = (
        read_amount(size, name="size of a shelf", kinds=("length",)).value
        for size in (one, other)
    )
    return Shelves(
        count=read_count(
            count, name="number of shelves", most=MOST_SHELVES, what="shelves"
        ),
        length_mm=length,
        width_mm=width,
    )
