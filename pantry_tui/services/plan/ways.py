"""A food that is kept by several methods: how what is put up next is shared out among them, by what
of each was eaten and given in the last year. What was rated "not again" gets nothing while there is
another way."""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Sequence
from datetime import timedelta
from math import ceil

from pantry_tui.core.plan.pace import CRUMB
from pantry_tui.core.words import Method, Rating
from pantry_tui.services.books.past import Past
from pantry_tui.services.books.rows import Way
from pantry_tui.services.pantry import Pantry
from pantry_tui.services.plan.portions import UNRECORDED, leavings_of

#: What comes so is not put up.
_AS_IT_CAME = frozenset({Method.BOUGHT, Method.FRESH})

#: Liked, in the last year.
_YEAR = timedelta(weeks=52)
_LIKED = ("used", UNRECORDED, "given")
#: A method that had a smaller share than this is not worth another kettle. Common practice.
_SMALL = 0.1


def own(batches: Sequence[Past]) -> list[Past]:
    """What the household put up itself."""
    return [one for one in batches if one.method not in _AS_IT_CAME]


def of_own(p: Pantry, batches: Sequence[Past]) -> float:
    """The share that its own have in what is eaten, where some of it is bought as well."""
    found = shares(p, batches)
    mine = sum(share for method, share in found.items() if method not in _AS_IT_CAME)
    return mine if found else 1.0


def shares(p: Pantry, batches: Sequence[Past]) -> dict[Method, float]:
    """The share of each method, together 1; empty where nothing was eaten of any."""
    of: dict[Method, list[Past]] = defaultdict(list)
    for batch in batches:
        of[batch.method].append(batch)
    if len(of) < 2:
        return dict.fromkeys(of, 1.0)
    liked = {method: _liked(p, some) for method, some in of.items()}
    whole = sum(liked.values())
    liked = {method: much for method, much in liked.items() if much > _SMALL * whole}
    kept = sum(liked.values())
    return {method: much / kept for method, much in liked.items()} if kept else {}


def _liked(p: Pantry, batches: Sequence[Past]) -> float:
    said = max((one.rated for one in batches if one.rated[1]), default=("", ""))[1]
    if said.startswith(Rating.NOT_AGAIN):
        return 0.0
    since = p.today - _YEAR
    return sum(one.servings for one in leavings_of(p, batches, since, _LIKED))


def shared_out(
    servings: float, found: dict[Method, float], each: dict[Method, tuple[float, str]]
) -> tuple[Way, ...]:
    """So many servings by method, in whole containers of (servings, size); the most first."""
    ways = (
        Way(method.value, each[method][1], ceil(servings * share / each[method][0] - CRUMB))
        for method, share in sorted(found.items(), key=lambda one: (-one[1], one[0]))
    )
    return tuple(way for way in ways if way.count)
