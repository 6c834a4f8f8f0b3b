"""Reads strangers.txt, lines that were written from the outside, and holds readings against them.

Each line of the file is a put-up line, " => ", and what it should be read as, part by part:

    food, method, vessel, size, at (place), day   one of the words behind it, parted by "|"
    n                                             how many containers, or pieces in one pile
    p                                             what the details or the note must hold, all of it
    ask                                           what must be asked about, one of these at least
    ask?                                          what may be asked about as well
    remark                                        what is named as not understood, to become a note

What is not named in it may be anything; what is asked about is not wrong, and asking about what is
neither in `ask` nor in `ask?` is asking without need.
"""

from __future__ import annotations

import re
from collections.abc import Sequence
from dataclasses import dataclass
from enum import Enum
from functools import cache
from pathlib import Path

from pantry_tui.core.words import Climate
from pantry_tui.services.rows import PutUpReading

PLACES = {
    "pantry": Climate.PANTRY, "larder": Climate.PANTRY, "cellar": Climate.CELLAR,
    "garage": Climate.ROOM, "shed": Climate.ROOM, "fridge": Climate.FRIDGE,
    "freezer": Climate.FREEZER, "chest freezer": Climate.FREEZER,
}  # fmt: skip
SHELVES = ("shelf 1", "shelf 2", "top shelf")


class Read(Enum):
    """What became of a line."""

    RIGHT = "read whole, or asked as it should be"
    WRONG = "read cleanly and wrongly"
    UNREAD = "something in it was not understood"
    NEEDLESS = "asked about what was plain"


@dataclass(frozen=True)
class Case:
    """One line, and what it should be read as: key -> the words of which one must stand there."""

    line: str
    want: dict[str, tuple[str, ...]]
    ask: frozenset[str]
    may_ask: frozenset[str]


@cache
def cases() -> tuple[Case, ...]:
    found = []
    text = Path(__file__).with_name("strangers.txt").read_text(encoding="utf-8")
    for row in text.splitlines():
        if not row.strip() or row.startswith("#"):
            continue
        line, said = row.split(" => ")
        pairs = [part.split("=", 1) for part in said.split("; ")]
        want = {key: tuple(value.split("|")) for key, value in pairs if not key.startswith("ask")}
        asks = [{*value.split("|")} for key, value in pairs if key == "ask"]
        may = [{*value.split("|")} for key, value in pairs if key == "ask?"]
        ask = frozenset(set().union(*asks))
        found.append(Case(line, want, ask, frozenset(set().union(*may)) | ask))
    return tuple(found)


def _plain(text: object) -> str:
    return re.sub(r"[\s-]+", "", str(text or "").casefold())


def _has(words: Sequence[str], *texts: object) -> bool:
    return any(_plain(word) in _plain(text) for word in words for text in texts)


def amiss(case: Case, found: PutUpReading) -> list[str]:
    """What is read and is not what was meant; asked about is not wrong."""
    asked = {one.about for one in found.asks}
    process = " ".join(value for _, value in found.process)
    contents = str(found.contents or "")
    pieces = str(found.contents.number) if found.contents and not found.contents.unit else ""
    own = found.place.split("›")[-1].strip()
    made = found.made.isoformat() if found.made else "unknown"
    want = case.want
    fits = {
        "food": lambda words: _has(words, found.food, found.note),
        "method": lambda words: (found.method or "") in words,
        "n": lambda words: bool({str(found.count), pieces} & set(words)),
        "vessel": lambda words: _has(words, found.container),
        "size": lambda words: _has(words, found.size, contents),
        "at": lambda words: own in words,
        "day": lambda words: made.startswith(tuple(words)),
        "p": lambda words: all(word in f"{process} {found.note}" for word in words),
    }
    about = {"n": "count", "at": "place", "day": "made", "p": "process"}
    loose = {"size": {"size", "contents", "count"}, "n": {"count", "contents"}}
    bad = []
    for key, words in want.items():
        if key == "remark":
            continue
        if not fits[key](words) and not loose.get(key, {about.get(key, key)}) & asked:
            bad.append(f"{key}: {'|'.join(words)}")
    return bad


def judged(case: Case, found: PutUpReading) -> tuple[Read, list[str]]:
    """What became of the line, and why."""
    asked = {one.about for one in found.asks}
    bad = amiss(case, found)
    if case.ask and not case.ask & asked:
        bad.append(f"not asked about: {'|'.join(case.ask)}")
    if bad and not set(found.unread) - set(case.want.get("remark", ())):
        return Read.WRONG, bad
    remarks = set(case.want.get("remark", ()))
    if set(found.unread) - remarks or remarks - set(found.unread):
        return Read.UNREAD, [*found.unread, *bad]
    extra = sorted(asked - case.may_ask)
    if extra or (found.problems and not asked):
        return Read.NEEDLESS, extra or list(found.problems)
    return Read.RIGHT, []
