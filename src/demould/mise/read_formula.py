"""One line of a formula, as it stands on a card: amount, unit, ingredient, remark."""

import re
from collections.abc import Iterable
from dataclasses import dataclass, replace

from demould.mise.faults import Faults
from demould.mise.figure import Figure, Line
from demould.mise.formula import Formula, FormulaLine
from demould.mise.number import NUMBER, read_number, written
from demould.mise.parts import Part, at_column, name_and_rest, parts_of
from demould.mise.problem import UnreadableError
from demould.mise.quantity import read_figure
from demould.mise.resolve import resolve_line
from demould.mise.tree import Leaf
from demould.mise.unit import UNITS, Kind
from demould.mise.words import Words

KINDS: tuple[Kind, ...] = ("mass", "volume", "count")
HEAVIEST_KG = 50
"""A line of this many kg was likely meant in g: it is asked."""

_LINE = re.compile(
    rf"(?P<number>{NUMBER})\s*(?P<unit>[^\W\d]+\b)?\s*(?P<what>.*)", re.DOTALL
)
_REMARK = re.compile(
    r"(?P<strained>strained out)|(?P<made_up>made up)|keeps\s+(?P<keeps>.+)"
)


@dataclass(frozen=True, slots=True, kw_only=True)
class Names:
    """What a formula may name: the own larder's things, the dessert's other parts.

    `own` is None where the larder cannot be read: then any name may be in it.
    """

    own: tuple[str, ...] | None
    components: tuple[str, ...] = ()


@dataclass(slots=True)
class _Said:
    """What remarks say, and the words that are left."""

    strained_out: bool = False
    made_up: bool = False
    keeps: Figure | None = None


def read_formula(lines: Iterable[Leaf], names: Names, faults: Faults) -> Formula:
    """The lines of a formula, counted from 1; a line with a fault keeps its number."""
    found = []
    for ordinal, leaf in enumerate(lines, start=1):

        def read(line: Line, ordinal: int = ordinal) -> FormulaLine:
            return read_formula_line(line, ordinal, names)

        if (line := faults.one(leaf.line, read)) is not None:
            found.append(line)
    return tuple(found)


def read_formula_line(line: Line, ordinal: int, names: Names) -> FormulaLine:
    """``280 g  cream 35 %, hot; made up``; ``?`` or nothing where the amount is unknown.

    Raises
    ------
    UnreadableError
        If the amount cannot be read or be true, or nothing is called that.
    """
    head, rest = name_and_rest(line.text)
    amount, text, column = _amount(head, line)
    said = _Said()
    remarks = tuple(filter(None, (_remark(part, said, line) for part in rest)))
    with at_column(column):
        ingredient, what, state = _named(text, names)
    return FormulaLine(
        ordinal=ordinal,
        amount=replace(amount, name=what) if amount else None,
        what=what,
        state=state,
        ingredient=ingredient,
        component=None if ingredient else what,
        remarks=remarks,
        strained_out=said.strained_out,
        made_up=said.made_up,
        keeps=said.keeps,
        line=line,
    )


def _named(text: str, names: Names) -> tuple[str | None, str, str]:
    """The ingredient, or None and the key of the dessert's other part."""
    what, _, state = text.partition(",")
    for component in names.components:
        if component.casefold() == what.strip().casefold():
            return None, component, state.strip()
    try:
        return resolve_line(text, names.own or ())
    except UnreadableError:
        if names.own is None:
            return text, text, ""
        raise


def _amount(head: Part, line: Line) -> tuple[Figure | None, str, int]:
    """The amount, the rest of the text, and where that begins."""
    if head.text.startswith("?"):
        what = head.text[1:].lstrip()
        _refuse_nothing(what, head)
        return None, what, head.column + len(head.text) - len(what)
    found = _LINE.fullmatch(head.text)
    if not found:
        return None, head.text, head.column
    with at_column(head.column):
        number, unit, what = found["number"], found["unit"] or "", found["what"]
        if unit.casefold() not in UNITS:
            raise _no_unit(number, f"{unit} {what}".strip())
        _ask_kg(number, unit)
        origin = _brackets(what)
        amount = read_figure(
            f"{number} {unit} {origin}", name="amount", kinds=KINDS, line=line
        )
        named = what[len(origin) :].lstrip()
        _refuse_nothing(named, head)
    return amount, named, head.column + len(head.text) - len(named)


def _brackets(what: str) -> str:
    """How the amount is known, where brackets follow it at once."""
    found = re.match(r"\((?:measured|stated|assumed)[^()]*\)", what)
    return found[0] if found else ""


def _refuse_nothing(what: str, head: Part) -> None:
    if not what:
        raise UnreadableError(
            Words("{found!r} does not say of what", found=head.text),
            Words("Write the ingredient after the amount"),
        )


def _no_unit(number: str, what: str) -> UnreadableError:
    return UnreadableError(
        Words(
            "no unit stands after {number} in '{number} {what}'",
            number=number,
            what=what,
        ),
        Words(
            "Write the unit too, for example {number} g {what}",
            number=number,
            what=what,
        ),
    )


def _ask_kg(number: str, unit: str) -> None:
    value = read_number(number)
    if UNITS[unit.casefold()].factor < 1000 or value < HEAVIEST_KG:
        return
    small = "g" if UNITS[unit.casefold()].kind == "mass" else "ml"
    great = f"{written(value)} 000 {small}"
    raise UnreadableError(
        Words(
            "{number} {unit} on one line is more than a kitchen weighs at once",
            number=number,
            unit=unit,
        ),
        Words(
            "Write {number} {small}, or {great} if that is meant",
            number=number,
            small=small,
            great=great,
        ),
    )


def _remark(part: Part, said: _Said, line: Line) -> str:
    """The words of a remark that say nothing more; what they do say is noted."""
    left = []
    for piece in parts_of(part.text, ","):
        found = _REMARK.fullmatch(piece.text)
        if not found:
            left.append(piece.text)
        elif found["keeps"]:
            with at_column(part.column + piece.column):
                said.keeps = _keeps(found["keeps"], line)
        else:
            said.strained_out = said.strained_out or bool(found["strained"])
            said.made_up = said.made_up or bool(found["made_up"])
    return ", ".join(left)


def _keeps(text: str, line: Line) -> Figure:
    with_unit = re.sub(rf"^({NUMBER})(?=\s*$|\s*\()", r"\1 times", text)
    return read_figure(
        with_unit,
        name="liquid kept by the solids, times their weight",
        kinds=("times",),
        line=line,
        zero=True,
    )
