"""Every slip in stock, money and suppliers gets one sentence, the whole of it."""

from pathlib import Path
from shutil import copytree

import pytest

from demould.counter.text.read_folder import read_folder
from demould.demo import NAME, NOW
from demould.week.faults import faults_of
from tests.demo_folder import DEMO

CREAM = "  price: 5.20 a kg\n  pack: 1000 g\n  lead: 1 day\n  stock: 0 g\n"
SUPPLIER = "deliveries: by 09:00\n"

SLIPS = [
    (
        "larder.yaml",
        CREAM,
        "  price: 5.20 a pack\n  lead: 1 day\n",
        "the price is 5.20 a pack, and no pack size is written. Write what is in a pack,"
        " for example pack: 1000 g.",
    ),
    (
        "larder.yaml",
        CREAM,
        "  price: 5.20 EUR a kg\n",
        "'cream 35 %' is priced in EUR, and the kitchen's money is units. Write all"
        " prices in units.",
    ),
    (
        "larder.yaml",
        CREAM,
        "  stock: -200 g\n",
        "the stock is '-200 g', less than 0. Write it without the minus sign.",
    ),
    (
        "larder.yaml",
        CREAM,
        "  stock: 0 g\n  counted: Wed 2026-11-18\n",
        "'cream 35 %' was counted on 2026-11-18, and today is 2026-11-17. Write the day it"
        " was counted on.",
    ),
    (
        "larder.yaml",
        CREAM,
        "  stock: 0 g\n  since: |\n    Thu 2026-11-19 came 1 kg\n",
        "'cream 35 %' came on 2026-11-19, and today is 2026-11-17. Write it when it has"
        " happened.",
    ),
    (
        "larder.yaml",
        CREAM,
        "  stock: 1 kg\n  since: |\n    Mon 2026-11-16 used 1 kg\n",
        "'cream 35 %' was used on 2026-11-16, before it was counted on 2026-11-17. Take the"
        " line away: the count has it already.",
    ),
    (
        "larder.yaml",
        CREAM,
        "  stock: 800 g\n  since: |\n    Tue 2026-11-17 used 1 kg\n",
        "200 g more of 'cream 35 %' was used than was there. Count it again, and take the"
        " old lines away.",
    ),
    (
        "larder.yaml",
        CREAM,
        "  since: |\n    Tue 2026-11-17 came 1 kg\n",
        "'cream 35 %' came and went and was never counted. Write stock: and what was there"
        " on the day it was counted.",
    ),
    (
        "larder.yaml",
        CREAM,
        "  lead: 90 d\n",
        "'cream 35 %' takes 90 days to come; over 60 nobody can plan. Keep it in stock, and"
        " write the lead of the last time.",
    ),
    (
        "larder.yaml",
        CREAM,
        "  price: 5.20 a kg\n  pack: 1000 g at 5.10\n",
        "there are two prices: 5.20 a kg, and 1000 g at 5.10. Keep the one that is on the"
        " last bill.",
    ),
    (
        "larder.yaml",
        CREAM,
        "  price: 0 a kg\n",
        "the price is 0, and nobody says that it costs nothing. Write price: free if so, or"
        " take the line away until it is known.",
    ),
    (
        "larder.yaml",
        CREAM,
        "  season: Apr to Jun; else snow\n",
        "the larder has no 'snow'. Write an entry for it.",
    ),
    (
        "larder.yaml",
        CREAM,
        "  season: Apr to Jnu\n",
        "'Jnu' is not a month. Write Jan, Feb, Mar and so on: Apr to Jun.",
    ),
    (
        "larder.yaml",
        CREAM,
        "  stock: 0 g\n  since: |\n    came 2 kg\n",
        "'came 2 kg' does not say what came or was used. Write it like Wed 2026-11-18 came"
        " 2 kg, or used 940 g.",
    ),
    (
        "kitchen.yaml",
        SUPPLIER,
        "suppliers: |\n  Weir Dairy; delivers Sun, Mon\n",
        "'Weir Dairy' delivers only while the kitchen is closed. Write the days and the"
        " hour it can be taken in.",
    ),
    (
        "kitchen.yaml",
        SUPPLIER,
        "packing: |\n  cake box; takes 6\n",
        "nobody says what 'cake box' costs. Write it like cake box; 0.60 each; takes 6.",
    ),
    (
        "kitchen.yaml",
        SUPPLIER,
        "packing: |\n  cake box; 0.60 each; for meadow-dome\n",
        "no dessert is called 'meadow-dome'. Perhaps you meant 'meadow-domes'.",
    ),
    (
        "kitchen.yaml",
        SUPPLIER,
        "draws: |\n  ovn; 3 kW\n",
        "no tool or cold place is called 'ovn'. Perhaps you meant 'oven'.",
    ),
    (
        "kitchen.yaml",
        SUPPLIER,
        "draws: |\n  oven; hot\n",
        "'oven; hot' does not say how many kW. Write it like oven; 3.5 kW.",
    ),
    (
        "kitchen.yaml",
        SUPPLIER,
        "energy: dear\n",
        "'dear' is not money a kWh. Write it like 0.30 a kWh.",
    ),
    (
        "larder.yaml",
        "counted: Tue 2026-11-17\n",
        "counted: Tue 2026-11-17\nin the freezer: |\n  river-pebble; 12 pieces; made Wed 2026-11-18\n",
        "it was made on 2026-11-18, and today is 2026-11-17. Write it when it is in the"
        " freezer.",
    ),
    (
        "larder.yaml",
        "counted: Tue 2026-11-17\n",
        "counted: Tue 2026-11-17\nin the freezer: |\n  river-pebble; 12 pieces\n",
        "nobody says when 'river-pebble' was made. Write made and the day, for example made"
        " Sat 2026-11-14.",
    ),
    (
        "larder.yaml",
        "counted: Tue 2026-11-17\n",
        "counted: Tue 2026-11-17\nin the freezer: |\n  center of river-pebble; made Sat 2026-11-14\n",
        "no component is called 'center'. Perhaps you meant 'centre'.",
    ),
    (
        "larder.yaml",
        "counted: Tue 2026-11-17\n",
        "counted: Tue 2026-11-17\npar: |\n  river-pebble; 5 there\n",
        "'river-pebble; 5 there' does not say how many. Write it like river-pebble; 12"
        " pieces; 5 there.",
    ),
]


@pytest.mark.parametrize(("file", "old", "new", "says"), SLIPS)
def test_a_slip_is_told_in_one_sentence(
    tmp_path: Path, file: str, old: str, new: str, says: str
) -> None:
    place = tmp_path / NAME
    copytree(DEMO, place)
    text = (place / file).read_text("utf-8")
    assert old in text
    (place / file).write_text(text.replace(old, new, 1), "utf-8")
    _, problems, _ = read_folder(place, NOW, (lambda read: faults_of(read, NOW),))
    told = [f"{one.wrong}. {one.remedy}." for one in problems]
    assert told == [says]
    assert [one.file for one in problems] == [file]
    assert all(one.line for one in problems)


def test_a_supplier_nobody_wrote_a_line_about_is_told(tmp_path: Path) -> None:
    place = tmp_path / NAME
    copytree(DEMO, place)
    for file, old, new in (
        ("kitchen.yaml", SUPPLIER, f"{SUPPLIER}suppliers: |\n  Weir Dairy\n"),
        ("larder.yaml", CREAM, f"{CREAM}  supplier: Wier Dairy\n"),
    ):
        text = (place / file).read_text("utf-8")
        (place / file).write_text(text.replace(old, new, 1), "utf-8")
    _, problems, _ = read_folder(place, NOW, (lambda read: faults_of(read, NOW),))
    assert [f"{one.wrong}. {one.remedy}." for one in problems] == [
        "'cream 35 %' comes from 'Wier Dairy', and kitchen.yaml has no such supplier."
        " Perhaps you meant 'Weir Dairy'."
    ]


def test_one_dessert_alone_is_asked_nothing_about_the_others(tmp_path: Path) -> None:
    place = tmp_path / NAME
    copytree(DEMO, place)
    text = (place / "kitchen.yaml").read_text("utf-8")
    box = "packing: |\n  cake box; 0.60 each; for meadow-domes\n"
    (place / "kitchen.yaml").write_text(text + box, "utf-8")
    text = (place / "larder.yaml").read_text("utf-8")
    lots = "par: |\n  meadow-domes; 6 pieces\n"
    (place / "larder.yaml").write_text(lots + text, "utf-8")
    _, problems, _ = read_folder(
        place, NOW, (lambda read: faults_of(read, NOW),), only="river-pebble"
    )
    assert problems == ()
