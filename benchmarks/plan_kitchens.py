"""Kitchens to plan, made up from a seed: 1 to 200 orders, tight in moulds, hands or cold.

Nothing in it follows a public case. Each order is one of four desserts of an invented
kitchen, in rounds as its moulds allow; due times fall on the afternoons of the later
days, more of them towards their end. What is tight is what the mould bound (a mould
goes once round a night), the attended minutes, or the grams in the cold ask for, and a
little more; all else is plenty.

    python benchmarks/plan_kitchens.py --orders 12 --seed 3 --tight moulds > case.json
"""

from __future__ import annotations

import argparse
import json
import random
from dataclasses import dataclass, field
from math import ceil

DAY = 1440
WORK = ((7 * 60, 12 * 60), (13 * 60, 18 * 60))
TIGHT = ("moulds", "hands", "cold")


@dataclass
class Kitchen:
    """A problem as it is written down, growing order by order."""

    steps: list[dict[str, object]] = field(default_factory=list)
    lags: list[dict[str, object]] = field(default_factory=list)
    holds: list[dict[str, object]] = field(default_factory=list)
    orders: list[dict[str, object]] = field(default_factory=list)
    rounds: dict[str, list[tuple[int, int]]] = field(default_factory=dict)
    hands_min: int = 0
    most_cold: list[int] = field(default_factory=list)

    def step(self, order: str, name: str, minutes: object, **more: object) -> str:
        step: dict[str, object] = {
            "id": f"{order}.{name}",
            "order": order,
            "label": name,
            "duration": minutes,
            **more,
        }
        if more.get("attended") in ("all", "ends"):
            step |= {"calendar": "kitchen", "attend_uses": {"hands": 1}}
            self.hands_min += minutes if isinstance(minutes, int) else 10
        self.steps.append(step)
        return str(step["id"])

    def wait(
        self, one: str, other: str, least: int, most: int | None, why: str
    ) -> None:
        self.lags.append(
            {"from": one, "to": other, "min": least, "max": most, "why": why}
        )


def kitchen(
    orders: int, seed: int, tight: str = "moulds", days: int = 0
) -> dict[str, object]:
    """Give a problem with so many orders, written as the neutral schema writes it."""
    rng = random.Random(f"{orders} {seed} {tight}")
    days = days or min(14, 3 + ceil(orders / 6))
    made = Kitchen()
    shapes = max(1, min(12, round(orders / 3)))
    last = (days - 1) * DAY
    for number in range(1, orders + 1):
        day = days - 1 - int((rng.random() ** 1.5) * max(1, days - 3))
        due = day * DAY + rng.choice((900, 960, 1020, 1080))
        order(made, f"o{number}", due, rng, shapes)
    nights = {shape: _most_needed(rounds) for shape, rounds in made.rounds.items()}
    cooks = made.hands_min / (0.55 * days * 600)
    plenty = 4 * orders + 8
    cold = max(made.most_cold)
    resources = {
        "hands": {
            "capacity": ceil(cooks) if tight == "hands" else ceil(1.6 * cooks) + 1
        },
        "mixer": {"capacity": 1 + orders // 40},
        "burner": {"capacity": 3 + orders // 30},
        "oven": {"capacity": 2 + orders // 40},
        "blast": {
            "capacity": max(cold, cold * orders // 6)
            if tight == "cold"
            else cold * plenty
        },
        "fridge": {"capacity": plenty},
        **{
            f"mould:{shape}": {"capacity": need + (0 if tight == "moulds" else plenty)}
            for shape, need in nights.items()
        },
    }
    windows = [
        [day * DAY + opens, day * DAY + closes]
        for day in range(days)
        for opens, closes in WORK
    ]
    return {
        "schema": "demould-plan-problem/1",
        "id": f"{tight}-{orders}-{seed}",
        "origin": "2026-11-23T00:00",
        "horizon": last + DAY,
        "calendars": {"kitchen": windows},
        "resources": resources,
        "orders": made.orders,
        "steps": made.steps,
        "lags": made.lags,
        "holds": made.holds,
    }


def _most_needed(rounds: list[tuple[int, int]]) -> int:
    """Give the moulds of a shape without which some due time can not be met."""
    most = max(moulds for _, moulds in rounds)
    for due, _ in rounds:
        wanted = sum(moulds for other, moulds in rounds if other <= due)
        most = max(most, ceil(wanted / max(1, due // DAY - 1)))
    return most + 1


def order(made: Kitchen, name: str, due: int, rng: random.Random, shapes: int) -> None:
    """Add one order: a base, a centre, a cream in rounds, and what finishes it."""
    made.orders.append({"id": name, "due": due})
    shape = f"shape-{rng.randrange(shapes)}"
    rounds, moulds = rng.choice(((1, 2), (1, 3), (2, 2), (2, 3), (3, 2)))
    part = {"fresh": 1, "attended": "all"}
    base_mix = made.step(
        name, "base_mix", 20, attended="all", uses={"mixer": 1}, clean={"mixer": 5}
    )
    base_bake = made.step(
        name,
        "base_bake",
        25,
        attended="ends",
        attend_start=5,
        attend_end=5,
        uses={"oven": 1},
    )
    base_cut = made.step(name, "base_cut", 15, **part)
    made.wait(base_mix, base_bake, 0, 20, "the batter falls")
    made.wait(base_bake, base_cut, 30, DAY, "cool first, cut within a day")
    centre = _centre(made, name, rng)
    glazed = rng.random() < 0.6
    finish = _glaze(made, name, rng) if glazed else None
    grams = 400 * moulds
    made.most_cold.append(grams)
    for number in range(1, rounds + 1):
        whip = made.step(
            name, f"whip{number}", 15, uses={"mixer": 1}, clean={"mixer": 10}, **part
        )
        fill = made.step(name, f"fill{number}", 25 + 5 * moulds, **part)
        freeze = made.step(
            name, f"freeze{number}", [180, 900], attended="none", uses={"blast": grams}
        )
        demould = made.step(name, f"demould{number}", 15, attended="all")
        made.wait(whip, fill, 0, 15, "whipped cream is used at once")
        made.wait(base_cut, fill, 0, 2 * DAY, "the base is cut")
        made.wait(centre, fill, 0, 3 * DAY, "the centre is frozen")
        made.wait(fill, freeze, 0, 0, "straight into the blast freezer")
        made.wait(freeze, demould, 0, 3 * DAY, "frozen through")
        made.wait(fill, demould, 720, None, "12 h of freezing in the mould")
        made.holds.append(
            {
                "resource": f"mould:{shape}",
                "amount": moulds,
                "from": fill,
                "from_at": "start",
                "to": demould,
                "to_at": "end",
            }
        )
        made.rounds.setdefault(shape, []).append((due, moulds))
        last = demould
        if finish is not None:
            warm = made.step(
                name, f"warm{number}", 15, attended="all", uses={"burner": 1}
            )
            dip = made.step(name, f"dip{number}", 10 + 5 * moulds, attended="all")
            made.wait(finish, warm, 720, 3 * DAY, "the glaze rests 12 h")
            made.wait(warm, dip, 0, 15, "the glaze is at its warmth")
            made.wait(demould, dip, 0, 5, "dipped straight out of the cold")
            last = dip
        thaw = made.step(
            name,
            f"thaw{number}",
            [240, 360],
            attended="ends",
            attend_start=5,
            attend_end=0,
            uses={"fridge": 1},
            fresh=0,
        )
        made.wait(last, thaw, 0, 3 * DAY, "keeps three days in the freezer")


def _centre(made: Kitchen, name: str, rng: random.Random) -> str:
    if rng.random() < 0.3:
        return made.step(name, "centre_pipe", 20, attended="all", fresh=1)
    cook = made.step(name, "centre_cook", 20, attended="all", uses={"burner": 1})
    pour = made.step(name, "centre_pour", 15, attended="all")
    freeze = made.step(
        name, "centre_freeze", [120, 2 * DAY], attended="none", uses={"blast": 200}
    )
    made.most_cold.append(200)
    out = made.step(name, "centre_out", 10, attended="all")
    made.wait(cook, pour, 0, 30, "poured before it sets")
    made.wait(pour, freeze, 0, 0, "straight into the blast freezer")
    made.wait(freeze, out, 0, 0, "out of its mould while it is hard")
    return out


def _glaze(made: Kitchen, name: str, rng: random.Random) -> str:
    return made.step(
        name,
        "glaze_cook",
        rng.choice((15, 20)),
        attended="all",
        uses={"burner": 1},
        fresh=1,
    )


if __name__ == "__main__":
    ask = argparse.ArgumentParser(description=__doc__)
    ask.add_argument("--orders", type=int, default=12)
    ask.add_argument("--seed", type=int, default=0)
    ask.add_argument("--tight", choices=TIGHT, default="moulds")
    asked = ask.parse_args()
    print(json.dumps(kitchen(asked.orders, asked.seed, asked.tight)))
