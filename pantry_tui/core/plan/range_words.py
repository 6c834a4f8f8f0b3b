"""How sure an outlook is, in words: "gone between Sat 3 Apr and Thu 20 May; 2 to 9 jars lost"."""

from __future__ import annotations

from datetime import date

from pantry_tui.core import dates
from pantry_tui.core.plan.appetite import LEARNED_AFTER
from pantry_tui.core.plan.pace_words import Unit
from pantry_tui.core.plan.replay import Replayed

#: How a note begins that repeats what is supposed.
SUPPOSED = "Supposed: "


def in_words(found: Replayed, unit: Unit, lost: float) -> str:
    """One sentence, "" where it lasts and nothing is lost whatever week is drawn; `lost` servings
    are what is told elsewhere, at the mean of those weeks."""
    said = [one for one in (gone_between(*found.runs_out_range), _lost(found, unit, lost)) if one]
    return f"By your own weeks: {'; '.join(said)}." if said else ""


def gone_between(first: date | None, last: date | None) -> str:
    """ "gone between A and B", "gone by A or later, perhaps not at all", "" where it lasts."""
    if first is None:
        return ""
    if last is None:
        return f"gone on {dates.say(first)} at the earliest, perhaps not at all"
    if first == last:
        return f"gone about {dates.say(first)}"
    return f"gone between {dates.say(first)} and {dates.say(last)}"


def _lost(found: Replayed, unit: Unit, lost: float) -> str:
    low, high = (round(one / unit.servings) for one in found.lost_range)
    if not high:
        return ""
    most_likely = round(lost / unit.servings)
    about = f" (about {most_likely})" if low != high and most_likely else ""
    return f"{from_to(low, high)} {unit.one if high == 1 else unit.noun} lost{about}"


def from_to(low: float, high: float) -> str:
    """ "2 to 9", "up to 9", "9"."""
    if low == high:
        return f"{high:g}"
    return f"{low:g} to {high:g}" if low else f"up to {high:g}"


def range_note(known: int, foods: int) -> str:
    """For how many foods there is a range, and why not for the others."""
    if known == foods:
        return ""
    weeks = f"{LEARNED_AFTER} weeks of your own eating of a food"
    if not known:
        return f"No range yet: it takes {weeks}."
    return f"A range for {known} of {foods} foods: it takes {weeks}."
