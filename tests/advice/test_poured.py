"""Too much in the bowl: the others in proportion, or as it is."""

import pytest

from demould.advice.poured import Poured, poured
from demould.amounts.shape.volume import mould_of
from demould.amounts.tools.rounds import rounds
from demould.mise.find import find_in
from tests.demo_folder import demo_folder


def pour(grams: float, *, ordinal: int = 1, n: int | None = 27) -> Poured:
    folder = demo_folder()
    pebble = next(one for one in folder.desserts if one.key == "river-pebble")
    turns = rounds(n, mould_of(folder.kitchen, "pebble")) if n else None
    find = find_in(folder.larder)
    return poured(pebble, "centre", ordinal, grams, folder.kitchen, find, turns)


def test_400_g_of_puree_instead_of_349() -> None:
    # 380 g x 0.919 is 349 g; 400/349 = 1.146; (1.146 x 589.5 x 0.96 x 0.98 - 20) / 19.8
    # is 31.1 pieces, where the batch was for 27.
    found = pour(400)
    assert found.wanted_g == 349
    assert found.others.times == pytest.approx(1.146, abs=5e-4)
    assert (found.pieces, found.others.pieces) == (27, 31)
    grams = {one.line.what: one.grams.value for one in found.others.lines}
    assert grams["pear, peeled and cored"] == pytest.approx(168.5, abs=0.5)
    assert grams["pectin NH"] == pytest.approx(6.8, abs=0.05)
    assert "blackcurrant purée" not in grams
    assert found.as_it_is.refused is None
    assert found.pieces < found.as_it_is.pieces < found.others.pieces


def test_only_a_dose_that_leaves_its_band_refuses() -> None:
    found = pour(700)
    assert str(found.as_it_is.refused).startswith("not as it is: Blackcurrant-pear")
    assert "pectin NH" in str(found.as_it_is.refused)
    assert found.others.pieces > 50


def test_the_batch_as_written_without_a_number() -> None:
    found = pour(400, n=None)
    assert found.wanted_g == 380
    assert found.pieces == 29


def test_too_little_is_worked_out_alike() -> None:
    found = pour(300)
    assert found.others.times < 1
    assert found.others.pieces < 27


def test_nothing_in_the_bowl_is_refused() -> None:
    with pytest.raises(ValueError, match=r"^0 g in the bowl; it must be more than 0$"):
        pour(0)
    with pytest.raises(ValueError, match=r"^that line has no amount to compare with$"):
        pour(10, ordinal=99)
