"""What a note said before it was changed stands against its batch, and says that it is the old
one: a changed note lifts nothing."""

from __future__ import annotations

import re
from collections.abc import Collection, Sequence

#: How a sentence begins that quotes a note.
QUOTES = "Its note says "
_QUOTED = "Its note said "
_ASKS = r"Record what is true as (\w+)="
_QUOTE = rf"(?s){QUOTES}('(?:[^'\\]|\\.)*'|\"(?:[^\"\\]|\\.)*\")(.*)"


def of_a_changed_note(doubt: Sequence[str], note: str, code: str) -> tuple[str, ...]:
    """What stands against a batch, with the sentences that quote what its note says no more put
    as what it said."""
    return tuple(dict.fromkeys(_now(one, note, code) for one in doubt))


def unanswered(
    doubt: Sequence[str], note: str, code: str, keys: Collection[str]
) -> tuple[str, ...]:
    """What stands of it because of an earlier note, where `keys` of its record are put right: all
    where none is, and what asks for another one. A size or a food that is put right answers none.
    """
    before = (one for one in of_a_changed_note(doubt, note, code) if one.startswith(_QUOTED))
    return tuple(one for one in before if not keys or _asks_for_another(one, keys))


def _asks_for_another(sentence: str, keys: Collection[str]) -> bool:
    asked = re.search(_ASKS, sentence)
    return asked is not None and asked[1] not in keys


def _now(sentence: str, note: str, code: str) -> str:
    quote = re.fullmatch(_QUOTE, sentence) if sentence.startswith(QUOTES) else None
    if quote is None or _words(quote[1]) <= _words(note):
        return sentence
    return (
        f"{_QUOTED}{quote[1]} before, and another note lifts nothing (if it was never so, "
        f"take back that line of `log {code}` and those after it, `undo` with their ids){quote[2]}"
    )


def _words(text: str) -> set[str]:
    return set(re.findall(r"\w+", text.casefold()))
