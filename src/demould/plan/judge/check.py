"""The judge: does a plan keep every promise its problem asks for.

Everything is worked out again from the minutes in the plan, without the solver and
without the limits it starts from, so that a fault there can not hide here.
"""

from __future__ import annotations

from collections import Counter
from dataclasses import asdict, dataclass
from typing import TYPE_CHECKING, Literal

from demould.plan.judge.claims import worth
from demould.plan.judge.done import Done, attended, held, minute_of
from demould.plan.problem.steps import hands_needed, roads
from demould.plan.problem.telling import called, clock, minutes, moment

if TYPE_CHECKING:
    from collections.abc import Iterator, Mapping

    from demould.plan.answer.schedule import Schedule
    from demould.plan.problem.steps import Lag, Person, Problem, Resource

Rule = Literal[
    "problem",
    "steps",
    "road",
    "duration",
    "horizon",
    "earliest",
    "latest",
    "due",
    "hours",
    "lag",
    "capacity",
    "hold",
    "who",
    "person",
    "objective",
]


@dataclass(frozen=True, slots=True, kw_only=True)
class Violation:
    """A promise that is not kept, worded for the cook."""

    rule: Rule
    text: str


def check(problem: Problem, schedule: Schedule) -> tuple[Violation, ...]:
    """Give every promise the plan breaks, none where it can be cooked as it stands.

    A schedule without a plan (infeasible, unknown) is judged only for having no steps.
    """
    if schedule.status in ("infeasible", "unknown"):
        return tuple(_no_plan(problem, schedule))
    amiss = [*_wrong_problem(problem, schedule), *_step_set(problem, schedule)]
    done, roadless = _read(problem, schedule)
    amiss += roadless
    for place in done.values():
        amiss += _times(problem, place)
        amiss += _hours(problem, place)
        amiss += _who(problem, place)
    for lag in problem.lags:
        amiss += _lag(problem, done, lag)
    amiss += _holds(problem, done)
    for resource in problem.resources:
        amiss += _capacity(problem, done, resource)
    for person in problem.people:
        amiss += _person(problem, done, person)
    if not amiss:
        amiss += _objective(problem, schedule, done)
    return tuple(amiss)


def _no_plan(problem: Problem, schedule: Schedule) -> Iterator[Violation]:
    yield from _wrong_problem(problem, schedule)
    if schedule.steps:
        text = f"the plan is called {schedule.status} and has steps all the same"
        yield Violation(rule="steps", text=text)


def _wrong_problem(problem: Problem, schedule: Schedule) -> Iterator[Violation]:
    if schedule.problem != problem.id:
        text = f"the plan is for {schedule.problem!r}, not for {problem.id!r}"
        yield Violation(rule="problem", text=text)


def _step_set(problem: Problem, schedule: Schedule) -> Iterator[Violation]:
    times = Counter(place.id for place in schedule.steps)
    for step in problem.steps:
        if times[step.id] != 1:
            text = f"{called(step)} is planned {times[step.id]} times, not once"
            yield Violation(rule="steps", text=text)
    known = {step.id for step in problem.steps}
    for name in times:
        if name not in known:
            yield Violation(rule="steps", text=f"nobody asked for {name!r}")


def _read(
    problem: Problem, schedule: Schedule
) -> tuple[dict[str, Done], list[Violation]]:
    places = {place.id: place for place in schedule.steps}
    done: dict[str, Done] = {}
    amiss: list[Violation] = []
    for step in problem.steps:
        if step.id not in places:
            continue
        place = places[step.id]
        taken = [r for r in roads(step) if r.name == place.took or not step.either]
        if taken:
            done[step.id] = Done(
                step=step,
                start=place.start,
                end=place.end,
                road=taken[0],
                who=place.who,
                parts=attended(step, place),
            )
        else:
            names = " or ".join(road.name for road in step.either)
            text = f"{called(step)} goes by {names}, not by {place.took!r}"
            amiss.append(Violation(rule="road", text=text))
    return done, amiss


def _times(problem: Problem, done: Done) -> Iterator[Violation]:
    name, took = called(done.step), done.end - done.start
    least, most = done.road.duration.min, done.road.duration.max
    if took < least:
        text = f"{name} takes at least {minutes(least)}, but has {minutes(took)}"
        yield Violation(rule="duration", text=text)
    if most is not None and took > most:
        text = f"{name} takes at most {minutes(most)}, but has {minutes(took)}"
        yield Violation(rule="duration", text=text)
    if done.start < 0 or done.end > problem.horizon:
        last = clock(problem, problem.horizon)
        text = f"{name} is not between {clock(problem, 0)} and {last}"
        yield Violation(rule="horizon", text=text)
    if done.step.earliest is not None and done.start < done.step.earliest:
        first = clock(problem, done.step.earliest)
        text = f"{name} can not begin before {first}, but begins"
        yield Violation(rule="earliest", text=f"{text} {clock(problem, done.start)}")
    ended = f"but is over {clock(problem, done.end)}"
    if done.step.latest_end is not None and done.end > done.step.latest_end:
        last = clock(problem, done.step.latest_end)
        yield Violation(rule="latest", text=f"{name} must be over by {last}, {ended}")
    for order in problem.orders:
        if order.id in done.step.order and not order.soft_due and done.end > order.due:
            due = clock(problem, order.due)
            text = f"{name} must be over when {order.id} is due, {due}, {ended}"
            yield Violation(rule="due", text=text)


def _hours(problem: Problem, done: Done) -> Iterator[Violation]:
    if done.step.calendar is None:
        return
    for begin, over in done.parts:
        if not _open(problem, done.step.calendar, begin, over):
            text = (
                f"{called(done.step)} needs somebody {_stretch(problem, begin, over)}"
            )
            yield Violation(
                rule="hours", text=f"{text}, outside the hours of {done.step.calendar}"
            )


def _open(problem: Problem, calendar: str, begin: int, over: int) -> bool:
    windows = problem.calendars[calendar]
    return any(window.open <= begin and over <= window.close for window in windows)


def _stretch(problem: Problem, begin: int, over: int) -> str:
    return f"from {clock(problem, begin)} to {clock(problem, over)}"


def _lag(problem: Problem, done: Mapping[str, Done], lag: Lag) -> Iterator[Violation]:
    before = minute_of(problem, done, lag.from_, lag.from_at)
    after = minute_of(problem, done, lag.to, lag.to_at)
    if before is None or after is None:
        return
    steps = {step.id: step for step in problem.steps}
    ends = (
        f"between {moment(steps, lag.from_, lag.from_at)} and"
        f" {moment(steps, lag.to, lag.to_at)}"
    )
    why = f" ({lag.why})" if lag.why else ""
    if lag.min is not None and after - before < lag.min:
        text = f"{ends} lie {after - before} min, fewer than {lag.min}{why}"
        yield Violation(rule="lag", text=text)
    if lag.max is not None and after - before > lag.max:
        text = f"{ends} lie {after - before} min, more than {lag.max}{why}"
        yield Violation(rule="lag", text=text)


def _holds(problem: Problem, done: Mapping[str, Done]) -> Iterator[Violation]:
    for resource, _, begin, over, what in held(problem, done):
        if over < begin:
            text = f"{resource} would be given back before it is taken, for {what}"
            yield Violation(rule="hold", text=text)


def _capacity(
    problem: Problem, done: Mapping[str, Done], resource: Resource
) -> Iterator[Violation]:
    """Add up what is taken at every minute at which anything changes."""
    taken = [use for use in _uses(problem, done, resource.name) if use[2]]
    changes = {begin for begin, *_ in taken}
    changes |= {edge for o in resource.profile for edge in (o.start, o.end)}
    for minute in sorted(changes):
        there = resource.capacity
        for other in resource.profile:
            if other.start <= minute < other.end:
                there = other.capacity
        now = [use for use in taken if use[0] <= minute < use[1]]
        total = sum(amount for *_, amount, _ in now)
        if total > there:
            names = ", ".join(name for *_, name in now)
            text = (
                f"{total} of {resource.name} are needed {clock(problem, minute)} and"
                f" there are {there}: {names}"
            )
            yield Violation(rule="capacity", text=text)
            return


def _uses(
    problem: Problem, done: Mapping[str, Done], name: str
) -> Iterator[tuple[int, int, int, str]]:
    """Give each use of a resource as first and last minute, amount and step."""
    for place in done.values():
        what = called(place.step)
        if place.road.uses.get(name, 0):
            clean = place.step.clean.get(name, 0)
            yield place.start, place.end + clean, place.road.uses[name], what
        for begin, over in place.parts:
            yield begin, over, place.road.attend_uses.get(name, 0), what
    for resource, amount, begin, over, what in held(problem, done):
        if resource == name:
            yield begin, over, amount, what


def _who(problem: Problem, done: Done) -> Iterator[Violation]:
    needed = hands_needed(problem, done.step, done.road)
    name = called(done.step)
    if len(done.who) != needed:
        text = f"{name} needs {needed} people by name and has {len(done.who)}"
        yield Violation(rule="who", text=text)
    if len(set(done.who)) < len(done.who):
        text = f"{name} counts somebody twice: {', '.join(done.who)}"
        yield Violation(rule="who", text=text)
    people = {person.name: person for person in problem.people}
    for who in done.who:
        if who not in people:
            yield Violation(rule="who", text=f"{name}: nobody is called {who!r}")
        elif done.step.skill is not None and done.step.skill not in people[who].skills:
            text = f"{name} needs {done.step.skill}, which {who} does not do"
            yield Violation(rule="who", text=text)


def _person(
    problem: Problem, done: Mapping[str, Done], person: Person
) -> Iterator[Violation]:
    """See that somebody is there for all they do, and does one thing at a time."""
    busy = sorted(
        (begin, over, called(place.step))
        for place in done.values()
        if person.name in place.who
        for begin, over in place.parts
    )
    for begin, over, what in busy:
        if person.calendar is not None and not _open(
            problem, person.calendar, begin, over
        ):
            text = (
                f"{person.name} is not there {_stretch(problem, begin, over)}: {what}"
            )
            yield Violation(rule="person", text=text)
    until, doing = 0, ""
    for begin, over, what in busy:
        if begin < until:
            text = f"{person.name} would do {doing} and {what} at once"
            yield Violation(rule="person", text=f"{text}, {clock(problem, begin)}")
        if over > until:
            until, doing = over, what


def _objective(
    problem: Problem, schedule: Schedule, done: Mapping[str, Done]
) -> Iterator[Violation]:
    said = asdict(schedule.objective)
    for cost, found in worth(problem, done).items():
        if said[cost] != found:
            text = f"the plan says {cost} is {said[cost]}, but it is {found}"
            yield Violation(rule="objective", text=text)
