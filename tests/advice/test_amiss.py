"""Causes ranked by a batch's own numbers and readings."""

from collections.abc import Mapping
from dataclasses import replace

import pytest

from demould.advice.troubles.own_numbers import Batch, own_numbers
from demould.advice.troubles.ranked import (
    Trouble,
    reading_called,
    sign_called,
    spoken_of,
    troubles,
)
from demould.larder.read import reading_kinds, signs
from demould.mise.component import Component
from demould.mise.dessert import Dessert
from demould.mise.find import find_in
from demould.mise.problem import UnreadableError
from demould.mise.read_reading import reading_value, split_reading
from tests.advice.kitchenware import FIND, dessert, made
from tests.demo_folder import demo_folder

FOLDER = demo_folder()
LOOK = find_in(FOLDER.larder)


def sweet(key: str) -> Dessert:
    return next(one for one in FOLDER.desserts if one.key == key)


def asked(key: str, sign: str, read: Mapping[str, float] | None = None) -> Trouble:
    return troubles(sign_called(sign), sweet(key), FOLDER.kitchen, LOOK, read or {})


def first(found: Trouble) -> str:
    return found.suspects[0].cause.name


def test_a_piece_at_9_below_is_not_cold_enough_for_its_glaze() -> None:
    found = asked("meadow-domes", "glaze slid off", {"piece": -9.0})
    assert first(found) == "piece not cold enough"
    assert str(found.suspects[0].says) == (
        "piece -9 °C, -15 or less is fine (your reading)"
    )
    gelatin = next(
        one for one in found.suspects if one.cause.name == "too little gelatin"
    )
    assert gelatin.weighed == "speaks against it"


def test_a_cold_piece_and_a_hot_glaze() -> None:
    found = asked("meadow-domes", "glaze slid off", {"piece": -19.0, "glaze": 40.0})
    assert first(found) == "glaze too hot"
    assert found.suspects[-1].cause.name == "piece not cold enough"


def test_without_a_reading_the_commonest_cause_comes_first() -> None:
    assert first(asked("meadow-domes", "glaze slid off")) == "piece not cold enough"
    assert first(asked("river-pebble", "dip cracks")) == "coat over 1 mm"


def test_a_formula_short_of_gelatin_is_named_by_its_own_numbers() -> None:
    lean = made("mirror glaze", "300 sucrose", "200 water", "3 gelatin_200")
    found = troubles(
        sign_called("glaze slides"), dessert(lean), FOLDER.kitchen, FIND, {}
    )
    assert first(found) == "too little gelatin"
    # 3 g in 503 g is 0.60 %, and 1.2 % is the least that is usual.
    assert str(found.suspects[0].says) == "0.60 % under its band (the card)"


def test_raw_fruit_is_found_where_it_never_set() -> None:
    gel = replace(
        made("fruit gel", "400 pineapple; raw", "40 water", "8 gelatin_200"), key="it"
    )
    found = troubles(sign_called("did not set"), dessert(gel), FOLDER.kitchen, FIND, {})
    assert first(found) == "raw fruit with an enzyme"
    assert str(found.suspects[0].says) == "yes, by the card"


def test_what_the_card_only_means_to_do_hardly_clears_a_cause() -> None:
    found = asked("river-pebble", "ganache will not whip")
    assert first(found) == "too warm"
    assert found.suspects[0].meant
    read = asked("river-pebble", "ganache will not whip", {"whip": 12.0})
    assert not read.suspects[0].meant
    cold = asked("river-pebble", "ganache will not whip", {"whip": 5.0, "rest": 4.0})
    assert first(cold) == "rest too short"


def test_dew_goes_by_the_room_or_by_what_was_read() -> None:
    # 24 °C and 65 %: dew point 17.0 °C (Magnus, 17.625 and 243.04); the piece is at 3.
    found = asked("river-pebble", "it sweats", {"room": 24.0, "humidity": 65.0})
    assert found.suspects[0].value == pytest.approx(14.0, abs=0.1)
    assert found.suspects[0].by == "your reading"
    dry = asked("river-pebble", "it sweats", {"humidity": 20.0, "piece": 3.0})
    assert dry.suspects[-1].cause.name == "room dew point over the piece"


def test_where_no_component_is_of_the_kind_it_is_answered_all_the_same() -> None:
    found = asked("river-pebble", "glaze slid off", {"piece": -9.0})
    assert found.component is None
    assert first(found) == "piece not cold enough"


def test_the_part_can_be_said() -> None:
    pebble = sweet("river-pebble")
    part = next(one for one in pebble.components if one.key == "centre")
    found = troubles(sign_called("too loose"), pebble, FOLDER.kitchen, LOOK, {}, part)
    assert found.component == part


def test_the_component_that_is_spoken_of_is_taken() -> None:
    ring = sweet("orchard-ring")
    spoken = spoken_of("the bavarois is too loose", ring)
    assert spoken is not None
    assert spoken.key == "bavarois"
    assert spoken_of("too loose", ring) is None
    assert spoken_of("base and centre are loose", ring) is None
    found = troubles(sign_called("too loose"), ring, FOLDER.kitchen, LOOK, {}, spoken)
    names = [one.cause.name for one in found.suspects]
    assert "gelatin weaker than assumed" in names
    assert "too little sugar for that pectin" not in names


def test_where_there_is_no_gelatin_none_is_blamed() -> None:
    pebble = sweet("river-pebble")
    part = next(one for one in pebble.components if one.key == "centre")
    found = troubles(sign_called("too loose"), pebble, FOLDER.kitchen, LOOK, {}, part)
    assert not [one for one in found.suspects if "gelatin" in one.cause.name]


@pytest.mark.parametrize("name", signs())
@pytest.mark.parametrize("key", ["river-pebble", "amber-terrine"])
def test_every_sign_can_be_asked_of_every_dessert(name: str, key: str) -> None:
    found = asked(key, name)
    scores = [one.score for one in found.suspects]
    assert scores == sorted(scores, reverse=True)
    assert all(str(one.says) for one in found.suspects)


def batch(component: Component, **read: float) -> dict[str, float]:
    return own_numbers(
        Batch(
            component=component,
            dessert=dessert(component),
            kitchen=FOLDER.kitchen,
            find=FIND,
            read=read,
        )
    )


def test_own_numbers_of_a_mix() -> None:
    told = batch(made("x", "100 milk_whole", "20 spirit_40", "2 gelatin_160"))
    assert told["bloom"] == 160
    # 20 g spirit bring 6.7 g alcohol; 100 g milk and the spirit 101.5 g water.
    assert told["alcohol in water"] == pytest.approx(100 * 6.67 / 108.2, rel=0.02)
    assert told["weeps"] == 3
    assert "overrun" not in told
    assert batch(made("x")) == {
        name: value
        for name, value in batch(made("x")).items()
        if name in ("humidity", "dew over piece")
    }


def test_a_ph_that_was_read_wins() -> None:
    centre = made("pectin NH centre", "500 pear", "80 sucrose", "6 pectin_nh_use")
    assert batch(centre)["ph short"] < 0
    assert batch(centre, ph=2.9)["ph short"] == pytest.approx(0.3)


def test_air_goes_by_the_cup_that_was_weighed() -> None:
    assert batch(made("x", "1 water", density=1.0), density=0.5)["overrun"] == 100


@pytest.mark.parametrize(
    ("text", "name", "value"),
    [
        ("piece -9 °C", "piece", -9),
        ("the glaze 33,5", "glaze", 33.5),
        ("rested 720 min", "rest", 12),
        ("rest 6 h", "rest", 6),
        ("boxed", "boxed", 1),
        ("a cup 620 g/l", "density", 0.62),
        ("coat 1.2 mm", "coat", 1.2),
    ],
)
def test_a_reading_is_read(text: str, name: str, value: float) -> None:
    said = split_reading(text)
    kind = reading_called(said.name)
    assert kind.name == name
    assert reading_value(said, kind.unit) == pytest.approx(value)


def test_what_cannot_be_read_is_said() -> None:
    with pytest.raises(
        UnreadableError, match=r"^'piece' has no number\. Write it like"
    ):
        reading_value(split_reading("piece"), "°C")
    with pytest.raises(UnreadableError, match=r"^'moon' is nothing that is read off"):
        reading_called("moon")
    with pytest.raises(UnreadableError, match=r"^'it exploded' is no sign known here"):
        sign_called("it exploded")
    with pytest.raises(UnreadableError, match="is a weight, and a temperature"):
        reading_value(split_reading("piece 9 kg"), "°C")
    assert "piece" in reading_kinds()


def test_a_bloom_that_was_read_is_held_against_the_card() -> None:
    ring = sweet("orchard-ring")
    part = next(one for one in ring.components if one.key == "bavarois")

    def loose(**read: float) -> Trouble:
        sign = sign_called("too loose")
        return troubles(sign, ring, FOLDER.kitchen, LOOK, read, part)

    weak = loose(bloom=140)
    assert first(weak) == "gelatin weaker than assumed"
    assert str(weak.suspects[0].says) == (
        "60 bloom weaker than the card (your reading)"
    )
    assert first(loose(bloom=200)) != "gelatin weaker than assumed"
    assert loose().suspects[0].value is None


def test_what_is_wanted_is_told_the_same_alone() -> None:
    ganache = sweet("river-pebble").components[0]
    asked_of = Batch(
        component=ganache,
        dessert=sweet("river-pebble"),
        kitchen=FOLDER.kitchen,
        find=LOOK,
        read={},
    )
    every = own_numbers(asked_of)
    for name in ("overrun", "wall", "dew over piece", "raw fruit", "fat"):
        assert own_numbers(asked_of, {name})[name] == every[name]
    assert "wall" not in own_numbers(asked_of, {"fat"})
