"""A reading as a put-up line: read again it gives the same."""

from __future__ import annotations

from pantry_tui.core.amounts import read_amount
from pantry_tui.errors import BadInput
from pantry_tui.services.rows import PutUpReading


def say_line(reading: PutUpReading) -> str:
    """("7 pint jars runner beans, pressure canned, shelf 2, 2026-11-25"). Of a reading without
    open questions."""
    parts = [" ".join(filter(None, (say_count(reading), reading.food)))]
    parts.append(f'method="{reading.method}"' if reading.method else "")
    parts.append(reading.place.replace("›", " "))
    parts.append(reading.made.isoformat() if reading.made else "date unknown")
    parts.append(f"opened {reading.opened.isoformat()}" if reading.opened else "")
    pairs = list(reading.process)
    if reading.group and reading.acidity:
        pairs += [("group", reading.group), ("acidity", reading.acidity)]
    if reading.printed is not None:
        pairs.append(("printed", reading.printed.isoformat()))
    parts += [f'{key}="{value}"' for key, value in pairs]
    parts.append(f"note={reading.note}" if reading.note else "")
    return ", ".join(" ".join(part.split()) for part in parts if part)


def say_count(reading: PutUpReading) -> str:
    """ "7 pint jars", "3 x 5 lb bags", "6 x 250 ml", "4": a size that begins with a number is
    parted from the count."""
    size, vessel = reading.size, reading.container
    if not size:
        return f"{reading.count} {vessel}{',' if ' of ' in vessel else ''}".strip()
    try:
        read_amount(size)
    except BadInput:
        return f"{reading.count} {size} {vessel}".strip()
    return f"{reading.count} x {size} {vessel}".strip()
