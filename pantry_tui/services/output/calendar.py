"""A calendar of what lies ahead, as RFC 5545: dates of food, small jobs, the accepted week with
what it thaws and opens, and harvests.

A calendar program that reads it again knows each thing by its UID: it moves what moved and shows no
longer what is gone. SEQUENCE counts what was booked of the thing, so it never falls; DTSTAMP and
LAST-MODIFIED are the moment of the last of that, and nothing in the file is the hour of its making.
Whatever a person typed is escaped.
"""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass
from datetime import UTC, date, datetime, timedelta
from functools import reduce
from operator import or_

from pantry_tui.core import dates
from pantry_tui.core.keeping.fitness import UNFIT
from pantry_tui.core.text import begun, clean, counted
from pantry_tui.core.words import State
from pantry_tui.services.batchwork import tending
from pantry_tui.services.books.past import past
from pantry_tui.services.inunits import Units
from pantry_tui.services.pantry import Pantry
from pantry_tui.services.plan import harvest
from pantry_tui.services.plan import week as weeks
from pantry_tui.services.plan.rows import Fallen, Take
from pantry_tui.services.stock import view
from pantry_tui.services.stock.rows import DueRow
from pantry_tui.store import changes
from pantry_tui.store.changes import NEVER, Changed

#: Days ahead that the calendar names small jobs; of one that comes again, the next.
JOBS_AHEAD = 60
_BESIDE = " beside the meals"


@dataclass(frozen=True, slots=True)
class _Entry:
    """One all-day event of so many days."""

    uid: str
    day: date
    said: str
    more: str
    changed: Changed
    days: int = 1


def calendar(p: Pantry) -> str:
    """Every date that lies ahead, lines folded at 75 octets.

    Of what must not be eaten any more no date is ahead.
    """
    book = _Book(p)
    lines = ["BEGIN:VCALENDAR", "VERSION:2.0", "PRODID:-//pantry-tui//store dates//EN"]
    lines += ["CALSCALE:GREGORIAN", "X-WR-CALNAME:Pantry", "REFRESH-INTERVAL;VALUE=DURATION:P1D"]
    parts = (book.dates(), book.jobs(), book.week(), book.harvests())
    for one in sorted((one for part in parts for one in part), key=lambda e: (e.day, e.uid)):
        lines += _vevent(one)
    lines.append("END:VCALENDAR")
    return "".join(f"{part}\r\n" for line in lines for part in _folded(line))


class _Book:
    """What the entries are made of."""

    def __init__(self, p: Pantry) -> None:
        self.p = p
        self.units = Units.of(p)
        self.ids = {batch.code: batch.id for batch in past(p).values()}
        self._of_batch = changes.of_batches(p.store.db)
        self._of_place = changes.of_places(p.store.db)
        self._places = {path: id_ for id_, path in p.place_paths().items()}
        self._store = changes.first(p.store.db)

    def _changed(self, codes: Sequence[str] = (), place: str = "") -> Changed:
        """Of these batches where they stand; what the household says of itself changes all."""
        found = [self._of_place.get("", NEVER)]
        found += [self._of_batch.get(self.ids.get(code, ""), NEVER) for code in codes]
        for path, id_ in self._places.items():
            if place == path or place.startswith(f"{path} "):
                found.append(self._of_place.get(id_, NEVER))
        return reduce(or_, found)

    # -- dates of food ----------------------------------------------------------------------------

    def dates(self) -> Iterator[_Entry]:
        """Best-by and discard days, a batch and day each; of what is open each its own."""
        groups: dict[tuple[str, str, str], dict[date, list[DueRow]]] = {}
        for row in self.units.rows(view.due(self.p)):
            if row.verdict in UNFIT or row.hurried:
                continue  # what has hours has no day
            for kind, day in (("best by", row.good_until), ("discard after", row.last_day)):
                if day is not None and day >= self.p.today:
                    key = row.code, kind, _own_clock(row)
                    groups.setdefault(key, defaultdict(list))[day].append(row)
        for (code, kind, own), by_day in groups.items():
            for turn, day in enumerate(sorted(by_day)):
                rows = by_day[day]
                # The nearest day of a batch keeps its name when it moves; the others have a number.
                later = f"-{_number(rows[0])}" if turn else ""
                uid = f"{kind.replace(' ', '-')}-{self.ids.get(code, code)}{own}{later}"
                yield self._dated(uid, kind, day, rows)

    def _dated(self, uid: str, kind: str, day: date, rows: Sequence[DueRow]) -> _Entry:
        first = rows[0]
        state = f" ({first.state})" if first.state is not State.SEALED else ""
        where = " and ".join(f"{row.held} in {clean(row.place)}" for row in rows)
        said = f"{begun(kind)}: {first.code} {clean(first.food)}{state}, {where}"
        more = dict.fromkeys(clean(reason) for row in rows for reason in row.reasons)
        changed = reduce(or_, (self._changed([row.code], row.place) for row in rows))
        return _Entry(uid, day, said, " ".join(more), changed)

    # -- small jobs -------------------------------------------------------------------------------

    def jobs(self) -> Iterator[_Entry]:
        """Each small job on its day; what is late stands on today."""
        today = self.p.today
        for job in self.units.rows(tending.jobs(self.p, JOBS_AHEAD)):
            about = self.ids.get(job.code, "") or f"{job.food} {job.place} {self._store}"
            uid = f"job-{_plain(f'{about} {job.job}')}-{job.due:%Y%m%d}"
            said = " ".join(filter(None, (begun(job.job) + ":", job.code, clean(job.food))))
            changed = self._changed([job.code] if job.code else [], job.place)
            late = max(0, (today - job.due).days)  # it moves on, a day each day
            moved = Changed(changed.times + late, changed.last)
            yield _Entry(uid, max(job.due, today), said, clean(job.how), moved)

    # -- the accepted week ------------------------------------------------------------------------

    def week(self) -> Iterator[_Entry]:
        """Of the accepted week, what is to be thawed, opened and eaten, day by day."""
        found = weeks.accepted(self.p)
        if found is None:
            return
        takes = self.units.rows([*found.take, *found.beside])
        aside = {id(one) for one in takes[len(found.take) :]}
        meals: dict[date, list[Take]] = defaultdict(list)
        for take in takes:
            if take.thaw_by is not None and take.thaw_by >= self.p.today:
                yield self._step("thaw", take, take.thaw_by, "Begin to thaw in the fridge")
            if id(take) in aside:
                yield self._step("open", take, take.day, "Open", _BESIDE)
                continue
            for day in take.days:
                if day >= self.p.today:
                    meals[day].append(take)
        left: dict[date, list[Fallen]] = defaultdict(list)
        for one in self.units.rows(found.fallen):
            left[one.day].append(one)
        for day in sorted({*meals, *left}):
            some, not_fit = meals[day], left[day]
            codes = [take.code for take in some] + [one.code for one in not_fit]
            names = ", ".join(f"{one.code} {clean(one.food)}" for one in not_fit)
            said = f"Eat: {', '.join(map(_short, some))}" if some else f"Left out: {names}"
            lines = (*(_told(take, day) for take in some), *(clean(one.told) for one in not_fit))
            more = "\n".join(lines)
            uid = f"eat-{day:%Y%m%d}-{self._store}"
            yield _Entry(uid, day, said, more, self._changed(codes))

    def _step(self, kind: str, take: Take, day: date, words: str, aside: str = "") -> _Entry:
        uid = f"{kind}-{_plain(self._container(take))}"
        eaten = f"for {dates.say(take.day)}" if kind == "thaw" else clean(take.place)
        said = f"{words}{aside}: {_short(take)}, {eaten}"
        return _Entry(uid, day, said, _told(take, day), self._changed([take.code], take.place))

    def _container(self, take: Take) -> str:
        """Of the first of them, named as no other store names it."""
        _, _, number = take.containers[0].partition("/")
        return f"{self.ids.get(take.code, take.code)} {number}"

    # -- harvests ---------------------------------------------------------------------------------

    def harvests(self) -> Iterator[_Entry]:
        """The week in which each crop that was put up here is likely to come in again."""
        changed = self._of_place.get("", NEVER)
        of_food: Mapping[str, list[str]] = defaultdict(list)
        for batch in past(self.p).values():
            of_food[batch.food].append(batch.code)
        for one in harvest.ahead(self.p):
            uid = f"harvest-{one.first.year}-{_plain(one.food)}-{self._store}"
            whose = "your own batches" if one.own else "the usual months"
            more = f"By {whose}; the day is an estimate."
            booked = reduce(or_, (self._changed([code]) for code in of_food[one.food]), changed)
            yield _Entry(uid, one.first, f"Harvest: {clean(one.food)}", more, booked, 7)


def _own_clock(row: DueRow) -> str:
    """What is open or thawed goes by its own clock, and is known by its number."""
    if row.state in (State.OPEN, State.THAWED):
        return f"-{_number(row)}-{row.state.value}"
    return ""


def _number(row: DueRow) -> str:
    return _plain(row.container_ids[0].partition("/")[2])


def _short(take: Take) -> str:
    much = take.amount or (f"{take.count} of" if take.count > 1 else "")
    return " ".join(filter(None, (much, take.code, clean(take.food))))


def _told(take: Take, day: date) -> str:
    """One line: whence, how much, what is done first, and why."""
    opens = f"open {', '.join(take.containers)}; " if day == take.days[0] else ""
    dish = f"for {clean(take.dish)}; " if take.dish else ""
    servings = f"{counted(take.servings, 'servings')}, {clean(take.place)}"
    return f"{take.code} {clean(take.food)}: {dish}{opens}{servings}. {' '.join(take.why)}".strip()


def _plain(words: str) -> str:
    """Letters, digits and dashes alone, of any words; what is no ASCII by its number."""
    dashed = "-".join(words.lower().split())
    return "".join(
        one if one.isascii() and (one.isalnum() or one == "-") else f"{ord(one):x}"
        for one in dashed
    )


def _vevent(one: _Entry) -> list[str]:
    stamp = _utc(one.changed.last)
    return [
        "BEGIN:VEVENT",
        f"UID:{one.uid}@pantry-tui",
        f"DTSTAMP:{stamp}",
        f"LAST-MODIFIED:{stamp}",
        f"SEQUENCE:{one.changed.times}",
        f"DTSTART;VALUE=DATE:{one.day:%Y%m%d}",
        f"DTEND;VALUE=DATE:{one.day + timedelta(days=one.days):%Y%m%d}",
        f"SUMMARY:{_escaped(one.said)}",
        f"DESCRIPTION:{_escaped(one.more)}",
        "TRANSP:TRANSPARENT",
        "END:VEVENT",
    ]


def _utc(recorded: str) -> str:
    moment = datetime.fromisoformat(recorded) if recorded else datetime(1970, 1, 1, tzinfo=UTC)
    return moment.astimezone(UTC).strftime("%Y%m%dT%H%M%SZ")


def _escaped(text: str) -> str:
    for sign in ("\\", ";", ","):
        text = text.replace(sign, "\\" + sign)
    return text.replace("\n", "\\n")


def _folded(line: str) -> Iterator[str]:
    """Parts of at most 75 octets, the later ones indented; no character is cut in two."""
    part = ""
    for char in line:
        if len((part + char).encode()) > 75:
            yield part
            part = " "
        part += char
    yield part
