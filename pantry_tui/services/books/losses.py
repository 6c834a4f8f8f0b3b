"""The loss record: what was discarded and why, by season, food and method, in servings and share,
and the two changes that would have saved most. Servings are estimates."""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Iterable, Sequence
from datetime import date

from pantry_tui.services.books.past import TOO_MUCH, past
from pantry_tui.services.books.rows import Loss, LossView, SeasonLoss
from pantry_tui.services.books.year_losses import year_of_losses
from pantry_tui.services.pantry import Pantry
from pantry_tui.services.plan.portions import Leaving, holds, leavings

SEASONS = ("winter", "spring", "summer", "autumn")

#: Less than this many servings is worth no change.
_WORTH = 1.0

_Key = tuple[str, str, str]  # food, method, why


def losses(p: Pantry, since: date | None = None) -> LossView:
    """Everything discarded, most servings first. A crate that was half eaten counts as half."""
    mine = [one for one in leavings(p) if one.fate == "discarded"]
    mine = [one for one in mine if since is None or one.end >= since]
    groups: dict[_Key, list[Leaving]] = defaultdict(list)
    for one in mine:
        groups[one.batch.food, one.batch.method.value, one.why].append(one)
    made = _made(p, since)
    rows = [_loss(key, parts, made[key[0], key[1]]) for key, parts in groups.items()]
    rows.sort(key=lambda row: (-row.servings, row.food, row.why))
    total, all_made = sum(one.servings for one in mine), sum(made.values())
    share = min(1.0, total / all_made) if all_made else 0.0
    return LossView(
        tuple(rows),
        round(total, 1),
        round(share, 3),
        tuple(_changes(rows)),
        tuple(_seasons(mine, total)),
        year_of_losses(p),
    )


def _made(p: Pantry, since: date | None) -> dict[tuple[str, str], float]:
    """Servings put up, by food and method; from `since` on also what stood in store then."""
    found: dict[tuple[str, str], float] = defaultdict(float)
    servings = holds(p)
    for batch in past(p).values():
        for came, _, _, ended, _ in batch.kept:
            if since is None or ended is None or ended >= since:
                much = servings(batch.food, batch.group, batch.method, came.held)
                found[batch.food, batch.method.value] += much
    return found


def season(day: date) -> str:
    """ "autumn 2026"; a winter goes by the year in which it ends."""
    return f"{SEASONS[day.month % 12 // 3]} {day.year + (day.month == 12)}"


def _loss(key: _Key, parts: Sequence[Leaving], made: float) -> Loss:
    food, method, why = key
    seasons: dict[str, float] = defaultdict(float)
    for one in parts:
        seasons[SEASONS[one.end.month % 12 // 3]] += one.servings
    lost = sum(one.servings for one in parts)
    share = min(1.0, lost / made) if made else 0.0
    rounded = {name: round(amount, 1) for name, amount in seasons.items()}
    return Loss(food, method, why, len(parts), round(lost, 1), rounded, round(share, 3))


def _seasons(mine: Iterable[Leaving], total: float) -> list[SeasonLoss]:
    """The seasons in order, the last one last."""
    found: dict[str, list[Leaving]] = defaultdict(list)
    for one in sorted(mine, key=lambda leaving: leaving.end):
        found[season(one.end)].append(one)
    return [
        SeasonLoss(
            name,
            len(parts),
            round(lost := sum(one.servings for one in parts), 1),
            round(lost / total, 3) if total else 0.0,
        )
        for name, parts in found.items()
    ]


def _changes(rows: Sequence[Loss]) -> list[str]:
    """Fewer of what was too much, another look at what was made badly: the two worst."""
    lost: dict[tuple[bool, str, str], list[Loss]] = defaultdict(list)
    for row in rows:
        lost[row.why in TOO_MUCH, row.food, row.method].append(row)

    def saved(key: tuple[bool, str, str]) -> float:
        return sum(row.servings for row in lost[key])

    said = []
    for key in sorted(lost, key=lambda one: (-saved(one), one))[:2]:
        much, food, method = key
        number = sum(row.containers for row in lost[key])
        if saved(key) < _WORTH:
            continue
        gain = f"{saved(key):.0f} servings"
        if much:
            said.append(
                f"Put up {number} fewer of {food} ({method}), or begin on it earlier: {gain}."
            )
        else:
            why = max(lost[key], key=lambda row: row.servings).why
            said.append(f"Look into {food} ({method}): {number} went for {why!r}, {gain}.")
    return said
