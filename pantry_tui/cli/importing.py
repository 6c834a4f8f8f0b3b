"""A household's own list, brought in."""

from __future__ import annotations

from pathlib import Path
from typing import Any

from pantry_tui.cli.call import Call, Question
from pantry_tui.core.text import agreed, clean, counted


def bring_in(
    call: Call, path: Path, columns: str, order: str, units: str, dry_run: bool, again: bool
) -> int:
    """Book a list, or tell what stands against it. Raises Question for what must be said first."""
    from pantry_tui.services.batchwork.importing import import_list

    with call.pantry() as p:
        found = import_list(
            p, path, columns=columns, order=order, units=units, dry_run=dry_run, again=again
        )
    if found.bad or found.asks:
        if not call.as_json:
            call.answer(found, _data, _lines)
        raise Question(_told(found), _data(found))
    return call.answer(found, _data, _lines)


def _data(found: Any) -> dict[str, Any]:
    from pantry_tui.services.output.jsonable import plain

    answer: dict[str, Any] = plain(found)
    return answer


def _told(found: Any) -> str:
    if found.asks:
        ask = found.asks[0]
        if ask.about == "again":
            return (
                f"{_known(found)}, so nothing was booked: if {clean(ask.typed)} is to be put up "
                "once more, add --again."
            )
        if ask.about == "dates":
            return (
                f"{ask.typed!r} could be two days: add --dates dmy (the day first) "
                "or --dates mdy (the month first)."
            )
        if ask.about == "unit":
            said = ", ".join(ask.choices)
            return f"{clean(ask.typed)} has no unit: add --unit and one of {said}."
        columns = ", ".join(ask.choices[:12])
        held = ask.typed
        return f"Say which column holds the {held}: --map {held}=..., one of {clean(columns)}."
    bad = len(found.bad) + found.more_bad
    first = found.bad[0]
    where = f"line {first.line}, {first.column}" if first.column else f"line {first.line}"
    rows = "row" if bad == 1 else "rows"
    return f"Nothing was booked: {bad} bad {rows}, the first in {where}: {first.reason}"


def _known(found: Any) -> str:
    rows = counted(found.rows, "rows")
    return f"{found.known:,} of {rows} {agreed(found.known, 'was', 'were')} put up before"


def _lines(found: Any) -> list[str]:
    from pantry_tui.services.batchwork.undated import OTHERWISE

    lines = [f"{name}: {clean(heading)}" for name, heading in found.columns.items()]
    if found.recalled:
        lines.append(
            "columns and days as you said of the last list with these headings; "
            "--map and --dates say otherwise"
        )
    if found.noted:
        lines.append(f"kept in the note: {', '.join(clean(one) for one in found.noted)}")
    if found.unused:
        lines.append(f"not used: {', '.join(clean(one) for one in found.unused)}")
    lines += [f"line {one.line}, {clean(one.value)[:40]!r}: {one.reason}" for one in found.beyond]
    if found.more_beyond:
        lines.append(f"and {found.more_beyond:,} more under no heading")
    lines += [
        f"line {one.line}, {clean(one.column)} {clean(one.value)[:40]!r}: {clean(one.reason)}"
        for one in found.bad
    ]
    lines += (
        [f"and {found.more_bad:,} more bad {agreed(found.more_bad, 'row', 'rows')}"]
        if found.more_bad
        else []
    )
    lines += [f"line {one.line}, {clean(one.value)[:40]}: {one.reason}" for one in found.no_day]
    if found.more_no_day:
        lines.append(f"and {found.more_no_day:,} more that say no day")
    if found.no_day:
        lines.append(OTHERWISE)
    if found.booked:
        them = agreed(found.batches, "it", "all of them")
        lines.append(f"Put up {counted(found.batches, 'batches')}; one undo takes {them} back.")
    elif not found.bad and not found.asks:
        lines.append(f"{counted(found.rows, 'rows')} can be put up; nothing was booked.")
        if found.known:
            lines.append(f"{_known(found)}: it may be the same list again.")
    return lines
