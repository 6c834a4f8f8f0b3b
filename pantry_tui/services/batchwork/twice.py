"""Whether a list came in before: which of its rows stand in the store's books already."""

from __future__ import annotations

from collections import Counter

from pantry_tui.services.books.past import past
from pantry_tui.services.pantry import Pantry
from pantry_tui.services.rows import PutUpReading

_Key = tuple[object, ...]


class Before:
    """The batches that were put up before, and not taken back; each answers for one row."""

    def __init__(self, p: Pantry) -> None:
        self._p = p
        self._left: Counter[_Key] = Counter()
        for one in past(p).values():
            many = sum(came.n for came in one.came)
            key = one.food, one.method, many
            self._left[key] += 1
            self._left[*key, one.came[0].born] += 1

    def had(self, reading: PutUpReading, *, dated: bool) -> bool:
        """Whether a batch of that food, method and number, of the same day where the list says a
        day (`dated`), was put up and was no earlier row's."""
        facts = self._p.facts(reading.food)
        food = facts.name if facts is not None else reading.food
        key: _Key = (food, reading.method, reading.count)
        if dated and reading.made is not None:
            key = (*key, reading.made)
        if self._left[key] <= 0:
            return False
        self._left[key] -= 1
        return True
