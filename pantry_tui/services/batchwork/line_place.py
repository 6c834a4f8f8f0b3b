"""The place in a put-up line, and words that only look like a place, a day or a vessel."""

from __future__ import annotations

from collections import defaultdict
from dataclasses import dataclass
from typing import TYPE_CHECKING

from pantry_tui.core.line.kinds import ALONE, KINDS, may_be, sensible
from pantry_tui.core.line.tokens import Kind, Line, tokens
from pantry_tui.core.line.vessels import vessel
from pantry_tui.core.words import Climate
from pantry_tui.reference.near import slip

if TYPE_CHECKING:
    from pantry_tui.services.batchwork.line import Kitchen

_LONGEST = 8
_IDLE = frozenset({"a", "an", "some", "of", "own"})
_LEADS = frozenset({"in", "on", "at", "into", "to", "the", "my", "our", "from"})
#: What begins the words that say where a place is: the freezer in the garage, a shelf by the door.
_WHERE = frozenset({"in", "on", "at", "under", "by", "near", "behind", "beside", "above", "below"})
#: Where a household has one of them, whatever it is called, it is meant: there is no other.
_ONLY = frozenset({"fridge", "refrigerator", "freezer"})
#: They are where such a place usually is: the one named by the last word alone is meant.
_SAME = frozenset({"kitchen fridge", "kitchen freezer", "root cellar", "deep freezer"})


@dataclass
class Stands:
    """The place that was said, "" where none was; `ask` is (typed, choices, why). `like` is what
    one is like that is not there."""

    id: str = ""
    path: str = ""
    ask: tuple[str, tuple[str, ...], str] | None = None
    like: Climate | None = None


def protect(line: Line, kitchen: Kitchen) -> list[int]:
    """Tokens within the name of a food or a method of several words, where one of them could be a
    place, a day or a vessel by itself: fridge pickle, October beans, string cheese. "Root cellar"
    is a method too, and first of all a place."""
    kept: set[int] = set()
    places = {" ".join(tail) for tail in _tails(dict(kitchen.places))} | KINDS.keys()
    for start, stop in line.runs():
        for i in range(start, stop):
            for size in range(2, min(5, stop - i + 1)):
                said = " ".join(token.text for token in line.tokens[i : i + size])
                ends = {said.split()[0], said.split()[-1]}
                if ends & (_LEADS | _IDLE):
                    continue
                method = said not in places and kitchen.find_method(said) is not None
                if method or kitchen.composer.names(said):
                    kept.update(range(i, i + size))
    return sorted(kept - _vessels(line))


def _vessels(line: Line) -> set[int]:
    """Tokens of a vessel of several words: the freezer of a freezer bag is no place."""
    found: set[int] = set()
    for i, token in enumerate(line.tokens):
        for size in (3, 2):
            said = " ".join(one.text for one in line.tokens[i : i + size])
            if token.kind is Kind.WORD and len(said.split()) == size and vessel(said):
                found.update(range(i, i + size))
    return found


def _words(path: str) -> tuple[str, ...]:
    return tuple(token.text for token in tokens(path.replace("›", ",")))


def _tails(places: dict[str, str]) -> dict[tuple[str, ...], list[str]]:
    """Every run of whole names that ends a place's path -> the places it could be."""
    found: dict[tuple[str, ...], list[str]] = defaultdict(list)
    heads: dict[tuple[str, ...], list[str]] = defaultdict(list)
    for id_, path in places.items():
        names = [_words(name) for name in path.split("›")]
        for i in range(len(names)):
            found[tuple(word for name in names[i:] for word in name)].append(id_)
    for id_, path in places.items():
        # "Chest freezer" of a "chest freezer in the garage", unless that is another one's name.
        head = _before_where(_words(path.split("›")[-1]))
        if head and head not in found:
            heads[head].append(id_)
    found |= heads
    for tail, ids in found.items():
        exact = [id_ for id_ in ids if _words(places[id_]) == tail]
        found[tail] = exact or ids
    return found


def _before_where(name: tuple[str, ...]) -> tuple[str, ...]:
    """A name without the words that say where it stands; () where it has none, or nothing else."""
    return next((name[:i] for i, word in enumerate(name) if word in _WHERE), ())


def take_place(line: Line, kitchen: Kitchen) -> Stands:
    """Claims the place. Two of them, one that could be two, one that is not there or is misspelt:
    asked about."""
    places = dict(kitchen.places)
    tails = _tails(places)
    said: list[tuple[str, tuple[str, ...]]] = []
    vessels = _vessels(line)
    i = 0
    while i < len(line.tokens):
        size, ids = _exact(line, i, tails)
        if longer := _longer(line, i, tails):
            typed = " ".join(token.said for token in line.tokens[i : i + longer])
            ids = tails[line.tokens[i + longer - 1].text,]
            if typed.casefold() not in _SAME:
                _claim(line, i, i + longer)
                like = KINDS.get(typed.casefold()) or ALONE.get(typed.casefold())
                return _not_there(typed, tuple(sorted(places[id_] for id_ in ids)), like)
            size = longer
        if not size or i in vessels:
            i += 1
            continue
        typed = " ".join(token.said for token in line.tokens[i : i + size])
        _claim(line, i, i + size)
        said.append((typed, tuple(ids)))
        i += size
    if said:
        return _named(said, places)
    return _near(line, kitchen, tails, places)


def _exact(line: Line, i: int, tails: dict[tuple[str, ...], list[str]]) -> tuple[int, list[str]]:
    for size in range(min(_LONGEST, len(line.tokens) - i), 0, -1):
        if not all(line.free[i : i + size]):
            continue
        words = tuple(token.text for token in line.tokens[i : i + size])
        if words in tails:
            return size, tails[words]
    return 0, []


def _longer(line: Line, i: int, tails: dict[tuple[str, ...], list[str]]) -> int:
    """How many words from here are a kind of place of which the last is the name of one: "garage
    fridge" where there is a fridge."""
    for size in (3, 2):
        words = tuple(token.text for token in line.tokens[i : i + size])
        said = " ".join(words)
        if len(words) != size or words in tails or not all(line.free[i : i + size]):
            continue
        if (said in ALONE or said in KINDS) and words[-1:] in tails:
            return size
    return 0


def _claim(line: Line, start: int, stop: int) -> None:
    """The place and the words that lead to it: "in the", "on"."""
    line.claim(start, stop)
    while start > 0 and line.word(start - 1) in (_LEADS - {"from"}) | {"for"}:
        start -= 1
        line.claim(start, start + 1)


def _named(said: list[tuple[str, tuple[str, ...]]], places: dict[str, str]) -> Stands:
    together: set[str] = set(said[0][1])
    for _, ids in said[1:]:
        within = {id_ for id_ in ids if any(_holds(places, id_, one) for one in together)} | {
            id_ for id_ in together if any(_holds(places, id_, one) for one in ids)
        }
        together = within or (together | set(ids))
    found = sorted(together, key=lambda id_: places[id_])
    if len(found) == 1:
        return Stands(found[0], places[found[0]])
    choices = tuple(places[id_] for id_ in found)
    typed = " and ".join(text for text, _ in said)
    why = f"The place could be {' or '.join(choices)}: say more of the path."
    if len(said) > 1 and len({text.casefold() for text, _ in said}) == len(choices):
        why = f"The line names {' and '.join(choices)}: leave only the place where it stands."
    return Stands(ask=(typed, choices, why))


def _holds(places: dict[str, str], inner: str, outer: str) -> bool:
    return inner == outer or places[inner].startswith(places[outer] + " ›")


def _near(
    line: Line,
    kitchen: Kitchen,
    tails: dict[tuple[str, ...], list[str]],
    places: dict[str, str],
) -> Stands:
    """A place by what it is like where none has that name ("pantry"), or a slip of the pen."""
    for i in range(len(line.tokens)):
        for size in (4, 3, 2, 1):
            if i + size > len(line.tokens) or not all(line.free[i : i + size]):
                continue
            words = tuple(token.text for token in line.tokens[i : i + size])
            typed = " ".join(token.said for token in line.tokens[i : i + size])
            like = _like(line, i, i + size)
            if like is not None:
                _claim(line, i, i + size)
                ids = [id_ for id_ in places if kitchen.climates.get(id_) is like]
                if len(ids) == 1 and " ".join(words) in _ONLY:
                    return Stands(ids[0], places[ids[0]])
                choices = tuple(sorted(path for id_ in ids if may_be(typed, path := places[id_])))
                return _not_there(typed, choices, like)
            hits = [ids for tail, ids in tails.items() if _slipped(words, tail)]
            if hits and not kitchen.composer.names(" ".join(words)):
                _claim(line, i, i + size)
                choices = tuple(sorted({places[id_] for ids in hits for id_ in ids}))
                why = f"There is no place called {typed!r}; near it: {', '.join(choices)}."
                return Stands(ask=(typed, choices, why))
    return Stands()


def _not_there(typed: str, choices: tuple[str, ...], like: Climate | None = None) -> Stands:
    """No place has that name: those that it could be."""
    could = f"; it could be {' or '.join(choices)}" if choices else ""
    what = "say which place, or make it" if choices else f"make it ({', '.join(sensible(typed))})"
    why = f"There is no place called {typed!r}{could}: {what}."
    return Stands(ask=(typed, choices, why), like=like)


def _like(line: Line, start: int, stop: int) -> Climate | None:
    """What a place of that kind is like, where the words stand by themselves: in a part of their
    own, at the end, or behind "in"."""
    said = " ".join(token.text for token in line.tokens[start:stop])
    led = start > 0 and line.word(start - 1) in _LEADS
    alone = start == 0 or line.tokens[start - 1].part != line.tokens[start].part
    ends = stop == len(line.tokens) or line.tokens[stop].part != line.tokens[start].part
    if led or (ends and alone):
        return KINDS.get(said) or ALONE.get(said)
    return KINDS.get(said) if stop == len(line.tokens) else None


def _slipped(words: tuple[str, ...], tail: tuple[str, ...]) -> bool:
    if len(words) != len(tail) or words == tail:
        return False
    return all(a == b or slip(a, b) for a, b in zip(words, tail, strict=True))
