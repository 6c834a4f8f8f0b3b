"""A household's own list before it is booked, as text: its columns, what they are taken as, what
stands against its rows. No textual here."""

from __future__ import annotations

from collections.abc import Sequence
from datetime import date

from pantry_tui.app.format import Column, clip, day
from pantry_tui.core.line.days import readings
from pantry_tui.core.text import agreed, clean, counted
from pantry_tui.services.batchwork.detail_columns import DETAILS
from pantry_tui.services.batchwork.imported import Imported
from pantry_tui.services.batchwork.mapped import Sheet, Taken
from pantry_tui.services.batchwork.undated import OTHERWISE
from pantry_tui.services.rows import Ask

#: Field -> what a person calls it, in the order in which it is offered.
WORDS = {
    "food": "food",
    "count": "how many",
    "size": "size of each",
    "vessel": "jar, bag, tub ...",
    "place": "place",
    "made": "day made",
    "method": "how it is kept",
    "printed": "best before",
    "note": "note",
    "": "left out",
    "line": "a whole line",
    **DETAILS,
}
ORDERS = {
    "dmy": "the day first",
    "mdy": "the month first",
    "ymd": "the year first",
    "": "as the days themselves settle it, else asked",
}
LEFT_OUT = "-"
#: Of a column that is none of them.
IN_NOTE = "- in the note"


def list_columns(width: int, rows: int) -> tuple[Column, ...]:
    """A line is a column of the list: its heading, what it is taken as, and its first cells. The
    fields are named as those whose text stays as it was typed."""
    narrow = width < 60
    heading, taken = (14, 13) if narrow else (22, 18)
    shown = min(rows, 1 if narrow else 3)
    each = max((width - 2 - heading - taken) // shown, 8)
    cells = (Column("value", "", each) for _ in range(shown))
    return (Column("name", "heading", heading), Column("value", "is", taken), *cells)


def list_cells(sheet: Sheet, taken: Taken, at: int, columns: Sequence[Column]) -> tuple[str, ...]:
    """One column of the list as a line."""
    firsts = [row[at] if at < len(row) else "" for _, row in sheet.first]
    texts = (sheet.heading(at), _taken_as(taken, at), *firsts)
    return tuple(clip(text, column.width - 1) for text, column in zip(texts, columns, strict=False))


def _taken_as(taken: Taken, at: int) -> str:
    name = taken.field_of(at)
    return WORDS[name] if name else IN_NOTE if at in taken.noted else f"{LEFT_OUT} left out"


def head_labels(sheet: Sheet, columns: Sequence[Column]) -> tuple[Column, ...]:
    """The columns with the line of the file over each cell."""
    lines = iter(number for number, _ in sheet.first)
    return tuple(
        one if one.label else Column(one.field, f"line {next(lines)}", one.width) for one in columns
    )


def written_text(sheet: Sheet, taken: Taken) -> str:
    """How the file is written, and what is known of its days."""
    written = sheet.written
    parts = [f"{clip(sheet.path.name, 40)}: {written.encoding}"]
    parts += [f"{written.between} between the cells"] if written.between else []
    parts += [f"decimals as in {written.decimals}"] if written.decimals else []
    if taken.order:
        parts.append(f"days with {ORDERS[taken.order]}")
    said = f"{', '.join(parts)}."
    if taken.recalled:
        said += " Taken as you said of the last list with these headings."
    return said


def column_text(sheet: Sheet, taken: Taken, at: int) -> str:
    """The column under the cursor: what it is and why, and a cell of it in full."""
    name = taken.field_of(at)
    title = f"Column {at + 1}, {clip(sheet.heading(at), 60)!r}"
    if name in taken.said:
        why = f"{WORDS[name]}, as you said"
    elif name:
        why = f"{WORDS[name]}, guessed by its heading"
    elif at in taken.noted:
        why = "kept in the note, under its heading"
    else:
        why = "left out: nothing of it is read"
    cell = next((row[at] for _, row in sheet.first if at < len(row) and row[at]), "")
    begins = f"It begins: {clip(cell, 160)}" if cell else "Its first cells are empty."
    return f"{title}: {why}. {begins}"


def asked_text(ask: Ask) -> str:
    """What must be said of the columns before a row can be read."""
    if ask.typed != "food" or all(one.isdecimal() for one in ask.choices):
        what = "name one detail" if ask.typed in DETAILS else "have one heading"
        return (
            f"Columns {' and '.join(ask.choices)} {what}: press Enter on the one that is "
            f"{WORDS[ask.typed]}, or x on the other."
        )
    return f"No column is the {WORDS[ask.typed]} yet: press Enter on the one that is."


def orders_of(example: str, today: date) -> dict[str, str]:
    """What a day that could be two may mean: {"the day first: Fri 3 Apr 2026": "dmy", ...}."""
    days = readings(example, today)
    return {
        f"{ORDERS[order]}: {day(one)}": order
        for order, one in zip(("dmy", "mdy"), (days[0], days[-1]), strict=True)
    }


def found_text(found: Imported, name: str) -> str:
    """What a look through all rows found: what would come, or every bad row."""
    lines = [f"{counted(found.rows, 'rows')} of {clip(name, 60)}"]
    bad = len(found.bad) + found.more_bad
    if bad:
        lines.append(f"{bad:,} cannot be booked, so nothing is: mend them in the file, or leave")
        lines.append("their column out.")
    else:
        lines.append(
            f"All of them are understood: {counted(found.batches, 'batches')}, in one undo."
        )
        if found.known:
            were = agreed(found.known, "was", "were")
            lines.append(f"{found.known:,} of them {were} put up before: is it the same list?")
    if found.noted:
        kept = ", ".join(clip(one, 40) for one in found.noted[:20])
        lines.append(f"Kept in the note: {kept}")
    if found.unused:
        lines.append(f"Left out: {', '.join(clip(one, 40) for one in found.unused[:20])}")
    lines.append("")
    lines += [
        f"line {one.line}, {clip(one.column, 30)} {clip(one.value, 40)!r}: {clean(one.reason)}"
        for one in found.bad
    ]
    lines += (
        [f"and {found.more_bad:,} more bad {agreed(found.more_bad, 'row', 'rows')}"]
        if found.more_bad
        else []
    )
    lines += [f"line {one.line}, {clip(one.value, 40)!r}: {one.reason}" for one in found.beyond]
    if found.more_beyond:
        lines.append(f"and {found.more_beyond:,} more cells that stand under no heading")
    lines += [f"line {one.line}, {clip(one.value, 40)}: {one.reason}" for one in found.no_day]
    if found.more_no_day:
        lines.append(f"and {found.more_no_day:,} more that say no day")
    if found.no_day:
        lines.append(OTHERWISE)
    return "\n".join(lines).rstrip()
