"""What a judge says at most of a container, and two such words taken together."""

from __future__ import annotations

from dataclasses import dataclass
from math import inf


@dataclass(frozen=True)
class Ruling:
    """`discard_after`: the last day, None where no law gives one. `usable`: fit to be offered."""

    discard_after: int | None
    usable: bool
    reason: str

    def laxer(self, other: Ruling) -> Ruling:
        """The later day; usable where either says so."""
        first = self if (self.usable, _last(self)) >= (other.usable, _last(other)) else other
        day = max(_last(self), _last(other))
        return Ruling(None if day == inf else int(day), self.usable or other.usable, first.reason)

    def stricter(self, other: Ruling) -> Ruling:
        """Both at once: the earlier day, usable only where both say so."""
        a, b = _last(self), _last(other)
        first = self if (self.usable, a) <= (other.usable, b) else other
        day = min(a, b)
        return Ruling(None if day == inf else int(day), self.usable and other.usable, first.reason)


def _last(r: Ruling) -> float:
    return inf if r.discard_after is None else r.discard_after
