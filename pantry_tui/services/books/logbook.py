"""The log in words: what was done, when, and to which batch."""

from __future__ import annotations

from pantry_tui.core import dates
from pantry_tui.core.log.events import Did, Event
from pantry_tui.core.log.fold import standing
from pantry_tui.services.pantry import Pantry
from pantry_tui.services.stock.pick import batch_named, name_of


def log(p: Pantry, code: str | None = None) -> list[str]:
    """The log in words, oldest first; undone lines say so."""
    return [text for _, text in log_lines(p, code)]


def log_lines(p: Pantry, code: str | None = None) -> list[tuple[str, str]]:
    """The same, each line with the lid code of its batch ("" when it is about none)."""
    batch = batch_named(p, code) if code else None
    counted = {event.id for event in standing(p.events)}
    lines: list[tuple[str, str]] = []
    for event in sorted(p.events, key=lambda e: e.id):
        if event.did is Did.UNDO or (batch is not None and event.batch != batch.id):
            continue
        undone = "" if event.id in counted else " (undone)"
        about = p.stock.batches.get(event.batch)
        text = f"{dates.say(event.day)}: {describe(p, event)}{undone}"
        lines.append((about.code if about else "", text))
    return lines


def describe(p: Pantry, event: Event) -> str:
    """One event in words: "opened 7C/2 runner beans"."""
    data = event.data
    if not event.batch:
        return _of_the_house(p, event)
    words = {
        Did.PUT_UP: "put up",
        Did.FINISH: "finished",
        Did.MOVE: "moved",
        Did.OPEN: "opened",
        Did.THAW: "thawed",
        Did.USE: "used",
        Did.DISCARD: "discarded",
        Did.GIVE: "gave away",
        Did.LOSE: "lost",
        Did.SIGN: "saw",
        Did.CORRECT: "corrected",
        Did.RESERVED: "kept" if data.get("for") else "no longer kept",
    }
    batch = p.stock.batches.get(event.batch)
    if batch is None:
        code, food, count = data.get("code", ""), data.get("food", {}).get("name", ""), ""
    else:
        code, food = batch.code, batch.food.name
        count = f"{len(event.containers)} of " if len(event.containers) > 1 else ""
        if len(event.containers) == 1 and event.did is not Did.PUT_UP:
            container = p.stock.containers.get(event.containers[0])
            code = name_of(p, container) if container else code
    parts = [words.get(event.did, event.did.value), f"{count}{code} {food}"]
    if data.get("amount") and event.did is not Did.PUT_UP:
        parts.insert(1, f"{data['amount']} of")
    if data.get("place") and data["place"] in p.stock.places:
        where = "to" if event.did is Did.MOVE else "in"
        parts.append(f"{where} {p.place_paths()[data['place']]}")
    if data.get("to"):
        parts.append(f"to {data['to']}")
    if data.get("for"):
        parts.append(f"for {data['for']}")
    if data.get("why"):
        parts.append(f"({data['why']})")
    if event.did is Did.TASTED:
        parts.append(f": {': '.join(filter(None, (data['taste'], data.get('note'))))}")
    if data.get("words"):
        parts.append(f": {data['words']}")
    return " ".join(parts).replace(" :", ":")


def _of_the_house(p: Pantry, event: Event) -> str:
    """A line of the log that is about no batch."""
    data = event.data
    if event.did is Did.READING:
        return f"read {data['temp_f']:g} F in {p.place_paths().get(data['place'], '?')}"
    if event.did is Did.FOOD_ADDED:
        return f"added the food {data['name']}"
    if event.did is Did.RULE_ADDED:
        return f"added a rule for {data['food']}, {data['method']}"
    if event.did is Did.SUBSTITUTES:
        others = " and ".join(data["others"])
        return f"{others or 'nothing'} may stand in for {data['food']}"
    if event.did is Did.DISH:
        return f"{'kept' if data['takes'] else 'dropped'} the dish {data['name']}"
    place = p.place_paths().get(str(data.get("place", "")), "?")
    if event.did is Did.OUTAGE:
        return f"power cut of {round(data['hours'], 1):g} h in {place}"
    if event.did is Did.COUNT:
        found = len(data["back"]) + sum(len(one["containers"]) for one in data["new"])
        return f"counted {place}: {len(data['gone'])} fewer, {found} more than recorded"
    return f"place {data['name']} ({data['climate']})"
