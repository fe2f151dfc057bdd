"""Lines of suppliers: when they come, when to call them."""

import re

from demould.mise.clock import read_time, read_weekdays
from demould.mise.figure import Line
from demould.mise.kitchen import Supplier
from demould.mise.parts import after, at_column, name_and_rest
from demould.mise.quantity import read_figure
from demould.mise.read_price import read_money

_BY = re.compile(r"(.*\S)\s+(?:by|before)\s+(\S+)")


def read_supplier(line: Line) -> Supplier:
    """``Dairy; delivers Tue to Sat by 08:30; order by 15:00; lead 1 day; at least 30``.

    Raises
    ------
    UnreadableError
        If a day, an hour, a time or the money cannot be read.
    """
    name, rest = name_and_rest(line.text)
    weekdays = by = order_by = lead = least = None
    remarks = []
    for part in rest:
        with at_column(part.column):
            if days := after(part.text, "delivers"):
                hour = _BY.fullmatch(days)
                weekdays = read_weekdays(hour[1] if hour else days)
                by = read_time(hour[2]) if hour else None
            elif called := after(part.text, "order by", "order before"):
                order_by = read_time(called)
            elif wait := after(part.text, "lead"):
                lead = read_figure(
                    wait, name="lead", kinds=("time",), line=line, zero=True
                )
            elif money := after(part.text, "at least"):
                least, _ = read_money(money, "least order")
            else:
                remarks.append(part.text)
    return Supplier(
        name=name.text,
        weekdays=weekdays,
        by=by,
        order_by=order_by,
        lead=lead,
        least=least,
        remarks=tuple(remarks),
        line=line,
    )
