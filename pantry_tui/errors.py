"""One error tree. `message` is one sentence that says what to do next; `code` is the exit code."""

from __future__ import annotations


class PantryError(Exception):
    """Anything a person is told in one sentence. Exit code 1: refused, with the reason."""

    code = 1

    def __init__(self, message: str) -> None:
        super().__init__(message)
        self.message = message


class Refused(PantryError):
    """The request was understood and is not done (1)."""


class BadInput(PantryError):
    """The request could not be understood (2)."""

    code = 2


class Unclear(BadInput):
    """What was typed could mean several things, or lacks one (2): what it is about, what was
    typed, and what may be meant. The message asks for it."""

    def __init__(self, message: str, about: str, typed: str, choices: tuple[str, ...]) -> None:
        super().__init__(message)
        self.about, self.typed, self.choices = about, typed, choices


class StoreError(PantryError):
    """The store file is missing, foreign, newer or broken (1)."""


class DataError(PantryError):
    """A reference table has a bad cell; the message names file, row and column (1)."""
