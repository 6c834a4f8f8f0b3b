"""What a week says of itself in a sentence: that no main stands, that the week before was not
booked."""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Collection, Iterator, Sequence
from datetime import date, timedelta

from pantry_tui.core import dates
from pantry_tui.core.log.payloads import Entry
from pantry_tui.core.plan.appetite import at_table
from pantry_tui.core.plan.pace import CRUMB
from pantry_tui.core.plan.roles import A_HEAD, BESIDE
from pantry_tui.services.pantry import Pantry
from pantry_tui.services.plan.appetite import appetite
from pantry_tui.services.plan.at_table import role_at_table
from pantry_tui.services.plan.rows import Take, spans
from pantry_tui.services.plan.weekdraft import (
    WeekDraft,
    days_ahead,
    days_at_home,
    planned_for_others,
)
from pantry_tui.services.stock.stands import containers_in, stands

#: So many foods are named.
_NAMED = 4


def no_main(takes: Sequence[Take], mains: float) -> str:
    """That no main stands, where other food for the table does; a dish of one's own is one. `mains`
    are the servings of mains that stand; "" where some do."""
    if mains > CRUMB or not takes or any(take.dish for take in takes):
        return ""
    return (
        "No main stands for this week: meat, fish, eggs, tofu, dry beans or a cooked meal would be "
        "one."
    )


def not_booked(p: Pantry, today: date) -> Iterator[str]:
    """That an accepted week is over and some of its days were never booked, as long as no other
    week is begun: what of it stands there still, and what to do."""
    was = p.home.week
    if was is None or was.start is None or was.entries is None:
        return
    end = was.start + timedelta(days=6)
    if end >= today:
        return
    named: dict[str, None] = {}
    for entry in was.entries:
        if not _any_booked(p, entry):
            named |= dict.fromkeys(_standing(p, entry))
    if not named:
        return
    foods = list(named)
    code = foods[0].partition(" ")[0]
    yield (
        f"The accepted week to {dates.say(end)} is over, and not booked as eaten: "
        f"{_some(foods)}. Book what was eaten of it (like `use {code}`); the "
        "rest stands and is planned anew."
    )


def days_gone(p: Pantry, draft: WeekDraft) -> Iterator[str]:
    """Which days of the accepted week are gone and were not marked eaten, and what of them stands
    there still."""
    eats = appetite(p)
    days: set[date] = set()
    named: dict[str, None] = {}
    for entry in draft.plan or ():
        gone = [day for day in days_at_home(p, eats, entry) if day < p.today]
        foods = list(_standing(p, entry)) if gone else []
        if foods:
            days |= set(gone)
            named |= dict.fromkeys(foods)
    if named:
        text = spans([(day, f"{dates.say(day)}: not marked eaten") for day in sorted(days)])
        said = "; ".join(one for _, one in text)
        yield (
            f"{said}: {_some(list(named))}. Mark what was eaten, day by day; the rest stands, and "
            "is planned anew when you accept the week again."
        )


def _some(foods: Sequence[str]) -> str:
    """ "5K chicken stock, 7H carrots and 3 more"."""
    rest = f" and {len(foods) - _NAMED} more" if len(foods) > _NAMED else ""
    return f"{', '.join(foods[:_NAMED])}{rest}"


def _any_booked(p: Pantry, entry: Entry) -> bool:
    return any(p.stands(group) for _, group in entry.booked)


def _standing(p: Pantry, entry: Entry) -> Iterator[str]:
    for id_ in entry.containers:
        container = p.stock.containers.get(id_)
        if container is None or not container.here:
            continue
        batch = p.stock.batches[container.batch]
        # A relish stands open beside the days: it was not eaten on one of them.
        aside = role_at_table(p, batch.food.name, batch.food.group) in BESIDE
        if entry.dish or not aside:
            yield f"{batch.code} {batch.food.name}"


def told_later(p: Pantry, draft: WeekDraft) -> Iterator[str]:
    """That other people are to sit at the table than those an accepted week is planned for."""
    eats = appetite(p)
    texts = [
        (day, f"{dates.say(day)}: {at_table(eats.sit(day))}, and planned for {planned}.")
        for day, planned in planned_for_others(p, draft, eats)
    ]
    if not texts:
        return
    said = "; ".join(text.rstrip(".") for _, text in spans(texts))
    lies: dict[str, None] = {}
    for entry in draft.plan or ():
        if any(day >= p.today for day in days_ahead(p, entry)) and not days_at_home(p, eats, entry):
            lies |= dict.fromkeys(_standing(p, entry))
    on_none = f" No day has {_some(list(lies))} now." if lies else ""
    yield f"{said}.{on_none} Accept the week again (`week --accept`) to rework the days to come."


def no_figure(
    p: Pantry, draft: WeekDraft, laid: Collection[str], could: Collection[str]
) -> Iterator[str]:
    """What is food for the table, may be eaten and lies on no day, since nobody publishes how long
    it keeps: only who asks has it planned. `laid` are the containers of the week, `could` those
    that a plan of now has or could have: where some of what is unpublished is among these, and was
    not pinned by itself, all of it was asked for."""
    pinned = {id_ for id_, _ in draft.wishes.pins}
    named: dict[str, str] = {}
    for one in stands(p):
        if not one.asks or not one.usable or one.line.reserved or one.line.hurried:
            continue
        containers = containers_in(p, one)
        if any(c.id in could and c.id not in pinned for c in containers):
            return
        batch = p.stock.batches[one.line.batch]
        drawn = any(c.bulk for c in containers)
        role = role_at_table(p, batch.food.name, batch.food.group, batch.method, drawn=drawn)
        at_table = role in A_HEAD or role in BESIDE
        if at_table and any(c.id not in laid for c in containers):
            named[batch.code] = f"{batch.code} {batch.food.name}"
    if named:
        it = "it" if len(named) == 1 else "them"
        yield (
            f"No published figure, so on no day: {_some(list(named.values()))}. "
            f"`week --unknown` plans {it} too."
        )


def no_day_until_seen_to(p: Pantry, draft: WeekDraft) -> Iterator[str]:
    """That what asks for a hand, as canned jars for a look at their seals, lies on no day from the
    one on for which it would not be fit; what needs care already is named apart."""
    named: dict[date, dict[str, str]] = defaultdict(dict)
    for one in stands(p):
        if one.usable and one.care_from is not None and p.today < one.care_from <= draft.end:
            named[one.care_from][one.line.code] = f"{one.line.code} {one.line.food}"
    for day, by_code in sorted(named.items()):
        code, foods = next(iter(by_code)), list(by_code.values())
        rest = f" and {len(foods) - _NAMED} more" if len(foods) > _NAMED else ""
        yield (
            f"Not planned from {dates.say(day)} on until it is booked that their seals held: "
            f"{', '.join(foods[:_NAMED])}{rest}. Check the seals first (`tend {code}`)."
        )
