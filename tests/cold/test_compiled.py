import os
import shutil
import subprocess
import sys
from pathlib import Path

import pytest

import demould.cold.compiled as under_test
from demould.cold.compiled import HERE, SOURCES, stamp

INNER = (
    "from cool.compiled import compiled\n@compiled\ndef inner(x):\n    return x + {n}\n"
)
OUTER = (
    "from cool.compiled import compiled\nfrom cool.body.inner import inner\n"
    "@compiled\ndef outer(x):\n    return 10 * inner(x)\n"
)
ASKED = "from cool.body.outer import outer\nprint(outer(1), sum(outer.stats.cache_hits.values()))"


@pytest.fixture
def cool(tmp_path: Path) -> Path:
    """A little room of its own: two loops, one calling the other in another file."""
    place = tmp_path / "site" / "cool"
    (place / "body").mkdir(parents=True)
    shutil.copy(HERE / "compiled.py", place)
    (place / "body" / "inner.py").write_text(INNER.format(n=1))
    (place / "body" / "outer.py").write_text(OUTER)
    return place


def said(cool: Path, ask: str = ASKED, **environment: str) -> str:
    """What a new process answers; its user's cache lies beside the site."""
    home = cool.parents[1]
    done = subprocess.run(
        [sys.executable, "-B", "-c", ask],
        capture_output=True,
        text=True,
        check=True,
        env={
            **{k: v for k, v in os.environ.items() if not k.startswith("NUMBA")},
            "PYTHONPATH": str(cool.parent),
            "XDG_CACHE_HOME": str(home / "caches"),
            "LOCALAPPDATA": str(home / "caches"),
            "HOME": str(home),
            **environment,
        },
    )
    return done.stdout.strip()


def folders(place: Path) -> list[Path]:
    return sorted(place.glob("**/demould-cold-*"))


def test_a_loop_is_kept_and_a_change_in_what_it_calls_is_noticed(cool: Path) -> None:
    assert said(cool) == "20 0"
    assert said(cool) == "20 1"
    (cool / "body" / "inner.py").write_text(INNER.format(n=2))
    assert said(cool) == "30 0"
    assert said(cool) == "30 1"
    # What was kept of the old sources is gone.
    assert len(folders(cool)) == 1


def test_where_nothing_may_be_written_beside_it_the_users_cache_serves(
    cool: Path,
) -> None:
    # A file in the folder's place stops even a superuser, whom modes do not.
    (cool / "__pycache__").write_text("")
    assert said(cool) == "20 0"
    assert said(cool) == "20 1"
    assert len(folders(cool.parents[1] / "caches")) == 1


def test_where_nothing_may_be_written_at_all_it_still_answers(cool: Path) -> None:
    (cool / "__pycache__").write_text("")
    (cool.parents[1] / "caches").write_text("")
    assert said(cool) == "20 0"
    assert said(cool) == "20 0"


def test_a_folder_that_is_named_is_taken(cool: Path, tmp_path: Path) -> None:
    named = str(tmp_path / "named")
    assert said(cool, NUMBA_CACHE_DIR=named) == "20 0"
    assert said(cool, NUMBA_CACHE_DIR=named) == "20 1"
    assert not folders(cool)


def test_other_peoples_loops_are_kept_where_they_were(cool: Path) -> None:
    ask = "import cool.body.outer, numba\nprint(repr(numba.config.CACHE_DIR))"
    assert said(cool, ask) == "''"


def test_plain_python_serves_too(cool: Path) -> None:
    ask = "from cool.body.outer import outer\nprint(outer(1), type(outer).__name__)"
    assert said(cool, ask, NUMBA_DISABLE_JIT="1") == "20 function"
    assert not folders(cool)


def test_the_stamp_covers_every_file_with_a_compiled_loop() -> None:
    covered = {path for pattern in SOURCES for path in HERE.glob(pattern)}
    for path in HERE.rglob("*.py"):
        if "@compiled" in path.read_text():
            assert path in covered, f"{path.name} is not in the stamp"
    assert under_test.__file__ in map(str, covered)
    assert len(stamp(HERE)) == 16
