"""The smallest honest trial of the demo's desserts."""

from demould.mise.find import find_in
from demould.week.trial import Trial, trial_of
from tests.demo_folder import demo_folder


def trial(key: str) -> Trial:
    folder = demo_folder()
    one = next(sweet for sweet in folder.desserts if sweet.key == key)
    return trial_of(one, folder.kitchen, find_in(folder.larder))


def test_the_whisk_s_least_gives_eight_pebbles_and_the_dip_does_not_shrink() -> None:
    # 400 g: (400 x 0.96 - 40) / 38.5 = 8.9: eight. The jug of 100 mm wants 313 g to
    # cover the last, 10 g stay behind, 8 x 9.14 g are taken: 396 g.
    found = trial("river-pebble")
    assert found.pieces == 8
    parts = {part.name: part for part in found.parts}
    assert parts["Buckwheat whipped ganache"].make_g == 400
    dip = parts["Stone dip"]
    assert round(dip.make_g) == 396
    assert str(dip.why).startswith("313 g only to cover the last piece")


def test_a_cake_is_tried_as_one_and_cut() -> None:
    found = trial("orchard-ring")
    assert found.pieces == 1
    assert "one to cut" in str(found.reason)


def test_sheets_are_made_as_they_are() -> None:
    parts = {part.name: part for part in trial("meadow-domes").parts}
    assert str(parts["Thyme sponge"].why) == "made as it is"
