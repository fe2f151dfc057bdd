from collections.abc import Callable
from datetime import datetime
from pathlib import Path
from zoneinfo import ZoneInfo

import demould.demo
from demould.counter.text.read_folder import (
    desserts_in,
    read_folder,
    read_texts,
    zone_of,
)
from demould.mise.folder import Folder
from demould.mise.problem import Problem
from demould.mise.words import Words

Said = Callable[..., list[str]]
DEMO = Path(demould.demo.__path__[0]) / "brackmoor-weir"
NOW = datetime(2026, 11, 17, 14, 0, tzinfo=ZoneInfo("Europe/London"))


def test_the_demo_reads_without_a_problem() -> None:
    folder, problems, texts = read_folder(DEMO, NOW)
    assert problems == ()
    assert folder is not None
    assert [dessert.name for dessert in folder.desserts] == [
        "Amber Terrine",
        "Ember Log",
        "Meadow Domes",
        "Orchard Ring",
        "River Pebble",
    ]
    assert [order.pieces for order in folder.orders] == [12, 24]
    assert list(texts)[:3] == [
        "kitchen.yaml",
        "larder.yaml",
        "desserts/amber-terrine.yaml",
    ]
    assert texts["orders.yaml"] == (DEMO / "orders.yaml").read_text("utf-8")


def test_what_else_is_checked_comes_after_what_is_read(kitchen: Path) -> None:
    mine = Problem("desserts/x.yaml", 7, 3, Words("too large"), Words("Cut it"))
    seen: list[Folder] = []

    def check(folder: Folder) -> tuple[Problem, ...]:
        seen.append(folder)
        return (mine,)

    folder, problems, _ = read_folder(kitchen, NOW, (check,))
    assert (problems, seen) == ((mine,), [folder])


def test_further_checks_see_only_the_files_without_a_fault(kitchen: Path) -> None:
    (kitchen / "orders.yaml").write_text("x:\n  pieces: 0\n", "utf-8")
    pebble = kitchen / "desserts" / "river-pebble.yaml"
    pebble.write_text(pebble.read_text("utf-8").replace("280 g", "0 g"), "utf-8")
    seen = []

    def check(folder: Folder) -> tuple[Problem, ...]:
        seen.append(folder)
        return ()

    folder, problems, _ = read_folder(kitchen, NOW, (check,))
    assert folder is None
    assert {one.file for one in problems} == {
        "orders.yaml",
        "desserts/river-pebble.yaml",
    }
    (sound,) = seen
    assert sound.orders == ()
    assert "river-pebble" not in {one.key for one in sound.desserts}
    assert "meadow-domes" in {one.key for one in sound.desserts}


def test_a_faulty_kitchen_leaves_nothing_to_check_further(kitchen: Path) -> None:
    (kitchen / "kitchen.yaml").write_text("kitchen: X\nfrob: 1\n", "utf-8")

    def check(folder: Folder) -> tuple[Problem, ...]:
        raise AssertionError

    folder, problems, _ = read_folder(kitchen, NOW, (check,))
    assert folder is None
    assert problems


def test_a_folder_that_is_not_there(tmp_path: Path) -> None:
    folder, problems, texts = read_folder(tmp_path / "nowhere", NOW)
    assert (folder, dict(texts)) == (None, {})
    assert [str(one) for one in problems] == [
        f"nowhere: there is no folder called {str(tmp_path / 'nowhere')!r}. Look at the"
        " name, or make one with: demould demo."
    ]


def test_an_empty_folder_lacks_its_kitchen(tmp_path: Path) -> None:
    _, problems, _ = read_folder(tmp_path, NOW)
    assert [str(one) for one in problems] == [
        "kitchen.yaml: the file is not there. Write what the kitchen has: its moulds,"
        " hours, people and cold."
    ]


def test_a_kitchen_alone_is_enough(tmp_path: Path) -> None:
    text = "kitchen: K\nzone: UTC\n"
    (tmp_path / "kitchen.yaml").write_text(text, "utf-8")
    folder, problems, _ = read_folder(tmp_path, NOW)
    assert problems == ()
    assert folder is not None
    assert (folder.larder, folder.orders, folder.desserts) == ((), (), ())


def test_an_empty_file(said: Said, kitchen: Path) -> None:
    (kitchen / "orders.yaml").write_text("", "utf-8")
    assert said() == ["orders.yaml: the file is empty. Write it, or delete it."]


def test_bytes_that_are_no_text(said: Said, kitchen: Path) -> None:
    name = "desserts/river-pebble.yaml"
    (kitchen / name).write_bytes(b"dessert: x\nmould: p\xe9bble\n")
    assert said() == [
        f"{name}:2:1: this is not text, or not in UTF-8. Save it as plain text, in UTF-8."
    ]


def test_a_folder_where_a_file_should_be(said: Said, kitchen: Path) -> None:
    (kitchen / "orders.yaml").unlink()
    (kitchen / "orders.yaml").mkdir()
    assert said() == [
        "orders.yaml: this is not a file that can be opened. Put a text file of that"
        " name in its place."
    ]


def test_a_file_with_the_other_ending_is_not_passed_over(
    said: Said, kitchen: Path
) -> None:
    (kitchen / "desserts" / "new.yml").write_text("dessert: x\n", "utf-8")
    assert said() == [
        "desserts/new.yml: the file is not read: its name ends in .yml. Call it new.yaml."
    ]


def test_the_mark_that_some_programs_put_first_is_no_text(kitchen: Path) -> None:
    text = (kitchen / "orders.yaml").read_bytes()
    (kitchen / "orders.yaml").write_bytes(b"\xef\xbb\xbf" + text)
    texts, problems = read_texts(kitchen)
    assert problems == ()
    assert texts["orders.yaml"] == text.decode("utf-8")


def test_a_larder_that_cannot_be_read_makes_no_ingredient_unknown(
    said: Said, kitchen: Path
) -> None:
    plate = (
        "desserts/river-pebble.yaml",
        "roasted buckwheat groats; 2 g",
        "qwxyz; 2 g",
    )
    line = ("desserts/river-pebble.yaml", "90 g   hazelnut paste", "90 g   qwxyz")
    swap = ("desserts/river-pebble.yaml", "hazelnut paste becomes", "qwxyz becomes")
    (kitchen / "larder.yaml").write_text("sugar: : x\n", "utf-8")
    assert said(plate, line, swap) == [
        "larder.yaml:1:8: a colon stands where none can, or the line begins too far in."
        " Begin it right below the line above; put words with a colon in quotes."
    ]


def test_a_kitchen_that_cannot_be_read_makes_no_name_unknown(
    said: Said, kitchen: Path
) -> None:
    (kitchen / "kitchen.yaml").write_text("kitchen: : x\n", "utf-8")
    assert [one.split(":")[0] for one in said()] == ["kitchen.yaml"]


def test_a_dessert_with_faults_can_be_ordered(said: Said) -> None:
    name = "desserts/river-pebble.yaml"
    assert said((name, "dessert: River Pebble\n", "")) == [
        f"{name}: 'dessert' is missing. Write dessert: and its name."
    ]


def test_the_zone_and_the_desserts_are_told_before_all_is_read(
    kitchen: Path, tmp_path: Path
) -> None:
    assert zone_of(kitchen).key == "Europe/London"
    assert desserts_in(kitchen) == ("ember-log", "meadow-domes", "river-pebble")
    assert zone_of(tmp_path).key == "UTC"
    for text in ("kitchen: K\n", "zone: Mars/Crater\n", "zone: |\n  UTC\n", "- x\n"):
        (tmp_path / "kitchen.yaml").write_text(text, "utf-8")
        assert zone_of(tmp_path).key == "UTC"
