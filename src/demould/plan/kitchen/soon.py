"""One order as soon as it can be, from this minute, instead of by a due time."""

from dataclasses import replace
from datetime import datetime

from demould.plan.kitchen.clock import minutes_since
from demould.plan.kitchen.from_kitchen import Laid
from demould.plan.problem.steps import due_order


def as_soon_as(laid: Laid, now: datetime) -> Laid:
    """Give the problem with all its orders wanted now, and late for every minute after.

    What ties a step to its due time is left out: nothing is served at a set hour.
    """
    minute = minutes_since(laid.origin, now)
    orders = tuple(
        replace(order, due=minute, soft_due=True) for order in laid.problem.orders
    )
    lags = tuple(
        lag
        for lag in laid.problem.lags
        if due_order(lag.from_) is None and due_order(lag.to) is None
    )
    steps = tuple(replace(step, margin=0, fresh=0) for step in laid.problem.steps)
    problem = replace(laid.problem, orders=orders, lags=lags, steps=steps)
    return replace(laid, problem=problem)
