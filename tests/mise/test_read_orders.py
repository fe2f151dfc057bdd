from collections.abc import Callable
from datetime import UTC, datetime
from typing import Any

import pytest

from demould.mise.bare import bare
from demould.mise.figure import Figure
from demould.mise.order import Frozen, Order
from demould.mise.read_orders import Wanted, read_orders

Read = Callable[..., tuple[Any, list[str]]]
WANTED = Wanted(
    desserts={"dome": (), "pebble": ("nut-free base",), "broken": None},
    zone="Europe/London",
    now=datetime(2026, 11, 17, 14, 0, tzinfo=UTC),
)


def test_an_order_and_all_its_lines(read: Read) -> None:
    text = """dinner:
  dessert: pebble
  variant: nut-free base
  pieces: 9 999
  plates: Sat 2026-11-21 19:30
  spares: 3
  choices: |
    by hand; the round of 3; is small
    even rounds
"""
    (order,), faults = read(read_orders, text, WANTED)
    assert faults == []
    assert order.due.isoformat() == "2026-11-21T19:30:00+00:00"
    assert bare(order) == Order(
        key="dinner",
        dessert="pebble",
        variant="nut-free base",
        pieces=9999,
        due=order.due,
        spares=Figure(value=3, unit="pieces", name=""),
        choices=("by hand", "even rounds"),
        remarks=("the round of 3; is small", ""),
    )


def test_no_spares_at_all_is_a_number(read: Read) -> None:
    text = (
        "a:\n  dessert: dome\n  pieces: 1\n  collected: 2026-11-21 9:30\n  spares: 0\n"
    )
    (order,), _ = read(read_orders, text, WANTED)
    assert order.spares.value == 0
    assert order.ends == "collected"


def test_a_variant_of_a_dessert_with_faults_is_not_blamed(read: Read) -> None:
    text = "a:\n  dessert: broken\n  variant: any\n  pieces: 1\n  plates: 2026-11-21 9:30\n"
    (order,), faults = read(read_orders, text, WANTED)
    assert (order.variant, faults) == ("any", [])


GOOD = "a:\n  dessert: dome\n  pieces: 1\n  plates: 2026-11-21 9:30\n"


@pytest.mark.parametrize(
    ("text", "messages"),
    [
        (
            "a: 12 domes\n",
            [
                "x.yaml:1:1: the order 'a' says nothing. Write dessert, pieces, and plates"
                " or collected below it."
            ],
        ),
        (
            f"{GOOD}{GOOD}",
            ["x.yaml:5:1: two orders are called 'a'. Give one of them another name."],
        ),
        (
            "a:\n  plates: 2026-11-21 9:30\n",
            [
                "x.yaml:1:1: 'dessert' is missing. Write the name of its file in desserts,"
                " without .yaml.",
                "x.yaml:1:1: 'pieces' is missing. Write how many are wanted.",
            ],
        ),
        (
            GOOD.replace("plates", "place"),
            [
                "x.yaml:1:1: nobody says when the order is due. Write plates: or collected:"
                " and, for example, Sat 2026-11-21 19:30.",
                "x.yaml:4:3: 'place' is not known here. Perhaps you meant 'plates'.",
            ],
        ),
        (
            f"{GOOD}  collected: 2026-11-21 9:30\n",
            [
                "x.yaml:5:3: the order has both 'plates' and 'collected'. Keep one: plates"
                " at the pass, or collected in a box."
            ],
        ),
        (
            f"{GOOD}  choices: by hands\n",
            [
                "x.yaml:5:12: no choice is called 'by hands'. Perhaps you meant 'by hand'."
            ],
        ),
        (
            f"{GOOD}  choices: qqq\n",
            [
                "x.yaml:5:12: no choice is called 'qqq'. Write one of: by hand, even"
                " rounds, no spares, borrow a mould, a probe piece, a piece to taste, a"
                " piece to keep."
            ],
        ),
        (
            f"{GOOD}  spares: 1.200\n",
            [
                "x.yaml:5:11: '1.200' can be read as 1.2 spares or as 1 200 spares. Write"
                " 1.2 spares or 1 200 spares."
            ],
        ),
        (
            f"{GOOD}  variant: light\n",
            [
                "x.yaml:5:12: 'dome' has no variants, and 'light' is asked for. Write"
                " 'variant light: |' in its file, or ask for none."
            ],
        ),
        (
            GOOD.replace("11-21", "11-16"),
            [
                "x.yaml:4:11: the order is due Mon 2026-11-16 09:30, and now it is Tue"
                " 2026-11-17 14:00. Write a day to come, or take the order away."
            ],
        ),
    ],
    ids=range(10),
)
def test_a_bad_order(read: Read, text: str, messages: list[str]) -> None:
    assert read(read_orders, text, WANTED)[1] == messages


def test_what_is_in_the_freezer_already(read: Read) -> None:
    head = "a:\n  dessert: dome\n  pieces: 9\n  plates: 2026-11-21 9:30\n  frozen: "
    (order,), faults = read(read_orders, f"{head}12 pieces, 10 oval centre\n", WANTED)
    assert faults == []
    assert order.frozen == (
        Frozen(pieces=12),
        Frozen(pieces=10, component="oval centre"),
    )
    assert read(read_orders, f"{head}12\n", WANTED)[1] == [
        "x.yaml:5:11: '12' does not say what is frozen. Write it like 12 pieces,"
        " 10 centre."
    ]
