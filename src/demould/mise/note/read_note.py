"""A note off the wall, read whole: what it says, and what became of every word."""

from collections.abc import Iterable, Iterator, Sequence
from dataclasses import replace
from decimal import Decimal

from demould.larder.read import ingredient
from demould.larder.trade_words import language_of
from demould.mise.figure import Assumed, Figure, Line, Stated
from demould.mise.note.building import (
    OpenLine,
    OpenPart,
    OpenStep,
    id_of,
    without_repeats,
)
from demould.mise.note.clauses import AMOUNTS, Clause, Opening, clauses_of, opening_of
from demould.mise.note.done import BAKED_FROM
from demould.mise.note.noted import Note, NotedLine, NotedPart, NotedStep, Stretch, Use
from demould.mise.note.place import Reading
from demould.mise.note.quantities import quantities
from demould.mise.note.segments import read_body
from demould.mise.note.tags import Tag, tags_of
from demould.mise.note.tokens import tokens_of

FINISHES = {"dip": "thin dip", "glaze": "mirror glaze", "spray": "velvet spray"}
"""What is done to a piece at the end, and the part that it takes."""

MOST_CHARACTERS = 60_000
"""A longer text is no note: what is behind is kept and not read."""


def read_note(text: str, file: str = "note") -> Note:
    """Read a note; nothing in it is a fault, and no word of it is lost.

    Parameters
    ----------
    text
        As it stands on the wall or was spoken.
    file
        What its lines are called by.

    Returns
    -------
    Note
        Its stretches cover every word of the text, once and in order.
    """
    tokens = tokens_of(text[:MOST_CHARACTERS])
    language = language_of(token.plain for token in tokens if token.kind == "word")
    tags = quantities(tags_of(tokens, language))
    clauses = list(clauses_of(tags))
    parts = [OpenPart(name="", kind="")]
    now = Reading(part=parts[0])
    title: list[Tag] = []
    makes: list[Tag] = []
    for place, clause in enumerate(clauses):
        now.number = clause.line
        opening = _opened(clauses, place, clause)
        if opening.name:
            parts.append(_part(text, opening, clause))
            now.part, now.last = parts[-1], None
            _used(now, opening.name, "part")
        if opening.title:
            title.extend(opening.title)
            _used(now, opening.title, "title")
        if opening.makes and _is_total(opening.makes, now.part):
            now.part.total = opening.makes[-1]
            _used(now, opening.makes, "total")
        elif opening.makes and not makes:
            makes.extend(opening.makes)
            _used(now, opening.makes, "pieces")
        read_body(opening.rest, now)
    for part in parts:
        _only_spoken_of(part)
    return Note(
        text=text,
        title=_title(text, title, makes, parts),
        language=language,
        pieces=_pieces(text, makes, file),
        parts=tuple(_closed(text, part, file) for part in parts if _says(part)),
        calls=tuple(_calls(text, parts, now.called)),
        stretches=tuple(_stretches(text, tags, now)),
        mould=text[now.mould[0].start : now.mould[0].end].casefold()
        if now.mould
        else "",
    )


def _only_spoken_of(part: OpenPart) -> None:
    """A named part whose ingredients only the method names has no formula here."""
    if part.name and all(line.mentioned and line.low is None for line in part.lines):
        part.lines.clear()


def _opened(clauses: Sequence[Clause], place: int, clause: Clause) -> Opening:
    following = clauses[place + 1 : place + 2]
    heads = any(tag.kind in AMOUNTS for one in following for tag in one.tags)
    heads = heads or any(
        tag.kind == "ingredient" for one in following for tag in one.tags
    )
    return opening_of(clause, first=place == 0, heads=heads)


def _is_total(makes: Sequence[Tag], part: OpenPart) -> bool:
    """``make 900`` after shares is grams, not pieces."""
    shares = any(line.unit == "%" for line in part.lines)
    return shares and makes[-1].kind == "bare"


def _used(now: Reading, tags: Iterable[Tag], use: Use) -> None:
    for tag in tags:
        now.use(tag, use)


def _part(text: str, opening: Opening, clause: Clause) -> OpenPart:
    name = text[opening.name[0].start : opening.name[-1].end]
    return OpenPart(name=" ".join(name.split()), kind=opening.kind, number=clause.line)


def _says(part: OpenPart) -> bool:
    return bool(part.lines or part.steps or part.name)


def _title(
    text: str, title: Sequence[Tag], makes: Sequence[Tag], parts: Sequence[OpenPart]
) -> str:
    if title:
        ends = [tag.start for tag in makes if tag.start > title[0].start]
        found = text[title[0].start : min((title[-1].end, *ends))]
        return " ".join(found.split()).rstrip(",.:- (")
    return next((part.name for part in parts if part.name), "")


def _pieces(text: str, makes: Sequence[Tag], file: str) -> Figure | None:
    number = next((tag for tag in makes if tag.kind == "bare"), None)
    if number is None:
        return None
    return _figure(text, number, "pieces", "pieces the note says it makes", file, 0)


def _figure(
    text: str, tag: Tag, unit: str, name: str, file: str, number: int
) -> Figure:
    assert tag.low is not None
    assert tag.high is not None
    line = Line(file, number, text[tag.start : tag.end])
    return _between(tag.low, tag.high, unit, name, line)


def _between(low: Decimal, high: Decimal, unit: str, name: str, line: Line) -> Figure:
    """Stated; where the note gives two numbers, assumed between them."""
    if low == high:
        return Figure(
            value=float(low),
            unit=unit,
            name=name,
            origin=Stated(by="the note", line=line),
        )
    return Figure(
        value=float((low + high) / 2),
        unit=unit,
        name=name,
        origin=Assumed(low=float(low), high=float(high), source="the note", line=line),
    )


def _closed(text: str, part: OpenPart, file: str) -> NotedPart:
    total = part.total
    return NotedPart(
        name=part.name,
        kind=part.kind,
        lines=tuple(_line(text, one, file) for one in without_repeats(part.lines)),
        steps=tuple(_step(text, one, file) for one in part.steps),
        total=None
        if total is None
        else _figure(text, total, "g", f"{part.name} in all", file, part.number),
        line=Line(file, part.number, part.name),
    )


def _line(text: str, one: OpenLine, file: str) -> NotedLine:
    written = " ".join(text[tag.start : tag.end] for tag in one.written)
    written = written if ")" in written else written.replace("(", "")
    found = None if one.unknown else id_of(one.what)
    name = ingredient(found).name if found == one.what else one.what
    amount = None
    line = Line(file, one.number, written)
    if one.low is not None and one.high is not None:
        amount = _between(one.low, one.high, one.unit, name, line)
    return NotedLine(
        what=written if one.unknown else name,
        written=written,
        ingredient=found,
        amount=amount,
        no_unit=one.no_unit,
        guessed=one.guessed,
        mentioned=one.mentioned,
        steeped=one.steeped,
        whole=None if one.whole is None else float(one.whole),
        states=tuple(text[tag.start : tag.end] for tag in one.states),
        remarks=tuple(text[tag.start : tag.end] for tag in one.remarks),
        line=line,
    )


def _from(figure: Figure) -> Figure:
    """Of a time or a temperature with two ends the first is what is waited for."""
    if isinstance(figure.origin, Assumed):
        return replace(figure, value=figure.origin.low)
    return figure


def _action(one: OpenStep) -> str:
    """What is cooked at the heat of an oven is baked."""
    hot = (
        one.temp is not None and one.temp.low is not None and one.temp.low >= BAKED_FROM
    )
    return "bake" if one.action == "cook" and hot else one.action


def _step(text: str, one: OpenStep, file: str) -> NotedStep:
    words = one.words or [one.tag]
    written = " ".join(text[words[0].start : words[-1].end].split())
    at_c = minutes = None
    if one.temp is not None:
        at_c = _figure(
            text, one.temp, "°C", f"temperature to {one.action}", file, one.number
        )
    if one.time is not None:
        minutes = _figure(
            text, one.time, "min", f"time to {one.action}", file, one.number
        )
    while_ = text[one.while_.start : one.while_.end] if one.while_ else ""
    return NotedStep(
        action=_action(one),
        written=written,
        at_c=_from(at_c) if at_c else None,
        minutes=_from(minutes) if minutes else None,
        while_=while_,
        line=Line(file, one.number, written),
    )


def _calls(
    text: str, parts: Sequence[OpenPart], called: Sequence[Tag]
) -> Iterator[str]:
    """Parts spoken of, and finishes done, that the note has no formula for."""
    kinds = {part.kind for part in parts}
    names = " ".join(part.name.casefold() for part in parts)
    told = [part.name.casefold() for part in parts if part.name and not part.lines]
    for tag in called:
        name = text[tag.start : tag.end]
        if tag.may_be("part") not in kinds and name.casefold() not in names:
            told.append(name.casefold())
    for part in parts:
        for step in part.steps:
            kind = FINISHES.get(step.action)
            if kind and kind not in kinds and step.action not in names:
                told.append(step.action)
    yield from dict.fromkeys(told)


def _stretches(text: str, tags: Sequence[Tag], now: Reading) -> Iterator[Stretch]:
    """Every word of the text, remarks that touch each other as one; the rest behind."""
    number, at = 1, 0
    held: Stretch | None = None
    for tag in tags:
        number += text.count("\n", at, tag.start)
        at = tag.start
        if tag.kind == "line":
            continue
        use = now.uses.get(tag.start) or _left(tag)
        words = text[tag.start : tag.end]
        one = Stretch(start=tag.start, end=tag.end, text=words, use=use, line=number)
        if held and held.use == one.use == "remark" and held.line == one.line:
            held = Stretch(
                start=held.start,
                end=one.end,
                text=text[held.start : one.end],
                use="remark",
                line=held.line,
            )
            continue
        if held:
            yield held
        held = one
    if held:
        yield held
    if len(text) > MOST_CHARACTERS:
        rest = text[MOST_CHARACTERS:]
        yield Stretch(
            start=MOST_CHARACTERS, end=len(text), text=rest, use="remark", line=number
        )


def _left(tag: Tag) -> Use:
    small = ("colon", "dash", "stop", "mark", "join", "at", "about", "comma", "one")
    return "joining" if tag.kind in small else "remark"
