"""Ferments that were called ready before any publication would: they are not sour yet.

What is finished cannot hurt; what is not can (vegetables without air, not acid enough to hold down
botulism). A person sees bubbles, not acid, so days count, and only those spent where it works. Each
gives its part of the shortest time published for its warmth (a day at 62 °F a 35th of sauerkraut, a
day at 70 °F a 21st); ready is what reaches the whole. A day on which it may have stood in several
places counts as in the slowest. A pH measured about when it was called ready says more than days.
What was put up as finished (sealed or open) was called ready on the day it was put up.

Vegetables under salt are no other thing: up to 5 % they ferment, at 20 % salt alone keeps them.
"""

from __future__ import annotations

import math
import re
from collections.abc import Sequence
from datetime import date, timedelta
from fractions import Fraction
from typing import NamedTuple

from pantry_tui.core import dates
from pantry_tui.core.dataclass import replace
from pantry_tui.core.keeping.exposure import Span
from pantry_tui.core.keeping.harm import GREENS
from pantry_tui.core.keeping.rules import Rule, Rulebook
from pantry_tui.core.keeping.trouble import Trouble
from pantry_tui.core.keeping.weather import FOREVER
from pantry_tui.core.model import DAY_MIN, Batch, FoodFacts
from pantry_tui.core.safety.measured import PH_LEAST, PH_LINE, all_fahrenheit, read_ph
from pantry_tui.core.safety.note_sour import not_sour_enough
from pantry_tui.core.safety.salt import HEAVY_PERCENT, MOST_PERCENT, read_salt
from pantry_tui.core.text import counted
from pantry_tui.core.words import ASSUMED_F, Climate, Group, Method, State

#: Vegetables in brine or salt work for two to seven weeks (UC Master Food Preservers, Ferment).
LEAST_DAYS = 14
#: In the cool of 60 to 65 °F cabbage and cucumbers take five weeks; below 60 °F cabbage may not
#: work at all (Michigan State University Extension, sauerkraut; USDA AIB 539). No cool figure is
#: published for other vegetables: they are held to the same.
_COOL_F, _COOL_DAYS = 60.0, 35
#: Where the published ranges for the cool begin, °F, by food and by where they end; those for the
#: warm begin at a room's.
_FROM_F: dict[tuple[str, float | None], float] = {
    ("sauerkraut", 65.0): _COOL_F,
    ("dill pickles", 65.0): 55.0,
}
#: A dry cure takes 7 days for each inch of meat (NCHFP, Curing and Smoking Meats for Home Food
#: Preservation; from memory): of no thickness is less published.
CURE_DAYS = 7
#: Days before it was called ready within which a measured pH still speaks of it. Our own choice.
PH_DAYS = 2
#: Water freezes: nothing works. Above the other, vegetables grow too soft as they ferment (USDA AIB
#: 539, fermented pickles; from memory, the stricter choice).
_FROZEN_F, _WARMEST_F = 32.0, 80.0
_PER = {"hours": Fraction(1, 24), "days": Fraction(1), "weeks": Fraction(7)}
#: Of a part of a month nobody knows which month it is.
_LONGEST_MONTH = 31
#: Where no day matters, only whether anything is published.
_SOME_DAY = date(2000, 1, 1)
#: Raw crops that work as the ferment of which a time is published.
_WORK_AS = {
    **dict.fromkeys(
        ("cabbages", "red cabbages", "savoy cabbages", "pointed cabbages"), "sauerkraut"
    ),
    **dict.fromkeys(
        ("cucumbers", "pickling cucumbers", "fermented dill pickles"), "dill pickles"
    ),
}  # fmt: skip
#: No vegetables, whatever group they are sold in, fungi and dry seeds: nothing is published of how
#: long they work.
_NO_VEGETABLE = (
    r"(?i)mushroom|shiitake|enoki|truffle|chanterelle|morel|porcini|\bceps?\b|fung(i|us)|"
    r"chickpea|garbanzo|\bdr(y|ied) (bean|pea)|natto|tempeh"
)
#: Drinks that are vegetables in brine.
_VEGETABLE_DRINKS = frozenset({"beet kvass"})
_WARM = (Climate.ROOM, Climate.PANTRY, Climate.CELLAR)
MEASURE = f"Measure it and record its pH (ph=3.9): above {PH_LINE} it is not done."


class Pace(NamedTuple):
    """The shortest published time: so many days, from this °F up, by this rule."""

    from_f: float
    days: Fraction
    rule: Rule | None = None
    cold: bool = False  # published for a refrigerator


def unripe(batch: Batch, spans: Sequence[Span], zone: int, book: Rulebook) -> Trouble | None:
    """Why a ferment may not be done though it was called ready, or None. `zone`: minutes that the
    local clock is ahead of the spans."""
    working = [span for span in spans if span.in_progress]
    after = [span for span in spans if not span.in_progress]
    if not ferments(batch):
        return _uncured(batch, working, after)
    if any(span.end >= FOREVER for span in working):
        began = min(span.day for span in working)
        return _by_warmth(batch, began, book)  # nobody has called it ready
    acidity = read_ph(dict(batch.process).get("ph", ""))
    if acidity is not None and acidity > PH_LINE:
        return Trouble(
            f"pH {acidity:g} is above {PH_LINE}: it has not fermented enough to be eaten."
        )
    if not_sour_enough(batch.note):
        return Trouble(
            f"Its note names a pH above {PH_LINE}: it has not fermented enough to be eaten. If it "
            "is sourer now, record that (ph=3.9) and put the note right."
        )
    done = min(after, key=lambda span: span.start, default=None) if working else None
    if (
        acidity is not None
        and acidity >= PH_LEAST
        and in_time(batch.ph_day, done.day if done is not None else None)
        and not _too_fresh(batch)
    ):
        return None
    found = _by_salt(batch)
    if found is not None:
        return found
    if done is None:
        return _finished(batch, spans, book)
    return _by_days(batch, working, done, zone, book)


def ferments(batch: Batch) -> bool:
    """Whether nothing but its working makes it safe. Under salt that is any crop but what is acid
    as it grew (lemons, plums) or was made so (olives), unless salt alone keeps it. Meat, fish and
    eggs under salt are cures, with rules of their own."""
    food = batch.food
    if batch.method is not Method.SALTED:
        return batch.method is Method.LACTIC
    if food.group is not Group.VEGETABLE and food.is_acid:
        return food.name in _WORK_AS.values() or food.name in _WORK_AS
    salt = read_salt(dict(batch.process).get("salt", ""))
    crop = food.group in GREENS | {Group.RELISH, Group.GRAIN}
    return crop and (salt is None or salt < HEAVY_PERCENT)


def in_time(measured: date | None, ready: date | None) -> bool:
    """Whether a pH speaks of the finished ferment: any does of what was put up finished."""
    if ready is None:
        return True
    return measured is not None and measured >= ready - timedelta(days=PH_DAYS)


def _too_fresh(batch: Batch) -> bool:
    """Whether the pH was measured on the day on which it was made: nothing sours in hours."""
    made, measured = batch.made, batch.ph_day
    if batch.carried or made is None or measured is None:
        return False
    return measured <= made


def _claimed_after(batch: Batch) -> int | None:
    """Days from the day it was made to the one on which it was put up as finished; None where
    nobody knows, or where it goes on with what its parts were."""
    if batch.carried or batch.made is None or batch.booked is None:
        return None
    return max(0, (batch.booked - batch.made).days)


def _uncured(batch: Batch, working: Sequence[Span], after: Sequence[Span]) -> Trouble | None:
    """Meat under salt that was called ready sooner than any cure is published to take."""
    if batch.method is not Method.SALTED or batch.food.group is not Group.MEAT or not after:
        return None
    if working:
        done = min(after, key=lambda span: span.start)
        days: int | None = (done.day - min(span.day for span in working)).days
    else:
        days = _claimed_after(batch)
    if days is None or days >= CURE_DAYS:
        return None
    return Trouble(
        f"Called ready after {counted(days, 'days')}; a cure takes at least {CURE_DAYS} days for "
        "each inch of meat. If it is older than that, put the day it was made right."
    )


def _by_salt(batch: Batch) -> Trouble | None:
    """Salt that neither ferments nor keeps, or of which nobody knows."""
    if batch.method is not Method.SALTED:
        return None
    salt = read_salt(dict(batch.process).get("salt", ""))
    if salt is None:
        return Trouble(
            f"Nobody said how much salt: up to {MOST_PERCENT:g} % it ferments for weeks, from "
            f"{HEAVY_PERCENT:g} % salt alone keeps it. Record it (salt=2.5%), or its pH (ph=3.9)."
        )
    if salt > MOST_PERCENT:
        return Trouble(
            f"{salt:g} % of salt: no publication ferments with more than {MOST_PERCENT:g} %, or "
            f"keeps by salt alone with less than {HEAVY_PERCENT:g} %. {MEASURE}"
        )
    return None


def _finished(batch: Batch, spans: Sequence[Span], book: Rulebook) -> Trouble | None:
    """What was put up finished is taken at its word where it is acid or a publication ferments
    it, and where it was put up no sooner than the shortest published time after it was made."""
    paces = paces_of(batch.food, batch.made or _SOME_DAY, book)
    if not (batch.food.is_acid or paces):
        return Trouble(f"No publication ferments {batch.food.name}. {MEASURE}")
    days = _claimed_after(batch)
    if days is None:
        return None
    cold = bool(spans) and min(spans, key=lambda span: span.start).climate is Climate.FRIDGE
    least = min((one.days for one in paces if cold or not one.cold), default=Fraction(LEAST_DAYS))
    if days >= least:
        return None
    rules = tuple(one.rule for one in paces if one.rule is not None)
    return Trouble(
        f"Put up as finished {counted(days, 'days')} after it was made; the shortest published "
        f"time is {float(least):g} days. {MEASURE}",
        rules,
    )


def _by_warmth(batch: Batch, began: date, book: Rulebook) -> Trouble | None:
    """What still works at a warmth, by its record, at which none of it is published to."""
    typed = dict(batch.process).get("temperature", "")
    paces = paces_of(batch.food, began, book)
    if not paces or all(_fit(warm, paces) for warm in all_fahrenheit(typed)):
        return None
    times = told_paces(paces)
    return Trouble(
        f"Its record says {typed[:20]}: no publication ferments it at that; published are {times}."
    )


def _by_days(
    batch: Batch, working: Sequence[Span], done: Span, zone: int, book: Rulebook
) -> Trouble | None:
    began = min(span.day for span in working)
    paces = paces_of(batch.food, began, book)
    rules = tuple(dict.fromkeys(one.rule for one in paces if one.rule is not None))
    if not paces:
        return Trouble(f"Called ready, and no working time is published for it. {MEASURE}")
    typed = dict(batch.process).get("temperature", "")
    said = all_fahrenheit(typed)
    lasted = done.start - min(span.start for span in working)
    # From night to morning is no day, and three weeks less an evening are three weeks.
    worked = min((done.day - began).days, (lasted + DAY_MIN // 2) // DAY_MIN)
    counted, whole = 0, Fraction(0)
    for number in range(worked):
        start = (began.toordinal() + number) * DAY_MIN - zone
        part = _part(working, start, paces, said)
        counted, whole = counted + (part > 0), whole + part
        if whole >= 1:
            return None
    days = "day" if worked == 1 else "days"
    where = "" if counted == worked else f", {counted} of them where it works"
    where += f" (its record says {typed[:20]})" if said and where else ""
    times = told_paces(paces)
    return Trouble(
        f"Called ready after {worked} {days}{where}; the shortest published time is {times}. "
        f"{MEASURE}",
        rules,
    )


def told_paces(paces: Sequence[Pace]) -> str:
    """The shortest published times in words, "" where there is none."""
    return ", ".join(map(_told, paces))


def _told(pace: Pace) -> str:
    days = f"{float(pace.days):g} {'day' if pace.days == 1 else 'days'}"
    return f"{days} in a fridge" if pace.cold else f"{days} at {pace.from_f:g} F"


def _part(
    working: Sequence[Span], start: int, paces: Sequence[Pace], said: Sequence[float]
) -> Fraction:
    """What the day that begins at a minute gives to the whole, in the slowest place of it; `said`
    what its record says of its warmth, °F."""
    there = [span for span in working if span.start < start + DAY_MIN and span.end > start]
    rates = (_rate(span, warm, paces) for span in there for warm in (span.temperature_f, *said))
    return min(rates, default=Fraction(0))


def _rate(span: Span, warm: float, paces: Sequence[Pace]) -> Fraction:
    if span.climate is Climate.FREEZER:
        return Fraction(0)
    chilled = span.climate is Climate.FRIDGE
    fits = [one.days for one in _fit(warm, paces) if one.cold or not chilled]
    return 1 / min(fits) if fits else Fraction(0)


def _fit(warm: float, paces: Sequence[Pace]) -> list[Pace]:
    """The published times that speak for a warmth, °F; 21 °C are the 70 °F of a table."""
    if not _FROZEN_F < warm <= _WARMEST_F:
        return []
    return [one for one in paces if round(warm) >= one.from_f]


def paces_of(food: FoodFacts, began: date, book: Rulebook) -> list[Pace]:
    """The shortest published times of what began to work on a day, the warmest first; empty where
    nothing is published."""
    like = replace(food, name=_WORK_AS.get(food.name, food.name))
    found = {}
    for climate in (*_WARM, Climate.FRIDGE):
        rule = _closest(like, climate, book)
        if rule is not None and rule.id not in found:
            cold = climate is Climate.FRIDGE
            ends = (rule.food, rule.temp_f_max)
            begins = _FROZEN_F if cold else _FROM_F.get(ends, ASSUMED_F[Climate.ROOM])
            found[rule.id] = Pace(begins, _days(rule, began), rule, cold)
    if found:
        return sorted(found.values(), key=lambda one: -one.from_f)
    if not _as_vegetables(food):
        return []
    usual = Pace(ASSUMED_F[Climate.ROOM], Fraction(LEAST_DAYS))
    return [usual, Pace(_COOL_F, Fraction(_COOL_DAYS))]


def _as_vegetables(food: FoodFacts) -> bool:
    """Whether the time for vegetables speaks of it: of no fungus, and of no bean paste, grain, milk
    or sweet drink, which others work on than sour vegetables (some of them turn it alkaline)."""
    relish = food.group is Group.RELISH and food.is_acid
    sour = food.group in GREENS or relish or food.name in _VEGETABLE_DRINKS
    return sour and not re.search(_NO_VEGETABLE, food.name)


def _closest(food: FoodFacts, climate: Climate, book: Rulebook) -> Rule | None:
    rules = book.speaking(food, Method.LACTIC, State.IN_PROGRESS, climate)
    return next((rule for rule in rules if rule.least is not None), None)


def _days(rule: Rule, began: date) -> Fraction:
    """The shortest time in days; months and years run by calendar from the day it began."""
    assert rule.least is not None
    least = Fraction(rule.least)
    if rule.unit in _PER:
        return least * _PER[rule.unit]
    months = least * (12 if rule.unit == "years" else 1)
    whole = math.floor(months)
    days = (dates.add(began, whole, "months") - began).days
    return days + (months - whole) * _LONGEST_MONTH
