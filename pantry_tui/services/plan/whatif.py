"""The outlook as it is, and as it would be: read from words, reckoned side by side."""

from __future__ import annotations

import re
from collections.abc import Iterable, Sequence
from datetime import date

from pantry_tui.core import dates
from pantry_tui.core.dataclass import dataclass
from pantry_tui.core.plan import pace_words as saying
from pantry_tui.core.plan.appetite import at_table, days_from
from pantry_tui.core.plan.range_words import from_to
from pantry_tui.core.plan.seats import Days, read_days, read_people, read_seats, said_days
from pantry_tui.core.plan.suppose import Suppose
from pantry_tui.core.text import clean, counted
from pantry_tui.core.words import Group
from pantry_tui.errors import BadInput
from pantry_tui.services.books.past import by_food
from pantry_tui.services.books.rows import FoodAhead, OutlookView, Pair, WhatIf
from pantry_tui.services.pantry import Pantry
from pantry_tui.services.plan.appetite import LONGEST, appetite
from pantry_tui.services.plan.outlook import outlook
from pantry_tui.services.plan.putup_next import Ask

_EAT = re.compile(r"(.+?) (\d{1,3}(?:\.\d{1,2})?)(?: servings)?(?: a week)?")
_LINE = re.compile(r"(people|guests|away|without|eat)\b[ :]*(.*)")
#: The number first, as it is said: "4 people", "6 guests from 24 dec to 2 jan".
_NUMBER_FIRST = re.compile(r"([a-z]+|\d{1,3}) (people|guests)\b(.*)")
SHORT = "guests 6 from 24 dec to 2 jan, without beans"
EXAMPLE = "people 4, guests 6 from 24 dec to 2 jan, away 3 to 9 jan, without beans, eat potatoes 15"


@dataclass(frozen=True, slots=True)
class Typed:
    """What is supposed, as it was typed."""

    people: int | None = None
    guests: Sequence[str] = ()
    away: Sequence[str] = ()
    without: Sequence[str] = ()
    eat: Sequence[str] = ()

    def __bool__(self) -> bool:
        return self.people is not None or any((self.guests, self.away, self.without, self.eat))


def what_if(
    p: Pantry, suppose: Suppose, until: date | None = None, ask: Ask | None = None
) -> WhatIf:
    """Both outlooks; what is supposed stands in the notes of the second."""
    return WhatIf(outlook(p, until, ask), outlook(p, until, ask, suppose))


def read(p: Pantry, typed: Typed) -> Suppose:
    """Raises BadInput for what is no number, day or food of this household."""
    people = typed.people
    if people is not None and not 1 <= people <= 100:
        raise BadInput("The household must be 1 to 100 people.")
    table: dict[date, int] = {}
    says = [] if people is None else [f"{people} usually eat"]
    says += [_guests(p, line, people, table) for line in typed.guests]
    says += [_sit(0, read_days(line, p.today), table) for line in typed.away]
    without: set[str] = set()
    for name in typed.without:
        foods = _foods(p, name)
        without |= set(foods)
        says.append(f"nobody eats {', '.join(foods)}")
    eat: dict[str, float] = {}
    says += [_eat(p, line, eat) for line in typed.eat]
    return Suppose(people, table, frozenset(without), eat, tuple(says))


def read_line(p: Pantry, line: str) -> Suppose:
    """The same from one line, its parts between commas. Raises BadInput."""
    people: int | None = None
    found: dict[str, list[str]] = {"guests": [], "away": [], "without": [], "eat": []}
    for part in filter(None, (one.strip() for one in re.split(r"[,;]", line.lower()))):
        turned = _NUMBER_FIRST.fullmatch(part)
        match = _LINE.fullmatch(f"{turned[2]} {turned[1]}{turned[3]}" if turned else part)
        if match is None or not match[2]:
            raise BadInput(f"{clean(part)[:40]!r} is not understood: write {EXAMPLE}.")
        what, rest = match.groups()
        if what == "people":
            people = read_people(rest)
        else:
            found[what].append(rest)
    typed = Typed(people, **found)
    if not typed:
        raise BadInput(f"Nothing is supposed: write {EXAMPLE}.")
    return read(p, typed)


def _guests(p: Pantry, line: str, people: int | None, table: dict[date, int]) -> str:
    usual = people or appetite(p).people
    sit, days = read_seats(line, usual, p.today, guests=True)
    return _sit(usual if sit is None else sit, days, table)


def _sit(people: int, days: Days, table: dict[date, int]) -> str:
    """So many sit at the table on those days; in words."""
    first, last = days
    if not 0 <= (last - first).days < LONGEST:
        raise BadInput(f"The last day lies before the first, or more than {LONGEST} days after it.")
    if people > 100:
        raise BadInput("At the table are 0 to 100 people.")
    table.update(dict.fromkeys(days_from(first, (last - first).days + 1), people))
    return f"{at_table(people)} {said_days(first, last)}"


def _eat(p: Pantry, line: str, eat: dict[str, float]) -> str:
    match = _EAT.fullmatch(" ".join(line.lower().split()))
    if match is None:
        raise BadInput(
            f"{clean(line)[:40]!r}: say a food and its servings a week for the household: "
            "potatoes 15."
        )
    foods = _foods(p, match[1])
    if len(foods) > 1:
        raise BadInput(f"{clean(match[1])[:40]!r} is {', '.join(foods)}: name one of them.")
    eat[foods[0]] = float(match[2])
    return f"{foods[0]} {counted(float(match[2]), 'servings')} a week"


def _foods(p: Pantry, typed: str) -> Sequence[str]:
    """The foods of this household that are meant: by name, else those that have the word in their
    name, else those of a group. Raises BadInput."""
    ours = by_food(p)
    facts = p.facts(typed)
    if facts is not None and facts.name in ours:
        return [facts.name]
    word = " ".join(typed.lower().split())
    found = [name for name in ours if _has(name, word)]
    if not found and word in tuple(Group):
        found = [name for name, some in ours.items() if some[0].group.value == word]
    if not found:
        raise BadInput(f"{clean(typed)[:40]!r} is no food of your stores: see `outlook`.")
    return sorted(found)


def _has(name: str, word: str) -> bool:
    """Whether its words are among those of a name, one or many of them."""
    have = set(name.split()) | {one.removesuffix("s") for one in name.split()}
    return all(one in have or one.removesuffix("s") in have for one in word.split())


def changed(found: WhatIf) -> list[Pair]:
    """Foods, groups and the household whose outlook would be another one, with what of it."""
    pairs = [*_pairs(found.now, found.what_if), (found.now.household, found.what_if.household)]
    told = ((now.food, _told(now), _told(then)) for now, then in pairs)
    return [
        Pair(food, *(", ".join(side[what] for what in what_else) for side in (mine, others)))
        for food, mine, others in told
        if (what_else := [what for what in mine if mine[what] != others[what]])
    ]


def _pairs(now: OutlookView, then: OutlookView) -> Iterable[tuple[FoodAhead, FoodAhead]]:
    for mine, others in ((now.foods, then.foods), (now.groups, then.groups)):
        by_name = {one.food: one for one in others}
        yield from ((one, by_name[one.food]) for one in mine if one.food in by_name)


def _told(one: FoodAhead) -> dict[str, str]:
    """Rounded as it is shown, so that what looks the same is the same."""
    low, high = (round(lost) for lost in one.lost_range or (one.lost, one.lost))
    first, last = one.runs_out_range or (one.runs_out, one.runs_out)
    return {
        "rate": f"{one.rate:.1f} a week",
        "ends": _ends(first, last),
        "lost": f"{from_to(low, high)} lost",
        "next": saying.put_up(one.put_up, one.container) + " next",
    }


def _ends(first: date | None, last: date | None) -> str:
    """ "gone 3 Apr to 20 May 2027", "lasts"."""
    if first is None:
        return "lasts"
    if last is None:
        return f"gone {_short(first)} or later"
    span = _short(last) if first == last else f"{_short(first)} to {_short(last)}"
    return f"gone {span}"


def _short(day: date) -> str:
    """ "3 Apr 2027": two of them side by side leave no room for the day of the week."""
    return dates.say(day).partition(" ")[2]
