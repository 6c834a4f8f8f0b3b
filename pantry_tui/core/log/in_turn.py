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
from pantry_tui.core.words import State


def follows(before: Sequence[Turn], new: Turn) -> Turn:
    """`new`, which was booked as it happened after these turns, with what it came after."""
    last = max(reversed(before), key=lambda one: one.when.last, default=None)
    if last is None:
        return new
    behind = last.when.last - new.when.first
    # Within one minute the order of booking is that of the seconds.
    one_minute = behind == 0 and last.when.known and new.when.known
    if not (one_minute or 0 < behind <= SLIGHT):
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


def opening(drawn: Sequence[Turn], turns: Sequence[Turn]) -> list[Turn]:
    """Of the draws from a shut vessel those that may have been the first, where it was not said to
    have been opened by then: nobody draws from what is shut, so of two hours that nobody knows
    the opening was the earlier."""
    said = [one.when.first for one in turns if one.state is State.OPEN]
    found: list[Turn] = []
    for one in sorted(drawn, key=lambda draw: (draw.when.last, draw.when.first)):
        opened = any(first <= one.when.last for first in said)
        if not opened and all(one.when.first < other.when.last for other in found):
            found.append(one)
    return found


def stands(turns: Sequence[Turn]) -> str:
    """Where it stands after these turns, as they were booked, the first of them in a place: of
    those that may have come last, by hours that nobody knows, where it was said to be at last."""
    placed = [(turn.when, turn.place) for turn in turns if turn.place is not None]
    latest = max(when.first for when, _ in placed)
    return [place for when, place in placed if when.last >= latest][-1]
