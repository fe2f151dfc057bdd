"""One line of a method: its key, how long, and what it needs."""

import re
from dataclasses import dataclass, field, replace

from demould.mise.figure import Figure, Line, Worked
from demould.mise.method import Hands, Need, Road, Stand, Step
from demould.mise.number import NUMBER
from demould.mise.parts import Part, after, at_column, parts_of
from demould.mise.problem import UnreadableError
from demould.mise.quantity import read_figure, read_range
from demould.mise.spelling import one_of, very_near
from demould.mise.unit import Kind
from demould.mise.words import Words

EXAMPLE = Words(
    "Write it like 10 min, or 1.5 min a piece, or stands 12 h to 48 h, or blast 2.5 h or"
    " freezer 12 h"
)
_FLAGS = ("each round", "all hands")
_PER = re.compile(rf"(.*\S)\s+per\s+({NUMBER})(?:\s*pieces?)?")
_EACH = re.compile(r"(.*\S)\s+(?:a|per|each)\s+(piece|portion)(?:\s*(\(.*\)))?")
_ROAD = re.compile(rf"(\D*[^\W\d])\s+({NUMBER}.*)")


@dataclass(frozen=True, slots=True, kw_only=True)
class Around:
    """What a step may name. None where the kitchen cannot be read: then not checked.

    `steps` are the components that can be needed, each with the keys of its steps.
    """

    tools: tuple[str, ...] | None = None
    cold: tuple[str, ...] | None = None
    steps: dict[str, tuple[str, ...]] = field(default_factory=dict)


@dataclass(slots=True)
class _Found:
    place: str | None = None
    tools: list[str] = field(default_factory=list)
    needs: list[Need] = field(default_factory=list)
    each_round: bool = False
    skill: str | None = None
    all_hands: bool = False
    figures: dict[str, Figure] = field(default_factory=dict)
    remarks: list[str] = field(default_factory=list)


def key_of_step(text: str) -> str:
    """The first word of a line, which is the key of its step."""
    return re.split(r"[\s;]", text.strip(), maxsplit=1)[0]


def read_step(line: Line, around: Around) -> Step:
    """``fill  1.5 min a piece; each round; needs centre, base; scrape``.

    Raises
    ------
    UnreadableError
        If how long it takes cannot be read, or a name in it is not known.
    """
    key = key_of_step(line.text)
    parts = parts_of(line.text[len(key) :])
    if not parts:
        raise UnreadableError(
            Words("nobody says how long {key!r} takes", key=key), EXAMPLE
        )
    step = Step(key=key, line=line)
    with at_column(len(key) + parts[0].column):
        step = _with_times(step, parts[0].text, around)
    found = _Found()
    for part in parts[1:]:
        with at_column(len(key) + part.column):
            _take(part, found, around, line)
    hands = step.hands
    if found.all_hands:
        hands = replace(hands or _no_hands(key), all_hands=True)
    return replace(
        step,
        hands=hands,
        place=found.place,
        tools=tuple(found.tools),
        needs=tuple(found.needs),
        each_round=found.each_round,
        skill=found.skill,
        within=found.figures.get("within"),
        hold=found.figures.get("hold"),
        core=found.figures.get("core"),
        remarks=tuple(found.remarks),
    )


def _no_hands(key: str) -> Hands:
    raise UnreadableError(
        Words("{key!r} has all hands and no working time", key=key),
        Words("Write how long it takes, or leave 'all hands' out"),
    )


def _with_times(step: Step, text: str, around: Around) -> Step:
    """Hands, a stand after them, or roads to choose from."""
    line = step.line
    for part in parts_of(text, ","):
        with at_column(part.column):
            if stands := after(part.text, "stands"):
                low, high = read_range(stands, name="wait", kinds=("time",), line=line)
                step = replace(step, stand=Stand(least=low, most=high))
            elif re.match(NUMBER, part.text) and step.hands is None:
                step = replace(step, hands=_hands(part.text, line))
            elif _ROAD.fullmatch(part.text) and not step.roads:
                step = replace(step, roads=_roads(part.text, line, around))
            else:
                wrong = "{found!r} does not say how long {key!r} takes"
                raise UnreadableError(
                    Words(wrong, found=part.text, key=step.key), EXAMPLE
                )
    return step


def _time(text: str, name: str, line: Line | None) -> Figure:
    return read_figure(text, name=name, kinds=("time",), line=line)


def _hands(text: str, line: Line | None) -> Hands:
    """``15 min``, ``1.5 min a piece``, ``15 min per 24``, two of them with ``and``."""
    found: dict[str, Figure] = {}
    for part in re.split(r"\s+and\s+", text):
        if per := _PER.fullmatch(part):
            name, figure = "per_piece", _per(per[1], per[2], line)
        elif each := _EACH.fullmatch(part):
            name = f"per_{each[2]}"
            shown = f"{each[1]} {each[3] or ''}"
            figure = _time(shown, f"working time a {each[2]}", line)
        else:
            name, figure = "fixed", _time(part, "working time", line)
        if name in found:
            raise UnreadableError(
                Words("{found!r} has the same kind of time twice", found=text),
                Words("Add them up, or write one of them a piece"),
            )
        found[name] = figure
    return Hands(**found)  # type: ignore[arg-type]  # its names are fields of Hands


def _per(time: str, number: str, line: Line | None) -> Figure:
    """``15 min per 24`` is kept as written, in the two figures it comes from."""
    minutes = _time(time, "working time", line)
    pieces = read_figure(
        f"{number} pieces", name="pieces in that time", kinds=("count",), line=line
    )
    return Figure(
        name="working time a piece",
        value=minutes.value / pieces.value,
        unit="min",
        origin=Worked(rule=Words("minutes by pieces"), parts=(minutes, pieces)),
    )


def _roads(text: str, line: Line | None, around: Around) -> tuple[Road, ...]:
    """``blast 2.5 h or freezer 12 h``: names of cold places."""
    roads = []
    for part in re.split(r"\s+or\s+", text):
        found = _ROAD.fullmatch(part)
        if not found:
            raise UnreadableError(
                Words("{found!r} is not a place and a time", found=part), EXAMPLE
            )
        place = found[1].strip()
        if around.cold is not None:
            place = one_of(place, around.cold, "cold place")
        roads.append(
            Road(place=place, least=_time(found[2], f"time in the {place}", line))
        )
    return tuple(roads)


_FIGURES: tuple[tuple[str, Kind, str, tuple[str, ...]], ...] = (
    ("within", "time", "time until it is used up", ("used up within",)),
    ("hold", "time", "hold", ("hold",)),
    ("core", "temperature", "core", ("core",)),
)


def _take(part: Part, found: _Found, around: Around, line: Line) -> None:
    """Put one part of the line where it belongs."""
    for key, kind, name, openings in _FIGURES:
        if said := after(part.text, *openings):
            found.figures[key] = read_figure(said, name=name, kinds=(kind,), line=line)
            return
    if needs := after(part.text, "needs"):
        found.needs.extend(
            _need(one.text, around)
            for one in parts_of(needs.replace(" and ", ", "), ",")
        )
    elif skill := after(part.text, "who can"):
        found.skill = skill
    elif tool := _among(part.text, around.tools):
        found.tools.append(tool)
    elif not found.place and (place := _among(part.text, around.cold)):
        found.place = place
    elif part.text in _FLAGS:
        found.each_round = found.each_round or part.text == _FLAGS[0]
        found.all_hands = found.all_hands or part.text == _FLAGS[1]
    else:
        _refuse_near_miss(part.text, around)
        found.remarks.append(part.text)


def _among(text: str, names: tuple[str, ...] | None) -> str | None:
    wanted = text.casefold()
    return next((name for name in names or () if name.casefold() == wanted), None)


def _need(text: str, around: Around) -> Need:
    """A component, or a component up to one of its steps."""
    if text not in around.steps:
        for component, steps in around.steps.items():
            if step := after(text, component):
                return Need(component=component, step=one_of(step, steps, "step"))
    return Need(component=one_of(text, around.steps, "component"))


def _refuse_near_miss(text: str, around: Around) -> None:
    known = (*_FLAGS, *(around.tools or ()), *(around.cold or ()))
    near = very_near(text, known)
    if near is not None:
        raise UnreadableError(
            Words("{found!r} is no tool, no cold place and no rule", found=text),
            Words(
                "Perhaps you meant {near!r}; if not, write it in other words", near=near
            ),
        )
