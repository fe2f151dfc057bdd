"""Who must not eat it, as a cook and the floor read it."""

from dataclasses import replace

from demould.sheets.care_blocks import all_that_is_told, floor_page, who_must_not
from demould.sheets.plain import plain
from demould.week.caring import caring_of, every_variant
from tests.care.test_allergens import changed
from tests.demo_folder import demo_folder, demo_makings
from tests.sheets.reading import loud, rows, table_in, under


def test_the_week_names_nuts_and_buckwheat_in_capitals() -> None:
    blocks = tuple(who_must_not(caring_of(demo_folder(), demo_makings())))
    told = rows(table_in(under(blocks, "who must not eat it")))
    assert told[0] == ["Meadow Domes", "milk, egg, wheat, soya; honey: no infants"]
    assert ["River Pebble", "milk, BUCKWHEAT, soya, HAZELNUT, wheat"] in told
    assert ["", "NOT KNOWN of 4: demould check"] in told


def test_a_week_without_orders_has_nothing_to_tell() -> None:
    assert tuple(who_must_not(())) == ()


def test_a_contradiction_is_loud_until_a_name_is_typed() -> None:
    folder = replace(demo_folder(), larder=changed("cream 35 %", allergens=()))
    said = loud(tuple(who_must_not(caring_of(folder, demo_makings()))))
    assert len(said) == 1
    assert "cream 35 % names no milk" in said[0]
    signed = replace(
        folder, larder=changed("cream 35 %", allergens=(), read_by="Mirel")
    )
    assert loud(tuple(who_must_not(caring_of(signed, demo_makings())))) == []


def test_the_check_says_every_variant_and_every_question() -> None:
    blocks = tuple(all_that_is_told(every_variant(demo_folder())))
    told = rows(table_in(under(blocks, "who must not eat it")))
    assert [
        "",
        "made without HAZELNUT: in the Hazelnut crisp base hazelnut paste becomes"
        " sunflower kernel paste + cocoa butter",
    ] in told
    asked = dict(rows(table_in(under(blocks, "not known: ask the supplier"))))
    assert asked["from which animal?"] == "gelatin 200 bloom"


def test_the_floor_sheet_says_where_and_never_free_from() -> None:
    text = plain(floor_page("Weir", caring_of(demo_folder(), demo_makings())))
    assert "HAZELNUT <   Hazelnut crisp base: hazelnut paste" in text
    assert "on the plate: roasted" in text
    assert "packs read by" in text
    assert text.count("free from") == text.count("Never say free from") == 1
