"""Lines of ``lots.txt``: ``came C-1188; cream 35 %; Wed 2026-11-18; from Weir Dairy``."""

from collections.abc import Callable, Iterator

from demould.mise.clock import read_day
from demould.mise.figure import Line
from demould.mise.own_lots import Came, Entry, Lots, Made, Went
from demould.mise.parts import after, name_and_rest
from demould.mise.problem import Problem, UnreadableError
from demould.mise.words import Words

HOW = Words(
    "Write it like came C-1188; cream 35 %; Wed 2026-11-18; from Weir Dairy, or made"
    " G-47; ganache; Wed 2026-11-18; of C-1188, W-330, or went P-47; table 6; Sat"
    " 2026-11-21; 2 pieces"
)


def read_lots(text: str, file: str) -> tuple[Lots, tuple[Problem, ...]]:
    """Read every line, say which are none, then what no single line can tell."""
    found: list[Entry] = []
    amiss: list[Problem] = []
    for number, written in enumerate(text.splitlines(), start=1):
        if not written.strip() or written.lstrip().startswith("#"):
            continue
        line = Line(file, number, written.strip(), 1)
        try:
            found.append(_entry(line))
        except UnreadableError as fault:
            amiss.append(Problem(file, number, 1, fault.wrong, fault.remedy))
    return tuple(found), (*amiss, *_together(found))


def _entry(line: Line) -> Entry:
    head, rest = name_and_rest(line.text)
    kind, _, lot = head.text.partition(" ")
    parts = [part.text for part in rest]
    if kind not in _READ or not lot.strip() or len(parts) < 2:
        raise UnreadableError(Words("{found!r} is no lot", found=line.text), HOW)
    return _READ[kind](lot.strip(), parts, line)


def _came(lot: str, parts: list[str], line: Line) -> Came:
    said = _said(parts[2:], ("from", "use by"))
    use_by = said.get("use by")
    return Came(
        lot=lot,
        what=parts[0],
        on=read_day(parts[1]),
        supplier=said.get("from", ""),
        use_by=read_day(use_by) if use_by else None,
        line=line,
    )


def _made(lot: str, parts: list[str], line: Line) -> Made:
    said = _said(parts[2:], ("of", "use by"))
    of = tuple(one.strip() for one in said.get("of", "").split(",") if one.strip())
    if not of:
        raise UnreadableError(
            Words("nobody says what {lot!r} was made of", lot=lot),
            Words("Write of and its lots, for example of C-1188, W-330"),
        )
    use_by = said.get("use by")
    return Made(
        lot=lot,
        what=parts[0],
        on=read_day(parts[1]),
        of=of,
        use_by=read_day(use_by) if use_by else None,
        line=line,
    )


def _went(lot: str, parts: list[str], line: Line) -> Went:
    return Went(
        lot=lot,
        to=parts[0],
        on=read_day(parts[1]),
        how_much="; ".join(parts[2:]),
        line=line,
    )


def _said(parts: list[str], words: tuple[str, ...]) -> dict[str, str]:
    found: dict[str, str] = {}
    for part in parts:
        for word in words:
            told = after(part, word)
            if told:
                found[word] = told
                break
        else:
            raise UnreadableError(Words("{found!r} is not known here", found=part), HOW)
    return found


_READ: dict[str, Callable[[str, list[str], Line], Entry]] = {
    "came": _came,
    "made": _made,
    "went": _went,
}


def _together(found: list[Entry]) -> Iterator[Problem]:
    known: dict[str, Came | Made] = {}
    for one in found:
        if isinstance(one, Went):
            continue
        if one.use_by is not None and one.use_by < one.on:
            yield _problem(
                one,
                Words(
                    "{lot} is to be used by {use_by}, before {on}, the day it was there",
                    lot=one.lot,
                    use_by=one.use_by,
                    on=one.on,
                ),
                Words("Read the pack again"),
            )
        before = known.setdefault(one.lot, one)
        if before is one:
            continue
        if isinstance(one, Came) and isinstance(before, Came):
            if (before.supplier, before.what) != (one.supplier, one.what):
                yield _problem(
                    one,
                    Words(
                        "lot {lot} came as {what} from {one} and as {other} from {two}",
                        lot=one.lot,
                        what=before.what,
                        one=before.supplier or Words("nobody named"),
                        other=one.what,
                        two=one.supplier or Words("nobody named"),
                    ),
                    Words("One lot has one supplier: read both packs"),
                )
        else:
            yield _problem(
                one,
                Words("two lots are called {lot}", lot=one.lot),
                Words("Give one of them another name"),
            )
    for one in found:
        used = one.of if isinstance(one, Made) else (one.lot,)
        for lot in used:
            if lot not in known:
                yield _problem(
                    one,
                    Words("lot {lot} never came and was never made", lot=lot),
                    Words("Write its line, or mend its name"),
                )
            elif lot == one.lot and isinstance(one, Made):
                yield _problem(
                    one,
                    Words("{lot} is made of itself", lot=lot),
                    Words("Give what is topped up a new lot, made of the old one"),
                )


def _problem(one: Entry, wrong: Words, remedy: Words) -> Problem:
    line = one.line or Line("", 0, "")
    return Problem(line.file, line.number, line.column, wrong, remedy)
