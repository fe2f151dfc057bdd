import json
from collections.abc import Mapping
from pathlib import Path

import pytest
from click.testing import CliRunner, Result

from demould.counter.cli.case import ANSWERED_BY, _by_name
from demould.counter.cli.main import demould
from tests.cold.cases import P1

QUICK: Mapping[str, object] = {**P1, "accuracy": {"cell_mm": 6, "step_s": 200}}


def said(*files: Path | str, stdin: str | None = None) -> Result:
    return CliRunner().invoke(demould, ["case", *map(str, files)], input=stdin)


def written(folder: Path, name: str, text: str | Mapping[str, object]) -> Path:
    file = folder / name
    file.write_text(text if isinstance(text, str) else json.dumps(text), "utf-8")
    return file


def test_one_answer_a_line_in_the_order_of_the_files(tmp_path: Path) -> None:
    one = written(tmp_path, "one.json", {**QUICK, "id": "one"})
    two = written(tmp_path, "two.json", {**QUICK, "id": "two"})
    result = said(two, one)
    assert result.exit_code == 0
    answers = [json.loads(line) for line in result.stdout.splitlines()]
    assert [answer["id"] for answer in answers] == ["two", "one"]
    assert all(answer["schema"] == "demould-cold-answer/1" for answer in answers)
    assert answers[0]["core"] == answers[1]["core"]
    assert answers[0]["total_ms"] > answers[0]["solve_ms"] > 0
    assert result.stderr == ""


def test_a_case_comes_through_standard_input() -> None:
    result = said("-", stdin=json.dumps(QUICK))
    assert result.exit_code == 0
    assert json.loads(result.stdout)["id"] == "P1"


def test_faults_go_beside_answers_and_the_exit_is_one(tmp_path: Path) -> None:
    sound = written(tmp_path, "sound.json", QUICK)
    bad = written(tmp_path, "bad.json", {**QUICK, "h": 0, "air": None})
    result = said(bad, sound)
    assert result.exit_code == 1
    assert result.stderr.splitlines() == [
        f"{bad}: air: null is not a number; write one, at least -60 °C and at most"
        " 60 °C",
        f"{bad}: h: 0 is out of bounds; it must be more than 0",
    ]
    assert json.loads(result.stdout)["id"] == "P1"


KNOWN = ", ".join(repr(name) for name in ANSWERED_BY)
UNSOUND = {
    '{"schema": ': "line 1, column 12: this is no JSON (Expecting value); mend it there",
    "[1, 2]": "a case is one object in braces; this is something else",
    '{"schema": "demould-cold-case/9"}': "schema: 'demould-cold-case/9' is not known;"
    f" write one of {KNOWN}",
    "{}": f"schema: None is not known; write one of {KNOWN}",
    '{"h": 1, "h": 2}': "h: this key is there twice; keep one of them",
    "[" * 100_000: "objects lie too deep in one another; no case needs that",
}


@pytest.mark.parametrize("text", UNSOUND, ids=range(len(UNSOUND)))
def test_what_is_no_case_is_told_with_its_place(tmp_path: Path, text: str) -> None:
    file = written(tmp_path, "case.json", text)
    result = said(file)
    assert result.exit_code == 1
    assert result.stdout == ""
    assert result.stderr == f"{file}: {UNSOUND[text]}\n"


def test_a_file_that_is_not_there_or_no_text(tmp_path: Path) -> None:
    result = said(tmp_path / "none.json")
    assert result.exit_code == 1
    assert "cannot be read (No such file or directory); check its name" in result.stderr
    raw = tmp_path / "raw.json"
    raw.write_bytes(b'{"id": "\xff"}')
    result = said(raw)
    assert result.exit_code == 1
    assert result.stderr == f"{raw}: byte 8 is no UTF-8; save the file as UTF-8\n"


def test_every_schema_has_somebody_to_answer_it() -> None:
    assert "demould-cold-case/1" in ANSWERED_BY
    assert all(callable(_by_name(path)) for path in ANSWERED_BY.values())


def test_no_files_and_bad_limits_are_wrong_use() -> None:
    assert said().exit_code == 2
    assert said("--limit", "0", "case.json").exit_code == 2
