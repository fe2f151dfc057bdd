"""A kitchen as the tree of ``kitchen.yaml``."""

from itertools import groupby

from demould.mise.clock import WEEKDAYS
from demould.mise.figure import Figure
from demould.mise.kitchen import (
    Away,
    ColdPlace,
    Jug,
    Kitchen,
    Opening,
    Packing,
    Person,
    Scale,
    Shelves,
    Supplier,
    Tool,
)
from demould.mise.mould import Mould
from demould.mise.shape import WaterOnly
from demould.mise.tree import Branch
from demould.mise.write_quantity import (
    write_amount,
    write_figure,
    write_origin,
    write_shape,
    write_sizes,
)
from demould.mise.write_tree import block, branch, joined


def write_kitchen(kitchen: Kitchen) -> Branch:
    """The canonical tree: what `read_kitchen` reads back to the same kitchen."""
    by = kitchen.deliveries
    return branch(
        (
            ("kitchen", kitchen.name),
            ("zone", kitchen.zone),
            ("money", kitchen.money),
            ("room", _room(kitchen)),
            ("breakage", write_figure(kitchen.breakage)),
            ("sure", write_figure(kitchen.sure)),
            ("deliveries", f"by {by:%H:%M}" if by else None),
            ("suppliers", block(_supplier(one) for one in kitchen.suppliers)),
            ("cost share", _with(kitchen.cost_share)),
            ("tax", _with(kitchen.tax)),
            ("margin", _with(kitchen.margin)),
            ("packing", block(_packing(one) for one in kitchen.packing)),
            ("energy", f"{kitchen.energy:f} a kWh" if kitchen.energy else None),
            (
                "draws",
                block(f"{one.name}; {one.kilowatts:f} kW" for one in kitchen.draws),
            ),
            ("hours", block(_opening(one) for one in kitchen.openings)),
            ("people", block(_person(one) for one in kitchen.people)),
            ("moulds", block(_mould(one) for one in kitchen.moulds)),
            ("tools", block(_tool(one) for one in kitchen.tools)),
            ("jugs", block(_jug(one) for one in kitchen.jugs)),
            ("cold", block(write_cold_place(one) for one in kitchen.cold)),
            ("scales", block(_scale(one) for one in kitchen.scales)),
        )
    )


def _with(figure: Figure | None, before: str = "", after: str = "") -> str | None:
    return f"{before}{write_figure(figure)}{after}" if figure else None


def _around(figure: Figure | None, words: str) -> str | None:
    """The words come between the amount and how it is known: 5 kg a cycle."""
    return f"{write_figure(figure)} {words}" if figure else None


def _room(kitchen: Kitchen) -> str:
    return ", ".join(
        filter(
            None,
            (
                _with(kitchen.room),
                _around(kitchen.room_humidity, "humid"),
                _around(kitchen.height, "above the sea"),
            ),
        )
    )


def _opening(opening: Opening) -> str:
    overtime = "; overtime" if opening.overtime else ""
    hours = f"{opening.opens:%H:%M} to {opening.closes:%H:%M}{overtime}"
    return f"{_days(opening.weekdays)} {hours}"


def _days(weekdays: tuple[int, ...]) -> str:
    """Days in a row as a span: Tue to Fri."""
    runs = []
    for _, run in groupby(enumerate(weekdays), lambda one: one[1] - one[0]):
        days = [WEEKDAYS[day] for _, day in run]
        if len(days) > 2:
            runs.append(f"{days[0]} to {days[-1]}")
        else:
            runs.extend(days)
    return ", ".join(runs)


def _person(person: Person) -> str:
    wage = None
    if person.wage:
        wage = f"{write_amount(person.wage).removesuffix(' an hour')}"
        wage = f"{wage} {write_origin(person.wage)}".strip() + " an hour"
    can = (f"can {skill}" for skill in person.can)
    away = (f"away {_away(one)}" for one in person.away)
    return joined((person.name, wage, *can, *away, *person.remarks))


def _away(away: Away) -> str:
    day = f"{WEEKDAYS[away.day.weekday()]} {away.day:%Y-%m-%d}"
    if away.from_ is None or away.to is None:
        return day
    return f"{day} {away.from_:%H:%M} to {away.to:%H:%M}"


def _mould(mould: Mould) -> str:
    water = None
    if mould.water:
        water = f"{write_amount(mould.water)} by water {write_origin(mould.water)}"
    only_water = (
        isinstance(mould.shape, WaterOnly)
        and mould.water is not None
        and mould.shape.water_ml == mould.water.value
    )
    return joined(
        (
            mould.key,
            f"{mould.trays} x {mould.cavities_each}",
            None if only_water else write_shape(mould.shape),
            water.strip() if water else None,
            "two halves" if mould.halves else None,
            f"hole {write_figure(mould.hole)}" if mould.hole else None,
            f"{mould.material} {write_figure(mould.wall)}",
            *mould.remarks,
        )
    )


def _tool(tool: Tool) -> str:
    return joined(
        (
            tool.key,
            _with(tool.bowl, "bowl "),
            _with(tool.fill, "full to "),
            _with(tool.least, "at least "),
            *tool.remarks,
        )
    )


def _jug(jug: Jug) -> str:
    return f"{write_figure(jug.diameter)} wide, {write_figure(jug.height)} high"


def write_cold_place(place: ColdPlace) -> str:
    """Give one cold place as it stands in kitchen.yaml."""
    return joined(
        (
            place.key,
            write_figure(place.air),
            place.kind,
            _around(place.load, "a cycle"),
            _shelves(place.shelves) if place.shelves else None,
            _with(place.film, "film "),
            _around(place.humidity, "humid"),
            *place.remarks,
        )
    )


def _shelves(shelves: Shelves) -> str:
    sizes = write_sizes(shelves.length_mm, shelves.width_mm)
    return f"{shelves.count} shelves of {sizes} mm"


def _scale(scale: Scale) -> str:
    return f"{write_figure(scale.most)} in steps of {write_figure(scale.step)}"


def _packing(one: Packing) -> str:
    names = ", ".join(one.desserts)
    return joined(
        (
            one.name,
            f"{one.price:f} each",
            f"takes {one.takes}",
            f"for {names}" if names else None,
        )
    )


def _supplier(one: Supplier) -> str:
    days = f"delivers {_days(one.weekdays)}" if one.weekdays is not None else None
    return joined(
        (
            one.name,
            f"{days} by {one.by:%H:%M}" if days and one.by else days,
            f"order by {one.order_by:%H:%M}" if one.order_by else None,
            _with(one.lead, "lead "),
            f"at least {one.least:f}" if one.least else None,
            *one.remarks,
        )
    )
