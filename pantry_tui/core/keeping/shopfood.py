"""The days that the wide table of shop food brings to a container."""

from __future__ import annotations

from collections.abc import Iterator

from pantry_tui.core.keeping.quality import Spent, Stretch, spending
from pantry_tui.core.keeping.reckoning import Limit, Reckoning
from pantry_tui.core.keeping.wording import of_spent


def wide_ends(reckoning: Reckoning) -> Iterator[Spent]:
    """The end of what the wide table says of each state and place, where no closer figure speaks:
    each by itself, so that none of them gives another more time."""
    for span, state, said in reckoning.told:
        if said.wide is not None and not reckoning.printed(state):
            yield from spending([Stretch(span.start, span.end, span.day, said.wide)])


def wide_limit(spent: Spent, safety: Limit | None) -> Limit:
    """Such an end with how it was reckoned, no later than the last safe day."""
    found = of_spent(spent)
    if safety is None or found.day <= safety.day:
        return found
    text = f"no later than its last day. {spent.rule.wording}"
    return Limit(safety.day, found.start, spent.rule, text)
