"""The week that is being planned, as it is kept with the store: wishes and the accepted plan.

Nothing in it is booked. It holds for seven days from its first; then a new week begins.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field, replace
from datetime import date, timedelta
from typing import Any

from pantry_tui.core.plan.menu import Wishes
from pantry_tui.services.pantry import Pantry

_NAME = "week"


@dataclass(frozen=True, slots=True)
class Entry:
    """One line of the accepted plan. `containers` are ids; `amount` and `servings` a meal from
    bulk; `booked` the days that were eaten, each with the group of events that booked it."""

    days: tuple[date, ...]
    containers: tuple[str, ...]
    why: str
    thaw_by: date | None = None
    dish: str = ""
    amount: str = ""
    servings: float = 0.0
    spare: float = 0.0
    later: float = 0.0
    until: date | None = None
    booked: tuple[tuple[date, str], ...] = ()


@dataclass(frozen=True, slots=True)
class WeekDraft:
    """`plan` is None until the week is accepted."""

    start: date
    wishes: Wishes = field(default_factory=Wishes)
    plan: tuple[Entry, ...] | None = None

    @property
    def end(self) -> date:
        return self.start + timedelta(days=6)

    def with_wishes(self, **changed: Any) -> WeekDraft:
        return replace(self, wishes=replace(self.wishes, **changed))


def load(p: Pantry) -> WeekDraft:
    """The week that runs today or was accepted for days to come, else a fresh one from today."""
    was = kept(p)
    if was is None or "pins" not in was:
        return WeekDraft(p.today)
    first = date.fromisoformat(was["from"])
    ahead = p.today < first and was["plan"] is not None
    if not (ahead or first <= p.today <= first + timedelta(days=6)):
        return WeekDraft(p.today)
    pins = tuple((id_, _day(day)) for id_, day in was["pins"])
    wishes = Wishes(
        pins,
        frozenset(was["left_out"]),
        frozenset(date.fromisoformat(day) for day in was["out"]),
        {name: date.fromisoformat(day) for name, day in was["dishes"].items()},
    )
    plan = was["plan"]
    return WeekDraft(first, wishes, None if plan is None else tuple(map(_entry, plan)))


def save(p: Pantry, draft: WeekDraft) -> None:
    """Keep it in place of the one before."""
    wishes = draft.wishes
    p.store.keep_draft(
        _NAME,
        {
            "from": draft.start.isoformat(),
            "pins": [[id_, _text(day)] for id_, day in wishes.pins],
            "left_out": sorted(wishes.left_out),
            "out": sorted(day.isoformat() for day in wishes.out),
            "dishes": {name: day.isoformat() for name, day in wishes.dishes.items()},
            "plan": None if draft.plan is None else [_plain(entry) for entry in draft.plan],
        },
    )


def forget(p: Pantry) -> None:
    """Begin anew."""
    p.store.keep_draft(_NAME, None)


def kept(p: Pantry) -> dict[str, Any] | None:
    """As it is kept, for `restore`."""
    return p.store.draft(_NAME)


def restore(p: Pantry, was: dict[str, Any] | None) -> None:
    """Put back what `kept` gave."""
    p.store.keep_draft(_NAME, was)


def _day(text: str | None) -> date | None:
    return date.fromisoformat(text) if text else None


def _text(day: date | None) -> str | None:
    return day.isoformat() if day else None


def _plain(entry: Entry) -> dict[str, Any]:
    return {
        "days": [day.isoformat() for day in entry.days],
        "containers": list(entry.containers),
        "why": entry.why,
        "thaw": _text(entry.thaw_by),
        "dish": entry.dish,
        "amount": entry.amount,
        "servings": entry.servings,
        "spare": entry.spare,
        "later": entry.later,
        "until": _text(entry.until),
        "booked": [[day.isoformat(), group] for day, group in entry.booked],
    }


def _entry(data: Mapping[str, Any]) -> Entry:
    return Entry(
        tuple(date.fromisoformat(day) for day in data["days"]),
        tuple(data["containers"]),
        data["why"],
        _day(data["thaw"]),
        data["dish"],
        data["amount"],
        data["servings"],
        data["spare"],
        data.get("later", 0.0),
        _day(data.get("until")),
        tuple((date.fromisoformat(day), group) for day, group in data["booked"]),
    )
