"""What the kitchen holds of one dessert, and what its finish asks for, in sentences."""

from collections.abc import Iterator

from demould.amounts.finish.dip import dip_of
from demould.amounts.finish.glaze import poured, recovered
from demould.amounts.finish.rewarm import lot_of, lots_of, rewarm
from demould.amounts.finish.spray import fillings, sprayed
from demould.amounts.finish.standing import warms_a_minute
from demould.amounts.layers.closed import closing
from demould.amounts.shape.volume import mould_of, water_against_shape
from demould.amounts.tools.blast import cycles, frozen_g
from demould.amounts.tools.blender import blends
from demould.amounts.tools.portion import by_count
from demould.amounts.tools.tray import on_a_tray, trays_for
from demould.larder.read import bands
from demould.matter.grams import Find
from demould.mise.dessert import Dip, Finish, Glaze, Laid, Spray, component_of
from demould.mise.figure import worked
from demould.mise.kitchen import Kitchen
from demould.mise.method import Step
from demould.mise.words import Words
from demould.week.making import Amounts

NEWS_PERCENT = 1.0


def holding_of(amounts: Amounts, kitchen: Kitchen) -> tuple[Words, ...]:
    """Say what moulds, bowl, blender, cold and trays make of so many pieces."""
    return (
        *_mould(amounts, kitchen),
        *_rounds(amounts),
        *_bowl(amounts),
        *_blender(amounts, kitchen),
        *_cold(amounts, kitchen),
        *_portions(amounts, kitchen),
    )


def _mould(amounts: Amounts, kitchen: Kitchen) -> Iterator[Words]:
    mould = mould_of(kitchen, amounts.dessert.mould)
    against = water_against_shape(mould)
    if against is not None and abs(against.value) >= NEWS_PERCENT:
        yield Words(
            "the {mould} mould holds {more:+.0f} % by water than by its sizes; the water"
            " counts",
            mould=mould.key,
            more=against.value,
        )
    told = closing(amounts.dessert, mould, amounts.piece)
    if told is not None:
        for rule, go in zip(told.rules, told.goes, strict=True):
            yield Words("{g:.1f} g {rule}", g=go.value, rule=rule)


def _rounds(amounts: Amounts) -> Iterator[Words]:
    turns = amounts.rounds
    each = " + ".join(map(str, turns.each))
    if turns.borrow:
        yield Words(
            "{mould}: {count} rounds, {each}; {borrow} more to borrow for one round",
            mould=turns.mould,
            count=turns.count,
            each=each,
            borrow=turns.borrow,
        )
    elif turns.count:
        yield Words(
            "{mould}: one round, {each} of {cavities}",
            mould=turns.mould,
            each=each,
            cavities=turns.cavities,
        )


def _bowl(amounts: Amounts) -> Iterator[Words]:
    for whip in amounts.whips:
        bowl = whip.bowl
        most = bowl.most.value if bowl.most else 0.0
        yield Words(
            "bowl, round {n}: {mass:.0f} g of {most:.0f} g",
            n=whip.round,
            mass=bowl.mass.value,
            most=most,
        )
        yield from bowl.choices


def _blender(amounts: Amounts, kitchen: Kitchen) -> Iterator[Words]:
    for make in amounts.makes:
        component = component_of(amounts.dessert, make.component)
        named = {tool for step in component.method for tool in step.tools}
        for tool in kitchen.tools:
            if tool.key in named and tool.fill is None:
                yield from blends(make.cook_to or make.weigh, tool)


def _cold(amounts: Amounts, kitchen: Kitchen) -> Iterator[Words]:
    mould = mould_of(kitchen, amounts.dessert.mould)
    inside = [
        part.grams
        for part in amounts.piece.parts
        if part.how in ("rest", "cut", "mould", "coat")
    ]
    each = worked(
        "a piece without its finish",
        sum(one.value for one in inside),
        "g",
        "all that goes into the mould",
        *inside,
    )
    for place in kitchen.cold:
        count = cycles(frozen_g(amounts.pieces, each).value, place)
        if count is not None and place.load is not None:
            yield Words(
                "{place}: {kg:.1f} kg, {count} x {most:g} kg",
                place=place.key,
                kg=frozen_g(amounts.pieces, each).value / 1000,
                count=count,
                most=place.load.value / 1000,
            )
        if place.shelves is not None:
            shelf = (place.shelves.length_mm, place.shelves.width_mm)
            on_one = on_a_tray(shelf, mould.shape)
            yield Words(
                "{place}: {on_one} pieces a shelf of {long:g} x {wide:g} mm, {count} of"
                " {has} shelves",
                place=place.key,
                on_one=on_one,
                long=shelf[0],
                wide=shelf[1],
                count=trays_for(amounts.pieces, on_one),
                has=place.shelves.count,
            )


def _portions(amounts: Amounts, kitchen: Kitchen) -> Iterator[Words]:
    wanted = amounts.dessert.portions
    if wanted is None:
        return
    shape = mould_of(kitchen, amounts.dessert.mould).shape
    cut = by_count(shape, amounts.piece.whole, int(wanted.value))
    if cut.angle is not None:
        yield Words(
            "cut: {n} wedges of {angle:g}°, {wide:.0f} mm at the rim, {g:.0f} g each",
            n=cut.count,
            angle=cut.angle,
            wide=cut.width,
            g=cut.each.value,
        )
    else:
        yield Words(
            "cut: {n} slices {wide:.0f} mm wide, {g:.0f} g each",
            n=cut.count,
            wide=cut.width,
            g=cut.each.value,
        )


def finish_of(amounts: Amounts, kitchen: Kitchen, find: Find) -> tuple[Words, ...]:
    """Say what each finish asks for: windows, lots, rewarming, what comes back."""
    return tuple(
        line
        for finish in amounts.dessert.finish
        for line in _finish(amounts, kitchen, find, finish)
    )


def _finish(
    amounts: Amounts, kitchen: Kitchen, find: Find, finish: Finish
) -> Iterator[Words]:
    if not isinstance(finish, Laid):
        yield from _window(amounts, finish)
    match finish:
        case Dip():
            yield from _dipping(amounts, kitchen, find, finish)
        case Glaze():
            yield from _glazing(amounts, finish)
        case Spray():
            yield from _spraying(amounts, kitchen, finish)
        case Laid():
            yield from _laying(amounts, finish)


_KINDS = {Dip: "thin dip", Glaze: "mirror glaze", Spray: "velvet spray"}


def _laying(amounts: Amounts, laid: Laid) -> Iterator[Words]:
    part = next(
        one
        for one in amounts.piece.parts
        if one.component == laid.component and one.how == "laid"
    )
    yield Words(
        "{name}: {how} on {where}, {each:.1f} g a piece, {all:.0f} g in all",
        name=component_of(amounts.dessert, laid.component).name,
        how=laid.how,
        where="the " + laid.on if laid.on != "all round" else laid.on,
        each=part.grams.value,
        all=part.grams.value * amounts.pieces,
    )


def _window(amounts: Amounts, finish: Dip | Glaze | Spray) -> Iterator[Words]:
    made = component_of(amounts.dessert, finish.component)
    band = bands(made.kind) or bands(_KINDS[type(finish)])
    if band is None or "piece temperature" not in band.more:
        band = bands(_KINDS[type(finish)])
    assert band is not None
    warm, cold = band.more["working temperature"], band.more["piece temperature"]
    yield Words(
        "{name}: {low:g} to {high:g} °C, on a piece at {cold_low:g} to {cold_high:g} °C",
        name=made.name,
        low=warm.low,
        high=warm.high,
        cold_low=cold.low,
        cold_high=cold.high,
    )


def _dipping(
    amounts: Amounts, kitchen: Kitchen, find: Find, dip: Dip
) -> Iterator[Words]:
    if dip is not dip_of(amounts.dessert):
        return
    yield from _jugs(amounts)
    if amounts.jug is None:
        return
    mould = mould_of(kitchen, amounts.dessert.mould)
    told = rewarm(amounts.dessert, dip, mould, amounts.jug, amounts.pieces)
    yield Words(
        "a piece takes {low:.0f} to {high:.0f} J out of it: {fewest} to {most} pieces"
        " from {at:g} to {cold:g} °C",
        low=told.heat.low,
        high=told.heat.high,
        fewest=told.every[0],
        most=told.every[1],
        at=told.window.likely,
        cold=told.window.low,
    )
    if told.marks:
        yield Words(
            "warm it again after {marks}", marks=", ".join(map(str, told.marks))
        )
    if told.thick_after is not None:
        yield Words(
            "never warmed, the coat is over 1 mm from piece {n} on", n=told.thick_after
        )
    warms = warms_a_minute(amounts.dessert, kitchen, mould, amounts.piece, find)
    minutes = _minutes_a_piece(amounts, dip)
    lot = lot_of(warms.value, minutes)
    yield Words(
        "out of the store it warms {rate:.1f} °C a minute; {minutes:g} min a piece: lots"
        " of {lot}, straight back",
        rate=warms.value,
        minutes=minutes,
        lot=lot,
    )
    lots = lots_of(amounts.pieces, lot)
    yield Words("{n} lots, the last of {last}", n=len(lots), last=lots[-1])


def _jugs(amounts: Amounts) -> Iterator[Words]:
    """The jug taken, what runs over, and what the others would need."""
    way = amounts.jug
    if way is None:
        yield Words("no jug here takes the piece with 5 mm to spare on either side")
        return
    yield Words(
        "in the {wide:g} mm jug {least:.0f} g to cover + {taken:.0f} on the pieces +"
        " {heel:.0f} heel = {melt:.0f} g: {high:.0f} mm high, {full:.0f} with a piece in,"
        " of {jug:g}",
        wide=way.jug.diameter.value,
        least=way.least.value,
        taken=way.taken.value,
        heel=way.heel.value,
        melt=way.melt.value,
        high=way.height.value,
        full=way.height_with_piece.value,
        jug=way.jug.height.value,
    )
    if way.most.value <= way.least.value:
        yield Words(
            "that jug is too low for the piece: it cannot be covered without running"
            " over; take a higher one"
        )
    elif way.overflows:
        yield Words(
            "the first piece would make it run over: begin with {most:.0f} g and top up",
            most=way.most.value,
        )
    others = {
        one.jug.diameter.value: one
        for one in amounts.jugs
        if one.goes_in and one.on_end is way.on_end and one.jug != way.jug
    }
    for wide, one in sorted(others.items()):
        yield Words(
            "the {wide:g} mm jug would need {melt:.0f} g",
            wide=wide,
            melt=one.melt.value,
        )


def _minutes_a_piece(amounts: Amounts, dip: Dip) -> float:
    """Minutes a piece of the step that dips, as written; 1 where nobody said."""
    steps = (
        *component_of(amounts.dessert, dip.component).method,
        *amounts.dessert.method,
    )
    each = [_each(step) for step in steps if "dip" in step.key.casefold()]
    return next((one for one in each if one), 1.0)


def _each(step: Step) -> float | None:
    if step.hands is None or step.hands.per_piece is None:
        return None
    return step.hands.per_piece.value


def _glazing(amounts: Amounts, glaze: Glaze) -> Iterator[Words]:
    part = next(
        one
        for one in amounts.piece.parts
        if one.component == glaze.component and one.how == "glaze"
    )
    made = poured(glaze, part, amounts.pieces)
    back = recovered(made)
    yield Words(
        "{stays:.0f} g stay, {pour:.0f} g to pour, {again:.0f} g come back sieved, {lost:.0f} g lost",
        stays=made.stays.value,
        pour=made.pour.value,
        again=back.again.value,
        lost=back.lost.value,
    )
    yield Words(
        "what comes back is poured again {times} times at most, within the days it holds;"
        " never over a piece made without something that is in it",
        times=back.times,
    )


def _spraying(amounts: Amounts, kitchen: Kitchen, spray: Spray) -> Iterator[Words]:
    made = component_of(amounts.dessert, spray.component)
    part = next(
        one
        for one in amounts.piece.parts
        if one.component == spray.component and one.how == "spray"
    )
    told = sprayed(spray, part, made, amounts.pieces)
    yield Words(
        "{made:.0f} g made, {load:.0f} loaded, {lands:.0f} land, {lost:.0f} lost,"
        " {left:.0f} left",
        made=told.made.value,
        load=told.load.value,
        lands=told.lands.value,
        lost=told.lost.value,
        left=told.left.value,
    )
    gun = next(
        (tool for tool in kitchen.tools if "gun" in tool.key and tool.bowl), None
    )
    cups = fillings(told.load, made, None if gun is None else gun.bowl)
    if cups is not None:
        yield Words("{n} cups of the gun", n=cups)
    yield Words(
        "spray with extraction, eyes and lungs covered, no flame near; mist makes floors"
        " slippery. Local codes come first"
    )
