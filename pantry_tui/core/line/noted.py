"""The note of a put-up line: note="for Ann", which ends where its quote does, or note=for Ann,
which takes all that stands behind it. A quote that nothing closes, and a day or a detail behind a
comma of a note without quotes, could be either: that is asked about."""

from __future__ import annotations

import re
from typing import NamedTuple

from pantry_tui.core.safety.record import key_named

#: What opens a quote -> what closes it, tried in turn. Keyboards and copies mix them.
_CLOSING = {
    '"': ('"', "”“"), "“": ("”", '"“'), "”": ("”", '"'), "„": ("“”", '"'), "«": ("»",),
    "»": ("«",), "‹": ("›",), "'": ("'", "’‘"), "‘": ("’", "'"), "‚": ("‘’", "'"), "`": ("`", "'´"),
}  # fmt: skip
_NOTE = re.compile(r"\bnote\s*[=:]\s*", re.IGNORECASE)
#: A part that is a day and nothing else.
_DAY = re.compile(
    r"(?:\d{4}-\d{1,2}-\d{1,2}|\d{1,2}([./-])\d{1,2}\1(?:\d{4}|\d\d))(?: \d{1,2}:\d\d)?"
)
_PAIR = re.compile(r"([a-z][a-z-]{0,30})=\S.*", re.IGNORECASE)
#: Pairs that are no detail of a process.
_KEYS = frozenset({"note", "method", "amount", "state", "group", "acidity", "size", "place"})
_SHOWN = 40


class Noted(NamedTuple):
    """The line without its notes, those, and what is to be asked about them: what was typed, what
    may be meant, and why, a sentence."""

    rest: str
    note: str = ""
    ask: tuple[str, tuple[str, ...], str] | None = None


def take_note(text: str) -> Noted:
    """The notes of a line, wherever they stand."""
    notes: list[str] = []
    found, start = _NOTE.search(text), 0
    while found is not None:
        opens = text[found.end() : found.end() + 1]
        if opens not in _CLOSING or not opens:
            note = text[found.end() :].strip()
            return Noted(text[: found.start()], "; ".join([*notes, note]), _either(note))
        end = _end(text, found.end() + 1, opens)
        if end is None:
            note = text[found.end() + 1 :].strip()
            why = (
                f"The note opens a quote ({opens}) that nothing closes: close it where the note "
                "ends, or leave it out."
            )
            shown = text[found.end() :].strip()[:_SHOWN]
            return Noted(text[: found.start()], "; ".join([*notes, note]), (shown, (), why))
        notes += filter(None, (text[found.end() + 1 : end].strip(),))
        behind = text[end + 1 :]
        apart = ", " if behind.strip() else ""
        text = f"{text[: found.start()].rstrip(' ,;')}{apart}{behind.lstrip(' ,;')}"
        start = found.start()
        found = _NOTE.search(text, max(0, start - 2))
    return Noted(text, "; ".join(notes))


def as_noted(note: str) -> str:
    """A note as a line has it, so that something may stand behind it where a quote can show its
    end."""
    for opens, closes in (('"', '"'), ("“", "”"), ("«", "»")):
        if opens not in note and closes not in note:
            return f"note={opens}{note}{closes}"
    return f"note={note}"


def _end(text: str, at: int, opens: str) -> int | None:
    """Where the closing quote stands: an apostrophe within a word, and what a word follows
    at once, is none."""
    for signs in _CLOSING[opens]:
        for i in range(at, len(text)):
            if text[i] in signs and not text[i + 1 : i + 2].isalnum():
                return i
    return None


def _either(note: str) -> tuple[str, tuple[str, ...], str] | None:
    """Of a note without quotes: what stands behind a comma and is a day, or a detail of the
    record."""
    parts = [" ".join(one.split()) for one in note.split(",")]
    for at, part in enumerate(parts[1:], start=1):
        pair = _PAIR.fullmatch(part)
        known = pair is not None and (pair[1].casefold() in _KEYS or key_named(pair[1]) is not None)
        if not known and not _DAY.fullmatch(part):
            continue
        before, behind = ", ".join(parts[:at]), ", ".join(parts[at:])
        quote = '"' if '"' not in note else ""
        choices = (
            f"note={quote}{before}{quote}, {behind}", f"note={quote}{note}{quote}"
        ) if quote else ()  # fmt: skip
        why = (
            f"Does {part[:_SHOWN]!r} belong to the note? Write the note in quotes, which end where "
            'it does: note="...".'
        )
        return part, choices, why
    return None
