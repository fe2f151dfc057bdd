"""What a command knows, as plain JSON: every figure with how it is known."""

from __future__ import annotations

from typing import TYPE_CHECKING

from demould.mise.figure import Assumed, how_known

if TYPE_CHECKING:
    from datetime import datetime

    from demould.advice.findings import Finding
    from demould.advice.makeup import Makeup
    from demould.amounts.counts.factors import Make
    from demould.amounts.finish.dip import InJug
    from demould.cold.wait import Wait
    from demould.mise.figure import Estimate, Figure
    from demould.mise.kitchen import Kitchen
    from demould.mise.problem import Problem
    from demould.plan.quick.limit import Limit
    from demould.plan.running.late import Late
    from demould.week.can import Can
    from demould.week.chilling import Chilling, InPlace
    from demould.week.from_now import FromNow, Soonest
    from demould.week.making import Amounts, Making
    from demould.week.next_thing import Next
    from demould.week.sections import Week
    from demould.week.shelves import Shelved
    from demould.week.sizes import Size
    from demould.week.sure import Sure
    from demould.week.timing import Entry, Timing

Answer = dict[str, object]


def of_figure(figure: Figure) -> Answer:
    """Give value, unit, name, how it is known; low and high where it is assumed."""
    answer: Answer = {
        "value": figure.value,
        "unit": figure.unit,
        "name": figure.name,
        "known": how_known(figure),
    }
    if isinstance(figure.origin, Assumed):
        answer |= {"low": figure.origin.low, "high": figure.origin.high}
    return answer


def of_estimate(estimate: Estimate) -> Answer:
    """Give low, likely and high with the reason for the spread."""
    return {
        "low": estimate.low,
        "likely": estimate.likely,
        "high": estimate.high,
        "unit": estimate.unit,
        "reason": str(estimate.reason),
    }


def of_problem(problem: Problem) -> Answer:
    """Give one fault with its place."""
    return {
        "file": problem.file,
        "line": problem.line,
        "column": problem.column,
        "wrong": str(problem.wrong),
        "remedy": str(problem.remedy),
    }


def of_finding(one: Finding) -> Answer:
    """Give one thing that speaks up, with what to do."""
    return {
        "dessert": one.dessert,
        "kind": one.kind,
        "says": str(one.says),
        "do": str(one.do) if one.do else None,
        "weight": one.weight,
    }


def of_makeup(one: Makeup) -> Answer:
    """Give what one component is made of, per 100 g."""
    from dataclasses import asdict

    return {
        "component": one.component,
        "name": one.name,
        "per_100g": {**asdict(one.made_of), "sugars": one.made_of.sugars},
        "sweetness": one.sweetness,
        "antifreeze": one.antifreeze,
        "density": one.density,
        "ph": [one.acidity.low, one.acidity.high] if one.acidity else None,
        "set_by": {dose.agent: of_figure(dose.to_judge) for dose in one.doses},
        "colours": [
            {"what": colour.what, "grams": colour.grams, "percent": colour.share}
            for colour in one.colours
        ],
    }


def of_making(making: Making) -> Answer:
    """Give one order and its amounts."""
    order = making.order
    return {
        "order": order.key,
        "variant": order.variant,
        "ordered": order.pieces,
        "due": _iso(order.due),
        **of_amounts(making.amounts),
    }


def of_amounts(amounts: Amounts) -> Answer:
    """Give one dessert's amounts for so many pieces."""
    return {
        "dessert": amounts.dessert.key,
        "make": of_figure(amounts.made),
        "rounds": list(amounts.rounds.each),
        "piece": {
            "whole": of_figure(amounts.piece.whole),
            "parts": [
                {
                    "component": part.component,
                    "how": part.how,
                    "volume": of_figure(part.volume),
                    "grams": of_figure(part.grams),
                }
                for part in amounts.piece.parts
            ],
        },
        "as_written": [
            {
                "component": one.component,
                "name": one.name,
                "gives": of_figure(one.gives),
                "between": of_estimate(one.spread),
                "left_over": of_figure(one.left_over),
                "weakest": one.weakest,
            }
            for one in amounts.counts.each
        ],
        "components": [_of_make(make) for make in amounts.makes],
        "dip": _of_jug(amounts.jug) if amounts.jug else None,
    }


def _of_make(make: Make) -> Answer:
    return {
        "component": make.component,
        "name": make.name,
        "made": make.made,
        "written": of_figure(make.written),
        "factor": of_figure(make.factor),
        "weigh": of_figure(make.weigh),
        "cook_to": of_figure(make.cook_to) if make.cook_to else None,
        "each": of_figure(make.each),
        "in_pieces": of_figure(make.in_pieces),
        "lost": of_figure(make.lost),
        "left": of_figure(make.left),
    }


def _of_jug(jug: InJug) -> Answer:
    return {
        "jug_mm": jug.jug.diameter.value,
        "on_end": jug.on_end,
        "least": of_figure(jug.least),
        "taken": of_figure(jug.taken),
        "heel": of_figure(jug.heel),
        "melt": of_figure(jug.melt),
        "overflows": jug.overflows,
    }


def of_chilling(chilling: Chilling) -> Answer:
    """Give every freezing and thawing wait."""
    return {
        "load": str(chilling.load),
        "probe": {
            "face": chilling.probe.face,
            "depth_mm": chilling.probe.depth * 1000,
        },
        "keeps": of_figure(chilling.keeps),
        "freeze": [_of_place(one) for one in chilling.freezing],
        "thaw": [_of_place(one) for one in chilling.thawing],
    }


def _of_place(one: InPlace) -> Answer:
    return {
        "place": one.place.key,
        "how": one.how,
        "beside_c": one.beside_c,
        **of_wait(one.wait),
    }


def of_wait(wait: Wait) -> Answer:
    """Give one wait with its curve: hours, core and mean surface in °C."""
    return {
        "hours": of_estimate(wait.hours) if wait.hours else None,
        "at_best": {
            "low": wait.at_best.low,
            "likely": wait.at_best.likely,
            "unless": str(wait.at_best.unless),
        }
        if wait.at_best
        else None,
        "never": str(wait.never) if wait.never else None,
        "remark": str(wait.remark) if wait.remark else None,
        "water": {
            "grams": of_estimate(wait.wet.grams),
            "film_um": wait.wet.film_um,
            "left_g": wait.wet.left_g,
        }
        if wait.wet
        else None,
        "alone": [[str(cause), hours] for cause, hours in wait.alone],
        "heat_kj": wait.heat_kj,
        "energy_residual": wait.residual,
        "curve": [list(row) for row in wait.curve],
    }


def of_timing(kitchen: Kitchen, timing: Timing) -> Answer:
    """Give the plan in its schema, and beside it the clock a cook reads."""
    from demould.plan.answer.schedule_json import schedule_to_json
    from demould.week.shelves import shelves_of

    return {
        **schedule_to_json(timing.schedule),
        "clock": [_of_entry(entry) for entry in timing.entries],
        "latest": {name: _iso(at) for name, at in timing.latest.items()},
        "spare_min": dict(timing.spare),
        "broken": [str(one) for one in timing.broken],
        "shelves": [_of_shelved(one) for one in shelves_of(kitchen, timing)],
    }


def _of_shelved(shelved: Shelved) -> Answer:
    return {
        "place": shelved.place,
        "has": shelved.has,
        "most": shelved.most,
        "hours": [
            {
                "from": _iso(one.start),
                "to": _iso(one.end),
                "taken": one.taken,
                "free": max(0, shelved.has - one.taken),
                "too_many": max(0, one.taken - shelved.has),
            }
            for one in shelved.hours
        ],
        "between_steps": [
            {
                "what": str(one.what),
                "from": _iso(one.start),
                "to": _iso(one.end),
                "pieces": one.pieces,
                "taken": one.taken,
                "stored": True,
                "known": "assumed",
            }
            for one in shelved.lots
        ],
    }


def of_limit(limit: Limit) -> Answer:
    """Give one thing that stops a plan."""
    return {
        "over": limit.over,
        "id": limit.id,
        "orders": list(limit.orders),
        "text": limit.text,
        "help": limit.help,
    }


def of_can(can: Can) -> Answer:
    """Give whether an order can be had."""
    return {
        "order": of_making(can.making),
        "answer": can.answer,
        "say_by": _iso(can.say_by) if can.say_by else None,
        "then": can.then[1] if can.then else None,
        "limits": [of_limit(one) for one in can.limits],
        "why": can.why.text if can.why else None,
        "room": [one.text for one in can.why.relaxations] if can.why else [],
    }


def of_size(size: Size) -> Answer:
    """Give one size, and what stops it."""
    return {
        "wanted": size.making.order.pieces,
        **of_amounts(size.making.amounts),
        "moulds_for_one_round": size.moulds,
        "whips": size.whips,
        "frozen_kg": size.frozen_kg,
        "stands": size.stands,
        "stops": list(size.stops),
    }


def of_from_now(found: FromNow) -> Answer:
    """Give the earliest plate by the hours, and with somebody there until midnight."""
    return {
        "order": of_making(found.making),
        "hours": _of_soonest(found.hours),
        "evening": _of_soonest(found.evening),
    }


def _of_soonest(soonest: Soonest) -> Answer:
    return {
        "over": _iso(soonest.over) if soonest.over else None,
        "ready": _iso(soonest.ready) if soonest.ready else None,
        "proven": soonest.proven,
        "limits": [of_limit(one) for one in soonest.limits],
        "visits": [
            {
                "start": _iso(visit.start),
                "end": _iso(visit.end),
                "hands_min": visit.hands_min,
                "leaves": [
                    {
                        "component": left.part.component.key
                        if left.part.component
                        else None,
                        "step": left.part.step.key,
                        "until": _iso(left.until),
                        "kept": left.kept,
                    }
                    for left in visit.leaves
                ],
            }
            for visit in soonest.visits
        ],
    }


def of_late(late: Late) -> Answer:
    """Give what becomes of a slip."""
    return {
        "step": late.step,
        "minutes": late.minutes,
        "begins": _iso(late.begins),
        "nothing_moves_up_to": late.nothing_up_to,
        "stands_up_to": late.stands_up_to,
        "stands": late.why is None,
        "behind": dict(late.behind),
        "fewest": late.fewest,
        "moved": [
            {
                "step": one.step,
                "was": _iso(one.was),
                "now": _iso(one.now),
                "took": one.took,
            }
            for one in late.moved
        ],
        "why": late.why.text if late.why else None,
        "room": [one.text for one in late.why.relaxations] if late.why else [],
    }


def of_next(found: Next) -> Answer:
    """Give the next thing, what to set out for it, what comes then, what runs."""
    return {
        "next": _of_entry(found.entry) if found.entry else None,
        "set_out": [str(one) for one in found.set_out],
        "then": [_of_entry(one) for one in found.then],
        "running": [_of_entry(one) for one in found.running],
    }


def _of_entry(entry: Entry) -> Answer:
    return {
        "id": entry.id,
        "start": _iso(entry.start),
        "end": _iso(entry.end),
        "who": list(entry.who),
        "took": entry.took,
    }


def _iso(moment: datetime) -> str:
    return moment.isoformat(timespec="minutes")


def of_sure(sure: Sure) -> Answer:
    """Give what is assumed, and what moves most."""
    return {
        "assumed": [of_figure(figure) for figure in sure.assumed],
        "moves": [
            {
                "figure": of_figure(move.figure),
                "dessert": move.dessert,
                "share": move.share,
                "says": str(move.says),
                "money": str(move.money) if move.money else None,
                "settled_by": str(move.settled_by),
            }
            for move in sure.moves
        ],
    }


def of_week(week: Week) -> Answer:
    """Give the whole week."""
    from demould.counter.cli.care_answer import of_answered, of_guests
    from demould.counter.cli.office_answer import (
        of_bank,
        of_buying,
        of_costing,
        of_use_up,
    )

    return {
        "kitchen": week.kitchen.name,
        "now": _iso(week.now),
        "orders": [of_making(making) for making in week.makings],
        "cold": {key: of_chilling(one) for key, one in week.chilling.items()},
        "plan": of_timing(week.kitchen, week.timing),
        "decisions": [
            {
                "asks": str(one.asks),
                "answers": [str(answer) for answer in one.answers],
                "by": _iso(one.by) if one.by else None,
            }
            for one in week.decisions
        ],
        "will_it": [of_finding(one) for one in week.will_it],
        "buying": of_buying(week.buying, week.now),
        "bank": of_bank(week.bank),
        "use_up": [of_use_up(one) for one in week.use_up],
        "costs": [of_costing(one) for one in week.costings],
        "guests": [
            {
                "order": one.order.key,
                **of_guests(one.guests),
                "requests": [
                    {"who": asked.who, **of_answered(found)}
                    for asked, found in one.answers
                ],
            }
            for one in week.caring
        ],
        "sure": of_sure(week.sure),
    }
