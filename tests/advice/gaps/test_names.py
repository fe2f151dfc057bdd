"""Names that do not say which, and names nobody knows."""

from tests.advice.gaps.pebble_note import drafted, gaps


def says(text: str, kind: str) -> list[tuple[str, str]]:
    return [
        (str(one.says), str(one.takes))
        for one in gaps(drafted(text))
        if one.kind == kind
    ]


def test_what_nobody_knows_is_asked_with_what_is_near() -> None:
    ((told, taken),) = says("Jelly: zorbl paste 20 g, water 100", "unknown")

    assert told == "Jelly: nobody knows zorbl paste"
    assert "; nearest: " in taken
    assert "Hazelnut paste" in taken


def test_letters_alone_make_nothing_near() -> None:
    ((told, taken),) = says("Jelly: elderflower cordial 50 g, water 100", "unknown")

    assert told == "Jelly: nobody knows elderflower cordial"
    assert taken == "taken as half water until its packet is written down"


def test_one_vague_name_in_two_parts_is_one_question() -> None:
    note = "Mousse: cream 300, white couv 100, gelatin 4\nDip: white couv 300, cocoa butter 200"
    told = [one for one, _ in says(note, "which")]

    assert "white couverture does not say which (Mousse, Dip)" in told
    assert "cream does not say which (Mousse)" in told
    assert len([one for one in told if "white couverture" in one]) == 1


def test_a_name_with_its_share_is_not_vague() -> None:
    note = "Mousse: cream 35 % 300, dark chocolate 70 % 100, gelatin 200 bloom 4"

    assert says(note, "which") == []
