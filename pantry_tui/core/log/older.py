"""Lines of logs that were written before payloads had types, as today's events.

Their shape: an event's name, batch, containers, and a `data` object; what was booked together
carried the same `data["group"]`; settings and the week's wishes stood beside the log.
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from datetime import date
from typing import Any

from pantry_tui.core.amounts import Amount, amount_of
from pantry_tui.core.log import payloads as said
from pantry_tui.core.log.events import Event
from pantry_tui.core.model import FoodFacts
from pantry_tui.core.words import (
    Acidity,
    Climate,
    Group,
    Kind,
    Method,
    Rating,
    State,
    Verdict,
)
from pantry_tui.errors import BadInput


def read_event(
    id_: str,
    recorded: str,
    day: date,
    did: str,
    batch: str,
    containers: Sequence[str],
    data: Mapping[str, Any],
) -> Event:
    """One line of an older log. Raises ValueError, KeyError, TypeError, BadInput when hurt."""
    payload = _payload(did, batch, tuple(containers), data)
    together = data.get("group", "")
    if isinstance(payload, said.FoodAdded) and together in tuple(Group):
        together = ""  # there the word meant the food group
    return Event(id_, recorded, day, payload, together=str(together))


def _payload(
    did: str, batch: str, containers: tuple[str, ...], data: Mapping[str, Any]
) -> said.Payload:
    of = _OF.get(did)
    if of is None:
        raise ValueError(f"{did!r} is no event")
    payload: said.Payload = of(batch, containers, data)
    return payload


def _day(text: str | None) -> date | None:
    return date.fromisoformat(text) if text else None


def _amount(text: str) -> Amount | None:
    return amount_of(text) if text else None


def _pairs(found: Any) -> tuple[tuple[str, str], ...]:
    return tuple((str(key), str(value)) for key, value in found)


def _put_up(batch: str, containers: tuple[str, ...], data: Mapping[str, Any]) -> said.PutUp:
    food = data["food"]
    return said.PutUp(
        batch,
        data["code"],
        containers,
        FoodFacts(
            food["name"],
            Group(food["group"]),
            Acidity(food["acidity"]),
            frozenset(food.get("classes", ())),
            food.get("known", True),
        ),
        Method(data["method"]),
        data["place"],
        State(data["state"]),
        _day(data.get("made")),
        data.get("size", ""),
        _amount(data.get("amount", "")),
        _pairs(data.get("process", ())),
        data.get("note", ""),
        _day(data.get("printed")),
        tuple(data.get("doubt", ())),
        data.get("possible", ""),
    )


def _move(batch: str, containers: tuple[str, ...], data: Mapping[str, Any]) -> said.Move:
    state = State(data["state"]) if "state" in data else None
    return said.Move(batch, containers, data["place"], state)


def _use(batch: str, containers: tuple[str, ...], data: Mapping[str, Any]) -> said.Payload:
    """An amount was kept as it was typed, and what it left as it was shown."""
    left = data.get("left", "")
    if not data.get("amount"):
        return said.Use(batch, containers)
    typed = data["amount"]
    return said.Use(batch, containers, _drawn(typed, left), typed)


def _drawn(typed: str, left: str) -> Amount | None:
    """What was drawn in the unit of what is left; None where it emptied the container. What was
    typed in another unit is found from what was left (`settle`)."""
    if not left:
        return None
    amount, rest = amount_of(typed), amount_of(left)
    return amount if amount.unit == rest.unit else Amount(-rest.number, rest.unit)


def _discard(batch: str, containers: tuple[str, ...], data: Mapping[str, Any]) -> said.Discard:
    why = data.get("why", "")
    return said.Discard(batch, containers, None, reason_of(why), why)


def reason_of(why: str) -> said.Reason:
    """The reason that a person's words name, else `OTHER`."""
    plain = " ".join(why.lower().split())
    return next((one for one in said.Reason if one.value == plain), said.Reason.OTHER)


def _fate(word: str) -> said.Fate:
    return said.Fate.MISSING if word == "lost" else said.Fate(word)


def _count(_batch: str, _containers: tuple[str, ...], data: Mapping[str, Any]) -> said.Count:
    return said.Count(
        data["place"],
        tuple(said.Gone(id_, _fate(fate)) for id_, fate in data.get("gone", {}).items()),
        tuple(said.Back(id_, where) for id_, where in data.get("back", {}).items()),
        tuple(
            said.Found(one["batch"], one["place"], State(one["state"]), tuple(one["containers"]))
            for one in data.get("new", ())
        ),
    )


def _outage(_batch: str, _containers: tuple[str, ...], data: Mapping[str, Any]) -> said.Outage:
    marks = tuple(
        said.Mark(id_, Verdict(verdict), words)
        for id_, (verdict, words) in data.get("marks", {}).items()
    )
    return said.Outage(
        data["place"],
        hours=float(data.get("hours", 0.0)),
        full=data.get("full"),
        max_temp_f=data.get("max_temp_f"),
        ice=data.get("ice"),
        marks=marks,
    )


def _place_added(
    _batch: str, _containers: tuple[str, ...], data: Mapping[str, Any]
) -> said.PlaceAdded:
    return said.PlaceAdded(
        data["id"],
        data["name"],
        Climate(data["climate"]),
        data.get("parent"),
        data.get("target_f"),
        data.get("capacity"),
    )


def _place_changed(
    _batch: str, _containers: tuple[str, ...], data: Mapping[str, Any]
) -> said.PlaceChanged:
    """A change was once written as the whole place."""
    target = data.get("target_f")
    return said.PlaceChanged(
        data["id"],
        data["name"],
        Climate(data["climate"]),
        data.get("parent") or "",
        target,
        target is None,
        data.get("capacity"),
    )


def _correct(batch: str, _containers: tuple[str, ...], data: Mapping[str, Any]) -> said.Correct:
    return said.Correct(
        batch,
        made=_day(data.get("made")),
        unknown_day="made" in data and data["made"] is None,
        size=data.get("size"),
        note=data.get("note"),
        process=_pairs(data["process"]) if "process" in data else None,
        doubt=tuple(data["doubt"]) if "doubt" in data else None,
        possible=data.get("possible"),
    )


def _rule(_batch: str, _containers: tuple[str, ...], data: Mapping[str, Any]) -> said.RuleAdded:
    return said.RuleAdded(
        Method(data["method"]),
        data["food"],
        State(data["state"]),
        Climate(data["climate"]),
        Kind(data["kind"]),
        data["number"],
        data["unit"],
        data.get("why", ""),
    )


_OF: dict[str, Any] = {
    "put_up": _put_up,
    "finish": lambda b, c, d: said.Ready(b, c),
    "move": _move,
    "open": lambda b, c, d: said.Open(b, c, d.get("place") or ""),
    "thaw": lambda b, c, d: said.Thaw(b, c, d.get("place") or "", d.get("how", "")),
    "use": _use,
    "discard": _discard,
    "give": lambda b, c, d: said.Give(b, c, None, d.get("to", "")),
    "lose": lambda b, c, d: said.Missing(b, c),
    "sign": lambda b, c, d: said.Sign(
        b, c, d["sign"], d["words"], Verdict(d["verdict"]), d.get("suspect", "")
    ),
    "count": _count,
    "tasted": lambda b, c, d: said.Rated(b, Rating(d["taste"]), d.get("note", "")),
    "reading": lambda b, c, d: said.Reading(d["place"], float(d["temp_f"]), d.get("humidity")),
    "outage": _outage,
    "place_added": _place_added,
    "place_changed": _place_changed,
    "correct": _correct,
    "food_added": lambda b, c, d: said.FoodAdded(
        d["name"], Group(d["group"]), Acidity(d["acidity"]), tuple(d.get("also", ()))
    ),
    "rule_added": _rule,
    "reserved": lambda b, c, d: said.Reserved(b, c, d["for"]),
    "substitutes": lambda b, c, d: said.Substitutes(d["food"], tuple(d["others"])),
    "dish": lambda b, c, d: said.Dish(
        d["name"], tuple(said.Taken(food, float(n)) for food, n in d["takes"])
    ),
    "undo": lambda b, c, d: said.Undo((d["event"],)),
}


def settle(events: Sequence[Event]) -> list[Event]:
    """Amounts that were drawn in another unit than the container's, now that what each held is
    known: what it held less what was left. In recorded order."""
    held: dict[str, Amount] = {}
    found = []
    for event in events:
        payload = event.payload
        if isinstance(payload, said.PutUp) and payload.amount is not None:
            held |= dict.fromkeys(payload.containers, payload.amount)
        if isinstance(payload, said.Use) and payload.amount is not None:
            (id_,) = payload.containers[:1]
            drawn = payload.amount
            if drawn.number < 0 and id_ in held:
                drawn = Amount(held[id_].number + drawn.number, drawn.unit)
            if id_ in held:
                held[id_] = Amount(held[id_].number - drawn.number, drawn.unit)
            event = _with_amount(event, drawn)
        found.append(event)
    return found


def _with_amount(event: Event, amount: Amount) -> Event:
    assert isinstance(event.payload, said.Use)
    return Event(
        event.id,
        event.recorded,
        event.day,
        event.payload._replace(amount=amount),
        event.at,
        event.together,
    )


def of_settings(settings: Mapping[str, str]) -> list[said.Payload]:
    """What stood in the settings beside the log, as events."""
    found: list[said.Payload] = []
    numbers = {
        name: int(settings[name]) for name in ("altitude_ft", "people", "meals") if name in settings
    }
    home = said.Household(units=settings.get("units"), **numbers)
    if home != said.Household():
        found.append(home)
    by_people: dict[int, list[date]] = {}
    for name, value in sorted(settings.items()):
        kind, _, what = name.partition(":")
        if kind == "appetite":
            found.append(said.Ceiling(what, float(value)))
        elif kind == "table":
            by_people.setdefault(int(value), []).append(date.fromisoformat(what))
    found += [said.Table(tuple(days), people) for people, days in by_people.items()]
    return found


def of_week(was: Mapping[str, Any]) -> said.Planned | None:
    """The week that stood beside the log, None where it was no week."""
    if "pins" not in was:
        return None
    try:
        return said.Planned(
            date.fromisoformat(was["from"]),
            tuple(said.Pin(id_, _day(day)) for id_, day in was["pins"]),
            tuple(was["left_out"]),
            tuple(date.fromisoformat(day) for day in was["out"]),
            tuple(said.DishDay(n, date.fromisoformat(day)) for n, day in was["dishes"].items()),
            None if was["plan"] is None else tuple(map(_entry, was["plan"])),
        )
    except (KeyError, ValueError, TypeError, BadInput):
        return None  # a week is only a wish


def _entry(data: Mapping[str, Any]) -> said.Entry:
    return said.Entry(
        tuple(date.fromisoformat(day) for day in data["days"]),
        tuple(data["containers"]),
        data["why"],
        _day(data["thaw"]),
        data["dish"],
        data["amount"],
        float(data["servings"]),
        float(data["spare"]),
        float(data.get("later", 0.0)),
        _day(data.get("until")),
        tuple(said.Eaten(date.fromisoformat(day), group) for day, group in data["booked"]),
    )
