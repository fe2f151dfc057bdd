"""One warm process that plans: it tells each better plan, and stops when it is asked.

The process is spawned once and keeps the solver loaded; problems are handed to it one
after the other. A thread in it listens while the search is on, so that a stop comes
through at once and the best plan so far is the answer.
"""

from __future__ import annotations

import queue
import threading
from contextlib import suppress
from dataclasses import dataclass, field
from multiprocessing import get_context
from typing import TYPE_CHECKING, Literal

if TYPE_CHECKING:
    from collections.abc import Callable
    from multiprocessing.connection import Connection
    from multiprocessing.context import SpawnProcess

    from demould.plan.answer.schedule import Schedule
    from demould.plan.problem.steps import Problem

PATIENCE_S = 5.0
"""So long is waited for the process to end by itself."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Job:
    """A problem to be planned in so many seconds on the wall."""

    problem: Problem
    seconds: float
    seed: int = 0


@dataclass(slots=True)
class Planner:
    """The planning process; it starts with the first job, or when it is warmed."""

    _process: SpawnProcess | None = None
    _line: Connection | None = field(default=None)

    def warm(self) -> None:
        """Start the process and let it load the solver."""
        if self._process is not None and self._process.is_alive():
            return
        context = get_context("spawn")
        self._line, other = context.Pipe()
        self._process = context.Process(target=work, args=(other,), daemon=True)
        self._process.start()
        other.close()

    def plan(
        self, job: Job, tell: Callable[[Schedule], None] | None = None
    ) -> Schedule:
        """Plan a problem; ``tell`` is called with each better plan as it is found.

        Raises
        ------
        ValueError
            The problem refers to what it does not have.
        RuntimeError
            The process ended before it had an answer.
        """
        self.warm()
        line = self._line
        if line is None:
            raise RuntimeError("the planning process has no line to it")
        line.send(job)
        try:
            return self._listen(line, tell)
        except KeyboardInterrupt:
            self.stop()
            return self._listen(line, tell)
        except EOFError as ended:
            raise RuntimeError(
                "the planning process ended without an answer"
            ) from ended

    def _listen(
        self, line: Connection, tell: Callable[[Schedule], None] | None
    ) -> Schedule:
        while True:
            kind, found = line.recv()
            if kind == "answer":
                return found  # type: ignore[no-any-return]
            if kind == "fault":
                raise ValueError(found)
            if tell is not None:
                tell(found)

    def stop(self) -> None:
        """Have the best plan so far as the answer, now."""
        if self._line is not None:
            self._line.send("stop")

    def close(self) -> None:
        """End the process."""
        if self._process is None or self._line is None:
            return
        with suppress(OSError):
            self._line.send("end")
        self._process.join(PATIENCE_S)
        if self._process.is_alive():
            self._process.terminate()
        self._line.close()
        self._process, self._line = None, None


def work(line: Connection) -> None:
    """Plan what comes over the line, until it is told to end or the line is cut."""
    import signal

    from demould.plan.solve.cpsat.time import Stop
    from demould.plan.why.answer import answer

    signal.signal(signal.SIGINT, signal.SIG_IGN)
    jobs: queue.Queue[Job | Literal["end"]] = queue.Queue()
    now = [Stop()]

    def listen() -> None:
        with suppress(EOFError, OSError):
            while (message := line.recv()) != "end":
                if message == "stop":
                    now[0]()
                else:
                    jobs.put(message)
        now[0]()
        jobs.put("end")

    threading.Thread(target=listen, daemon=True).start()
    while (job := jobs.get()) != "end":
        now[0] = Stop()
        try:
            found = answer(
                job.problem,
                seconds=job.seconds,
                seed=job.seed,
                stop=now[0],
                tell=lambda better: line.send(("better", better)),
            )
        except ValueError as fault:
            line.send(("fault", str(fault)))
        else:
            line.send(("answer", found))
