import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from demould.cold.run.lookup import (
    conductivity_to,
    enthalpy_at,
    ice_at,
    lookup_of,
    state_at,
)
from demould.matter.heat import Thermal

BODIES = np.array([0, 1, 0, 1])


@given(at_c=st.lists(st.floats(-59, 59), min_size=4, max_size=4))
def test_temperature_to_heat_and_back(
    mousse: Thermal, insert: Thermal, at_c: list[float]
) -> None:
    # Straight lines both ways through the same table: to rounding.
    wanted = np.array(at_c)
    content = enthalpy_at([mousse, insert], BODIES, wanted)
    joint = lookup_of([mousse, insert], BODIES)
    state = state_at(joint, content, joint.first)
    # From the wrong end of a table it is found as well.
    again = state_at(joint, content, joint.last)
    assert (again.row == state.row).all()
    assert state.at_c == pytest.approx(wanted, abs=1e-9)
    for n, table in enumerate((mousse, insert, mousse, insert)):
        k = np.interp(content[n], table.enthalpy, table.conductivity)
        assert state.conductivity[n] == pytest.approx(k, rel=1e-9)
        ice = np.interp(wanted[n], table.at_c, table.ice)
        found = ice_at(joint, state.row[n], content[n])
        assert found == pytest.approx(ice, abs=1e-12)
    assert (1 / state.warmth > 1000).all()


def test_beyond_the_table_its_last_lines_run_on(mousse: Thermal) -> None:
    body = np.array([0, 0])
    table = lookup_of([mousse], body)
    ends = np.array([mousse.enthalpy[0] - 1000, mousse.enthalpy[-1] + 1000])
    cold, warm = state_at(table, ends, table.first).at_c
    assert cold < mousse.at_c[0]
    assert warm > mousse.at_c[-1]


def test_what_never_freezes_is_over_its_freezing_point_always(
    mousse: Thermal, insert: Thermal
) -> None:
    dry = Thermal(
        at_c=mousse.at_c,
        enthalpy=2000 * mousse.at_c,
        conductivity=mousse.conductivity,
        ice=np.zeros_like(mousse.at_c),
        density=500.0,
        freezing_c=None,
    )
    table = lookup_of([insert, dry], np.array([0, 1]))
    assert table.freezing_c.tolist() == [insert.freezing_c, -np.inf]
    assert table.density.tolist() == [insert.density, 500.0]


@given(at_c=st.floats(-59, 59), to_c=st.floats(-59, 59))
def test_conductivity_on_the_way_to_another_temperature_is_its_mean(
    insert: Thermal, at_c: float, to_c: float
) -> None:
    table = lookup_of([insert], np.array([0]))
    content = enthalpy_at([insert], np.array([0]), np.array([at_c]))
    state = state_at(table, content, table.first)
    # Trapezia over the same straight lines, cut at the table's own nodes.
    low, high = min(at_c, to_c), max(at_c, to_c)
    nodes = insert.at_c[(insert.at_c > low) & (insert.at_c < high)]
    points = np.array([low, *nodes, high])
    k = np.interp(points, insert.at_c, insert.conductivity)
    found = conductivity_to(table, state, 0, to_c)
    if high - low < 0.01:
        # Steepest under the freezing point: 0.3 W/(m K) a kelvin.
        assert found == pytest.approx(k[0], abs=0.01)
    else:
        mean = np.trapezoid(k, points) / (high - low)
        assert found == pytest.approx(mean, rel=1e-8)
