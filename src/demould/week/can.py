"""Can we? One more order on the phone: yes and by when to say so, or what stops it."""

from collections.abc import Sequence
from dataclasses import dataclass, replace
from datetime import datetime, time

from demould.mise.folder import Folder
from demould.mise.order import Order
from demould.plan.answer.schedule import Explain
from demould.plan.kitchen.clock import minutes_since, moment_at
from demould.plan.kitchen.from_kitchen import Laid, lay_out
from demould.plan.kitchen.lines import OPEN
from demould.plan.problem.steps import Lag, Step, exactly
from demould.plan.quick.limit import Limit
from demould.plan.quick.look import first_look
from demould.plan.solve.search import latest_start, solve
from demould.plan.why.explain import explain
from demould.week.making import Making
from demould.week.orders import makings_of, wanted, with_order

PLAN_S = 1.0
SAY_S = 0.5
WHY_S = 1.0
SAY_SO = "say so"
MOST_DAYS_BACK = 14


@dataclass(frozen=True, slots=True, kw_only=True)
class Can:
    """Whether an order can be had beside all others; None where time ran out.

    `say_by` is the last moment at which a yes still holds, `then` what has to begin
    first after it. `limits` are seen at once, `why` is what a search showed.
    """

    making: Making
    beside: int
    answer: bool | None
    say_by: datetime | None = None
    then: tuple[Laid, str] | None = None
    limits: tuple[Limit, ...] = ()
    why: Explain | None = None


def can_we(folder: Folder, order: Order, now: datetime) -> Can:
    """Ask whether one more order can be had; `now` is aware."""
    asked = with_order(folder, order)
    makings = makings_of(asked, now)
    making = next(one for one in makings if one.order.key == order.key)
    beside = len(makings) - 1
    laid = _laid(asked, makings, now)
    limits = first_look(laid.problem)
    if limits:
        return Can(making=making, beside=beside, answer=False, limits=limits)
    found = solve(laid.problem, seconds=PLAN_S, wishes=())
    if found.status == "infeasible":
        laid = _laid(asked, makings, now, share=False)
        found = solve(laid.problem, seconds=PLAN_S, wishes=())
    if found.status == "infeasible":
        why = explain(laid.problem, seconds=WHY_S)
        return Can(making=making, beside=beside, answer=False, why=why)
    if found.status == "unknown":
        return Can(making=making, beside=beside, answer=None)
    last, first = _say_by(asked, makings, laid, order, now)
    return Can(
        making=making,
        beside=beside,
        answer=True,
        say_by=last,
        then=(laid, first) if first else None,
    )


def _laid(
    folder: Folder, makings: Sequence[Making], now: datetime, *, share: bool = True
) -> Laid:
    makes = wanted(folder, makings, now)
    return lay_out(folder.kitchen, makes, now, share=share)


def _say_by(
    folder: Folder,
    makings: Sequence[Making],
    laid: Laid,
    order: Order,
    now: datetime,
) -> tuple[datetime, str]:
    """Give the last moment a yes still holds, and what begins first after it.

    Said later, things are delivered later: where that leaves no plan the day before is
    tried, until what is called on the day said comes in time.
    """
    said = latest = _latest(laid, order)
    if said is None:
        return now, ""
    moment = moment_at(laid.origin, said)
    for _ in range(MOST_DAYS_BACK):
        then = _laid(folder, makings, max(moment, now))
        held = _as_known(laid, then, order)
        again = latest_start(held.problem, SAY_SO, seconds=SAY_S)
        if again is not None and moment_at(held.origin, again) >= moment:
            break
        before = _evening_before(laid, moment)
        if before <= now:
            return now, _first(laid, order, latest or 0)
        moment = before
        latest = minutes_since(laid.origin, moment)
    return moment, _first(laid, order, minutes_since(laid.origin, moment))


def _evening_before(laid: Laid, moment: datetime) -> datetime:
    """Give the last time anybody is there on a day before."""
    midnight = datetime.combine(moment.date(), time(), moment.tzinfo)
    first = minutes_since(laid.origin, midnight)
    windows = laid.problem.calendars[OPEN]
    closes = [window.close for window in windows if window.close <= first]
    return moment_at(laid.origin, max(closes, default=0))


def _latest(laid: Laid, order: Order) -> int | None:
    return latest_start(_with_word(laid, order).problem, SAY_SO, seconds=SAY_S)


def _with_word(laid: Laid, order: Order) -> Laid:
    """Give the problem with the yes as a step of no length before all of the order."""
    word = Step(id=SAY_SO, order=(order.key,), label=SAY_SO, duration=exactly(0))
    mine = [step for step in laid.problem.steps if order.key in step.order]
    lags = tuple(
        Lag(from_=SAY_SO, to=step.id, min=0, why="it is said first") for step in mine
    )
    problem = replace(
        laid.problem,
        steps=(*laid.problem.steps, word),
        lags=(*laid.problem.lags, *lags),
    )
    return replace(laid, problem=problem)


def _as_known(laid: Laid, later: Laid, order: Order) -> Laid:
    """Give the first problem with the order's deliveries as they are called later."""
    held = {
        step.id: minutes_since(laid.origin, moment_at(later.origin, step.earliest))
        for step in later.problem.steps
        if order.key in step.order and step.earliest is not None
    }
    word = _with_word(laid, order)
    steps = tuple(
        replace(step, earliest=max(held[step.id], step.earliest or 0))
        if step.id in held
        else step
        for step in word.problem.steps
    )
    return replace(word, problem=replace(word.problem, steps=steps))


def _first(laid: Laid, order: Order, said: int) -> str:
    """Name the step of the order that would have to begin first after a late yes."""
    word = _with_word(laid, order)
    steps = tuple(
        replace(step, earliest=said) if step.id == SAY_SO else step
        for step in word.problem.steps
    )
    found = solve(replace(word.problem, steps=steps), seconds=SAY_S, wishes=())
    mine = {step.id for step in laid.problem.steps if order.key in step.order}
    starts = [
        (place.start, place.id)
        for place in found.steps
        if place.id in mine and not laid.parts[place.id].stands
    ]
    return min(starts, default=(0, ""))[1]
