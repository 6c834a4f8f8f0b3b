"""Which place to count next, and since when it was not counted."""

from __future__ import annotations

from collections import defaultdict
from typing import NamedTuple

from pantry_tui.core.log.payloads import Count
from pantry_tui.core.model import Place
from pantry_tui.services.pantry import Pantry
from pantry_tui.services.stock.count_begun import draft, lines
from pantry_tui.store import log
from pantry_tui.store.store import reading


class ToCount(NamedTuple):
    """A place, the days since all of it was counted, and since some of it was; None: never.
    `begun`: lines that are counted and not booked yet, and how many there are; None: no count of it
    is begun."""

    place: Place
    days: int | None
    in_part: int | None
    begun: tuple[int, int] | None = None


def since(one: ToCount) -> str:
    """ "counted 3 days ago", "never counted", "never counted whole, in part today", "begun, 3 of
    12 lines counted"."""
    if one.begun is not None:
        seen, of = one.begun
        return f"begun, {seen} of {of} line{'' if of == 1 else 's'} counted"
    whole = f"counted {_ago(one.days)}" if one.days is not None else "never counted"
    if one.in_part is None:
        return whole
    return f"{whole}{' whole' if one.days is None else ''}, in part {_ago(one.in_part)}"


def _ago(days: int) -> str:
    return {0: "today", 1: "yesterday"}.get(days, f"{days} days ago")


def next_places(p: Pantry) -> list[ToCount]:
    """Which place to count next: what is begun, then the longest unchecked, also in part, with the
    most in it first."""
    standing: dict[str, int] = defaultdict(int)
    for container in p.stock.containers.values():
        if container.here:
            standing[container.place] += 1
    in_part = _counted_in_part(p)
    aged = [
        ToCount(
            pl,
            None if pl.checked is None else (p.today - pl.checked).days,
            in_part.get(pl.id),
            _begun(p, pl),
        )
        for pl in p.stock.places.values()
        if standing[pl.id]
    ]

    def worth(one: ToCount) -> tuple[bool, float, str]:
        days = min((n for n in (one.days, one.in_part) if n is not None), default=400)
        return (one.begun is None, -days * standing[one.place.id], one.place.name)

    return sorted(aged, key=worth)


def _begun(p: Pantry, place: Place) -> tuple[int, int] | None:
    if not draft(p, place).turns:
        return None
    found = lines(p, place)
    return sum(one.seen is not None for one in found), len(found)


def _counted_in_part(p: Pantry) -> dict[str, int]:
    """Days since the newest count of each place, where it left out some of its lines."""
    newest: dict[str, int | None] = {}
    with reading(p.path):
        events = log.of_kinds(p.store.db, ["count"])
    for event in events:
        said = event.payload
        assert isinstance(said, Count)
        newest[said.place] = (p.today - event.day).days if said.part else None
    return {place: days for place, days in newest.items() if days is not None}
