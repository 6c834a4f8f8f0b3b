"""A put-up line as it was understood, and the batch it made."""

from __future__ import annotations

from typing import TYPE_CHECKING

from pantry_tui.core.dates import say
from pantry_tui.core.keeping.fitness import UNFIT
from pantry_tui.core.keeping.no_day import best_or_why, instead_of_day
from pantry_tui.core.text import clean
from pantry_tui.services.batchwork.contents import assumed
from pantry_tui.services.batchwork.made_from import say_sources

if TYPE_CHECKING:
    from pantry_tui.services.batchwork.many import OneLine
    from pantry_tui.services.rows import PutUp, PutUpReading


def reading(read: PutUpReading) -> list[str]:
    """What a line was understood as."""
    times = "x " if read.size[:1].isdecimal() else ""  # "4 2 lb packs" are read as 42
    count = " ".join(f"{read.count} {times}{read.size} {read.container}".split())
    made = say(read.made) if read.made else "unknown"
    made += f" (the first day of {read.made_in})" if read.made_in else ""
    lines = [
        f"food: {clean(read.food) or 'not said'}",
        f"method: {read.method or 'not said'}",
        f"how many: {count}",
        f"place: {clean(read.place) or 'not said'}",
        f"made: {made}",
    ]
    lines += [f"opened: {say(read.opened)}"] if read.opened else []
    lines += [f"holds: {read.contents}{' each' if read.count > 1 else ''}"] if read.contents else []
    lines += [f"holds: {size}"] if (size := assumed(read)) else []
    lines += [f"{clean(key)}: {clean(value)}" for key, value in read.process if key != "amount"]
    lines += [f"from: {clean(say_sources(read.sources))}"] if read.sources else []
    lines += [f"printed: {say(read.printed)}"] if read.printed else []
    lines += [f"note: {clean(read.note)}"] if read.note else []
    if read.unread:
        lines.append("not understood: " + ", ".join(clean(word) for word in read.unread))
    lines += [f"still needed: {clean(one)}" for one in read.problems]
    return lines


def putup(made: PutUp) -> list[str]:
    """The lid code first, then dates and cautions."""
    lines, takes = [_head(made), *reading(made.reading)], "took" if made.code else "takes"
    lines += [made.note_aside] if made.note_aside else []
    lines += [
        f"{takes} {one.took or 'all'} of {one.container}; {one.left or 'nothing'} left in it"
        for one in made.made_from
    ]
    lines.append(f"verdict: {made.verdict}{made.unchecked}")
    lines.append(f"best by: {best_or_why(made.good_until, made.why_no_best)}")
    last = say(made.discard_after) if made.discard_after else instead_of_day(made.discard_after_why)
    lines.append(f"discard after: {last}")
    lines += [f"why: {clean(one)}" for one in made.reasons]
    return lines + [f"care: {clean(one)}" for one in made.cautions]


def _head(made: PutUp) -> str:
    if not made.code:
        return "Nothing was booked."
    # What must go is not labelled to be kept; its code is how it is named when it is marked.
    return f"Lid code {made.code}{'.' if made.verdict in UNFIT else ': write it on every lid.'}"


def put_up_lines(found: list[OneLine]) -> list[str]:
    """A line each: its number, how it was read, its lid code or what is wrong with it."""
    return [text for one in found for text in _one_line(one)]


def _one_line(one: OneLine) -> list[str]:
    read = one.reading
    times = "x " if read.size[:1].isdecimal() else ""  # "4 2 lb packs" are read as 42
    count = " ".join(f"{read.count} {times}{read.size} {read.container}".split())
    made = say(read.made) if read.made else "date unknown"
    said = f"{count} {clean(read.food) or '?'}, {read.method or '?'}, {clean(read.place) or '?'}"
    code = one.made.code if one.made is not None else ""
    lines = [f"{one.number}: {code + ' ' if code else ''}{said}, {made}"]
    if one.why:
        lines += [f"   {clean(one.typed)}", f"   mend: {clean(one.why)}"]
    return lines
