"""What a note said before it was changed stands against its batch, and says that it is the old
one: a changed note lifts nothing."""

from __future__ import annotations

import re
from collections.abc import Collection, Sequence

#: How a sentence begins that quotes a note.
QUOTES = "Its note says "
_QUOTED = "Its note said "
#: What is asked where a note speaks of some jars, and each of the batch may be that one.
ASKS_WHICH = "which is not said, so none is eaten until it is (`sign` with its number): "
_ASKS = r"Record what is true as (\w+)="
_STRING = r"'(?:[^'\\]|\\.)*'|\"(?:[^\"\\]|\\.)*\""
#: As long were quotations cut in logs of before; what more such a note spoke of nobody knows.
_CUT = 200
_QUOTE = rf"(?s){QUOTES}({_STRING})(.*)"


def of_a_changed_note(doubt: Sequence[str], note: str, code: str) -> tuple[str, ...]:
    """What stands against a batch, with the sentences that quote what its note says no more put
    as what it said."""
    return tuple(dict.fromkeys(_now(one, note, code) for one in doubt))


def unanswered(
    doubt: Sequence[str], note: str, code: str, keys: Collection[str], shown: int = 0
) -> tuple[str, ...]:
    """What stands of it because of an earlier note, where `keys` of its record are put right: all
    where none is, and what asks for another one. A size or a food that is put right answers none.
    What was said of some jars stands until so many of them have `shown` it, whatever is recorded.
    """
    before = (one for one in of_a_changed_note(doubt, note, code) if one.startswith(_QUOTED))
    return tuple(one for one in before if _stands(one, keys, shown))


def _stands(sentence: str, keys: Collection[str], shown: int) -> bool:
    if ASKS_WHICH in sentence:
        return not names_enough(sentence, shown)
    return not keys or _asks_for_another(sentence, keys)


def names_enough(sentence: str, shown: int) -> bool:
    """Whether it asks which of the containers a note meant, and as many have `shown` a sign as the
    note speaks of, one at least; never where it does not say how many."""
    from pantry_tui.core.safety.note_share import how_many  # loaded where a note is read

    if ASKS_WHICH not in sentence:
        return False
    quote = re.match(rf"(?s)(?:{QUOTES}|{_QUOTED})({_STRING})", sentence)
    said = re.sub(r"\\(.)", r"\1", quote[1][1:-1]) if quote else ""
    told = None if len(said) == _CUT else how_many(said)
    return told is not None and shown >= max(1, told)


def _asks_for_another(sentence: str, keys: Collection[str]) -> bool:
    asked = re.search(_ASKS, sentence)
    return asked is not None and asked[1] not in keys


def _now(sentence: str, note: str, code: str) -> str:
    quote = re.fullmatch(_QUOTE, sentence) if sentence.startswith(QUOTES) else None
    if quote is None or _words(quote[1]) <= _words(note):
        return sentence
    return (
        f"{_QUOTED}{quote[1]} before, and another note lifts nothing (if it was never so, "
        f"take back that line of `log {code}` and those after it, each by `undo ID`){quote[2]}"
    )


def _words(text: str) -> set[str]:
    return set(re.findall(r"\w+", text.casefold()))
