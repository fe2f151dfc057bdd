"""Everything a hand in a hurry gets wrong, each with the whole of what is said of it."""

from collections.abc import Callable
from datetime import datetime
from pathlib import Path
from zoneinfo import ZoneInfo

import pytest

from demould.counter.text.read_folder import read_folder
from demould.mise.dessert import component_of
from demould.mise.folder import dessert_of

NOW = datetime(2026, 11, 17, 14, 0, tzinfo=ZoneInfo("Europe/London"))

Said = Callable[..., list[str]]
PEBBLE = "desserts/river-pebble.yaml"

BAD_LINES = [
    # a key nobody knows, and one that is missing
    (
        PEBBLE,
        "written for:",
        "writen for:",
        "2:1: 'writen for' is not known here. Perhaps you meant 'written for'.",
    ),
    (
        PEBBLE,
        "  lost: 5 %\n  method: |\n    boil",
        "  method: |\n    boil",
        "95:1: 'lost' is missing. Write how much sticks, for example lost: 4 %, or"
        " lost: 0 %.",
    ),
    # units
    (
        PEBBLE,
        "280 g  cream",
        "280  cream",
        "23:5: no unit stands after 280 in '280 cream 35 %, hot'. Write the unit too,"
        " for example 280 g cream 35 %, hot.",
    ),
    (
        PEBBLE,
        "density: 1.03 g/ml",
        "density: 1.03",
        "30:12: the density of the ganache, '1.03', has no unit. Write the unit too:"
        " 1.03 g/ml.",
    ),
    (
        PEBBLE,
        "density: 1.03 g/ml",
        "density: 1.03 g",
        "30:12: the density of the ganache, '1.03 g', is a weight, and a density is"
        " wanted. Write it in g/ml.",
    ),
    (
        PEBBLE,
        "50 % lands",
        "50 g lands",
        "13:55: the share that lands, '50 g', is a weight, and a share is wanted."
        " Write it in %.",
    ),
    # negative and nothing
    (
        PEBBLE,
        "280 g  cream",
        "-280 g  cream",
        "23:5: the amount is '-280 g', less than 0. Write it without the minus sign.",
    ),
    (
        PEBBLE,
        "280 g  cream",
        "\u2212280 g  cream",
        "23:5: the amount is '\u2212280 g', less than 0. Write it without the minus sign.",
    ),
    (
        PEBBLE,
        "280 g  cream",
        "0 g  cream",
        "23:5: the amount is '0 g', nothing at all. Write more than 0.",
    ),
    # numbers that can be read in two ways
    (
        PEBBLE,
        "280 g  cream",
        "1.200 g  cream",
        "23:5: '1.200 g' can be read as 1.2 g or as 1 200 g. Write 1.2 g or 1 200 g.",
    ),
    (
        PEBBLE,
        "280 g  cream",
        "1,200 g  cream",
        "23:5: '1,200 g' can be read as 1.2 g or as 1 200 g. Write 1.2 g or 1 200 g.",
    ),
    (
        PEBBLE,
        "280 g  cream",
        "1.200,5 g  cream",
        "23:5: '1.200,5' has more than one decimal mark. Write thousands with a space"
        " and one comma or point: 1 200.5.",
    ),
    (
        PEBBLE,
        "280 g  cream",
        "400 kg  cream",
        "23:5: 400 kg on one line is more than a kitchen weighs at once. Write 400 g,"
        " or 400 000 g if that is meant.",
    ),
    (
        PEBBLE,
        "density: 1.03 g/ml",
        "density: 1030 g/ml",
        "30:12: a density of '1030 g/ml' is far from any food, which has 0.2 to"
        " 1.5 g/ml. Write 1.03 g/ml, or 1030 g/l if that is how it was given.",
    ),
    (
        PEBBLE,
        "density: 1.03 g/ml",
        "density: 1.03 g/l",
        "30:12: a density of '1.03 g/l' is far from any food, which has 0.2 to"
        " 1.5 g/ml. Write 1.03 g/ml.",
    ),
    # components
    (
        PEBBLE,
        "plate: |\n  sauce; 15 g\n",
        "plate: |\n",
        "94:1: 'sauce' is made and never used. Name it in the filling, the finish or"
        " the plate, or take it out.",
    ),
    (
        PEBBLE,
        "ganache; the rest",
        "centre; the rest",
        "8:3: 'centre' and 'ganache' both fill the rest. Give one of them a size or a"
        " mould of its own.",
    ),
    # moulds
    (
        PEBBLE,
        "mould: pebble",
        "mould: pebbel",
        "3:8: the kitchen has no mould called 'pebbel'. Perhaps you meant 'pebble'.",
    ),
    (
        PEBBLE,
        "mould: pebble",
        "mould: xyzzy",
        "3:8: the kitchen has no mould called 'xyzzy'. Write it under moulds in"
        " kitchen.yaml.",
    ),
    (
        PEBBLE,
        "from the oval insert mould",
        "from the oval inset mould",
        "7:11: the kitchen has no mould called 'oval inset'. Perhaps you meant 'oval"
        " insert'.",
    ),
    # ingredients
    (
        PEBBLE,
        "hazelnut paste\n",
        "hazelnt paste\n",
        "62:12: no ingredient is called 'hazelnt paste'. Perhaps you meant 'hazelnut"
        " paste'; or add 'hazelnt paste' to the larder.",
    ),
    # steps
    (
        PEBBLE,
        "needs ganache;",
        "needs ganash;",
        "110:38: no component is called 'ganash'. Perhaps you meant 'ganache'.",
    ),
    (
        PEBBLE,
        "needs ganache;",
        "needs ganache whisk;",
        "110:38: no step is called 'whisk'. Write one of: steep, mix, rest.",
    ),
    (
        PEBBLE,
        "steep   10 min",
        "mix   10 min",
        "35:5: a step called 'mix' is on line 34 too. Give one of them another first"
        " word.",
    ),
    (
        PEBBLE,
        "blast 2.5 h or",
        "blst 2.5 h or",
        "112:12: no cold place is called 'blst'. Perhaps you meant 'blast'.",
    ),
    (
        PEBBLE,
        "mixer; needs",
        "mixr; needs",
        "110:31: 'mixr' is no tool, no cold place and no rule. Perhaps you meant"
        " 'mixer'; if not, write it in other words.",
    ),
    # a formula with nothing in it
    (
        PEBBLE,
        "    300 g  blackcurrant purée\n    45 g   sugar\n    55 g   water\n",
        "",
        "98:3: nothing stands after 'formula'. Write it, or take the line away.",
    ),
    # orders
    (
        "orders.yaml",
        "pieces: 12",
        "pieces: 10 000",
        "4:11: the number of pieces, '10 000', is more than 9999, the most that can be"
        " read. Look at the number again; if it is meant, part it in several.",
    ),
    (
        "orders.yaml",
        "pieces: 12",
        "pieces: 0",
        "4:11: the number of pieces, '0', is less than 1. Write 1 or more.",
    ),
    (
        "orders.yaml",
        "pieces: 12",
        "pieces: 12.5",
        "4:11: '12.5' pieces is not a whole number. Write whole pieces.",
    ),
    (
        "orders.yaml",
        "Fri 2026-11-20",
        "Fri 2026-11-13",
        "5:14: the order is due Fri 2026-11-13 16:00, and now it is Tue 2026-11-17"
        " 14:00. Write a day to come, or take the order away.",
    ),
    (
        "orders.yaml",
        "Fri 2026-11-20",
        "2026-11-31",
        "5:14: there is no 2026-11-31. Look at the calendar; write year-month-day.",
    ),
    (
        "orders.yaml",
        "Fri 2026-11-20",
        "Thu 2026-11-20",
        "5:14: 2026-11-20 is a Friday, not a Thursday. Write Fri 2026-11-20, or the"
        " day that was meant.",
    ),
    (
        "orders.yaml",
        "Fri 2026-11-20 16:00",
        "Sun 2027-03-28 01:30",
        "5:14: the clocks go forward over Sun 2027-03-28 01:30: it never comes. Write a"
        " time before or after the hour that is left out.",
    ),
    (
        "orders.yaml",
        "Fri 2026-11-20 16:00",
        "Sun 2027-10-31 01:30",
        "5:14: the clocks go back that night: Sun 2027-10-31 01:30 comes twice. Write"
        " Sun 2027-10-31 01:30 first, or Sun 2027-10-31 01:30 second.",
    ),
    (
        "orders.yaml",
        "dessert: meadow-domes",
        "dessert: medow-domes",
        "3:12: no dessert is called 'medow-domes'. Perhaps you meant 'meadow-domes'.",
    ),
    (
        "orders.yaml",
        "pieces: 24",
        "variant: nutfree base\n  pieces: 24",
        "9:12: no variant is called 'nutfree base'. Perhaps you meant 'nut-free base'.",
    ),
    (
        "orders.yaml",
        "pieces: 12",
        "variant: pink\n  pieces: 12",
        "4:12: 'meadow-domes' has no variants, and 'pink' is asked for. Write 'variant"
        " pink: |' in its file, or ask for none.",
    ),
    (
        "orders.yaml",
        "by hand;",
        "by hands;",
        "12:5: no choice is called 'by hands'. Perhaps you meant 'by hand'.",
    ),
    # the kitchen
    (
        "kitchen.yaml",
        "fan fridge",
        "fan frige",
        "44:17: no kind of cold place is called 'fan frige'. Perhaps you meant 'fan"
        " fridge'.",
    ),
    (
        "kitchen.yaml",
        "half-sphere 70 mm",
        "half-spere 70 mm",
        "21:16: 'half-spere 70 mm' is not a shape known here. Perhaps you meant"
        " 'half-sphere'.",
    ),
    (
        "kitchen.yaml",
        "dome; 3 x 6; half-sphere 70 mm",
        "dome; 0 x 6; half-sphere 70 mm",
        "21:9: the number of trays, '0', is less than 1. Write 1 or more.",
    ),
    # the larder
    (
        "larder.yaml",
        "water 58.9, fat 35",
        "water 58.9, fat 45",
        "8:14: the sheet adds up to 110 g in 100 g. Look at the sheet again; what it"
        " does not name is 'other'.",
    ),
    (
        "larder.yaml",
        "of the sugars: lactose 3\n",
        "of the sugars: lactose 4\n",
        "9:18: these sugars add up to 4 g, the sheet has 3 g. Make the two agree; what"
        " is not known is 'other sugar'.",
    ),
    (
        "larder.yaml",
        "like: cream_35",
        "like: creem_35",
        "7:9: the table has no 'creem_35'. Perhaps you meant 'cream_35'.",
    ),
    # not YAML
    (
        PEBBLE,
        "name: Buck",
        "name: Buck: ",
        "20:13: a colon stands where none can, or the line begins too far in. Begin it"
        " right below the line above; put words with a colon in quotes.",
    ),
]


@pytest.mark.parametrize(
    ("file", "old", "new", "message"), BAD_LINES, ids=range(len(BAD_LINES))
)
def test_one_bad_line_gives_one_plain_sentence(
    said: Said, file: str, old: str, new: str, message: str
) -> None:
    assert said((file, old, new)) == [f"{file}:{message}"]


def test_a_component_that_nobody_makes_is_named_at_its_line(said: Said) -> None:
    assert said((PEBBLE, "plate: |\n", "plate: |\n  praline; 5 g\n")) == [
        f"{PEBBLE}:16:3: no ingredient is called 'praline'. Perhaps you meant 'Hazelnut"
        " praliné 50/50'; or add 'praline' to the larder."
    ]
    assert said(
        (PEBBLE, "  praline; 5 g\n", ""),
        (PEBBLE, "finish: |\n", "finish: |\n  foam; dipped; film 1 mm\n"),
    ) == [
        f"{PEBBLE}:12:3: 'foam' is named here and nowhere made. Write 'component foam:'"
        " with its formula."
    ]


def test_all_faults_of_all_files_come_in_one_go(said: Said) -> None:
    changes = (
        (PEBBLE, "280 g  cream", "280  cream"),
        (PEBBLE, "400 g  cream", "-400 g  cream"),
        (PEBBLE, "mould: pebble", "mould: pebbel"),
        ("desserts/ember-log.yaml", "density: 1.12 g/ml", "density: 1120 g/ml"),
        ("kitchen.yaml", "fan fridge", "fan frige"),
        ("larder.yaml", "price: 5.20 a kg", "price: 5.20"),
        ("orders.yaml", "pieces: 12", "pieces: 0"),
        ("orders.yaml", "pieces: 24", "pieces: 10 000"),
    )
    assert said(*changes) == [
        "kitchen.yaml:44:17: no kind of cold place is called 'fan frige'. Perhaps you"
        " meant 'fan fridge'.",
        "larder.yaml:11:10: the price, '5.20', is not money a kg. Write it like 5.20 a"
        " kg, or 4.20 a kg gross for untrimmed.",
        "desserts/ember-log.yaml:45:12: a density of '1120 g/ml' is far from any food,"
        " which has 0.2 to 1.5 g/ml. Write 1.12 g/ml, or 1120 g/l if that is how it was"
        " given.",
        f"{PEBBLE}:3:8: the kitchen has no mould called 'pebbel'. Perhaps you meant"
        " 'pebble'.",
        f"{PEBBLE}:23:5: no unit stands after 280 in '280 cream 35 %, hot'. Write the"
        " unit too, for example 280 g cream 35 %, hot.",
        f"{PEBBLE}:28:5: the amount is '-400 g', less than 0. Write it without the minus"
        " sign.",
        "orders.yaml:4:11: the number of pieces, '0', is less than 1. Write 1 or more.",
        "orders.yaml:9:11: the number of pieces, '10 000', is more than 9999, the most"
        " that can be read. Look at the number again; if it is meant, part it in several.",
    ]


@pytest.mark.parametrize(
    ("written", "value"),
    [("3,6 g", 3.6), ("3.6 g", 3.6), ("1 200 g", 1200.0), ("1 200,5 g", 1200.5)],
)
def test_comma_and_point_are_decimal_and_a_space_parts_thousands(
    kitchen: Path, written: str, value: float
) -> None:
    text = (kitchen / PEBBLE).read_text("utf-8").replace("3.6 g ", f"{written} ", 1)
    (kitchen / PEBBLE).write_text(text, "utf-8")
    folder, problems, _ = read_folder(kitchen, NOW)
    assert problems == ()
    assert folder is not None
    gelatin = component_of(dessert_of(folder, "river-pebble"), "ganache").formula[2]
    assert gelatin.amount is not None
    assert (gelatin.amount.value, gelatin.amount.unit) == (value, "g")


def test_a_density_in_g_l_is_the_same_in_g_ml(kitchen: Path) -> None:
    text = (kitchen / PEBBLE).read_text("utf-8")
    (kitchen / PEBBLE).write_text(text.replace("1.03 g/ml", "1030 g/l", 1), "utf-8")
    folder, problems, _ = read_folder(kitchen, NOW)
    assert problems == ()
    assert folder is not None
    density = component_of(dessert_of(folder, "river-pebble"), "ganache").density
    assert (density.value, density.unit) == (1.03, "g/ml")
