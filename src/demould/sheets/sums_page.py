"""The answers to sums at the stove, a few lines each."""

from collections.abc import Sequence

from demould.advice.poured import Poured
from demould.larder.fact import Fact
from demould.mise.figure import Estimate
from demould.mise.words import Words
from demould.sheets.page import Cell, Column, Head, Lines, Page, Table, Text
from demould.week.trial import Trial

HOT_SUGAR = Words(
    "hot sugar burns deep: gloves, long sleeves, cold water near, nobody beside you"
)


def mix_page(said: Sequence[str], mixed: Estimate, window: Fact | None) -> Page:
    """What temperature a mix comes to, and whether that is in the window."""
    lines: list[Text] = [Words("{what}", what=" + ".join(said))]
    if mixed.high - mixed.low >= 0.5:
        lines.append(
            Words(
                "about {likely:.0f} °C; {low:.0f} °C if cream in it has stood cold over night:"
                " {why}",
                likely=mixed.likely,
                low=mixed.low,
                why=mixed.reason,
            )
        )
    else:
        lines.append(Words("about {likely:.0f} °C", likely=mixed.likely))
    if window is not None:
        lines.append(_against(mixed, window))
    lines.append(Words("a cold bowl takes a degree or two more: probe it"))
    return Page(key="mix", title=Words("MIXED"), blocks=(Lines(lines=tuple(lines)),))


def _against(mixed: Estimate, window: Fact) -> Words:
    values = {"low": window.low, "high": window.high}
    if mixed.likely < window.low:
        return Words(
            "BELOW {low:g} to {high:g} °C: melt the couverture first, or pour it hotter",
            **values,
        )
    if mixed.likely > window.high:
        return Words(
            "OVER {low:g} to {high:g} °C: let it cool before you go on", **values
        )
    if mixed.low < window.low:
        return Words(
            "within {low:g} to {high:g} °C, near its lower end: probe it", **values
        )
    return Words("within {low:g} to {high:g} °C", **values)


def sugar_page(
    asked_c: float, water_c: float, sugar: Estimate, solids: float, whence: Words
) -> Page:
    """What the thermometer must show up here for sugar cooked to `asked_c` at the sea."""
    lines = (
        Words("water boils at {water:.1f} °C ({whence})", water=water_c, whence=whence),
        Words(
            "cook to {likely:.1f} °C where the card says {asked:g} °C"
            " (between {low:.1f} and {high:.1f})",
            likely=sugar.likely,
            asked=asked_c,
            low=sugar.low,
            high=sugar.high,
        ),
        Words("that is a syrup of about {solids:.0f} % sugar", solids=solids),
        HOT_SUGAR,
    )
    return Page(key="sugar", title=Words("SUGAR"), blocks=(Lines(lines=lines),))


def poured_page(found: Poured) -> Page:
    """Two ways on with too much of one line in the bowl."""
    lines: list[Text] = [
        Words(
            "{poured:g} g {what} instead of {wanted:g} g, for {pieces} pieces",
            poured=found.poured_g,
            what=found.line.what,
            wanted=found.wanted_g,
            pieces=found.pieces,
        )
    ]
    blocks = (
        Lines(lines=tuple(lines)),
        Head(
            text=Words(
                "the others in proportion, x {times:.3f}", times=found.others.times
            ),
            note=Words("gives {n} pieces", n=found.others.pieces),
        ),
        Table(
            columns=(Column(align="right", share=0.6), Column(share=4)),
            rows=tuple(
                (Cell(text=f"{one.grams.value:g} g"), Cell(text=one.line.what))
                for one in found.others.lines
            ),
            ticks=True,
        ),
        Head(
            text=Words("or go on as it is"),
            note=Words("gives {n} pieces", n=found.as_it_is.pieces),
        ),
        Lines(lines=_going_on(found), loud=found.as_it_is.refused is not None),
    )
    return Page(key="poured", title=found.component.name, blocks=blocks)


def _going_on(found: Poured) -> tuple[Text, ...]:
    if found.as_it_is.refused is not None:
        return (found.as_it_is.refused,)
    if not found.as_it_is.out:
        return (Words("nothing leaves its band; taste it, it is not the same"),)
    return tuple(one.says for one in found.as_it_is.out)


def trial_page(name: str, trial: Trial) -> Page:
    """The smallest honest trial, and what does not shrink with it."""
    return Page(
        key="trial",
        title=name,
        note=Words("the smallest honest trial: {n}", n=trial.pieces),
        blocks=(
            Lines(lines=(trial.reason,)),
            Table(
                columns=(
                    Column(share=2),
                    Column(head=Words("needs"), align="right"),
                    Column(head=Words("make"), align="right"),
                    Column(share=3),
                ),
                rows=tuple(
                    (
                        Cell(text=part.name),
                        Cell(text=f"{part.needs.value:.0f} g"),
                        Cell(text=f"{part.make_g:.0f} g"),
                        Cell(text=part.why or ""),
                    )
                    for part in trial.parts
                ),
            ),
        ),
    )
