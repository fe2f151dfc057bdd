"""What speaks up about a dessert, and how it is shown."""

from dataclasses import replace

from demould.advice.findings import Finding, findings
from demould.advice.makeup import makeups
from demould.mise.find import find_in
from demould.mise.words import Words
from demould.sheets.will_it import all_of_it, made_of, will_it
from demould.week.will_it import will_it_of
from tests.advice.kitchenware import FIND, dessert, made
from tests.demo_folder import demo_folder
from tests.sheets.reading import heads, lines, rows, table_in


def finding(weight: float) -> Finding:
    return Finding(
        dessert="d", kind="band", says=Words("x"), do=Words("y"), weight=weight
    )


def test_an_agar_centre_weeps_and_a_pectin_one_does_not() -> None:
    folder = demo_folder()
    agar = made("agar centre", "500 pear", "60 water", "4 agar_powder", density=1.04)
    sweet = replace(agar, formula=(*agar.formula, *made("x", "400 sucrose").formula))
    gum = replace(agar, formula=(*agar.formula, *made("x", "1 xanthan").formula))
    pectin = made("pectin NH centre", "500 pear", "80 sucrose", "6 pectin_nh_use")

    def kinds(one: object) -> list[str]:
        return [f.kind for f in findings(dessert(one), folder.kitchen, FIND)]  # type: ignore[arg-type]  # a component

    assert "weeps" in kinds(agar)
    assert "weeps" in kinds(sweet)
    assert "weeps" in kinds(gum)
    assert "weeps" not in kinds(pectin)
    kappa = made("x", "500 pear", "2 carrageenan_kappa", "1 lbg")
    assert "weeps" not in kinds(kappa)


def test_the_week_s_findings_come_worst_first_and_once() -> None:
    folder = demo_folder()
    find = find_in(folder.larder)
    found = will_it_of((*folder.desserts, *folder.desserts), folder.kitchen, find)
    assert len(found) == len(set(found)) > 0
    weights = [one.weight for one in found]
    assert weights == sorted(weights, reverse=True)


def test_the_week_shows_three_and_says_how_many_more() -> None:
    blocks = tuple(will_it([finding(n) for n in (5, 4, 3, 2, 1)]))
    assert heads(blocks) == ["will it set and hold"]
    assert lines(blocks) == ["x. Try: y"] * 3
    assert str(blocks[0].note) == "2 more: demould check"  # type: ignore[union-attr]  # a head
    assert tuple(will_it(())) == ()


def test_the_check_shows_all_with_what_to_do() -> None:
    blocks = tuple(all_of_it([finding(1)] * 5, {"d": "Dome"}))
    assert rows(table_in(blocks)) == [["Dome", "x", "y"]] * 5
    assert lines(tuple(all_of_it((), {}))) == ["Everything is within what is usual."]


def test_what_it_is_made_of_with_fat_by_origin() -> None:
    folder = demo_folder()
    pebble = next(one for one in folder.desserts if one.key == "river-pebble")
    told = rows(table_in(tuple(made_of(makeups(pebble, find_in(folder.larder))))))
    # Worked by hand from the planning composition: water 47.1, fat 34.1, sugars 14.2.
    assert told[0] == [
        "Buckwheat whipped ganache",
        "47",
        "34",
        "28+6",
        "14",
        "11",
        "6.2",
        "gelatin 0.4",
    ]
    assert tuple(made_of(())) == ()
