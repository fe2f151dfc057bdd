"""What one more would buy: only what changes, and what would be no use."""

from datetime import datetime

from demould.mise.words import Words
from demould.sheets.page import Block, Cell, Column, Lines, Page, Table
from demould.sheets.times import day_time, span
from demould.week.one_more import Bought, Cost, OneMore

SAME = "same"


def more_page(bought: Bought, now: datetime) -> Page:
    """Lay out what each thing saves this week, a row each."""
    of_use = [one for one in bought.each if _saves(bought.now, one.cost)]
    no_use = [str(one.thing) for one in bought.each if one not in of_use]
    blocks: list[Block] = [_table(bought.now, of_use)]
    if no_use:
        blocks.append(
            Lines(lines=(Words("No use this week: {what}.", what=", ".join(no_use)),))
        )
    blocks.append(
        Lines(
            lines=(
                Words(
                    "Each is planned anew. On the clock: every order alone, from its"
                    " first hands to its last, with somebody there day and night."
                ),
            )
        )
    )
    return Page(
        key="more",
        title=Words("what one more would buy, this week"),
        note=Words("asked {now}", now=day_time(now)),
        blocks=tuple(blocks),
    )


def _saves(now: Cost, cost: Cost) -> bool:
    return any(text not in ("", SAME) for text in _texts(now, cost))


def _texts(now: Cost, cost: Cost) -> tuple[str, ...]:
    return (
        _fewer(now.rounds, cost.rounds),
        _fewer(now.whips, cost.whips),
        _fewer(round(now.lost_g), round(cost.lost_g), " g"),
        _time(now.work_min, cost.work_min),
        _time(now.clock_min, cost.clock_min),
        _visits(now.visits, cost.visits),
    )


def _fewer(before: int, after: int, unit: str = "") -> str:
    return SAME if before == after else f"{after - before:+d}{unit}"


def _time(before: int | None, after: int | None) -> str:
    if before == after:
        return SAME
    if before is None or after is None:
        return "none" if after is None else span(after)
    return ("-" if after < before else "+") + span(abs(after - before))


def _visits(before: int | None, after: int | None) -> str:
    if before is None and after is not None:
        return "it stands"
    if after is None:
        return SAME if before is None else "no plan"
    assert before is not None
    return _fewer(before, after)


def _table(now: Cost, rows: list[OneMore]) -> Table:
    heads = ("one more", "rounds", "whips", "lost", "work", "on the clock", "visits")
    return Table(
        columns=tuple(
            Column(head=head, align="right" if place else "left", share=1 + (not place))
            for place, head in enumerate(heads)
        ),
        rows=(
            (Cell(text="(as it is)"), *(Cell(text=text) for text in _as_it_is(now))),
            *(
                (
                    Cell(text=one.thing),
                    *(Cell(text=text) for text in _texts(now, one.cost)),
                )
                for one in rows
            ),
        ),
    )


def _as_it_is(now: Cost) -> tuple[str, ...]:
    return (
        str(now.rounds),
        str(now.whips),
        f"{now.lost_g:.0f} g",
        span(now.work_min),
        span(now.clock_min) if now.clock_min is not None else "none",
        str(now.visits) if now.visits is not None else "no plan",
    )
