"""Any formula of the larder's rows can be looked at: nothing raises, all is said."""

from dataclasses import replace

from hypothesis import given, settings
from hypothesis import strategies as st

from demould.advice.findings import findings
from demould.advice.makeup import makeups
from demould.larder.read import component_kinds, ingredients
from demould.mise.method import Step
from tests.advice.kitchenware import FIND, airy, dessert, made
from tests.demo_folder import demo_folder

ROWS = st.sampled_from(sorted(ingredients()))
LINES = st.lists(
    st.tuples(st.floats(0.1, 900), ROWS).map(lambda one: f"{one[0]:.1f} {one[1]}"),
    min_size=1,
    max_size=6,
)
STEPS = st.sampled_from(
    ["boil 2 min", "75 to 80 °C, ends near 35 °C", "with the gelatin", "nozzle 4 mm"]
)


@settings(max_examples=60)
@given(
    kind=st.sampled_from(component_kinds()),
    lines=LINES,
    said=STEPS,
    density=st.floats(0.3, 1.4),
)
def test_nothing_raises(kind: str, lines: list[str], said: str, density: float) -> None:
    one = airy(made(kind, *lines, density=1.05), density)
    one = replace(one, method=(Step(key="mix", remarks=(said,)),))
    found = findings(dessert(one), demo_folder().kitchen, FIND)
    assert all(str(each.says) for each in found)
    weights = [each.weight for each in found]
    assert weights == sorted(weights, reverse=True)
    (told,) = makeups(dessert(one), FIND)
    # From ethanol to ash, as gold leaf counts.
    assert 0.7 < told.density < 2.5
