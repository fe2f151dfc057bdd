"""How the innermost loops are compiled, and that they still run where nothing may be kept."""

from collections.abc import Callable
from typing import ParamSpec, TypeVar

from numba import njit

P = ParamSpec("P")
R = TypeVar("R")


def compiled(function: Callable[P, R]) -> Callable[P, R]:
    """Compile to machine code at the first call, and keep it for the next process.

    It is kept beside the module, or where that is read-only in the user's cache, or
    where NUMBA_CACHE_DIR says. With none of them open to us each process compiles for
    itself. NUMBA_DISABLE_JIT=1 leaves plain Python.
    """
    try:
        made: Callable[P, R] = njit(cache=True, error_model="numpy")(function)
    except RuntimeError:
        made = njit(error_model="numpy")(function)
    return made
