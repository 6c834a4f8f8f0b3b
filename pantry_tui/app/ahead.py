"""The outlook as text: columns, cells, and supply drawn against time. No textual here."""

from __future__ import annotations

from collections.abc import Sequence
from datetime import date, timedelta
from itertools import zip_longest
from textwrap import wrap

from dateutil.relativedelta import relativedelta

from pantry_tui.app.format import Column, clip, short_day
from pantry_tui.core.amounts import kitchen_count
from pantry_tui.core.dates import say
from pantry_tui.core.plan.pace_words import containers, month, put_up
from pantry_tui.core.plan.range_words import SUPPOSED
from pantry_tui.services.books.rows import FoodAhead, Pair, WhatIf

#: Cells of what is told of a food now, and of what then.
_SIDE = 25

#: Eighths of a cell, from nothing to full; they tell heights apart without any colour.
_BLOCKS = " ▁▂▃▄▅▆▇█"


def outlook_columns(width: int) -> tuple[Column, ...]:
    """The columns of the outlook; servings and servings a week are estimates."""
    free = width - 2
    if width < 60:
        return (
            Column("food", "food", max(free - 20, 8)),
            Column("needs", "week", 6),
            Column("out", "runs out", 9),
            Column("put", "put", 5),
        )
    return (
        Column("food", "food", max(free - 60, 14)),
        Column("servings", "servings", 9),
        Column("needs", "no loss", 9),
        Column("can", "to last", 9),
        Column("lost", "lost", 7),
        Column("out", "runs out", 12),
        Column("put", "put up next", 14),
    )


def outlook_cells(one: FoodAhead, columns: Sequence[Column]) -> tuple[str, ...]:
    """The text of one food, group or household."""
    narrow = len(columns) == 4
    pounds = f" ({one.pounds:.0f} lb)" if one.pounds and one.put_up and not narrow else ""
    number = ("?" if one.put_up is None else str(one.put_up)) if one.container else ""
    fields = {
        "food": one.food,
        "servings": kitchen_count(one.servings),
        "needs": f"{one.pace_need:.1f}",
        "can": f"{one.pace_can:.1f}",
        "lost": f"{one.lost:g}",
        "out": runs_out(one, short=narrow),
        "put": f"{number}{pounds}" if number else "",
    }
    return tuple(clip(fields[column.field], column.width - 1) for column in columns)


def runs_out(one: FoodAhead, *, short: bool) -> str:
    """When nothing is left of it: the day, the month where `short`; that it lasts, or that there is
    none now."""
    if one.servings <= 0:
        return "none now"
    if one.runs_out is None:
        return "lasts"
    gone = short_day(one.runs_out)
    return " ".join(gone.split()[1:]) if short else gone


def plot(one: FoodAhead, today: date, width: int, height: int) -> list[str]:
    """What is left at each week's end, as columns of blocks over a line of time.

    `width` cells and `height` lines for the blocks; two lines of words are added. The scale begins
    at nought, so that a supply that hardly falls looks so.
    """
    weeks = (one.servings, *one.supply)
    most = max(weeks)
    name = clip(one.food, max(width - 18, 8))
    if most <= 0:
        return [f"{name}: none left"]
    label = len(f"{most:.0f}") + 1
    across = max(width - label, 10)
    shown = [weeks[at * len(weeks) // across] for at in range(across)]
    need = _need(one, across)
    lines = [f"{name}: servings by week"]
    for line in range(height - 1, -1, -1):
        scale = f"{most:.0f}" if line == height - 1 else "0" if line == 0 else ""
        bar = "".join(
            _block(left / most * height - line, wanted / most * height - line)
            for left, wanted in zip(shown, need, strict=True)
        )
        lines.append(f"{scale:>{label - 1}} {bar}".rstrip())
    if any("─" in line for line in lines):
        end = "to the harvest" if one.harvest else "for a year"
        ways = (f"{lines[0]} ─ so much is needed {end}", f"{lines[0]}, ─ needed")
        lines[0] = next((one for one in ways if len(one) <= width), clip(lines[0], width))
    return [*lines, _axis(one, today, label, across, len(one.supply))]


def _need(one: FoodAhead, across: int) -> list[float]:
    """What must be left in each cell of time to eat at this rate up to the harvest."""
    weeks = len(one.supply)
    return [one.rate * (weeks - at * (weeks + 1) // across) for at in range(across)]


def _block(full: float, need: float = 0) -> str:
    """One cell, from empty (0 or less) to full (1 or more); in an empty one a line where more is
    needed than there is."""
    eighths = max(0, min(8, round(full * 8)))
    short = not eighths and 0 < need <= 1 and need > max(full, 0)
    return "─" if short else _BLOCKS[eighths]


def _axis(one: FoodAhead, today: date, label: int, across: int, weeks: int) -> str:
    """ "now  Jan  Feb  Mar ... harvest in July", each month where it begins; of a group, and of
    what has no harvest, the end of the time looked at."""
    far = today + timedelta(weeks=weeks)
    crop = one.harvest if one.container else None
    end = f"harvest in {month(crop, today)}" if crop else month(far, today)
    line = "now "
    first = today.replace(day=1)
    for number in range(1, 24):
        begins = first + relativedelta(months=number)
        at = round((begins - today).days / 7 * across / max(weeks, 1))
        name = say(begins).split()[2]
        if at > len(line) and at + len(name) + 1 < across - len(end):
            line += f"{'':{at - len(line)}}{name} "
    return f"{'':{label}}{line}{'':{max(across - len(line) - len(end), 0)}}{end}"


def what_if_text(found: WhatIf, pairs: Sequence[Pair]) -> str:
    """What would be otherwise, now and then side by side."""
    notes = [clip(one, 200) for one in found.what_if.notes if one.startswith(SUPPOSED)]
    if not pairs:
        return "\n".join([*notes, "", "Nothing would be otherwise."])
    name = min(16, max(len(one.food) for one in pairs)) + 1
    lines = []
    for one in pairs:
        now, then = _cut(one.now, _SIDE), _cut(one.then, _SIDE)
        food = _cut(one.food, name - 1)
        for head, left, right in zip_longest(food, now, then, fillvalue=""):
            lines.append(f"{head:<{name}}{left:<{_SIDE}} {right}".rstrip())
    more = [clip(one, 300) for one in found.what_if.alarms if one not in found.now.alarms]
    heads = f"{'':{name}}{'now':<{_SIDE}} then"
    said = ["", *more] if more else []
    return "\n".join([*notes, "", heads, *lines, *said])


def _cut(words: str, width: int) -> list[str]:
    """Lines of so many cells at most, broken behind a comma or a space."""
    return wrap(words, width) or [""]


def sentences(one: FoodAhead, *, whole: bool = False) -> list[str]:
    """The pace, the alarms, what was said of it at table, what to put up; with `whole` also how
    that is reckoned and what the pounds rest on."""
    hurried = one.pace_need > one.pace_can  # then the pace says already what would be lost
    said = [one.pace_says, "" if hurried else one.hoarding, one.rationing, one.range_says]
    said += [f"{word[:1].upper()}{word[1:]}." for word in one.tasted]
    said += [f"{one.reserved} reserved, not counted here."] if one.reserved else []
    if one.container:
        crop = f", {one.pounds:.0f} lb of {one.crop}" if one.pounds and one.put_up else ""
        said.append(f"Put up next: {put_up(one.put_up, one.container)}{crop}.")
        ways = ", ".join(f"{containers(w.count, w.container)} {w.method}" for w in one.ways)
        said += [f"As you liked them: {ways}."] if ways else []
    if whole:
        said += [f"That is {one.reckoning}" if one.reckoning else "", one.short_lived]
        said += [f"Fresh crop: {one.pounds_note}."] if one.pounds_note else []
    return [clip(sentence, 600) for sentence in said if sentence]
