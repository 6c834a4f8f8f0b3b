"""The help texts, made from the registry and from the fields of a verb."""

from __future__ import annotations

from collections.abc import Iterable, Iterator

from pantry_tui.cli.fields import Field
from pantry_tui.cli.parse import shown
from pantry_tui.cli.registry import SUBJECTS, Entry, under

_GLOBAL = (
    ("--store PATH", "the store file (or PANTRY_STORE)"),
    ("--today DATE", "take this as now: 2026-11-25, or 2026-11-25 18:30 (or PANTRY_TODAY)"),
    ("--json", "answer in JSON"),
    ("--version", "the version of the program"),
    ("--help", "help on a verb"),
)


def overview() -> list[str]:
    """All verbs by subject."""
    lines = [
        "pantry-tui [VERB ...]",
        "",
        "What stands where, how long it lasts, what to eat first. Without a verb: the app.",
    ]
    for subject, entries in SUBJECTS:
        lines += ["", f"{subject}:", *_columns(_named(entries))]
    lines += ["", "Before or after the verb:", *_columns(_GLOBAL)]
    return [*lines, "", "Exit codes: 0 done, 1 refused with the reason, 2 not understood."]


def of(entry: Entry) -> list[str]:
    """One verb: what it takes, each argument in a line, the verbs that go on from its name."""
    fields = entry.load().arguments
    usage = " ".join(["pantry-tui", entry.name, *(_usage(k, f) for k, f in fields.items())])
    lines = [usage, "", f"{entry.about}."]
    rows = [(shown(key, field), field.about) for key, field in fields.items()]
    lines += ["", *_columns(rows)] if rows else []
    more = under(entry.name)
    lines += ["", "More:", *_columns(_named(more))] if more else []
    return [*lines, "", "Before or after the verb:", *_columns(_GLOBAL)]


def several(words: str) -> list[str]:
    """The verbs whose names go on from `words`."""
    return [f"pantry-tui {words} ...", "", *_columns(_named(under(words)))]


def _named(entries: Iterable[Entry]) -> list[tuple[str, str]]:
    return [(entry.name, entry.about) for entry in entries]


def _usage(key: str, field: Field) -> str:
    """ "CODE", "[AMOUNT ...]", "[--any]"."""
    text = shown(key, field)
    if field.many:
        text += " ..."
    return text if field.needed else f"[{text}]"


def _columns(rows: Iterable[tuple[str, str]]) -> Iterator[str]:
    rows = list(rows)
    width = max(len(name) for name, _ in rows)
    return (f"  {name.ljust(width)}  {about}".rstrip() for name, about in rows)
