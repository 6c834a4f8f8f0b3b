"""Backups, restores and what `verify` found, as JSON and as plain lines."""

from __future__ import annotations

from pathlib import Path
from typing import Any

from pantry_tui.core.text import agreed, clean, counted
from pantry_tui.services.safekeeping.backup import Copied, Restored
from pantry_tui.services.safekeeping.telling import events
from pantry_tui.services.safekeeping.telling import restored as restored
from pantry_tui.services.safekeeping.verify import Report, Saved
from pantry_tui.store import damage


def backup_data(made: Copied) -> dict[str, Any]:
    return {"path": str(made.path), "events": made.events, "kept": [str(one) for one in made.kept]}


def backup(made: Copied) -> list[str]:
    return [clean(f"Copied {events(made.events)} to {made.path}, and looked the copy over.")]


def restore_data(found: Restored) -> dict[str, Any]:
    return {
        "path": str(found.path),
        "events": found.events,
        "kept": str(found.kept) if found.kept else None,
        "lost": [
            {"id": one.id, "day": one.day, "kind": one.kind, "code": one.code} for one in found.lost
        ],
        "back": found.back,
        "lids": list(found.lids),
    }


def report_data(found: Report) -> dict[str, Any]:
    return {
        "ok": found.ok,
        "events": found.events,
        "hurt": [
            {"event": one.event, "what": one.what, "touched": list(one.touched)}
            for one in found.hurt
        ],
        "notes": list(found.notes),
        "newest_backup": str(found.newest_backup) if found.newest_backup else None,
    }


def verdict(found: Report) -> list[str]:
    """One sentence where nothing is hurt, else a line for each wound."""
    if found.ok:
        many = events(found.events)
        whole = agreed(found.events, f"{many} is as it was", f"All {many} are as they were")
        said = [f"{whole} written, and all lists agree."]
    else:
        said = [f"{events(found.events)} can be read. Hurt:", *map(_wound, found.hurt)]
    return [clean(line) for line in (*said, *(f"Note: {one}." for one in found.notes))]


def _wound(one: Any) -> str:
    who = f"event {one.event}" if one.event else "the file"
    touched = f"; it touched {', '.join(one.touched)}" if one.touched else ""
    return f"- {who}: {one.what}{touched}"


def report(found: Report) -> list[str]:
    """Check by check, what was looked at."""
    looked = (
        ("structure of the file, by SQLite", "whole file"),
        ("check value, date and meaning of every event", events(found.events)),
        ("what an event names was named before", events(found.events)),
        ("lid codes, each given once", counted(found.batches, "batches")),
        ("tables that lead into the log", "4 tables"),
        ("log folded again, against the places", counted(found.places, "places")),
        ("log folded and judged again, against the lists", counted(found.lines, "lines")),
        ("containers that follow from it", counted(found.containers, "containers")),
    )
    newest = str(found.newest_backup) if found.newest_backup else "none"
    lines = [f"{what}: {how_much}" for what, how_much in looked]
    return [*verdict(found), *map(clean, (*lines, f"newest sound backup: {newest}"))]


def advice(found: Report, path: Path) -> str:
    """One sentence: what helps."""
    store = damage.named(path)
    much = f"{len(found.hurt)} thing{'s are' if len(found.hurt) != 1 else ' is'} hurt in {path}"
    if found.newest_backup:
        return (
            f"{much}: bring back the newest sound backup with "
            f"`pantry-tui restore {damage.quoted(found.newest_backup)}{store}`."
        )
    return f"{much}: save what can be read with `pantry-tui verify --salvage NEW.db{store}`."


def saved_data(made: Saved) -> dict[str, Any]:
    return {"path": str(made.path), "events": made.events, "lost": made.lost}


def saved(made: Saved) -> list[str]:
    said = [f"Brought {events(made.events)} into the new store {made.path}."]
    if made.lost:
        said.append(f"{events(made.lost)} could not be read.")
    return [clean(line) for line in said]
