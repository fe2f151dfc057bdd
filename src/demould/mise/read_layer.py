"""What goes into the mould, over the piece and beside it, one thing a line."""

import re

from demould.mise.dessert import (
    SIDES,
    Cut,
    Fill,
    FromMould,
    Layer,
    Lining,
    OnPlate,
    Rest,
    Stands,
)
from demould.mise.figure import Figure, Line, Stated
from demould.mise.known import Known, component_called, mould_called
from demould.mise.number import NUMBER
from demould.mise.parts import Part, after, at_column, name_and_rest
from demould.mise.problem import UnreadableError
from demould.mise.quantity import read_figure
from demould.mise.read_shape import names_shape, read_shape
from demould.mise.resolve import resolve, unknown
from demould.mise.words import Words

_REST = re.compile(
    r"(?:(?:the )?(?:rest|other half)|half|(?:a|one|two) (?:third|quarter)s?|\d+ ?%)(?=$|[\s,])"
)
_MOULD = re.compile(r"from (?:the )?(.*\S) mould")
_APART = re.compile(
    rf"({NUMBER}\s*[^\W\d]+(?:\s*\(.*\))?)\s+"
    r"(?:above|over|below|under|off|from) (?:the )?(.*\S)"
)
_ON = re.compile(r"(?:rests |resting |lying |lies )?on (?:the )?(.*\S)")
_TURNED = re.compile(r"(?:small|round) side up|(?:large|flat|open) side down")


def read_layer(line: Line, components: tuple[str, ...], known: Known) -> Layer:
    """``centre; from the oval insert mould; 2.4 mm above the base; small side down``.

    Raises
    ------
    UnreadableError
        If nobody makes the component, it is not said how much of it goes in, or it
        stands so far from what is no part of the dessert.
    """
    name, rest = name_and_rest(line.text)
    with at_column(name.column):
        component = component_called(name.text, components)
    if not rest:
        raise UnreadableError(
            Words("how much {name!r} goes in is missing", name=component),
            Words("Write a shape with its sizes, 'from the NAME mould' or 'the rest'"),
        )
    with at_column(rest[0].column):
        fill = _fill(rest[0], known, line)
    stands, turned_over, remarks = None, False, []
    for part in rest[1:]:
        with at_column(part.column):
            found = _stands(part.text, components, line)
        stands = stands or found
        turned_over = turned_over or bool(_TURNED.fullmatch(part.text))
        if found is None and not _TURNED.fullmatch(part.text):
            remarks.append(part.text)
    return Layer(
        component=component,
        fill=fill,
        stands=stands,
        turned_over=turned_over,
        remarks=tuple(remarks),
        line=line,
    )


def _stands(text: str, components: tuple[str, ...], line: Line) -> Stands | None:
    """Where a layer stands, if the text says so: a bare "on the tray" does not."""
    if apart := _APART.fullmatch(text):
        figure = read_figure(apart[1], name="stands", kinds=("length",), line=line)
        side = apart[2].casefold()
        of = side if side in SIDES else component_called(apart[2], components)
        return Stands(of=of, apart=figure)
    on = _ON.fullmatch(text)
    if on and on[1] in (*components, *SIDES):
        touching = Figure(name="stands", value=0.0, unit="mm", origin=Stated(line=line))
        return Stands(of=on[1], apart=touching)
    return None


def _fill(part: Part, known: Known, line: Line) -> Fill:
    if found := _MOULD.fullmatch(part.text):
        return FromMould(mould=mould_called(found[1], known.moulds))
    if coat := after(part.text, "coat"):
        film = read_figure(
            coat, name="coat of the cavity", kinds=("length",), line=line
        )
        return Lining(film=film)
    if _REST.match(part.text) and not names_shape(part.text):
        return Rest(words=part.text)
    return Cut(shape=read_shape(part.text))


def read_on_plate(line: Line, components: tuple[str, ...], known: Known) -> OnPlate:
    """``sauce; 15 g``: a component, or something bought.

    Raises
    ------
    UnreadableError
        If nobody knows it, or how much of it is not said.
    """
    name, rest = name_and_rest(line.text)
    made = next((key for key in components if key == name.text), None)
    own = known.own
    if made is None and own is not None and resolve(name.text, own) is None:
        with at_column(name.column):
            raise unknown(name.text, (*components, *own))
    if not rest:
        raise UnreadableError(
            Words("how much {name!r} goes on a plate is missing", name=name.text),
            Words(
                "Write it after a semicolon, for example {name}; 15 g", name=name.text
            ),
        )
    with at_column(rest[0].column):
        amount = read_figure(
            rest[0].text,
            name=f"{name.text} on a plate",
            kinds=("mass", "volume", "count"),
            line=line,
        )
    return OnPlate(
        what=name.text,
        amount=amount,
        component=made,
        remarks=tuple(part.text for part in rest[1:]),
        line=line,
    )
