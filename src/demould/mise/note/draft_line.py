"""One line of a draft's formula: amount, name, and what the note said of it."""

from collections.abc import Iterator

from demould.larder.find import find_ingredient
from demould.larder.names import plain
from demould.larder.read import ingredient, unit_weight
from demould.larder.starts import vague
from demould.mise.figure import Assumed, Figure
from demould.mise.note.noted import NotedLine, NotedPart
from demould.mise.note.one_line import one_line
from demould.mise.number import written

BATCH_G = 1000.0
"""What a part that is written in shares alone is taken to make."""

_SHOWN = {"spoon": "spoons", "teaspoon": "tsp", "leaf": "leaves", "cup": "cups"}


def formula_lines(part: NotedPart) -> Iterator[str]:
    """Every line of a part; shares become grams of its batch."""
    batch = part.total.value if part.total else _base(part)
    told = [(line, *_amount(line, batch)) for line in part.lines]
    width = max((len(amount) for _, amount, _ in told), default=0)
    for line, amount, said in told:
        named = f"{amount:{width}}  {house_name(line)}"
        yield "; ".join((named, *said, *_remarks(line)))


def _base(part: NotedPart) -> float:
    """What shares are of: the lines in grams beside them, else a batch."""
    grams = [
        line.amount.value
        for line in part.lines
        if line.amount is not None and line.amount.unit == "g"
    ]
    return sum(grams) or BATCH_G


def house_name(line: NotedLine) -> str:
    """What the line is called in the file: as written where the table knows that."""
    as_written = one_line(line.written).casefold()
    if line.ingredient is None:
        return one_line(line.what) or "?"
    found = find_ingredient(as_written)
    of_the_table = line.what == ingredient(line.ingredient).name
    if of_the_table and found is not None and found.id == line.ingredient:
        return as_written
    return line.what


def _remarks(line: NotedLine) -> Iterator[str]:
    called = one_line(line.written)
    other = vague(called)
    if line.guessed or (other is not None and other.name != plain(line.what)):
        yield f'written "{called}"'
    if line.steeped:
        yield "strained out"
    if line.mentioned:
        yield "only the method names it"
    for word in (*line.states, *line.remarks):
        if bare := one_line(word):
            yield bare


def _amount(line: NotedLine, batch: float) -> tuple[str, list[str]]:
    """The amount as the file says it, and what is to be kept of how it was written."""
    amount = line.amount
    if amount is None:
        return "?", []
    if amount.value <= 0:
        return "?", [f"written {written(amount.value)} {amount.unit}"]
    if amount.unit == "%":
        said = f"written {written(amount.value)} %"
        return f"{_short(amount.value * batch / 100)} g", [said]
    if amount.unit == "drop":
        each = unit_weight("drop", "volume")
        ml = amount.value * (each.value if each else 0.05)
        return f"{_short(ml)} ml", [f"written {written(amount.value)} drops"]
    if amount.unit in ("tin", "part"):
        return "?", [f"written {written(amount.value)} {amount.unit}"]
    parts = [f"split of {_short(line.whole)} g"] if line.whole is not None else []
    return _with_unit(amount), parts


def _with_unit(amount: Figure) -> str:
    unit = _SHOWN.get(amount.unit, amount.unit) if amount.value != 1 else amount.unit
    shown = f"{_short(amount.value)} {unit}"
    if isinstance(amount.origin, Assumed):
        low, high = _short(amount.origin.low), _short(amount.origin.high)
        return f"{shown} (assumed {low} to {high}, the note)"
    return shown


def _short(value: float) -> str:
    return written(round(value, 4))
