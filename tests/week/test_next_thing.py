"""Only the next thing: what, when, what to set out; and what is taken as done."""

from datetime import timedelta

from demould.mise.entry import Happened
from demould.week.next_thing import Next, next_thing
from demould.week.timing import Entry
from tests.week.demo_week import PEBBLE, at, demo_week, entry

SET_OUT = f"{PEBBLE}.piece.1.set-out"
WHIP = f"{PEBBLE}.piece.1.whip"
FILL = f"{PEBBLE}.piece.1.fill"
REST = f"{PEBBLE}.ganache.0.rest"
UNMOULD = f"{PEBBLE}.centre.0.unmould"


def thursday() -> tuple[Entry, ...]:
    """A morning as a head of pastry wrote it down."""
    return (
        entry(REST, "Wed 14:00", "Thu 02:00"),
        entry(UNMOULD, "Thu 08:30", "Thu 08:45", "Jonne"),
        entry(SET_OUT, "Thu 09:00", "Thu 09:10", "Mirel"),
        entry(WHIP, "Thu 09:10", "Thu 09:15", "Mirel"),
        entry(FILL, "Thu 09:15", "Thu 09:33", "Mirel Jonne"),
    )


def ask(clock: str, who: str | None = None, *done: Happened) -> Next:
    said = {one.step: one for one in done}
    return next_thing(demo_week().timing.laid, thursday(), said, at(clock), who)


def names(found: Next) -> list[str]:
    first = [found.entry.id] if found.entry else []
    return [*first, *(one.id for one in found.then)]


def test_on_opening_it_is_unmould_then_set_out_then_whip() -> None:
    assert names(ask("Thu 08:30")) == [UNMOULD, SET_OUT, WHIP]


def test_each_person_has_a_next_thing_of_their_own() -> None:
    assert names(ask("Thu 08:30", "Jonne")) == [UNMOULD, FILL]
    assert names(ask("Thu 08:30", "Mirel")) == [SET_OUT, WHIP, FILL]


def test_what_should_be_over_is_taken_as_done_unless_it_has_only_begun() -> None:
    late = ask("Thu 09:12")
    assert names(late) == [WHIP, FILL]
    assert [one.id for one in late.unsaid] == [UNMOULD, SET_OUT]
    begun = Happened(id="a", at=at("Thu 09:05"), step=SET_OUT, start=at("Thu 09:05"))
    assert names(ask("Thu 09:12", None, begun))[0] == SET_OUT


def test_what_is_said_to_be_done_is_over_however_early() -> None:
    over = at("Thu 08:40")
    whip = Happened(id="a", at=over, step=WHIP, start=over, end=over)
    assert names(ask("Thu 08:45", "Mirel", whip)) == [SET_OUT, FILL]


def test_what_is_set_out_are_moulds_tools_and_parts_with_where_they_stand() -> None:
    fill = ask("Thu 09:14").entry
    assert fill is not None
    told = [str(one) for one in ask("Thu 09:15").set_out]
    assert told[0] == "3 pebble moulds"
    assert "blackcurrant-pear centre, from the freezer" in told
    assert "hazelnut crisp base, from the freezer" in told
    whip = [str(one) for one in ask("Thu 09:10").set_out]
    assert whip[:2] == ["the mixer", "buckwheat whipped ganache, from the fridge"]


def test_running_waits_end_first_to_last_and_no_longer_than_they_do() -> None:
    assert [one.id for one in ask("Thu 01:59").running] == [REST]
    assert ask("Thu 02:00").running == ()


def test_after_the_last_there_is_nothing() -> None:
    done = at("Thu 09:33") + timedelta(hours=1)
    found = ask(f"Thu {done:%H:%M}")
    assert found.entry is None
    assert len(found.unsaid) == 4
