"""Many put-up lines at once: each with its reading, booked all or none, taken back as one.

A line that is nothing but a place with a colon ("larder:") stands for the lines below it; empty
lines and lines that begin with # are passed over.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from dataclasses import dataclass, replace

from pantry_tui.errors import BadInput, PantryError
from pantry_tui.services.batchwork import putup
from pantry_tui.services.pantry import Pantry
from pantry_tui.services.rows import PutUp, PutUpReading

#: As many as a person types in an evening, and more.
MOST = 2_000


@dataclass(frozen=True, slots=True)
class OneLine:
    """A line and what came of it: `made`, or `why` it cannot be booked, a sentence."""

    number: int
    typed: str
    reading: PutUpReading
    made: PutUp | None = None
    why: str = ""


def typed_lines(text: str | Iterable[str]) -> Iterator[tuple[int, str, str]]:
    """Every line that says something: its number, the place above it, and itself."""
    place = ""
    for number, raw in enumerate(text.splitlines() if isinstance(text, str) else text, start=1):
        line = raw.strip()
        if not line or line.startswith("#"):
            continue
        if line.endswith(":"):
            place = line[:-1].strip()
            continue
        yield number, place, line


def read_lines(p: Pantry, text: str) -> list[OneLine]:
    """Each line with its reading, and what is wrong with which; nothing is booked. Raises BadInput
    where there is no line, or more than `MOST`."""
    found: list[OneLine] = []
    for number, place, line in typed_lines(text):
        if len(found) == MOST:
            raise BadInput(f"Over {MOST:,} lines: import a list of that length from a file.")
        found.append(_read(p, number, place, line))
    if not found:
        raise BadInput('There is no line to put up: write one like "7 jars plum jam, larder".')
    return found


def _read(p: Pantry, number: int, place: str, line: str) -> OneLine:
    try:
        reading = putup.read_at(p, line, place) if place else putup.read(p, line)
    except BadInput as error:  # the place above it is not there, or could be two
        return OneLine(number, line, putup.read(p, line), why=error.message)
    return _tried(p, OneLine(number, line, reading))


def _tried(p: Pantry, one: OneLine) -> OneLine:
    try:
        return replace(one, made=putup.preview(p, one.reading))
    except PantryError as error:
        return replace(one, why=error.message)


def put_up_lines(p: Pantry, text: str) -> list[OneLine]:
    """Books every line, or none where one cannot be: then each says why. One undo takes all of
    them back."""
    found = read_lines(p, text)
    if any(one.why for one in found):
        return found
    with p.together():
        return [replace(one, made=putup.put_up(p, one.reading)) for one in found]
