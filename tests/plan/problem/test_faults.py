"""Each thing that can not be meant, and the whole sentence about it."""

from dataclasses import replace

import pytest

from demould.plan.problem.faults import problem_faults
from demould.plan.problem.steps import (
    Hold,
    Lag,
    Order,
    Other,
    Person,
    Problem,
    Resource,
    Road,
    Span,
    Step,
    Window,
    exactly,
)

BAKE = Step(id="bake", duration=exactly(9), order=("o",), uses={"oven": 1})
SOUND = Problem(
    id="sound",
    origin="2026-03-02T00:00",
    horizon=600,
    calendars={"kitchen": (Window(open=0, close=60), Window(open=60, close=90))},
    resources=(
        Resource(
            name="oven",
            capacity=1,
            profile=(
                Other(start=60, end=70, capacity=0),
                Other(start=50, end=60, capacity=2),
            ),
        ),
    ),
    orders=(Order(id="o", due=500),),
    people=(Person(name="Mirel", calendar="kitchen"),),
    steps=(BAKE,),
    lags=(Lag(from_="bake", to="due:o", max=5),),
    holds=(Hold(resource="oven", amount=1, from_="bake", to="bake"),),
)


def test_a_sound_problem_has_no_faults() -> None:
    assert problem_faults(SOUND) == []


def one(**change: object) -> Problem:
    return replace(SOUND, **change)  # type: ignore[arg-type]


def baking(**change: object) -> Problem:
    return one(steps=(replace(BAKE, **change),))  # type: ignore[arg-type]


def oven(**change: object) -> Problem:
    return one(resources=(replace(SOUND.resources[0], **change),))  # type: ignore[arg-type]


ROAD = Road(name="hot", duration=exactly(5))


@pytest.mark.parametrize(
    ("problem", "fault"),
    [
        (
            one(steps=(BAKE, BAKE)),
            "step 'bake' is there 2 times; each needs a name of its own",
        ),
        (
            one(people=SOUND.people * 2),
            "person 'Mirel' is there 2 times; each needs a name of its own",
        ),
        (
            one(calendars={"kitchen": (Window(open=9, close=9),)}),
            "calendar 'kitchen': the window from 9 to 9 must close after it opens",
        ),
        (
            one(
                calendars={
                    "kitchen": (Window(open=9, close=20), Window(open=19, close=30))
                }
            ),
            "calendar 'kitchen': the window that opens at 19 must come after the one"
            " that closes at 20",
        ),
        (
            one(people=(Person(name="Mirel", calendar="nights"),)),
            "person 'Mirel': no calendar is called 'nights'",
        ),
        (oven(capacity=-1), "resource 'oven': there can not be less than 0 of it"),
        (
            oven(profile=(Other(start=5, end=5, capacity=0),)),
            "resource 'oven': each stretch must end after it starts",
        ),
        (
            oven(
                profile=(
                    Other(start=5, end=9, capacity=0),
                    Other(start=8, end=12, capacity=0),
                )
            ),
            "resource 'oven': two stretches of its profile overlap",
        ),
        (
            one(steps=(BAKE, replace(BAKE, id="due:o"))),
            "step 'due:o': a step's id may not begin with 'due:'",
        ),
        (
            baking(duration=None),
            "step 'bake': it needs a duration, or roads under 'either', and not both",
        ),
        (
            baking(either=(ROAD,)),
            "step 'bake': it needs a duration, or roads under 'either', and not both",
        ),
        (
            baking(duration=None, either=(ROAD, ROAD)),
            "step 'bake': road 'hot' is there 2 times; each needs a name of its own",
        ),
        (baking(order=("p",)), "step 'bake': no order is called 'p'"),
        (baking(calendar="nights"), "step 'bake': no calendar is called 'nights'"),
        (
            baking(order=(), fresh=1),
            "step 'bake': 'fresh' counts back from a due time, so it needs an order",
        ),
        (
            baking(attended="all", attend_uses={"cook": 1}),
            "step 'bake': no resource is called 'cook'",
        ),
        (
            baking(clean={"mixer": 5}),
            "step 'bake': 'mixer' is cleaned but not used",
        ),
        (baking(margin=-5), "step 'bake': -5 is less than 0"),
        (
            one(people=(), steps=(replace(BAKE, attended="all", hands=2),)),
            "step 'bake': it needs hands, but no people are named",
        ),
        (
            baking(skill="spray"),
            "step 'bake': it needs hands or a skill, but nobody attends it",
        ),
        (
            baking(attend_uses={"oven": 1}),
            "step 'bake': it has 'attend_uses', but nobody attends it",
        ),
        (
            baking(attended="ends", attend_start=5, attend_end=5),
            "step 'bake': its attended ends take 10 min, but it may be over in 9",
        ),
        (
            one(lags=(Lag(from_="bake", to="cool"),)),
            "lag from 'bake' to 'cool': no step is called 'cool'",
        ),
        (
            one(lags=(Lag(from_="bake", to="due:o", min=5, max=4),)),
            "lag from 'bake' to 'due:o': at least 5 and at most 4 min can never be",
        ),
        (
            one(holds=(Hold(resource="oven", amount=1, from_="bake", to="cool"),)),
            "hold of 'oven' from 'bake' to 'cool': no step is called 'cool'",
        ),
        (
            one(holds=(Hold(resource="tin", amount=1, from_="bake", to="bake"),)),
            "hold of 'tin' from 'bake' to 'bake': no resource is called 'tin'",
        ),
        (
            one(holds=(Hold(resource="oven", amount=-1, from_="bake", to="bake"),)),
            "hold of 'oven' from 'bake' to 'bake': -1 is less than 0",
        ),
    ],
)
def test_a_fault_is_told_in_one_sentence(problem: Problem, fault: str) -> None:
    assert problem_faults(problem) == [fault]


def test_a_span_that_can_never_be_is_refused() -> None:
    with pytest.raises(ValueError, match=r"^a span of 5 to 4 min can never be$"):
        Span(min=5, max=4)
