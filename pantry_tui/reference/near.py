"""Foods that a person may have meant by a name that is not in the tables. Pure.

By meaning, not by looks: a name that shares its main word (the last one), then one that shares
another word, then one with a slip of the pen in it. What shares nothing is near to nothing.
"""

from __future__ import annotations

from collections.abc import Iterable, Mapping, Sequence
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from pantry_tui.reference.names import Food

#: A longer word is no word; asking about it must not take longer than asking about another.
_LONGEST = 30


def slip(word: str, other: str) -> bool:
    """Whether one could be a slip of the pen for the other: one letter wrong, missing, too many or
    two changed about; two such in a word of eight letters or more. The first letter is right."""
    if word == other or len(word) < 4 or word[0] != other[:1] or max(len(word), len(other)) > 30:
        return False
    allowed = 2 if len(word) >= 8 else 1
    return _apart(word, other, allowed) <= allowed


def alike(word: str, others: Iterable[str]) -> tuple[str, ...]:
    """Those of which the word could be a slip of the pen, nearest first."""
    found = [other for other in others if slip(word, other)]
    return tuple(sorted(found, key=lambda one: (_apart(word, one, 2), len(one), one)))


def _apart(a: str, b: str, most: int) -> int:
    """How many letters apart two words are (changed about counts once), at most `most` + 1."""
    if abs(len(a) - len(b)) > most:
        return most + 1
    before: list[int] = []
    last = list(range(len(b) + 1))
    for i, one in enumerate(a, start=1):
        row = [i]
        for j, two in enumerate(b, start=1):
            cost = min(last[j] + 1, row[j - 1] + 1, last[j - 1] + (one != two))
            if i > 1 and j > 1 and one == b[j - 2] and two == a[i - 2]:
                cost = min(cost, before[j - 2] + 1)
            row.append(cost)
        if min(row) > most:
            return most + 1
        before, last = last, row
    return last[-1]


def near(
    keys: Mapping[str, int], foods: Sequence[Food], words: Sequence[str], n: int
) -> tuple[str, ...]:
    """Up to `n` food names, nearest first. `words` are those of the name, the main one last."""
    wanted = [word for word in words if len(word) <= _LONGEST][:8]
    if not wanted:
        return ()
    head = wanted[-1]
    scored: dict[int, float] = {}
    for key, number in keys.items():
        score = _score(wanted, head, key.lstrip(":").split())
        if score > scored.get(number, 0):
            scored[number] = score
    ranked = sorted(scored, key=lambda number: (-scored[number], foods[number].name))
    return tuple(foods[number].name for number in ranked[:n])


def _score(wanted: Sequence[str], head: str, name: Iterable[str]) -> float:
    own = set(name)
    shared = own.intersection(wanted)
    slips = sum(1 for word in wanted if word not in own and any(slip(word, other) for other in own))
    if not shared and not slips:
        return 0
    of = len(own.union(wanted))
    return (len(shared) + 0.9 * slips) / of + (0.5 if head in shared else 0)
