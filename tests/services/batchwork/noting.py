"""Food put up with a note, for the tests of what notes say."""

from __future__ import annotations

from collections.abc import Iterable, Mapping

from pantry_tui.services.batchwork import putup
from pantry_tui.services.pantry import Pantry
from pantry_tui.services.rows import PutUp


def as_typed(line: str, note: str = "") -> str:
    """A line with its note."""
    return f'{line}, note="{note}"' if note else line


def tried(p: Pantry, line: str, note: str = "") -> PutUp:
    """What putting it up would answer."""
    return putup.preview(p, putup.read(p, as_typed(line, note)))


def quotes(found: PutUp) -> bool:
    """Whether the note is held against it."""
    return any("Its note says" in one for one in found.reasons)


def tried_each(p: Pantry, line: str, notes: Iterable[str]) -> dict[str, PutUp]:
    """The same with each note by itself."""
    return {note: tried(p, line, note) for note in notes}


def quoted(found: Mapping[str, PutUp]) -> set[str]:
    """The notes that are held against it."""
    return {note for note, one in found.items() if quotes(one)}


def judged_otherwise(p: Pantry, line: str, found: Mapping[str, PutUp]) -> set[str]:
    """The notes with which it is not judged as it is without any."""
    bare = _judged(tried(p, line))
    return {note for note, one in found.items() if _judged(one) != bare}


def each(told: Mapping[str, str]) -> list[tuple[str, str]]:
    """Of what stands under a name, one note a line, each line with its name."""
    return [(what, note) for what, notes in told.items() for note in notes.strip().splitlines()]


def speaks_against(p: Pantry, line: str, note: str) -> bool:
    """Whether a batch is judged by another verdict or day because of its note."""
    bare = putup.preview(p, putup.read(p, line))
    told = putup.preview(p, putup.read(p, line, note=note))
    return (told.verdict, told.discard_after) != (bare.verdict, bare.discard_after)


def _judged(one: PutUp) -> tuple[object, ...]:
    return one.verdict, one.best_by, one.discard_after
