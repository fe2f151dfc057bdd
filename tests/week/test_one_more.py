"""One more mould, against what a head of pastry worked out by hand."""

from demould.demo import NOW
from demould.week.one_more import one_more
from tests.demo_folder import demo_folder


# With a 4th pebble mould 27 pieces go in one round: one whip fewer, its 40 g (and 4 % of
# them) are not lost, and setting out 10 and whisking 5 min fall away. The second round
# is filled 3 min after the first is out (15 min) and frozen 2.5 h: 150 min on the clock
# when the second is not waited for (worked by hand).
def test_a_fourth_pebble_mould_takes_the_second_round_away() -> None:
    bought = one_more(demo_folder(), NOW)
    more = {str(one.thing): one.cost for one in bought.each}
    fourth, now = more["pebble mould"], bought.now
    assert fourth.rounds - now.rounds == -1
    assert fourth.whips - now.whips == -1
    assert round(now.lost_g - fourth.lost_g) in (40, 41, 42)
    assert -16 <= fourth.work_min - now.work_min <= -14
    assert now.clock_min is not None
    assert fourth.clock_min is not None
    assert 145 <= now.clock_min - fourth.clock_min <= 185
    assert fourth.visits is not None
    same = more["jug of 100 mm"]
    assert (same.rounds, same.whips, same.work_min) == (
        now.rounds,
        now.whips,
        now.work_min,
    )
