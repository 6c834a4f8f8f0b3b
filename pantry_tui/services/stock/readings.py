"""Readings of a place's warmth, and one clear notice for each place that is out of range."""

from __future__ import annotations

import math
import re
from collections.abc import Iterable
from datetime import date, datetime, time

from pantry_tui.core import dates
from pantry_tui.core.amounts import read_temperature
from pantry_tui.core.hours import in_figures
from pantry_tui.core.keeping.weather import too_warm
from pantry_tui.core.log.payloads import Reading
from pantry_tui.core.model import DAY_MIN, Place, Read, When
from pantry_tui.core.safety.measured import all_minutes, spelled_out
from pantry_tui.core.safety.values import is_unknown
from pantry_tui.core.text import agreed, counted
from pantry_tui.core.words import Climate
from pantry_tui.errors import BadInput, Unclear
from pantry_tui.services.clock import local_times
from pantry_tui.services.pantry import Pantry, booked
from pantry_tui.services.rows import Done
from pantry_tui.services.stock import warmth
from pantry_tui.services.stock.places_ever import begins_at, place_ever
from pantry_tui.services.stock.ready import ready
from pantry_tui.services.stock.seen import At, when
from pantry_tui.store import lines as table
from pantry_tui.store.store import reading


def read_typed(
    p: Pantry,
    place: str,
    temp: str,
    humidity: float | None = None,
    at: At | date | None = None,
    since: str = "",
) -> Done:
    """The same of a temperature as it is typed ("41F", "5C") and of since when ("90m", "6 pm"), for
    a place that may be gone."""
    where = place_ever(p, place, begins_at(p, at))
    warm = read_warmth(p, where.climate, temp)
    told = At(at) if isinstance(at, date) else at
    minutes = read_since(since, this_minute(p, told)) if since else None
    return read(p, place, warm, humidity, at, minutes)


def read(
    p: Pantry,
    place: str,
    temp_f: float,
    humidity: float | None = None,
    at: At | date | None = None,
    since: int | None = None,
) -> Done:
    """Book a reading (°F, % humidity); it holds until the next one. `since` is how many minutes it
    had been so warm: None, nobody knows, so since the last cold reading. Raises BadInput."""
    moment = At(at) if isinstance(at, date) else at
    where, now = _book(p, place, temp_f, humidity, moment, since)
    said = f"Measured {temp_f:g} F in {p.place_paths().get(where.id, where.name)}"
    said += f" on {dates.say(moment.day)}." if moment else "."
    # What it costs is reckoned when others may write again.
    new = next((one for one in now.facts if isinstance(one, Read) and one not in where.facts), None)
    asked = [] if new is None else [*_since_when(where, new), *same_minute(now, new)]
    here = [one for one in [p.places.get(where.id)] if one is not None]
    return Done(said, (*asked, *_notices(p, here)))


@booked
def _book(
    p: Pantry,
    place: str,
    temp_f: float,
    humidity: float | None,
    moment: At | None,
    since: int | None,
) -> tuple[Place, Place]:
    """The place as it was, and as it is with the reading."""
    where = place_ever(p, place, begins_at(p, moment))
    if moment is not None and moment.day > p.today:
        raise BadInput(f"{dates.say(moment.day)} is still to come: give the day it was read.")
    refuse_impossible(humidity, since)
    p.book(Reading(where.id, temp_f, humidity, since), **when(moment))
    return where, p.ever[where.id]


#: A reading says no more than this of the time before it.
_LONGEST_MIN = 30 * 24 * 60


def refuse_impossible(humidity: float | None, since: int | None) -> None:
    """Raises BadInput for a humidity that no air has, or a time before it that is too long."""
    if humidity is not None and not 0 <= humidity <= 100:
        raise BadInput("Humidity lies between 0 and 100 %.")
    if since is not None and not 0 <= since <= _LONGEST_MIN:
        raise BadInput("Say how long it had been so: 90m or 3h, at most 30 days.")


def needs_since(place: Place, temp_f: float) -> bool:
    """Whether a reading is one of which it matters since when it was so."""
    return place.climate.is_cold and too_warm(place.climate, temp_f)


def _since_when(place: Place, new: Read) -> list[str]:
    """Since when a warm reading counts of which that is not said: the last cold one before it."""
    if new.since is not None or not needs_since(place, new.temp_f):
        return []
    cold = (
        one
        for one in reversed(place.facts)
        if isinstance(one, Read) and not too_warm(place.climate, one.temp_f)
    )
    last = next((one.when for one in cold if one.when.last < new.when.first), None)
    known = f"the reading of {_say(last)}" if last is not None else "it was last known cold"
    return [
        f"Since when is not said, so it counts since {known}: `undo` it and say --since 90m "
        "where you know."
    ]


def same_minute(place: Place, new: Read) -> list[str]:
    """That another reading stands for the same minute, and says otherwise."""
    others = dict.fromkeys(
        f"{one.temp_f:g} F"
        for one in place.facts
        if isinstance(one, Read) and one.when[:2] == new.when[:2] and one.temp_f != new.temp_f
    )
    if not others or new.when.first != new.when.last:
        return []
    return [
        f"{' and '.join(others)} {agreed(len(others), 'was', 'were')} measured there in the same "
        "minute. Which came first is not known, so the strictest order counts: put right or take "
        "back what is wrong, and read it again in a minute."
    ]


def _say(when: When) -> str:
    """The day, and the hour where it is known."""
    hour, minute = divmod((when.first + when.zone) % DAY_MIN, 60)
    known = f" {hour:02}:{minute:02}" if when.first == when.last else ""
    return f"{dates.say(when.day)}{known}"


def read_since(text: str, now: datetime | None = None) -> int | None:
    """("90m", "1h30", "1-2 hours", "unknown") -> minutes, the longest of several; None where nobody
    knows. An hour of the day ("6 pm", "yesterday 18:00") counts until `now`, the moment of the
    reading, where that is known. Raises BadInput."""
    if is_unknown(text) or text.strip().casefold() == "nobody knows":
        return None
    if now is not None and re.search(r"\d:\d\d$", in_figures(text)):
        from pantry_tui.services.stock.cut_hours import times
        from pantry_tui.services.stock.cut_times import spoken  # few say it by the clock

        begun, end = times(spoken(text, now.date()), f"{now:%Y-%m-%d %H:%M}", now.date())
        if begun is None:
            return None
        longest = local_times(end)[1] - local_times(begun)[0]
        return int(longest.total_seconds()) // 60
    plain = spelled_out(text)
    unit = re.search(r"[a-z]", plain)
    minutes = all_minutes(plain) if unit else []
    if not minutes:
        raise BadInput(f"{text[:30]!r} is no length of time: write 90m, 2h or unknown.")
    return math.ceil(max(minutes))


#: What a thermometer can show in a place of each climate, °F; a bare number outside it is asked
#: about. Wide on purpose: a broken fridge is warm.
_POSSIBLE_F = {
    Climate.FREEZER: (-15.0, 80.0),
    Climate.FRIDGE: (25.0, 95.0),
    Climate.CELLAR: (25.0, 95.0),
    Climate.PANTRY: (32.0, 115.0),
    Climate.ROOM: (32.0, 125.0),
}


def read_warmth(p: Pantry, climate: Climate, typed: str, about: str = "temp") -> float:
    """("38F", "3C", "38") -> °F; a bare number is meant as the household's units say. Raises
    BadInput, and Unclear (`about` what) for a bare number that no such place can have."""
    warm = read_temperature(typed, p.bare_degree)
    low, high = _POSSIBLE_F[climate]
    bare = re.search(r"[fFcC]", typed) is None
    if bare and not low <= warm <= high:
        number = typed.strip().rstrip("°").strip()
        both = (f"{number}F", f"{number}C")
        raise Unclear(
            f"{number} without a unit is no temperature of a {climate}: write {' or '.join(both)}.",
            about,
            typed.strip(),
            both,
        )
    return warm


def read_line(p: Pantry, place: str, typed: str) -> Done:
    """The same from "38F", "3C 90%", "45F since 90m" as a person types it."""
    told, _, after = typed.partition("since")
    words = told.replace("%", " ").split()
    if not 1 <= len(words) <= 2:
        raise BadInput("Write the temperature, and the humidity if you know it: 38F 90%.")
    humidity = read_humidity(words[1]) if len(words) == 2 else None
    warm = read_warmth(p, p.find_place(place).climate, words[0])
    since = read_since(after, this_minute(p)) if after.strip() else None
    return read(p, place, warm, humidity, since=since)


def read_humidity(typed: str) -> float:
    """("90", "90 %") -> 90.0. Raises BadInput."""
    try:
        return float(typed.replace("%", " "))
    except ValueError:
        raise BadInput(f"{typed[:20]!r} is no humidity: write 90 or 90%.") from None


def this_minute(p: Pantry, at: At | None = None) -> datetime | None:
    """The minute of a reading, where it is known."""
    if at is None:
        return None if p.clock.day_alone else p.clock.recorded.replace(tzinfo=None)
    if at.minute is None:
        return None
    return datetime.combine(at.day, time(at.minute // 60, at.minute % 60))


def notices(p: Pantry) -> list[str]:
    """One sentence for every place whose last reading costs something, worst first."""
    return list(_notices(p, p.places.values()))


def _notices(p: Pantry, places: Iterable[Place]) -> Iterable[str]:
    ready(p)
    read_off = [one for one in places if one.reading is not None]
    outside = [one for one in read_off if not warmth.in_range(one)]
    damp = [one for one in read_off if one.reading and (one.reading.humidity or 0) >= _DAMP]
    if not outside and not damp:
        return
    paths = p.place_paths()
    with reading(p.path):
        costs = table.costs(p.store.db, p.today.isoformat()) if outside else {}
        dry = {one.id: table.codes_in(p.store.db, one.id, _DRY) for one in damp}
    for place in damp:
        if codes := dry[place.id]:
            yield _feel_it(place, paths[place.id], codes)
    for place in outside:
        said = _said(costs[place.id]) if place.id in costs else ""
        if said and place.reading is not None:
            read_on = dates.say(place.reading.when.day)
            yield f"{paths[place.id]} measured {place.reading.temp_f:g} F on {read_on}: {said}."


#: %; nothing is published for the air about dried food: a choice of our own.
_DAMP = 70.0
_DRY = ("dried", "freeze-dried")
_MOST_CODES = 6


def _feel_it(place: Place, path: str, codes: list[str]) -> str:
    """What damp air may do to dried food, which no figure says."""
    assert place.reading is not None
    named = ", ".join(codes[:_MOST_CODES]) + (" ..." if len(codes) > _MOST_CODES else "")
    return (
        f"{path} measured {place.reading.humidity:g} % humidity on "
        f"{dates.say(place.reading.when.day)}, and dried food stands there ({named}). No figure is "
        "published for damp air. Keep it shut tight and feel it: what is limp, sticky or clumped "
        "has drawn water, so dry it again. Mould or a musty smell: discard, and record it with "
        "`sign`."
    )


def _said(cost: table.Cost) -> str:
    """What the warmth or cold of its last reading does to what stands there, "" for nothing."""
    parts = []
    if cost.spoilt:
        parts.append(f"{cost.spoilt} must be discarded")
    if cost.hurried:
        parts.append(f"{cost.hurried} must be in the cold within two hours of leaving it")
    if cost.unknown:
        parts.append(
            f"{cost.unknown} {agreed(cost.unknown, 'has', 'have')} no published figure there"
        )
    if cost.shorter:
        parts.append(
            f"{cost.shorter} {agreed(cost.shorter, 'loses', 'lose')} quality, up to "
            f"{counted(cost.days, 'days')} of it"
        )
    return "; ".join(parts)
