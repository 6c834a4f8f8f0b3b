"""What a note said before it was changed stands against its batch, and says that it is the old
one: a changed note lifts nothing."""

from __future__ import annotations

import re
from collections.abc import Collection, Sequence

from pantry_tui.core.text import begun

#: How a sentence begins that quotes a note.
QUOTES = "Its note says "
_QUOTED = "Its note said "
#: What stands behind the quotation where a note speaks of some jars, and each may be that one.
_WHICH = ", but not which: "
#: The same in logs of before, and how that sentence ended.
_ASKED = ": which is not said, so none is eaten until it is (`sign` with its number): "
_ENDED = (
    "not checked. Put the note right then; the others are looked at one by one.",
    "not checked.",
)
#: Said of the lid alone, so that one that is found unsealed in time is one of them.
OF_LIDS = " (a lid that did not hold)"
#: How many containers showed a sign that throws them away; how many more were found in time with a
#: lid that did not hold, which answers what is said of lids alone.
Signed = tuple[int, int]
_ASKS = r"Record what is true as (\w+)="
_STRING = r"'(?:[^'\\]|\\.)*'|\"(?:[^\"\\]|\\.)*\""
#: As long were quotations cut in logs of before; what more such a note spoke of nobody knows.
_CUT = 200
_QUOTE = rf"(?s){QUOTES}({_STRING})(.*)"
_QUOTING = (
    rf"(?s)(?:{QUOTES}|{_QUOTED})(?:{_STRING})"
    r"(?: before, and another note lifts nothing \(.*?\))?"
)


def which(quoted: str, told: str = "", *, of_lids: bool = False) -> str:
    """What stands against all containers of a batch because of a note that speaks of some of them
    and does not say of which. `told` is what it says of those."""
    from pantry_tui.core.safety.note_share import how_many  # loaded where a note is read

    number = how_many(quoted)
    those = "all that it means" if number is None else f"those {number}" if number > 1 else "it"
    lids = OF_LIDS if of_lids else ""
    end = f" {begun(told)}" if told else ""
    return (
        f"{QUOTES}{quoted!r}{_WHICH}none is eaten until `sign` has named {those}, by number{lids}. "
        f"Then put the note right, and look at each of the others.{end}"
    )


def asks_which(sentence: str) -> bool:
    """Whether it is held against all only until somebody says of which the note speaks."""
    return re.match(rf"{_QUOTING}(?:{re.escape(_WHICH)}|{re.escape(_ASKED)})", sentence) is not None


def of_a_changed_note(doubt: Sequence[str], note: str, code: str) -> tuple[str, ...]:
    """What stands against a batch, with the sentences that quote what its note says no more put
    as what it said."""
    return tuple(dict.fromkeys(_now(one, note, code) for one in doubt))


def unanswered(
    doubt: Sequence[str],
    note: str,
    code: str,
    keys: Collection[str],
    shown: Signed = (0, 0),
) -> tuple[str, ...]:
    """What stands of it because of an earlier note, where `keys` of its record are put right: all
    where none is, and what asks for another one. A size or a food that is put right answers none.
    What was said of some jars stands until so many of them have `shown` it, whatever is recorded.
    """
    before = (one for one in of_a_changed_note(doubt, note, code) if one.startswith(_QUOTED))
    return tuple(one for one in before if _stands(one, keys, shown))


def _stands(sentence: str, keys: Collection[str], shown: Signed) -> bool:
    if asks_which(sentence):
        return not names_enough(sentence, shown)
    return not keys or _asks_for_another(sentence, keys)


def names_enough(sentence: str, shown: Signed) -> bool:
    """Whether it asks which of the containers a note meant, and as many have `shown` a sign as the
    note speaks of, one at least; never where it does not say how many."""
    named, told = so_many_named(sentence, shown)
    return told is not None and named >= max(1, told)


def so_many_named(sentence: str, shown: Signed) -> tuple[int, int | None]:
    """How many of the containers that a note meant are named by now, and of how many it speaks;
    None where it does not say, or asks nothing."""
    thrown, unsealed = shown
    signed = thrown + (unsealed if OF_LIDS in sentence else 0)
    quote = re.match(rf"(?s)(?:{QUOTES}|{_QUOTED})({_STRING})", sentence)
    if quote is None or not asks_which(sentence):
        return signed, None
    from pantry_tui.core.safety.note_share import how_many  # loaded where a note is read

    said = re.sub(r"\\(.)", r"\1", quote[1][1:-1])
    return signed, None if len(said) == _CUT else how_many(said)


def _asks_for_another(sentence: str, keys: Collection[str]) -> bool:
    asked = re.search(_ASKS, sentence)
    return asked is not None and asked[1] not in keys


def _now(sentence: str, note: str, code: str) -> str:
    sentence = _of_today(sentence)
    quote = re.fullmatch(_QUOTE, sentence) if sentence.startswith(QUOTES) else None
    if quote is None or _words(quote[1]) <= _words(note):
        return sentence
    return (
        f"{_QUOTED}{quote[1]} before, and another note lifts nothing (if it was never so, "
        f"take back that line of `log {code}` and those after it, each by `undo ID`){quote[2]}"
    )


def _of_today(sentence: str) -> str:
    """A sentence of an older log that asks which, as it is put today."""
    head, asked, told = sentence.partition(_ASKED)
    if not asked or not head.startswith(QUOTES) or not asks_which(sentence):
        return sentence
    quoted = re.sub(r"\\(.)", r"\1", head.removeprefix(QUOTES)[1:-1])
    return which(quoted, "" if told in _ENDED else told)


def _words(text: str) -> set[str]:
    return set(re.findall(r"\w+", text.casefold()))
