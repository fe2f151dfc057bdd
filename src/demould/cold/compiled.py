"""How the innermost loops are compiled, and where what was compiled is kept.

What is kept goes into a folder named by all sources that compiled loops are made from,
so that a loop is never older than a loop, or a constant, it calls in another file.
"""

import hashlib
import shutil
import tempfile
from collections.abc import Callable, Iterable
from contextlib import suppress
from functools import cache
from pathlib import Path
from typing import Any, ParamSpec, TypeVar

import numba
from numba.misc import appdirs

P = ParamSpec("P")
R = TypeVar("R")

config: Any = numba.config
user_dirs: Any = appdirs.AppDirs
HERE = Path(__file__).parent
SOURCES = ("compiled.py", "body/*.py", "run/*.py", "around/moist.py")
NAMED = "demould-cold-"


def compiled(function: Callable[P, R]) -> Callable[P, R]:
    """Compile to machine code at the first call, and keep it for the next process.

    With no folder open to us each process compiles for itself. NUMBA_DISABLE_JIT=1
    leaves plain Python.
    """
    kept = None if config.DISABLE_JIT else kept_in()
    if kept is None:
        plain: Callable[P, R] = numba.njit(error_model="numpy")(function)
        return plain
    usual, config.CACHE_DIR = config.CACHE_DIR, str(kept)
    try:
        made: Callable[P, R] = numba.njit(cache=True, error_model="numpy")(function)
    finally:
        config.CACHE_DIR = usual
    return made


@cache
def kept_in() -> Path | None:
    """Give the folder of what is compiled, made if need be; None if none can be had.

    Looked for where NUMBA_CACHE_DIR says, then beside this module, then in the user's
    cache. Beside the module older ones are cleared away: its sources are the only ones.
    """
    beside = HERE / "__pycache__"
    said = [Path(config.CACHE_DIR)] if config.CACHE_DIR else []
    users = Path(user_dirs("demould", appauthor=False).user_cache_dir)
    name = NAMED + stamp(HERE)
    for place in (*said, beside, users):
        if _writable(place / name):
            if place == beside:
                _clear(old for old in place.glob(f"{NAMED}*") if old.name != name)
            return place / name
    return None


def stamp(place: Path) -> str:
    """Sixteen letters that change with any source of a compiled loop under `place`."""
    seen = hashlib.sha256()
    for pattern in SOURCES:
        for path in sorted(place.glob(pattern)):
            seen.update(f"{path.relative_to(place).as_posix()}\n".encode())
            seen.update(path.read_bytes())
    return seen.hexdigest()[:16]


def _writable(place: Path) -> bool:
    try:
        place.mkdir(parents=True, exist_ok=True)
        with tempfile.TemporaryFile(dir=place):
            return True
    except OSError:
        return False


def _clear(folders: Iterable[Path]) -> None:
    for old in folders:
        with suppress(OSError):
            shutil.rmtree(old)
