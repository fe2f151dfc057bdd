"""What tools and cold places draw while an order has them, where that is wished for."""

from collections.abc import Mapping
from decimal import Decimal

from demould.mise.kitchen import Kitchen
from demould.mise.method import Step
from demould.office.money import exact
from demould.plan.kitchen.from_kitchen import Laid
from demould.plan.kitchen.lines import hands_min
from demould.plan.kitchen.parts import Part


def energy_of(
    laid: Laid, kitchen: Kitchen, pieces: Mapping[str, int]
) -> dict[str, Decimal | None]:
    """Give money of energy by order; None where the kitchen does not say what it costs.

    A tool draws while hands are on it or a wait stands in it, a cold place for the
    least wait in it, the first road of a choice. What is made once for several orders
    is parted by their `pieces`.
    """
    if kitchen.energy is None:
        return dict.fromkeys(pieces, None)
    draws = {one.name: one.kilowatts for one in kitchen.draws}
    found = dict.fromkeys(pieces, Decimal(0))
    for step in laid.problem.steps:
        part = laid.parts[step.id]
        used = _kilowatt_minutes(part, draws)
        shared = sum(pieces[order] for order in step.order)
        for order in step.order:
            found[order] += used * kitchen.energy * pieces[order] / shared / 60
    return dict(found.items())


def _kilowatt_minutes(part: Part, draws: Mapping[str, Decimal]) -> Decimal:
    step = part.step
    if part.stands:
        place, minutes = _wait(step)
        names = (place, *step.tools)
    else:
        assert step.hands is not None
        minutes = hands_min(step.hands, part.pieces, part.make.order.pieces)
        names = step.tools
    drawn = sum((draws.get(name, Decimal(0)) for name in names), Decimal(0))
    return drawn * exact(minutes)


def _wait(step: Step) -> tuple[str, float]:
    if step.roads:
        return step.roads[0].place, step.roads[0].least.value
    return step.place or "", step.stand.least.value if step.stand else 0.0
