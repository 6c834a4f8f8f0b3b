"""The week as a grid: who sits at table, and what is eaten, day by day."""

from __future__ import annotations

import re
from collections.abc import Iterable, Iterator, Mapping, Sequence
from datetime import date
from textwrap import wrap

from pantry_tui.app.draw.spans import Row, Span, fit, padded
from pantry_tui.app.format import clip, leaf, week_day
from pantry_tui.app.roles import HEAD, MUTED
from pantry_tui.core.text import clean
from pantry_tui.services.rows import Take

#: From so many cells on days stand side by side; before each of them then so much.
COLUMNS_FROM = 105
_SIDE = 8
#: So many strokes are told apart at a glance.
_STROKES = 8
#: Cells of one thing to eat where the days stand below each other.
_CELL = 31
#: Lines that what is said of a day may take.
_SAID = 3
#: What lies on a day first; what has another role, or none, stands last.
ROLES = ("main", "side", "fruit", "")


def week_rows(
    days: Mapping[date, int],
    takes: Mapping[str, Take],
    width: int,
    said: Mapping[date, str] | None = None,
) -> list[Row]:
    """`days` with how many sit at table; `takes` by the ref of each, in order; `said`: what was
    eaten on a day, or that nobody cooks. Days side by side where that has room, else one below the
    other."""
    if width >= COLUMNS_FROM:
        return list(_across(days, takes, width, said or {}))
    return list(_down(days, takes, width, said or {}))


def strokes(people: int) -> str:
    """ "iiii 4", "away"."""
    if not people:
        return "away"
    return f"{'i' * min(people, _STROKES)} {people}"


def _named(take: Take) -> str:
    dish = f" ({take.dish})" if take.dish else ""
    return clean(f"{take.food}{dish}")


def _down(
    days: Mapping[date, int], takes: Mapping[str, Take], width: int, said: Mapping[date, str]
) -> Iterator[Row]:
    """A day, then what is eaten on it, as many side by side as have room."""
    many = max((width - 2) // _CELL, 1)
    wide = (width - 2) // many
    for day, people in days.items():
        mine = [(ref, take) for ref, take in takes.items() if take.day == day]
        head = (Span(f"{week_day(day):<12}", HEAD), Span(strokes(people), MUTED))
        yield fit(head, width)
        for at in range(0, len(mine), many):
            spans = [Span("  ")]
            for ref, take in mine[at : at + many]:
                text = clip(f"{take.code:<4} {_named(take)}", wide - 2)
                spans.append(Span(padded(text, wide - 2), "", ref))
                spans.append(Span("  "))
            yield fit(tuple(spans), width)
        words = said.get(day, "" if mine else "nothing from the stores")
        for line in wrap(clean(words), max(width - 2, 10), max_lines=_SAID, placeholder=" …"):
            yield (Span(f"  {line}", MUTED),)
        yield ()


def _across(
    days: Mapping[date, int], takes: Mapping[str, Take], width: int, said: Mapping[date, str]
) -> Iterator[Row]:
    """Days as columns, a band for each role."""
    wide = (width - _SIDE) // max(len(days), 1)
    yield (Span(" " * _SIDE), *(Span(padded(week_day(day), wide), HEAD) for day in days))
    yield (
        Span(padded("table", _SIDE), MUTED),
        *(Span(padded(strokes(people), wide), MUTED) for people in days.values()),
    )
    yield (Span("─" * min(width, _SIDE + wide * len(days)), MUTED),)
    if any(day in said for day in days):
        yield from _said(days, said, wide)
        yield ()
    for role in ROLES:
        band = {
            day: [(r, t) for r, t in takes.items() if t.day == day and _role(t) == role]
            for day in days
        }
        for level in range(max(map(len, band.values()), default=0)):
            name = role or "more"
            yield from _level(name if not level else "", band, level, wide)
            yield ()


def _said(days: Iterable[date], said: Mapping[date, str], wide: int) -> Iterator[Row]:
    """What is said of each day under its name, a line for each thing."""
    told = [
        [clip(one, wide - 1) for one in re.split(r"(?<=:) |, ", said.get(day, ""))] for day in days
    ]
    for at in range(max(map(len, told))):
        texts = (lines[at] if at < len(lines) else "" for lines in told)
        yield (Span(" " * _SIDE), *(Span(padded(text, wide), MUTED) for text in texts))


def _role(take: Take) -> str:
    return take.role if take.role in ROLES else ""


def _level(
    name: str, band: Mapping[date, Sequence[tuple[str, Take]]], level: int, wide: int
) -> Iterator[Row]:
    """One thing to eat of each day, in up to three lines: its name, then code and place."""
    cells = []
    for mine in band.values():
        if level >= len(mine):
            cells.append(("", ["", "", ""]))
            continue
        ref, take = mine[level]
        words = wrap(_named(take), wide - 2, max_lines=2, placeholder="…") or [""]
        under = clip(f"{take.code} {leaf(take.place)}", wide - 2)
        cells.append((ref, [*words, under, ""][:3]))
    for line in range(3):
        side = Span(padded(name if not line else "", _SIDE), MUTED)
        spans = [side]
        for ref, lines in cells:
            text = lines[line]
            code = line == next((n for n in (2, 1) if lines[n]), 1)
            spans.append(Span(padded(text, wide - 1), MUTED if code else "", ref if text else ""))
            spans.append(Span(" "))
        if any(lines[line] for _, lines in cells):
            yield tuple(spans)
