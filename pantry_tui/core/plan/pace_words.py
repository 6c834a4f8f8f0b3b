"""The pace and both alarms in words: "two jars a week, or some pass their best on Sat 1 May
2027". How much is lost is one figure, `Ahead.lost`."""

from __future__ import annotations

from collections.abc import Sequence
from datetime import date
from math import ceil, floor, inf

from pantry_tui.core import dates
from pantry_tui.core.dataclass import dataclass
from pantry_tui.core.plan.outlook import Ahead
from pantry_tui.core.plan.pace import CRUMB, Pace, Portion
from pantry_tui.core.text import begun, singular

_NUMBERS = (
    "none", "one", "two", "three", "four", "five", "six", "seven", "eight", "nine", "ten",
    "eleven", "twelve",
)  # fmt: skip

_MONTHS = (
    "January", "February", "March", "April", "May", "June", "July", "August", "September",
    "October", "November", "December",
)  # fmt: skip

#: What is only a jar or two is no alarm.
ALARM = 3

#: And of a crate that is drawn from, so many servings are none.
BULK_ALARM = 12.0


@dataclass(frozen=True, slots=True)
class Unit:
    """What is counted: `servings` in one of it; `noun` in the plural, "jars" or "servings"."""

    servings: float
    noun: str

    @property
    def alarm(self) -> float:
        """Servings from which on an alarm is worth its words."""
        return BULK_ALARM if self.noun == "servings" else ALARM * self.servings

    def count(self, servings: float) -> int:
        """How many, at least one."""
        return max(1, round(servings / self.servings))

    def some(self, servings: float) -> str:
        """ "five jars"."""
        number = self.count(servings)
        return f"{word(number)} {self.one if number == 1 else self.noun}"

    @property
    def one(self) -> str:
        return singular(self.noun)


#: Where containers are of several sizes, or drawn from.
SERVINGS = Unit(1.0, "servings")


def word(number: int) -> str:
    """Small numbers as words."""
    return _NUMBERS[number] if 0 <= number < len(_NUMBERS) else str(number)


def containers(count: int, size: str) -> str:
    """(1, "half-pint jars") -> "1 half-pint jar"; (2, "1 lb packs") -> "2 x 1 lb packs"."""
    head, of, tail = " ".join(size.split()).partition(" of ")
    *before, last = head.split() or ["containers"]
    if last.isalpha():
        one = singular(last)
        last = one if count == 1 else plural(one)
    words = " ".join([*before, last])
    return f"{count} {'x ' if words[:1].isdigit() else ''}{words}{of}{tail}"


def put_up(count: int | None, size: str) -> str:
    """As `containers`, or that nobody knows yet."""
    return "not known yet" if count is None else containers(count, size or "containers")


def plural(one: str) -> str:
    """ "jar" -> "jars", "box" -> "boxes"."""
    return one + ("es" if one.endswith(("x", "s", "ch", "sh")) else "s")


def month(day: date, today: date) -> str:
    """ "May", or "May 2028" when it is far away."""
    name = _MONTHS[day.month - 1]
    return name if (day - today).days < 330 else f"{name} {day.year}"


def a_week(rate: float, unit: Unit, *, at_most: bool = False) -> str:
    """A rate in servings a week as "two jars a week" or "one jar every three weeks". Rounded so
    that it is enough, or with `at_most` so that it lasts."""
    each = rate / unit.servings
    if each < 0.005:
        return f"no {unit.noun}"
    if each > 0.95:
        near = round(each)
        if abs(near - each) < 0.05:
            return f"{word(near)} {unit.one if near == 1 else unit.noun} a week"
        return f"{each:.1f} {unit.noun} a week"
    weeks = ceil(1 / each - 0.05) if at_most else floor(1 / each + 0.05)
    return f"one {unit.one} a week" if weeks <= 1 else f"one {unit.one} every {word(weeks)} weeks"


#: What raw crops do once they are past their best.
GO_SOFT = "go soft"


def beyond(pace: Pace, most: float, unit: Unit) -> str:
    """That the pace asks for more than the `most` servings a week that the household eats; "" where
    it can keep up."""
    if pace.tight is None or pace.needs <= max(most, pace.can) * 1.02:
        return ""
    eaten = f"at most {a_week(most, unit, at_most=True)}" if most > 0 else "none of it"
    return f"more falls due than this household eats ({eaten})"


def pressing(pace: Pace, unit: Unit, passing: str = "pass their date") -> str:
    """The rate that its dates ask for, and by when; "" where it may be eaten as slowly as lasts.
    The week and the outlook say it alike."""
    if pace.tight is None or pace.needs <= pace.can * 1.02:
        return ""
    return f"{a_week(pace.needs, unit)}, or some {passing} on {dates.say(pace.tight)}"


def _of_one(passing: str) -> str:
    return passing.replace("pass their", "passes its").replace("go ", "goes ")


def too_much(found: Ahead, most: float, unit: Unit, passing: str = "pass their date") -> str:
    """As `beyond`, and what to do with all that will pass its date; at the most that is eaten some
    of it does by the tight one."""
    passing = passing if passing == GO_SOFT else "pass their date"
    over = beyond(found.pace, most, unit)
    if not over or found.pace.tight is None:
        return ""
    by = f"by {dates.say(found.pace.tight)}"
    if unit.count(found.lost) == 1:
        return (
            f"{over}: give about one {unit.one} away, or keep it in another way, or it "
            f"{_of_one(passing)} {by}"
        )
    return (
        f"{over}: give about {unit.some(found.lost)} away, or keep them in another way, or they "
        f"{passing}, the first of them {by}"
    )


def pace_in_words(
    name: str,
    parts: Sequence[Portion],
    found: Ahead,
    unit: Unit,
    harvest: date,
    today: date,
    passing: str = "pass their date",
    until: str = "",
    most: float = inf,
    comes: bool = True,
) -> str:
    """What the pace asks for, in a sentence; `passing` says what happens at the tight date, `until`
    what it lasts to, where that is not the month of one harvest; `most` are the servings a week
    that the household eats; without `comes` the day `harvest` brings none of it."""
    head, until = begun(name), until or month(harvest, today)
    pace = found.pace
    if pace.servings < CRUMB:
        again = f"; the next harvest is in {month(harvest, today)}" if comes else ""
        return f"{head}: none left{again}."
    if not any(one.servings > CRUMB for one in parts):
        return f"{head}: all of it is in the accepted week."
    if over := too_much(found, most, unit, passing):
        return f"{head}: {over}."
    if hurry := pressing(pace, unit, passing):
        if pace.tight is not None and found.lost >= unit.servings / 2:
            one = unit.count(found.lost) == 1
            verb = _of_one(passing) if one else passing
            rate, by = a_week(pace.needs, unit), dates.say(pace.tight)
            return f"{head}: {rate} by {by}, or {_as_now(found.lost, unit)} {verb}."
        return f"{head}: {hurry}."  # it is eaten fast enough, or nobody knows
    slow = "nothing hurries" if pace.tight is None else "nothing passes its date that way"
    if pace.servings < 1.5 * unit.servings:
        must = f" must last to {until}" if comes else ""
        return f"{head}: {unit.some(pace.servings)}{must}; {slow}."
    rate = a_week(pace.can, unit, at_most=True)
    return f"{head}: {rate} last{'s' if rate.startswith('one') else ''} to {until}; {slow}."


def _as_now(lost: float, unit: Unit) -> str:
    """The one figure of what passes its date, wherever it is told."""
    return f"as you eat it now about {unit.some(lost)}"


def hoarding(
    name: str, found: Ahead, unit: Unit, harvest: date | None, today: date, over: str = ""
) -> str:
    """The alarm that there is too much of it, or ""; `over` as `beyond` says it. What has no
    harvest may lie as long as it keeps."""
    head = begun(name)
    if found.lost >= unit.alarm:
        if over:
            return f"{head}: {over}."
        tight = f" by {dates.say(found.pace.tight)}" if found.pace.tight else ""
        rate = a_week(found.pace.needs, unit)
        return f"{head}: eat {rate}{tight}, or {_as_now(found.lost, unit)} pass their date."
    if found.left >= unit.alarm and harvest is not None:
        return (
            f"{head}: about {unit.some(found.left)} left over at the harvest in "
            f"{month(harvest, today)}."
        )
    return ""


def unwanted(name: str, found: Ahead, unit: Unit) -> str:
    """What to do with a food that nobody eats, or "" where none of it is left."""
    if found.pace.servings < CRUMB:
        return ""
    by = f" by {dates.say(found.pace.tight)}" if found.pace.tight else ""
    return f"{begun(name)}: not eaten here; give away {unit.some(found.pace.servings)}{by}."


def rationing(name: str, found: Ahead, unit: Unit, harvest: date, today: date) -> str:
    """The alarm that it will be gone before there is more, or "". Only where the rate is what the
    household really eats."""
    if found.runs_out is None or found.pace.servings < unit.alarm:
        return ""
    if found.pace.needs > found.pace.can:
        return ""  # eaten more slowly, some of it would pass its date
    if short(found, harvest) < unit.alarm:
        return ""
    return (
        f"{begun(name)}: gone about {dates.say(found.runs_out)}; "
        f"{a_week(found.pace.can, unit, at_most=True)} would last to {month(harvest, today)}."
    )


def short(found: Ahead, harvest: date) -> float:
    """Servings that will be missed between the day it runs out and the harvest."""
    if found.runs_out is None:
        return 0.0
    return found.rate * max(0, (harvest - found.runs_out).days) / 7
