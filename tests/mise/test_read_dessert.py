from collections.abc import Callable
from typing import Any

import pytest

from demould.mise.bare import bare
from demould.mise.component import InSteps, Loss, Sheet, Tray, WholeBatches
from demould.mise.dessert import (
    Cut,
    Dip,
    FromMould,
    Glaze,
    Layer,
    OnPlate,
    Rest,
    Spray,
    Swap,
)
from demould.mise.figure import Assumed, Figure, Worked
from demould.mise.formula import FormulaLine
from demould.mise.known import Known
from demould.mise.method import Hands, Need, Road, Stand, Step
from demould.mise.read_dessert import read_dessert, variants_in
from demould.mise.shape import Cylinder
from demould.mise.words import Words

Read = Callable[..., tuple[Any, list[str]]]
KNOWN = Known(
    moulds=("dome", "small dome"),
    tools=("mixer", "oven"),
    cold=("blast", "freezer"),
    own=("cream 35 %", "pear, peeled"),
)
HEAD = """dessert: Dome
mould: dome
filled: |
  mousse; the rest
"""
MOUSSE = """component mousse:
  formula: |
    100 g  cream 35 %
  density: 1 g/ml
  lost: 0 %
"""


def stated(value: float, unit: str) -> Figure:
    return Figure(value=value, unit=unit, name="")


def dessert_of(read: Read, text: str) -> Any:
    dessert, faults = read(read_dessert, text, "dome", KNOWN)
    assert faults == []
    return bare(dessert)


def faults_of(read: Read, text: str, known: Known = KNOWN) -> list[str]:
    faults: list[str] = read(read_dessert, text, "dome", known)[1]
    return faults


def test_a_dessert_in_full(read: Read) -> None:
    text = """dessert: Dome
written for: 12
mould: dome
portions: 8
filled, upside down: |
  mousse; half, against the wall; slowly
  centre; from the small dome mould
  mousse; the rest
  base; disc 60 x 8 mm; flush
finish: |
  dip; dipped; film 0.8 mm (assumed 0.6 to 1); clearance 15 mm; heel 10 g; depth 3 cm; dome down
  glaze; poured 2.5; film 1.7 mm; both ends; warm
  velvet; sprayed; film 0.1 mm; 50 % lands (assumed 40 to 60)
plate: |
  sauce; 15 g; warm
  thyme; 1 g
notes: |
  from grandmother
""" + "".join(
        MOUSSE.replace("mousse", key)
        for key in ("mousse", "centre", "base", "dip", "glaze", "velvet", "sauce")
    )
    dessert = dessert_of(read, text)
    assert (dessert.key, dessert.name, dessert.written_for) == ("dome", "Dome", "12")
    assert (dessert.mould, dessert.portions) == ("dome", stated(8, "portions"))
    assert dessert.upside_down
    assert dessert.notes == ("from grandmother",)
    assert dessert.layers == (
        Layer(
            component="mousse",
            fill=Rest(words="half, against the wall"),
            remarks=("slowly",),
        ),
        Layer(component="centre", fill=FromMould(mould="small dome")),
        Layer(component="mousse", fill=Rest(words="the rest")),
        Layer(
            component="base",
            fill=Cut(shape=Cylinder(diameter_mm=60, height_mm=8)),
            remarks=("flush",),
        ),
    )
    film = Figure(value=0.8, unit="mm", name="", origin=Assumed(low=0.6, high=1))
    assert dessert.finish == (
        Dip(
            component="dip",
            film=film,
            clearance=stated(15, "mm"),
            heel=stated(10, "g"),
            depth=stated(30, "mm"),
            remarks=("dome down",),
        ),
        Glaze(
            component="glaze",
            film=stated(1.7, "mm"),
            pour=stated(2.5, "times"),
            faces="face and ends",
            remarks=("warm",),
        ),
        Spray(
            component="velvet",
            film=stated(0.1, "mm"),
            lands=Figure(value=50, unit="%", name="", origin=Assumed(low=40, high=60)),
        ),
    )
    assert dessert.plate == (
        OnPlate(
            what="sauce", amount=stated(15, "g"), component="sauce", remarks=("warm",)
        ),
        OnPlate(what="thyme", amount=stated(1, "g")),
    )


@pytest.mark.parametrize(
    ("written", "line"),
    [
        (
            "280 g  cream 35 %, hot; after steeping, made up; slowly",
            FormulaLine(
                ordinal=1,
                amount=stated(280, "g"),
                what="cream 35 %",
                state="hot",
                ingredient="cream 35 %",
                made_up=True,
                remarks=("after steeping", "slowly"),
            ),
        ),
        (
            "45 g roasted buckwheat; strained out, keeps 1.1",
            FormulaLine(
                ordinal=1,
                amount=stated(45, "g"),
                what="roasted buckwheat",
                ingredient="buckwheat_roasted",
                strained_out=True,
                keeps=stated(1.1, "times"),
            ),
        ),
        (
            "45 g salt; keeps 1.1 (assumed 0.8 to 1.4)",
            FormulaLine(
                ordinal=1,
                amount=stated(45, "g"),
                what="salt",
                ingredient="salt",
                keeps=Figure(
                    value=1.1,
                    unit="times",
                    name="",
                    origin=Assumed(low=0.8, high=1.4),
                ),
            ),
        ),
        (
            "Pear, peeled",
            FormulaLine(
                ordinal=1, amount=None, what="Pear, peeled", ingredient="pear, peeled"
            ),
        ),
        (
            "?  salt, fine; to taste",
            FormulaLine(
                ordinal=1,
                amount=None,
                what="salt",
                state="fine",
                ingredient="salt",
                remarks=("to taste",),
            ),
        ),
        (
            "2 leaves gelatin 200 bloom",
            FormulaLine(
                ordinal=1,
                amount=stated(2, "leaf"),
                what="gelatin 200 bloom",
                ingredient="gelatin_200",
            ),
        ),
        (
            "33 cl cream 35 %",
            FormulaLine(
                ordinal=1,
                amount=stated(330, "ml"),
                what="cream 35 %",
                ingredient="cream 35 %",
            ),
        ),
        (
            "400 000 g (assumed 300000 to 500000) cream 35 %",
            FormulaLine(
                ordinal=1,
                amount=Figure(
                    value=400000,
                    unit="g",
                    name="",
                    origin=Assumed(low=300000, high=500000),
                ),
                what="cream 35 %",
                ingredient="cream 35 %",
            ),
        ),
    ],
)
def test_a_line_of_a_formula(read: Read, written: str, line: FormulaLine) -> None:
    dessert = dessert_of(read, HEAD + MOUSSE.replace("100 g  cream 35 %", written))
    assert dessert.components[0].formula == (line,)


def test_a_component_may_go_into_another(read: Read) -> None:
    custard = MOUSSE.replace("mousse", "custard")
    mousse = MOUSSE.replace("100 g  cream 35 %", "50 g Custard, cold")
    dessert = dessert_of(read, HEAD + mousse + custard)
    assert dessert.components[0].formula == (
        FormulaLine(
            ordinal=1,
            amount=stated(50, "g"),
            what="custard",
            state="cold",
            ingredient=None,
            component="custard",
        ),
    )


@pytest.mark.parametrize(
    ("written", "key", "value"),
    [
        ("lost: 4 %", "loss", Loss(share=stated(4, "%"))),
        (
            "lost: 4 %, then 40 g a whip",
            "loss",
            Loss(share=stated(4, "%"), fixed=stated(40, "g"), once_a="whip"),
        ),
        (
            "lost: 4 % and 20 g a batch",
            "loss",
            Loss(share=stated(4, "%"), fixed=stated(20, "g")),
        ),
        (
            "lost: 4 % (assumed 2 to 6), then 20 g (measured) a batch",
            "loss",
            None,
        ),
        ("lost: 0 %\n  made: whole batches", "making", WholeBatches()),
        ("lost: 0 %\n  made: in steps of 10 g", "making", InSteps(of=stated(10, "g"))),
        (
            "lost: 0 %\n  sheet: 400 x 300 mm; gap 2 mm",
            "sheet",
            Sheet(tray=Tray(length_mm=400, width_mm=300), gap=stated(2, "mm")),
        ),
        (
            "lost: 0 %\n  sheet: 400 x 300 mm; gap 2 mm; shifted rows",
            "sheet",
            Sheet(
                tray=Tray(length_mm=400, width_mm=300),
                gap=stated(2, "mm"),
                shifted=True,
            ),
        ),
        (
            "lost: 0 %\n  sheet: 60 x 40 cm; gap 0 mm",
            "sheet",
            Sheet(tray=Tray(length_mm=600, width_mm=400), gap=stated(0, "mm")),
        ),
        ("lost: 0 %\n  whipped: 0.6 g/ml", "whipped", stated(0.6, "g/ml")),
        ("lost: 0 %\n  cooked away: 0 %", "cooked_away", stated(0, "%")),
        ("lost: 0 %\n  kind: sponge", "kind", "sponge"),
        ("lost: 0 %\n  made: by its own factor", "kind", ""),
    ],
)
def test_a_line_of_a_component(read: Read, written: str, key: str, value: Any) -> None:
    dessert = dessert_of(read, HEAD + MOUSSE.replace("lost: 0 %", written))
    found = getattr(dessert.components[0], key)
    if value is None:
        assert isinstance(found.share.origin, Assumed)
        assert found.fixed.value == 20
    else:
        assert found == value


PER_24 = Figure(
    value=0.625,
    unit="min",
    name="",
    origin=Worked(
        rule=Words("minutes by pieces"), parts=(stated(15, "min"), stated(24, "pieces"))
    ),
)


@pytest.mark.parametrize(
    ("written", "step"),
    [
        ("10 min", Step(key="do", hands=Hands(fixed=stated(10, "min")))),
        ("1.5 min a piece", Step(key="do", hands=Hands(per_piece=stated(1.5, "min")))),
        (
            "15 min and 0.75 min a portion",
            Step(
                key="do",
                hands=Hands(fixed=stated(15, "min"), per_portion=stated(0.75, "min")),
            ),
        ),
        ("15 min per 24", Step(key="do", hands=Hands(per_piece=PER_24))),
        ("15 min per 24 pieces", Step(key="do", hands=Hands(per_piece=PER_24))),
        (
            "10 min, stands 20 min",
            Step(
                key="do",
                hands=Hands(fixed=stated(10, "min")),
                stand=Stand(least=stated(20, "min")),
            ),
        ),
        (
            "stands 12 h to 48 h; freezer",
            Step(
                key="do",
                stand=Stand(least=stated(720, "min"), most=stated(2880, "min")),
                place="freezer",
            ),
        ),
        (
            "blast 2.5 h or freezer 12 h; core -18 °C; hold 14 d",
            Step(
                key="do",
                roads=(
                    Road(place="blast", least=stated(150, "min")),
                    Road(place="freezer", least=stated(720, "min")),
                ),
                core=stated(-18, "°C"),
                hold=stated(20160, "min"),
            ),
        ),
        (
            "5 min; each round; all hands; Mixer; oven; needs custard, jam boil; used up"
            " within 20 min; no ice left, core +1 °C",
            Step(
                key="do",
                hands=Hands(fixed=stated(5, "min"), all_hands=True),
                tools=("mixer", "oven"),
                needs=(Need(component="custard"), Need(component="jam", step="boil")),
                each_round=True,
                within=stated(20, "min"),
                remarks=("no ice left, core +1 °C",),
            ),
        ),
    ],
)
def test_a_step(read: Read, written: str, step: Step) -> None:
    others = "".join(
        MOUSSE.replace("mousse", key) + "  method: |\n    boil  5 min\n"
        for key in ("custard", "jam")
    )
    head = HEAD.replace("filled: |\n", "filled: |\n  custard; disc 9 x 9 mm\n")
    head = head.replace("filled: |\n", "filled: |\n  jam; disc 9 x 9 mm\n")
    method = f"method: |\n  do  {written}\n"
    assert dessert_of(read, head + MOUSSE + others + method).method == (step,)


def test_a_variant(read: Read) -> None:
    text = f"""{HEAD}{MOUSSE}variant light: |
  mousse; cream 35 % becomes 60 g cream 30 % + 40 g milk, cold
"""
    dessert = dessert_of(read, text)
    assert dessert.variants[0].name == "light"
    assert dessert.variants[0].swaps == (
        Swap(
            component="mousse",
            out="cream 35 %",
            into=(
                (stated(60, "g"), "cream 30 %"),
                (stated(40, "g"), "milk, cold"),
            ),
        ),
    )

    def names(branch: Any, _: object) -> tuple[str, ...]:
        return variants_in(branch)

    assert read(names, text)[0] == ("light",)


BAD = [
    # the filling
    ("  mousse; the rest", "  mousse", "4:3: how much 'mousse' goes in is missing. Write a"
     " shape with its sizes, 'from the NAME mould' or 'the rest'."),
    ("  mousse; the rest", "  mousse; much", "4:11: 'much' is not a shape known here. Write"
     " one of half sphere, hemisphere, half-sphere, sphere, dome, disc, ring, cylinder,"
     " cone, savarin, oval, ellipsoid, cut ellipsoid, egg, half egg, box, bar, frame,"
     " terrine, sheet, trough, turned, outline, free form, water with its sizes."),
    ("  mousse; the rest", "  mousse; disc 60 x 8 mm", "3:1: nothing fills the rest of the"
     " mould. Write 'the rest' after the component that does."),
    ("filled: |\n  mousse; the rest\n", "plate: |\n  mousse; 5 g\n", ": nobody says what goes"
     " into the mould. Write 'filled, upside down: |' and one layer a line."),
    ("filled: |\n", "filled, upside down: |\n  mousse; half\nfilled: |\n", "5:1: the mould is"
     " filled twice, upright and upside down. Keep one of the two."),
    ("mould: dome", "mould: stone", "2:8: the kitchen has no mould called 'stone'. Write it"
     " under moulds in kitchen.yaml."),
    ("mould: dome", "mould: dom", "2:8: the kitchen has no mould called 'dom'. Perhaps you"
     " meant 'dome'."),
    ("  mousse; the rest", "  mousse; half\n  jam; the rest\ncomponent jam:\n  density: 1 g/ml"
     "\n  lost: 0 %\n  formula: salt", "5:3: 'jam' and 'mousse' both fill the rest. Give one of"
     " them a size or a mould of its own."),
    ("component mousse:", "component jam:\n  density: 1 g/ml\n  lost: 0 %\n  formula: salt\n"
     "component mousse:", "5:1: 'jam' is made and never used. Name it in the filling, the"
     " finish or the plate, or take it out."),
    # the plate
    ("filled: |", "plate: |\n  qqq; 5 g\nfilled: |", "4:3: no ingredient is called 'qqq'. Add"
     " it to larder.yaml, with its sheet per 100 g."),
    ("filled: |", "plate: |\n  salt\nfilled: |", "4:3: how much 'salt' goes on a plate is"
     " missing. Write it after a semicolon, for example salt; 15 g."),
    ("filled: |", "plate: |\n  salt; 5 mm\nfilled: |", "4:9: the salt on a plate, '5 mm', is a"
     " length, and a weight or a volume or a number of things is wanted. Write it in g or"
     " kg, or ml or l, or pieces, leaves or spoons."),
    # the finish
    ("filled: |", "finish: |\n  mousse; painted\nfilled: |", "4:3: how 'mousse' goes on is"
     " missing. Write dipped, poured N times, sprayed, brushed, rolled or spattered after its"
     " name."),
    ("filled: |", "finish: |\n  mousse; dipped; film 1 mm\nfilled: |", "4:3: the clearance of"
     " 'mousse' is missing. Write it, for example: clearance 15 mm."),
    ("filled: |", "finish: |\n  mousse; sprayed; film 1 mm\nfilled: |", "4:3: the share that"
     " lands of 'mousse' is missing. Write it, for example: 50 % lands."),
    # the formula
    ("100 g  cream 35 %", "100 g  creem 35 %", "7:12: no ingredient is called 'creem 35 %'."
     " Perhaps you meant 'cream 35 %'; or add 'creem 35 %' to the larder."),
    ("100 g  cream 35 %", "100 g  hazelnt paste", "7:12: no ingredient is called 'hazelnt"
     " paste'. Perhaps you meant 'Hazelnut paste 100 %'; or add 'hazelnt paste' to the"
     " larder."),
    ("100 g  cream 35 %", "100 g", "7:5: '100 g' does not say of what. Write the ingredient"
     " after the amount."),
    ("100 g  cream 35 %", "?", "7:5: '?' does not say of what. Write the ingredient after the"
     " amount."),
    ("100 g  cream 35 %", "60 l cream 35 %", "7:5: 60 l on one line is more than a kitchen"
     " weighs at once. Write 60 ml, or 60 000 ml if that is meant."),
    ("100 g  cream 35 %", "9 g salt; keeps some", "7:15: the liquid kept by the solids, times"
     " their weight, 'some', is not an amount. Write a number and its unit, in times."),
    ("    100 g  cream 35 %\n", "", "6:3: nothing stands after 'formula'. Write it, or take"
     " the line away."),
    # the component
    ("lost: 0 %", "lost: 40 g", "9:9: '40 g' does not say what is lost. Write it like 4 %,"
     " then 40 g a whip, or 2 %, then 20 g a batch."),
    ("lost: 0 %", "lost: 0 %\n  made: often", "10:9: 'often' is no way of making it. Write"
     " whole batches, in steps of 10 g, or by its own factor."),
    ("lost: 0 %", "lost: 0 %\n  sheet: 400 x 300 mm", "10:10: '400 x 300 mm' is not a tray and"
     " a gap. Write it like 400 x 300 mm; gap 2 mm."),
    ("lost: 0 %", "lost: 0 %\n  sheet: 0 x 300 mm; gap 2 mm", "10:10: a tray of '0 x 300 mm'"
     " holds nothing. Write its inside length and width."),
    ("component mousse:", "component mousse: x\ncomponent cream:", "5:1: nothing is said of the"
     " component 'mousse'. Write its formula, density and loss below it."),
    # the variant
    ("component mousse:", "variant v: |\n  mousse; more cream\ncomponent mousse:", "6:3: 'mousse;"
     " more cream' does not say what becomes what. Write it like base; hazelnut paste"
     " becomes 90 g sunflower paste."),
    ("component mousse:", "variant v: |\n  mousse; cream 35 % becomes salt\ncomponent mousse:",
     "6:30: how much 'salt' goes in is missing. Write the amount and its unit first, for"
     " example 90 g."),
    ("component mousse:", "variant v: |\n  mousse; salt becomes 1 g sugar\ncomponent mousse:",
     "6:11: no ingredient of mousse is called 'salt'. Write one of: cream 35 %."),
    # the steps
    ("component mousse:", "method: |\n  do  5 min\n  do  6 min\ncomponent mousse:", "7:3: a step"
     " called 'do' is on line 6 too. Give one of them another first word."),
    ("component mousse:", "method: |\n  do  5 min; needs jam\ncomponent mousse:", "6:14: no"
     " component is called 'jam'. Write one of: mousse."),
    ("component mousse:", "method: |\n  do\ncomponent mousse:", "6:3: nobody says how long 'do'"
     " takes. Write it like 10 min, or 1.5 min a piece, or stands 12 h to 48 h, or blast"
     " 2.5 h or freezer 12 h."),
    ("component mousse:", "method: |\n  do  stands 2 h; all hands\ncomponent mousse:", "6:3:"
     " 'do' has all hands and no working time. Write how long it takes, or leave 'all"
     " hands' out."),
    ("component mousse:", "method: |\n  do  5 min and 6 min\ncomponent mousse:", "6:7: '5 min"
     " and 6 min' has the same kind of time twice. Add them up, or write one of them a"
     " piece."),
    ("component mousse:", "method: |\n  do  blast 2 h or wait\ncomponent mousse:", "6:7: 'wait'"
     " is not a place and a time. Write it like 10 min, or 1.5 min a piece, or stands 12 h"
     " to 48 h, or blast 2.5 h or freezer 12 h."),
]  # fmt: skip


@pytest.mark.parametrize(("old", "new", "message"), BAD, ids=range(len(BAD)))
def test_a_bad_line(read: Read, old: str, new: str, message: str) -> None:
    text = HEAD + MOUSSE
    assert old in text
    place = "x.yaml" if message.startswith(":") else "x.yaml:"
    assert faults_of(read, text.replace(old, new, 1)) == [f"{place}{message}"]


def test_a_key_twice_and_a_time_that_is_none(read: Read) -> None:
    text = HEAD + MOUSSE + "mould: dome\nmethod: |\n  do  soon\n  see  5 min; mixxer\n"
    assert faults_of(read, text) == [
        "x.yaml:10:1: 'mould' is here twice, first on line 2. Keep one of the two.",
        "x.yaml:12:7: 'soon' does not say how long 'do' takes. Write it like 10 min, or 1.5"
        " min a piece, or stands 12 h to 48 h, or blast 2.5 h or freezer 12 h.",
        "x.yaml:13:15: 'mixxer' is no tool, no cold place and no rule. Perhaps you meant"
        " 'mixer'; if not, write it in other words.",
    ]


def test_a_component_that_goes_into_itself_by_way_of_others(read: Read) -> None:
    first = MOUSSE.replace("cream 35 %", "jam")
    second = MOUSSE.replace("mousse", "jam").replace("cream 35 %", "mousse")
    third = MOUSSE.replace("mousse", "foam").replace("cream 35 %", "jam\n    1 g  jam")
    text = HEAD + "  foam; disc 9 x 9 mm\n" + first + second + third
    remedy = "Take one of them out of the other's formula."
    assert faults_of(read, text) == [
        f"x.yaml:6:1: 'mousse' goes into itself, by way of others. {remedy}",
        f"x.yaml:11:1: 'jam' goes into itself, by way of others. {remedy}",
    ]


def test_a_dessert_without_components(read: Read) -> None:
    assert faults_of(read, "dessert: X\nmould: dome\nfilled: |\n  x; the rest\n") == [
        "x.yaml: the dessert has no component. Write 'component NAME:' with its formula,"
        " density and loss.",
        "x.yaml:4:3: 'x' is named here and nowhere made. Write 'component x:' with its"
        " formula.",
    ]


def test_a_key_far_from_all_others_is_told_which_there_are(read: Read) -> None:
    assert faults_of(read, HEAD + MOUSSE + "qqq: 1\n") == [
        "x.yaml:10:1: 'qqq' is not known here. Write one of: dessert, written for, mould,"
        " portions, filled, filled, upside down, finish, plate, method, notes, called for,"
        " component NAME, variant NAME."
    ]


def test_a_fault_in_a_component_blames_no_other_line(read: Read) -> None:
    text = (
        HEAD
        + MOUSSE.replace("100 g", "100")
        + "variant v: |\n  mousse; cream 35 % becomes 1 g salt\n"
    )
    assert faults_of(read, text) == [
        "x.yaml:7:5: no unit stands after 100 in '100 cream 35 %'. Write the unit too, for"
        " example 100 g cream 35 %."
    ]


def test_names_are_not_checked_against_a_kitchen_nobody_can_read(read: Read) -> None:
    text = (
        (HEAD + MOUSSE)
        .replace("mould: dome", "mould: stone")
        .replace("cream 35 %", "qqq")
    )
    method = "method: |\n  do  cellar 5 h\n"
    assert faults_of(read, text + method, Known(own=None)) == []
