from demould.sheets.chart import HIGH, WIDE, chart

WAY = ((0.0, 5.0, 5.0, 0.0), (1.0, 0.0, -10.0, 0.5), (2.0, -15.0, -15.0, 1.0))


def test_both_curves_run_from_the_first_to_the_last_reading() -> None:
    drawn = chart(WAY)
    assert len(drawn) == HIGH + 2
    top, bottom = drawn[0], drawn[HIGH - 1]
    # Start and end lie on each other; in between the surface is the colder one.
    assert top[1] == "+"
    assert bottom[WIDE] == "+"
    middle = [line[1 + WIDE // 2] for line in drawn[:HIGH]]
    assert 0 < middle.index("#") < middle.index(".")


def test_degrees_ice_and_hours_stand_beside_it() -> None:
    drawn = [line.replace("\u00a0", " ") for line in chart(WAY)]
    assert drawn[0].endswith(" 5 °C")
    assert drawn[HIGH - 1].endswith(" -15 °C")
    assert drawn[HIGH].startswith("|00")
    assert drawn[HIGH].endswith("9 ice, tenths")
    assert "5" in drawn[HIGH][25:35]
    assert drawn[-1].startswith("0 ")
    assert drawn[-1].endswith("2.0 h")
    assert all(len(line) <= 76 for line in drawn)


def test_every_column_has_both_curves() -> None:
    drawn = chart(WAY)[:HIGH]
    for column in range(1, WIDE + 1):
        signs = {line[column] for line in drawn} - {"\u00a0"}
        assert signs in ({"+"}, {"#", "."}), column


def test_a_single_reading_is_nothing_to_draw() -> None:
    assert chart(WAY[:1]) == ()
    assert chart(((0.0, 1.0, 1.0, 0.0), (0.0, 1.0, 1.0, 0.0))) == ()
