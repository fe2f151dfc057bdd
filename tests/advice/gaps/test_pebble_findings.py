"""The note of the pebble gives its 17 findings, and each goes when it is filled."""

import pytest

from tests.advice.gaps.pebble_note import changed, drafted, folder, gaps, keys

# Number and subject as the trade's own reading of the note lists them; what fills it.
FINDINGS = [
    (
        "1 cream in cl",
        "ganache: volumes",
        (("330 ml  ", "327 g  "), ("400 ml  ", "396 g  ")),
    ),
    (
        "2 leaf grade and weight",
        "ganache: line 5, leaves",
        (("2 leaves  gelatin", "3.6 g  gelatin 200 bloom"),),
    ),
    ("3 salt", "ganache: line 6, amount", (("?         salt", "1 g  salt"),)),
    (
        "4 buckwheat to steep",
        "ganache: line 2, amount",
        (
            ("?         buckwheat", "45 g  buckwheat"),
            ("; only the method names it", ""),
        ),
    ),
    (
        "5 make-up after straining",
        "ganache: made up",
        (("330 ml    cream", "330 ml    cream; made up"),),
    ),
    ("6 verjuice", "centre: line 5, amount", (("?      verjuice", "10 g  verjuice"),)),
    (
        "7 which nut, how pure",
        "which: nut paste",
        (('; written "nut paste"', ""),),
    ),
    ("8 parts against 600 in all", "dip: in all", (("  in all: 600 g\n", ""),)),
    (
        "9 black cocoa until slate",
        "dip: line 3, amount",
        (("?      black cocoa; until slate", "8 g  black cocoa"),),
    ),
    ("10 spray without formula", "called for: spray", (("  spray\n\ncomp", "\ncomp"),)),
    (
        "11 mould volume",
        "pebble: water in a cavity",
        (("80 ml by water (assumed 40 to 150)", "90 ml by water (measured)"),),
    ),
    (
        "12 centre mould",
        "insert: water in a cavity",
        (("15 ml by water (assumed 8 to 25)", "18 ml by water (measured)"),),
    ),
    (
        "13 density after whipping",
        "Ganache: density when whipped of the ganache",
        (("0.62 g/ml (assumed 0.55 to 0.7)", "0.62 g/ml (measured)"),),
    ),
    ("14 sauce without formula", "called for: sauce", (("  sauce\n", ""),)),
    (
        "15 no temperature anywhere",
        "temperatures",
        (
            ('"cream 33 cl to steep the buckwheat"', "first mix 60 °C, ends at 35 °C"),
            ("used up within 90 min", "used up within 90 min; at 32 °C"),
        ),
    ),
    (
        "16 fat of the couvertures",
        "which: white couverture",
        (("white couverture", "white couverture 35 %"),),
    ),
    (
        "17 rest is vague",
        "Ganache: rest: wait",
        (("stands 12 h (assumed 10 to 16) to 48 h", "stands 12 h to 48 h"),),
    ),
    (
        "17 freezing is vague",
        "Pebble: freeze: time in the freezer",
        (
            (
                "freezer 12 h (assumed 8 to 14); each round",
                "freezer 12 h; each round",
            ),
        ),
    ),
    (
        "17 thawing is vague",
        "Pebble: thaw: wait",
        (("stands 6 h (assumed 3 to 8)", "stands 6 h"),),
    ),
]


def test_the_note_gives_all_its_findings() -> None:
    assert {key for _, key, _ in FINDINGS} <= keys(drafted())


@pytest.mark.parametrize(("subject", "key", "filled"), FINDINGS)
def test_a_finding_goes_when_its_gap_is_filled(
    subject: str, key: str, filled: tuple[tuple[str, str], ...]
) -> None:
    assert key in keys(drafted()), subject

    after = keys(changed(drafted(), *filled))

    assert key not in after, subject
    assert after <= keys(drafted()), subject


def test_the_mould_moves_most_and_is_asked_first() -> None:
    first, *rest = gaps(drafted())

    assert first.key == "pebble: water in a cavity"
    assert str(first.asks) == (
        "fill one cavity of the pebble mould with water: how many grams?"
    )
    assert all(first.weight >= one.weight for one in rest)


def test_33_cl_of_cream_are_taken_as_327_g() -> None:
    gap = next(one for one in gaps(drafted()) if one.key == "ganache: volumes")

    assert str(gap.takes) == "taken as 327 g, by its density"


def test_the_dip_makes_600_before_its_cocoa() -> None:
    gap = next(one for one in gaps(drafted()) if one.key == "dip: in all")

    assert str(gap.says) == (
        "Dip: its parts make 600 g before black cocoa, and 600 g in all is written"
    )


def test_608_against_600_in_all_is_still_asked_once_the_cocoa_is_known() -> None:
    texts = changed(drafted(), ("?      black cocoa; until slate", "8 g  black cocoa"))
    gap = next(one for one in gaps(texts) if one.key == "dip: in all")

    assert str(gap.says) == "Dip: its parts make 608 g, and 600 g in all is written"


def test_what_is_left_of_a_total_is_told() -> None:
    texts = changed(drafted(), ("in all: 600 g", "in all: 608 g"))
    gap = next(one for one in gaps(texts) if one.key == "dip: in all")

    assert str(gap.says) == "Dip: 608 g in all leave 8 g for black cocoa"


def test_what_the_mould_moves_is_what_comes_out_with_that_mould() -> None:
    """The low end worked out is the count with a mould of 40 ml written down."""
    mould = gaps(drafted())[0]
    pieces = next(one for one in mould.moves if one.component == "ganache")
    texts = changed(drafted(), ("80 ml by water (assumed 40 to 150)", "40 ml by water"))
    insert = next(one for one in gaps(texts) if one.key.startswith("insert"))
    with_it = next(one for one in insert.moves if one.component == "ganache")

    assert pieces.low == pytest.approx(with_it.likely)
    assert pieces.what == "pieces"


def test_a_draft_is_read_without_a_fault_and_its_pieces_are_counted() -> None:
    read = folder(drafted())

    assert [one.key for one in read.desserts[0].components] == [
        "ganache",
        "centre",
        "base",
        "dip",
    ]
    assert read.desserts[0].called_for == ("sauce", "spray")
