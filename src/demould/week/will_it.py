"""Will it set, whip and hold? What speaks up, over the desserts asked about."""

from collections.abc import Iterable

from demould.advice.findings import Finding, findings
from demould.matter.grams import Find
from demould.mise.dessert import Dessert
from demould.mise.kitchen import Kitchen


def will_it_of(
    desserts: Iterable[Dessert], kitchen: Kitchen, find: Find
) -> tuple[Finding, ...]:
    """Give every finding of each dessert once, worst first."""
    once = {dessert.key: dessert for dessert in desserts}
    found = [
        one for dessert in once.values() for one in findings(dessert, kitchen, find)
    ]
    return tuple(sorted(dict.fromkeys(found), key=lambda one: -one.weight))
