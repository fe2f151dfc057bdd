"""A note as read, as plain JSON."""

from __future__ import annotations

from typing import TYPE_CHECKING

from demould.counter.cli.answer import Answer, of_estimate, of_figure, of_week

if TYPE_CHECKING:
    from demould.advice.gaps.gap import Gap
    from demould.counter.cli.note_drafted import Found
    from demould.mise.note.noted import NotedLine, NotedPart
    from demould.week.sections import Week


def of_note(found: Found, week: Week | None) -> Answer:
    """Give the note, its draft, what it does not say, and the week where asked."""
    note = found.note
    answer: Answer = {
        "title": note.title,
        "language": note.language,
        "pieces": of_figure(note.pieces) if note.pieces else None,
        "parts": [_part(one) for one in note.parts],
        "called_for": list(note.calls),
        "not_understood": list(note.remarks),
        "files": found.texts,
        "counts": [
            {
                "component": one.component,
                "pieces": one.pieces,
                "between": of_estimate(one.spread),
                "weakest": one.weakest,
            }
            for one in (found.counts.each if found.counts else ())
        ],
        "gaps": [of_gap(one) for one in found.gaps],
        "questions": [
            {"number": one.number, "asks": str(one.asks), "gap": one.gap.key}
            for one in found.questions
        ],
    }
    if week is not None:
        answer["week"] = of_week(week)
    return answer


def of_gap(gap: Gap) -> Answer:
    """Give one thing that is not said."""
    return {
        "key": gap.key,
        "kind": gap.kind,
        "says": str(gap.says),
        "takes": str(gap.takes),
        "asks": str(gap.asks),
        "line": gap.line.number if gap.line else None,
        "moves": [
            {
                "what": one.what,
                "component": one.component,
                "likely": one.likely,
                "low": one.low,
                "high": one.high,
                "unit": one.unit,
                "share": one.share,
            }
            for one in gap.moves
        ],
    }


def _part(part: NotedPart) -> Answer:
    return {
        "name": part.name,
        "kind": part.kind,
        "total": of_figure(part.total) if part.total else None,
        "lines": [_line(one) for one in part.lines],
        "steps": [
            {
                "action": one.action,
                "says": one.written,
                "at_c": one.at_c.value if one.at_c else None,
                "minutes": one.minutes.value if one.minutes else None,
            }
            for one in part.steps
        ],
    }


def _line(line: NotedLine) -> Answer:
    return {
        "says": line.written,
        "what": line.what,
        "ingredient": line.ingredient,
        "amount": of_figure(line.amount) if line.amount else None,
        "spelling_forgiven": line.guessed,
    }
