"""Types made up at random, written canonically, are read back as they were."""

from dataclasses import replace
from datetime import date, datetime, time, timedelta
from decimal import Decimal
from typing import Any
from zoneinfo import ZoneInfo

from hypothesis import given, settings
from hypothesis import strategies as st

from demould.counter.text.read_tree import read_tree
from demould.mise.bare import bare
from demould.mise.component import (
    Component,
    InSteps,
    Loss,
    Scaled,
    Sheet,
    Tray,
    WholeBatches,
)
from demould.mise.dessert import (
    Cut,
    Dessert,
    Dip,
    FromMould,
    Glaze,
    Layer,
    OnPlate,
    Rest,
    Spray,
    Stands,
    Swap,
    Variant,
)
from demould.mise.faults import Faults
from demould.mise.figure import Assumed, Figure, Measured, Origin, Stated, Worked
from demould.mise.formula import FormulaLine
from demould.mise.kitchen import (
    Away,
    ColdPlace,
    Draws,
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
from demould.mise.known import Known
from demould.mise.method import Hands, Need, Road, Stand, Step
from demould.mise.mould import Mould
from demould.mise.order import Frozen, Order
from demould.mise.own_bank import Bank, Lot, Par
from demould.mise.own_larder import Moved, Pack, Season, Stocked
from demould.mise.read_bank import read_bank
from demould.mise.read_cold import COLD_KINDS
from demould.mise.read_dessert import read_dessert
from demould.mise.read_kitchen import read_kitchen
from demould.mise.read_larder import own_ingredient, read_larder
from demould.mise.read_orders import CHOICES, Wanted, read_orders
from demould.mise.render import render
from demould.mise.shape import Box, Cylinder, HalfSphere
from demould.mise.words import Words
from demould.mise.write_dessert import write_dessert
from demould.mise.write_kitchen import write_kitchen
from demould.mise.write_larder import write_larder
from demould.mise.write_method import write_method
from demould.mise.write_orders import write_orders

LONDON = ZoneInfo("Europe/London")
FEW = settings(max_examples=30, deadline=None)

WORD = st.sampled_from(
    ["slowly", "on a tray", "dome down, 2 s", "over ice", "ça va: oui"]
)
REMARKS = st.lists(WORD, max_size=2).map(tuple)


def numbers(low: float, high: float) -> st.SearchStrategy[float]:
    return st.floats(low, high).filter(lambda one: abs(one) > 1e-6) | st.integers(
        int(low * 1000) + 1, int(high * 1000) - 1
    ).filter(bool).map(lambda thousandths: thousandths / 1000)


@st.composite
def figures(
    draw: st.DrawFn, unit: str, low: float = 0.01, high: float = 95.0
) -> Figure:
    value = draw(numbers(low, high))
    origins: list[Origin] = [
        Stated(),
        Stated(by="the maker"),
        Measured(),
        Measured(on=date(2026, 11, 16), readings=3),
        Assumed(low=low, high=high),
        Assumed(low=value, high=value, source="as last year"),
    ]
    return Figure(
        value=value, unit=unit, name="", origin=draw(st.sampled_from(origins))
    )


def plain(
    unit: str, low: float = 0.01, high: float = 95.0
) -> st.SearchStrategy[Figure]:
    return numbers(low, high).map(lambda value: Figure(value=value, unit=unit, name=""))


def maybe(strategy: st.SearchStrategy[Any]) -> st.SearchStrategy[Any]:
    return st.none() | strategy


def tuples(strategy: st.SearchStrategy[Any], most: int = 2) -> st.SearchStrategy[Any]:
    return st.lists(strategy, max_size=most).map(tuple)


SHAPES = st.sampled_from(
    [
        HalfSphere(diameter_mm=70),
        Cylinder(diameter_mm=60.5, height_mm=1.125),
        Box(length_mm=300, width_mm=80, height_mm=70),
    ]
)


def _named(strategy: Any, names: list[str]) -> st.SearchStrategy[Any]:
    """Some of the names, each with a thing of its own."""
    chosen = st.lists(st.sampled_from(names), unique=True, max_size=len(names))
    return chosen.flatmap(lambda keys: st.tuples(*(strategy(key) for key in keys)))


def _mould(key: str) -> st.SearchStrategy[Mould]:
    return st.builds(
        Mould,
        key=st.just(key),
        trays=st.integers(1, 9999),
        cavities_each=st.integers(1, 9999),
        shape=SHAPES,
        water=maybe(figures("ml")),
        material=st.sampled_from(["silicone", "steel"]),
        wall=figures("mm"),
        remarks=REMARKS,
    )


def _tool(key: str) -> st.SearchStrategy[Tool]:
    return st.builds(
        Tool,
        key=st.just(key),
        bowl=maybe(figures("ml")),
        fill=maybe(figures("%")),
        least=maybe(figures("g")),
        remarks=REMARKS,
    )


def _cold(key: str) -> st.SearchStrategy[ColdPlace]:
    return st.builds(
        ColdPlace,
        key=st.just(key),
        air=figures("°C", -40, 20),
        kind=st.sampled_from(COLD_KINDS),
        load=maybe(figures("g")),
        shelves=maybe(
            st.builds(
                Shelves,
                count=st.integers(1, 999),
                length_mm=st.sampled_from([600.0, 530.5]),
                width_mm=st.just(400.0),
            )
        ),
        remarks=REMARKS,
    )


def _person(key: str) -> st.SearchStrategy[Person]:
    return st.builds(
        Person,
        name=st.just(key),
        wage=maybe(figures("an hour")),
        can=st.sampled_from([(), ("glaze",), ("pull sugar", "temper")]),
        away=tuples(AWAY),
        remarks=REMARKS,
    )


def _supplier(key: str) -> st.SearchStrategy[Supplier]:
    days = st.sampled_from([None, (1, 2, 3, 4), (0, 3)])
    return days.flatmap(
        lambda weekdays: st.builds(
            Supplier,
            name=st.just(key),
            weekdays=st.just(weekdays),
            by=st.sampled_from([None, time(8, 30)]) if weekdays else st.none(),
            order_by=st.sampled_from([None, time(15)]),
            lead=maybe(figures("min")),
            least=st.sampled_from([None, Decimal("30.00")]),
            remarks=REMARKS,
        )
    )


def _packing(name: str) -> st.SearchStrategy[Packing]:
    return st.builds(
        Packing,
        name=st.just(name),
        price=st.sampled_from([Decimal("0.60"), Decimal("12")]),
        takes=st.sampled_from([1, 6]),
        desserts=st.sampled_from([(), ("dome",), ("dome", "log")]),
    )


def _draws(name: str) -> st.SearchStrategy[Draws]:
    return st.builds(
        Draws, name=st.just(name), kilowatts=st.sampled_from([Decimal("3.5")])
    )


AWAY = st.sampled_from(
    [
        Away(day=date(2026, 11, 19)),
        Away(day=date(2026, 11, 20), from_=time(12), to=time(16, 30)),
    ]
)
KITCHENS = st.builds(
    Kitchen,
    name=st.sampled_from(["K", "Weir: the kitchen", "- x"]),
    zone=st.sampled_from(["UTC", "Europe/London"]),
    openings=tuples(
        st.builds(
            Opening,
            weekdays=st.sampled_from(
                [(0,), (1, 2, 3, 4), (0, 2, 4), (5, 6), (6, 0, 1)]
            ),
            opens=st.just(time(8, 5)),
            closes=st.just(time(17)),
            overtime=st.booleans(),
        )
    ),
    people=_named(_person, ["Mirel", "Jonne"]),
    moulds=_named(_mould, ["dome", "oval insert"]),
    tools=_named(_tool, ["mixer", "oven"]),
    jugs=tuples(st.builds(Jug, diameter=figures("mm"), height=figures("mm"))),
    cold=_named(_cold, ["blast", "fridge"]),
    scales=tuples(st.builds(Scale, most=figures("g"), step=figures("g"))),
    room=maybe(figures("°C")),
    room_humidity=maybe(plain("%")),
    height=maybe(plain("m")),
    breakage=figures("%"),
    sure=figures("%"),
    money=st.sampled_from(["", "units"]),
    deliveries=st.sampled_from([None, time(9)]),
    suppliers=_named(_supplier, ["Weir Dairy", "Hill & Co"]),
    cost_share=maybe(figures("%")),
    tax=maybe(plain("%")),
    margin=maybe(plain("%")),
    packing=_named(_packing, ["cake box", "sleeve"]),
    energy=st.sampled_from([None, Decimal("0.30")]),
    draws=_named(_draws, ["oven", "blast"]),
)


def test_a_time_a_piece_that_was_changed_is_not_written_as_it_was() -> None:
    hands = Hands(per_piece=replace(_per(15, 24), value=0.7))
    block = write_method((Step(key="do", hands=hands),))
    assert block is not None
    assert block.lines[0].line.text == "do  0.7 min a piece"


def back(reader: Any, tree: Any, *more: Any) -> Any:
    text = render(tree)
    again, problems = read_tree(text, "x.yaml")
    assert problems == ()
    faults = Faults()
    thing = reader(again, *more, faults)
    assert [str(fault) for fault in faults.found] == [], text
    return bare(thing)


@FEW
@given(KITCHENS)
def test_a_kitchen(kitchen: Kitchen) -> None:
    assert back(read_kitchen, write_kitchen(kitchen)) == kitchen


@st.composite
def stocked(draw: st.DrawFn, key: str) -> Stocked:
    like = draw(st.sampled_from([None, "honey", "cream_35"]))
    fat = draw(st.integers(0, 50))
    sheet = (("water", 100.0 - fat - 10), ("fat", float(fat)), ("sugars", 10.0))
    price = draw(st.sampled_from([None, Decimal(0), Decimal("5.20")]))
    own = st.none() if price is not None else st.sampled_from([None, Decimal("1.60")])
    packs = draw(
        st.lists(
            st.builds(Pack, size=plain("g"), price=own),
            max_size=2,
            unique_by=lambda pack: pack.size.value,
        ).map(tuple)
    )
    return Stocked(
        key=key,
        ingredient=own_ingredient(
            Stocked(
                key=key,
                ingredient=None,  # type: ignore[arg-type]  # what is about to be made
                like=like,
                sheet=sheet,
                sugars=(("glucose and fructose", 10.0),),
            )
        ),
        like=like,
        sheet=sheet,
        sugars=(("glucose and fructose", 10.0),),
        price=price,
        priced=draw(st.sampled_from(["", "gross", "net"])) if price else "",
        money="EUR" if price or any(pack.price for pack in packs) else "",
        packs=packs,
        supplier=draw(st.sampled_from(["", "Weir Dairy"])),
        lead=draw(maybe(plain("min", 1, 9999))),
        stock=draw(maybe(figures("g"))),
        counted_on=draw(
            st.sampled_from([None, date(2026, 11, 17), date(2026, 11, 16)])
        ),
        may_contain=draw(st.sampled_from(["", "unknown, ask"])),
        trim=draw(maybe(plain("%"))),
        keeps=draw(maybe(plain("min", 1, 9999))),
        use_by=draw(st.sampled_from([None, date(2026, 11, 20)])),
        since=draw(
            tuples(
                st.builds(
                    Moved,
                    on=st.just(date(2026, 11, 18)),
                    came=st.booleans(),
                    grams=figures("g"),
                )
            )
        ),
        season=draw(
            st.sampled_from(
                [
                    None,
                    Season(months=(4, 5, 6)),
                    Season(months=(11, 12, 1, 9), instead="plum, frozen"),
                ]
            )
        ),
        ask=draw(st.sampled_from(["", "from which animal?"])),
        remarks=draw(REMARKS),
    )


@FEW
@given(_named(stocked, ["cream 35 %", "my honey", "pear, peeled"]).filter(bool))
def test_a_larder(larder: Any) -> None:
    assert back(read_larder, write_larder(larder)) == larder


BANKS = st.builds(
    Bank,
    lots=tuples(
        st.builds(
            Lot,
            dessert=st.sampled_from(["dome", "log"]),
            component=st.sampled_from([None, "centre"]),
            variant=st.sampled_from([None, "light"]),
            pieces=st.integers(1, 9999),
            made=st.just(date(2026, 11, 14)),
            keeps=maybe(plain("min", 1, 9999)),
            melted=st.sampled_from([0, 2]),
        )
        | st.builds(
            Lot,
            dessert=st.just("dome"),
            component=st.just("dip"),
            grams=figures("g"),
            made=st.just(date(2026, 11, 14)),
        )
    ),
    pars=tuples(
        st.builds(
            Par,
            dessert=st.just("dome"),
            pieces=st.integers(1, 9999),
            there=st.integers(0, 9999),
        )
    ),
)


@FEW
@given(BANKS.filter(lambda bank: bank.lots or bank.pars))
def test_a_freezer(bank: Bank) -> None:
    made = {"dome": ("centre", "dip"), "log": None}
    assert back(read_bank, write_larder((), bank), made) == bank


ORDERS = st.builds(
    Order,
    key=st.just("a"),
    dessert=st.just("dome"),
    variant=st.sampled_from([None, "light"]),
    pieces=st.integers(1, 9999),
    due=st.integers(0, 100_000).map(
        lambda minutes: datetime(2027, 1, 1, tzinfo=LONDON) + timedelta(minutes=minutes)
    ),
    ends=st.sampled_from(["plates", "collected"]),
    spares=st.sampled_from([None, Figure(value=0, unit="pieces", name="")]),
    price=st.sampled_from([None, Decimal("4.50")]),
    frozen=st.sampled_from(
        [
            (),
            (Frozen(pieces=12),),
            (Frozen(pieces=1), Frozen(pieces=9, component="base")),
        ]
    ),
)


@FEW
@given(ORDERS, st.lists(st.sampled_from(CHOICES), max_size=3), st.data())
def test_an_order(order: Order, choices: list[str], data: st.DataObject) -> None:
    remarks = tuple(data.draw(st.sampled_from(["", "slowly"])) for _ in choices)
    order = replace(order, choices=tuple(choices), remarks=remarks)
    wanted = Wanted(
        desserts={"dome": ("light",)},
        zone="Europe/London",
        now=datetime(2026, 11, 17, tzinfo=LONDON),
    )
    assert back(read_orders, write_orders((order,)), wanted) == (order,)


KNOWN = Known(
    moulds=("dome", "oval insert"),
    tools=("mixer", "oven"),
    cold=("blast", "fridge"),
    own=("my cream",),
)
WHAT = st.sampled_from(
    [("my cream", "my cream"), ("sugar", "sucrose"), ("Salt", "salt")]
)


@st.composite
def formulas(draw: st.DrawFn) -> tuple[FormulaLine, ...]:
    lines = []
    for ordinal in range(1, draw(st.integers(1, 3)) + 1):
        what, ingredient = draw(WHAT)
        unit = draw(st.sampled_from(["g", "ml", "leaf", "pieces"]))
        lines.append(
            FormulaLine(
                ordinal=ordinal,
                amount=draw(maybe(figures(unit, 0.01, 3000))),
                what=what,
                ingredient=ingredient,
                state=draw(st.sampled_from(["", "hot"])),
                remarks=draw(REMARKS),
                strained_out=draw(st.booleans()),
                made_up=draw(st.booleans()),
                keeps=draw(maybe(figures("times"))),
            )
        )
    return tuple(lines)


def _per(minutes: float, pieces: float) -> Figure:
    parts = (
        Figure(value=minutes, unit="min", name=""),
        Figure(value=pieces, unit="pieces", name=""),
    )
    return Figure(
        value=minutes / pieces,
        unit="min",
        name="",
        origin=Worked(rule=Words("minutes by pieces"), parts=parts),
    )


HANDS = st.builds(
    Hands,
    fixed=plain("min"),
    per_piece=maybe(
        figures("min") | st.builds(_per, st.integers(1, 90), st.integers(1, 50))
    ),
    per_portion=maybe(figures("min")),
    all_hands=st.booleans(),
)
STANDS = st.builds(
    Stand,
    least=plain("min", 1, 999),
    most=maybe(plain("min", 1000, 20000)),
)
ROADS = st.just(()) | st.tuples(
    st.builds(Road, place=st.just("blast"), least=figures("min", 1, 9999)),
    st.builds(Road, place=st.just("fridge"), least=figures("min", 1, 9999)),
)


def _method(needs: list[Need]) -> st.SearchStrategy[Any]:
    def step(key: str) -> st.SearchStrategy[Step]:
        return st.builds(
            Step,
            key=st.just(key),
            hands=HANDS,
            stand=maybe(STANDS),
            roads=ROADS,
            skill=st.sampled_from([None, "glaze"]),
            place=st.sampled_from([None, "fridge"]),
            tools=st.sampled_from([(), ("mixer",), ("oven", "mixer")]),
            needs=tuples(st.sampled_from(needs)) if needs else st.just(()),
            each_round=st.booleans(),
            within=maybe(figures("min")),
            hold=maybe(figures("min")),
            core=maybe(figures("°C", -40, 9)),
            remarks=REMARKS,
        )

    return _named(step, ["cook", "set-out", "whip"])


def _component(key: str) -> st.SearchStrategy[Component]:
    return st.builds(
        Component,
        key=st.just(key),
        name=st.sampled_from(["A name", "x: y"]),
        kind=st.sampled_from(["", "sponge"]),
        formula=formulas(),
        density=figures("g/ml", 0.02, 3),
        whipped=maybe(figures("g/ml", 0.02, 3)),
        cooked_away=maybe(figures("%")),
        loss=st.builds(
            Loss,
            share=figures("%"),
        )
        | st.builds(
            Loss,
            share=figures("%"),
            fixed=figures("g"),
            once_a=st.sampled_from(["batch", "whip"]),
        ),
        making=st.sampled_from([Scaled(), WholeBatches()])
        | st.builds(InSteps, of=figures("g")),
        sheet=maybe(
            st.builds(
                Sheet,
                tray=st.builds(
                    Tray, length_mm=numbers(1, 999), width_mm=numbers(1, 999)
                ),
                gap=figures("mm"),
            )
        ),
        method=_method([]),
    )


LAYERS = st.tuples(
    st.builds(
        Layer,
        component=st.just("mousse"),
        fill=st.sampled_from([Rest(words="the rest"), Rest(words="half, on the wall")]),
        remarks=REMARKS,
    ),
    st.builds(
        Layer,
        component=st.just("base"),
        fill=st.builds(Cut, shape=SHAPES) | st.just(FromMould(mould="oval insert")),
        stands=maybe(
            st.builds(
                Stands,
                of=st.sampled_from(["mousse", "bottom", "open side"]),
                apart=figures("mm") | st.just(Figure(value=0, unit="mm", name="")),
            )
        ),
        turned_over=st.booleans(),
        remarks=REMARKS,
    ),
)
COAT = st.just("coat")
FINISH = st.tuples(
    st.builds(
        Dip,
        component=COAT,
        film=figures("mm"),
        clearance=figures("mm"),
        heel=figures("g"),
        depth=maybe(figures("mm")),
        remarks=REMARKS,
    ),
    st.builds(
        Glaze,
        component=COAT,
        film=figures("mm"),
        pour=figures("times"),
        faces=st.sampled_from(["face", "face and ends"]),
        remarks=REMARKS,
    ),
    st.builds(
        Spray, component=COAT, film=figures("mm"), lands=figures("%"), remarks=REMARKS
    ),
)


@st.composite
def desserts(draw: st.DrawFn) -> Dessert:
    components = tuple(draw(_component(key)) for key in ("mousse", "base", "coat"))
    out = draw(st.sampled_from(components[0].formula)).what
    return Dessert(
        key="dome",
        name=draw(st.sampled_from(["Dome", "?"])),
        written_for=draw(st.sampled_from(["", "12 boxed domes"])),
        mould="dome",
        portions=draw(
            st.sampled_from([None, Figure(value=8, unit="portions", name="")])
        ),
        upside_down=draw(st.booleans()),
        layers=draw(LAYERS),
        finish=draw(FINISH),
        plate=draw(
            tuples(
                st.builds(
                    OnPlate,
                    what=st.just("coat"),
                    amount=figures("g"),
                    component=st.just("coat"),
                    remarks=REMARKS,
                )
                | st.builds(OnPlate, what=st.just("sugar"), amount=figures("g"))
            )
        ),
        components=components,
        method=draw(_method([Need(component="mousse"), Need(component="base")])),
        variants=draw(
            st.sampled_from([(), ("nut-free base",), ("light", "dark")]).flatmap(
                lambda names: st.tuples(
                    *(
                        st.builds(
                            Variant,
                            name=st.just(name),
                            swaps=st.tuples(
                                st.builds(
                                    Swap,
                                    component=st.just("mousse"),
                                    out=st.just(out),
                                    into=st.tuples(
                                        st.tuples(figures("g"), st.just("salt")),
                                        st.tuples(figures("ml"), st.just("sugar, hot")),
                                    ),
                                )
                            ),
                        )
                        for name in names
                    )
                )
            )
        ),
        notes=draw(REMARKS),
    )


@FEW
@given(desserts())
def test_a_dessert(dessert: Dessert) -> None:
    assert back(read_dessert, write_dessert(dessert), "dome", KNOWN) == dessert
