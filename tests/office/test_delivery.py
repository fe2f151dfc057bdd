"""When it comes and when to call, on a calendar worked by hand."""

from dataclasses import replace
from datetime import date, datetime, time, timedelta

import pytest
from hypothesis import given
from hypothesis import strategies as st

from demould.mise.kitchen import Kitchen, Supplier
from demould.office.delivery import arrival_of, deliveries_of, last_call
from tests.office.larder_by_hand import days, stocked
from tests.week.demo_week import at, kitchen

# The demo is open Tue to Fri 08:00 to 17:00, Sat 10:00 to 21:00, deliveries by 09:00.
WEEK = (date(2026, 11, 16), date(2026, 11, 22))


def with_supplier(**said: object) -> Kitchen:
    one = Supplier(name="Weir Dairy", **said)  # type: ignore[arg-type]  # the caller's
    return replace(kitchen(), suppliers=(one,))


def test_nobody_takes_in_what_comes_before_the_kitchen_opens() -> None:
    """On Saturday the first is there at ten: what comes by nine stands outside."""
    found = list(deliveries_of(Supplier(name=""), kitchen(), *WEEK))
    assert found == [at(f"{day} 09:00") for day in ("Tue", "Wed", "Thu", "Fri")]


def test_three_days_for_saturday_morning_is_called_on_tuesday() -> None:
    cocoa = stocked("cocoa butter", lead=days(3))
    assert last_call(cocoa, kitchen(), at("Sat 11:05")) == at("Tue 17:00")
    assert arrival_of(cocoa, kitchen(), at("Tue 17:00")) == at("Fri 09:00")


def test_one_day_for_wednesday_at_nine_is_called_till_five_on_tuesday() -> None:
    cream = stocked("cream", lead=days(1))
    assert last_call(cream, kitchen(), at("Wed 09:00")) == at("Tue 17:00")
    assert last_call(cream, kitchen(), at("Thu 16:05")) == at("Wed 17:00")


def test_called_after_closing_counts_from_the_next_open_day() -> None:
    cream = stocked("cream", lead=days(1))
    assert arrival_of(cream, kitchen(), at("Tue 17:00")) == at("Wed 09:00")
    assert arrival_of(cream, kitchen(), at("Tue 17:01")) == at("Thu 09:00")


def test_a_supplier_has_its_own_days_hours_and_lead() -> None:
    place = with_supplier(
        weekdays=(2, 4), by=time(8, 30), order_by=time(15), lead=days(1)
    )
    cream = stocked("cream", supplier="Weir Dairy")
    assert arrival_of(cream, place, at("Tue 15:00")) == at("Wed 08:30")
    assert arrival_of(cream, place, at("Tue 15:01")) == at("Fri 08:30")
    assert last_call(cream, place, at("Fri 08:00")) == at("Tue 15:00")
    assert last_call(cream, place, at("Fri 09:00")) == at("Thu 15:00")


def test_the_entry_s_own_lead_wins() -> None:
    place = with_supplier(lead=days(3))
    cream = stocked("cream", supplier="Weir Dairy", lead=days(1))
    assert arrival_of(cream, place, at("Tue 14:00")) == at("Wed 09:00")


def test_a_supplier_that_comes_on_closed_days_only_never_comes() -> None:
    place = with_supplier(weekdays=(0, 6))
    cream = stocked("cream", supplier="Weir Dairy")
    assert last_call(cream, place, at("Fri 09:00")) is None


@pytest.mark.parametrize("lead", [0.0, 0.5, 1.0, 2.0, 5.0])
@given(hours=st.integers(0, 24 * 20))
def test_called_at_the_last_moment_it_is_there_and_a_minute_later_not(
    lead: float, hours: int
) -> None:
    """The two ways of counting, forwards and backwards, agree wherever they meet."""
    one = stocked("cream", lead=days(lead))
    by: datetime = at("Tue 09:00") + timedelta(days=7, hours=hours)
    last = last_call(one, kitchen(), by)
    assert last is not None
    assert arrival_of(one, kitchen(), last) <= by
    assert arrival_of(one, kitchen(), last + timedelta(minutes=1)) > by
