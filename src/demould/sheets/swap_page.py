"""Something else instead: grams, what was held, what changes all the same."""

from collections.abc import Iterator

from demould.advice.changes import Changes
from demould.matter.gelatin import APART
from demould.matter.substitute.agents import NeverOneForOne, OtherGelatin
from demould.matter.substitute.swap import NewLine, Swapped
from demould.mise.words import Words
from demould.sheets.page import Block, Cell, Column, Head, Lines, Page, Table, Text


def swap_page(
    found: Swapped, straight: Changes, balanced: Changes, *, out: str, into: str
) -> Page:
    """Lay a swap out: the new lines first, then what changes."""
    return Page(
        key="swap",
        title=found.component.name,
        note=Words("{out} becomes {into}", out=out, into=into),
        blocks=(
            Head(
                text=Words("weigh"),
                note=Words("held: {held}", held=", ".join(found.held)),
            ),
            Table(
                columns=(
                    Column(share=3),
                    Column(head=Words("was"), align="right"),
                    Column(head=Words("now"), align="right"),
                ),
                rows=tuple(_row(line) for line in found.lines),
            ),
            Head(text=Words("what changes all the same")),
            *_changes(balanced),
            Head(text=Words("if it only goes in gram for gram")),
            *_changes(straight),
        ),
    )


def _row(line: NewLine) -> tuple[Cell, ...]:
    was = "--" if line.before_g is None else _grams(line.before_g)
    moved = line.before_g is None or abs(line.after_g - line.before_g) >= 0.5
    return (
        Cell(text=line.what),
        Cell(text=was),
        Cell(text=_grams(line.after_g), strong=moved),
    )


def _grams(value: float) -> str:
    return f"{value:.1f} g" if value < 20 else f"{value:.0f} g"


def _changes(found: Changes) -> Iterator[Block]:
    lines: list[Text] = []
    if found.effects:
        lines.append(
            Words("{all}", all="; ".join(str(one.says) for one in found.effects))
        )
    else:
        lines.append(Words("nothing that would be tasted"))
    yield Lines(lines=tuple(lines))
    loud: list[Text] = []
    if found.allergens_in:
        loud.append(
            Words("ALLERGEN COMES IN: {all}", all=", ".join(found.allergens_in))
        )
    if loud:
        yield Lines(lines=tuple(loud), loud=True)
    rest: list[Text] = []
    if found.allergens_out:
        rest.append(
            Words(
                "no longer in the formula: {all}; ask what the new one may contain",
                all=", ".join(found.allergens_out),
            )
        )
    rest.extend(one.says for one in found.out)
    if found.trial is not None:
        rest.append(found.trial)
    if rest:
        yield Lines(lines=tuple(rest))


def gelatin_page(component: str, found: OtherGelatin, *, out: str, into: str) -> Page:
    """Gelatin of another bloom by both laws."""
    both = found.grams
    lines: list[Text] = [
        Words(
            "{before:g} g of {first:g} bloom: {root:.2f} g of {second:g} bloom"
            " by the square root (taken)",
            before=found.before_g,
            first=found.from_bloom.value,
            root=both.root,
            second=found.to_bloom.value,
        ),
        Words(
            "{ratio:.2f} g by the straight ratio, which leaves are made to",
            ratio=both.ratio,
        ),
    ]
    if both.apart > APART:
        lines.append(
            Words(
                "the two are {apart:.0f} % apart: trial first, on 100 g",
                apart=100 * both.apart,
            )
        )
    if found.warn is not None:
        lines.append(found.warn)
    lines.append(
        Words("its water in proportion, counted once; ask from which animal it is")
    )
    return Page(
        key="swap",
        title=component,
        note=Words("{out} becomes {into}", out=out, into=into),
        blocks=(Lines(lines=tuple(lines)),),
    )


def never_page(component: str, found: NeverOneForOne, *, out: str, into: str) -> Page:
    """Another agent altogether: no swap, only where a trial may start."""
    lines = (
        Words("NO SWAP: {why}", why=found.why),
        Words(
            "a trial may start between {low:g} and {high:g} % {agent} of the whole:"
            " {low_g:.1f} to {high_g:.1f} g in this batch",
            low=found.low,
            high=found.high,
            agent=found.agent,
            low_g=found.low_g,
            high_g=found.high_g,
        ),
        Words("trial first, frozen and thawed like the piece, cut and tasted"),
    )
    return Page(
        key="swap",
        title=component,
        note=Words("{out} becomes {into}", out=out, into=into),
        blocks=(Lines(lines=lines[:1], loud=True), Lines(lines=lines[1:])),
    )
