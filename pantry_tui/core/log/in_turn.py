"""What happened to a container in the order in which it was booked, where a clock that is slower by
minutes gave the later of it the lower hour.

What is booked without an hour happens as it is booked, so it came after all that had been booked of
that container before. The clock that says an earlier minute is the slower of two: by either of them
it may have been, so it is as early as it was told and as late as what came before it.
"""

from __future__ import annotations

from collections.abc import Iterable, Sequence

from pantry_tui.core.log.ahead import SLIGHT
from pantry_tui.core.model import Turn


def follows(before: Sequence[Turn], new: Turn) -> Turn:
    """`new`, which was booked as it happened after these turns, with what it came after."""
    last = max(reversed(before), key=lambda one: one.when.last, default=None)
    if last is None or not 0 < last.when.last - new.when.first <= SLIGHT:
        return new
    then = new.when._replace(last=max(new.when.last, last.when.last))
    return new._replace(when=then, after=last.event)


def ordered(turns: Iterable[Turn]) -> list[Turn]:
    """Turns as they were booked, in the order of their moments, none before what it came after."""
    keys: dict[str, tuple[int, int]] = {}
    found: list[tuple[tuple[int, int], Turn]] = []
    for turn in turns:
        key = turn.when.first, turn.when.last
        if turn.after:
            key = max(key, keys.get(turn.after, key))
        keys[turn.event] = key
        found.append((key, turn))
    return [turn for _, turn in sorted(found, key=lambda one: one[0])]
