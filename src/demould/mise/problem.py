"""What is wrong in what somebody wrote, and how to put it right."""

from dataclasses import dataclass

from demould.mise.words import Words


@dataclass(frozen=True, slots=True)
class Problem:
    """One fault at one place of a file, worded for the cook who wrote it.

    `line` and `column` count from 1; 0 is the file as a whole.
    """

    file: str
    line: int
    column: int
    wrong: Words
    remedy: Words

    def __str__(self) -> str:
        place = f":{self.line}:{self.column}" if self.line else ""
        return f"{self.file}{place}: {self.wrong}. {self.remedy}."


class UnreadableError(Exception):
    """One thing that cannot be read, raised where *what* is wrong is known.

    Caught one level up, where *where* is known, and made a `Problem`. `column` is the
    offset inside the text that was being read, from 0.
    """

    def __init__(self, wrong: Words, remedy: Words, column: int = 0) -> None:
        super().__init__(f"{wrong}. {remedy}.")
        self.wrong = wrong
        self.remedy = remedy
        self.column = column
