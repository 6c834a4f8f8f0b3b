"""What the household eats of its stores: ceilings a week, dislikes, meals, and who is at table."""

from __future__ import annotations

from collections.abc import Callable, Collection, Iterator
from datetime import date, timedelta

from pantry_tui.core import dates
from pantry_tui.core.log import payloads as said
from pantry_tui.core.plan.appetite import CHARTED, FOOD_CEILING, STAPLE_CEILING, Appetite, at_table
from pantry_tui.core.plan.seats import read_seats, said_days
from pantry_tui.core.text import begun, counted
from pantry_tui.core.words import Group
from pantry_tui.errors import BadInput, Unclear
from pantry_tui.services.done import Done
from pantry_tui.services.household import said_of
from pantry_tui.services.pantry import Pantry, booked
from pantry_tui.services.plan.eaten import learned
from pantry_tui.services.plan.weekdraft import load, planned_for_others

#: Days that may be marked at once.
LONGEST = 120


def appetite(p: Pantry) -> Appetite:
    """Its own words first, then what its log shows, then the charts."""
    return p.once("appetite", lambda: p.appetite(learned(p)))


@booked
def set_ceiling(p: Pantry, what: str, servings: str) -> Done:
    """Servings a person a week of a food group or a food; 0 for what nobody eats; "usual" forgets.

    Raises BadInput.
    """
    name = what.strip().lower()
    facts = None if name in tuple(Group) else p.facts(what)
    if name not in tuple(Group):
        if facts is None:
            groups = ", ".join(Group)
            raise BadInput(f"{what!r} is no food and no group; the groups are {groups}.")
        _refuse_general(p, name, facts.name)
        name = facts.name
    if servings.strip().lower() == "usual":
        p.book(said.Ceiling(name))
        return Done(f"{begun(name)}: as usual again.")
    try:
        most = float(servings)
    except ValueError:
        raise BadInput(f"{servings!r} is no number of servings: write 3, 0.5 or usual.") from None
    if not 0 <= most <= 50:
        raise BadInput("Servings a person a week lie between 0 and 50.")
    p.book(said.Ceiling(name, most))
    if most == 0:
        return Done(f"{begun(name)} will not be proposed any more.")
    eggs = facts is not None and facts.group is Group.EGG
    each = ", and two eggs are one" if eggs or name == Group.EGG else ""
    return Done(f"{begun(name)}: at most {counted(most, 'servings')} a person a week{each}.")


def _refuse_general(p: Pantry, typed: str, name: str) -> None:
    """Raises Unclear for a word that names several foods ("jam"), of which the tables took one."""
    if name == typed or not name.endswith(f" {typed}"):
        return
    kinds = [one.name for one in p.tables.foods if one.name.endswith(f" {typed}")]
    if len(kinds) > 1:
        shown = ", ".join(kinds[:6]) + (" ..." if len(kinds) > 6 else "")
        raise Unclear(
            f"{typed[:40]!r} is several foods ({shown}): say which, or a food group.",
            "food",
            typed,
            tuple(kinds),
        )


@booked
def set_people(p: Pantry, people: int) -> Done:
    """How many usually eat from the store. Raises BadInput."""
    moves = _moved_by(p, lambda: p.book(said_of(people=people)))
    return Done(f"Planning for {people}.", (*moves, *_accept_again(p)))


@booked
def set_meals(p: Pantry, meals: int) -> Done:
    """Main meals a week that come from the stores. Raises BadInput."""
    if not 1 <= meals <= 21:
        raise BadInput("Main meals a week from the stores are 1 to 21.")
    p.book(said.Household(meals=meals))
    return Done(f"Planning {meals} main meals a week from the stores.")


@booked
def set_table(p: Pantry, people: int | None, first: date, last: date | None = None) -> Done:
    """So many sit at the table from `first` to `last`: 0 away, None as usual. Raises BadInput."""
    end = last or first
    if end < first:
        raise BadInput("The last day lies before the first: turn them round.")
    if (end - first).days >= LONGEST:
        raise BadInput(f"At most {LONGEST} days at once.")
    if people is not None and not 0 <= people <= 100:
        raise BadInput("At the table are 0 to 100 people.")
    days = tuple(first + timedelta(days=n) for n in range((end - first).days + 1))
    moves = _moved_by(p, lambda: p.book(said.Table(days, people)), days)
    told = f"{said_days(first, end)}: {_sit(people, appetite(p).people)}."
    return Done(told, (*moves, *_accept_again(p, days)))


def _moved_by(
    p: Pantry, book: Callable[[], object], days: Collection[date] = ()
) -> tuple[str, ...]:
    """What of a proposed week that the household itself put on a day, or that lay on one of `days`,
    lies on another, or on none, once that is booked. An accepted one stays as it is until it is
    accepted again."""
    draft = load(p)
    in_it = any(draft.first(p.today) <= day <= draft.end for day in days)
    wished = draft.wishes.pins or draft.wishes.dishes
    if draft.plan is not None or not (in_it or wished):
        book()
        return ()
    from pantry_tui.services.plan import moved, week  # which ask for the appetite

    was = moved.lying(p, week.lying(p, draft))
    book()
    now = moved.lying(p, week.lying(p, load(p)))
    mine = moved.arranged(p, draft)
    return moved.told(*moved.off_these(was, now, frozenset(days), mine))


def _accept_again(p: Pantry, days: Collection[date] | None = None) -> tuple[str, ...]:
    """What to do where an accepted week is planned for others on one of those days, without `days`
    on any."""
    changed = planned_for_others(p, load(p), appetite(p))
    if not any(days is None or day in days for day, _ in changed):
        return ()
    return (
        "The accepted week is planned for others: accept it again (`week --accept`) to rework the "
        "days to come.",
    )


def _sit(people: int | None, usual: int) -> str:
    """ "10 at the table, 8 more than usual"."""
    if not people:
        return "as usual" if people is None else at_table(people)
    more = people - usual
    if not more:
        return f"{at_table(people)}, as usual"
    return f"{at_table(people)}, {abs(more)} {'more' if more > 0 else 'fewer'} than usual"


def read_table(p: Pantry, line: str, guests: bool = False) -> Done:
    """The same from a line: "away 24 dec to 27 dec", "8 guests on sunday", "usual on friday"; with
    `guests` a number alone is of guests."""
    people, (first, last) = read_seats(line, appetite(p).people, p.today, guests)
    return set_table(p, people, first, last)


def guests_on(p: Pantry, day: date) -> int:
    """How many sit there on a day of guests; 0 where they are no more than usual."""
    found = appetite(p)
    return found.sit(day) if found.sit(day) > found.people else 0


def table(p: Pantry) -> Iterator[tuple[date, int]]:
    """Days ahead on which it is otherwise than usual."""
    return ((day, n) for day, n in sorted(appetite(p).table.items()) if day >= p.today)


def listing(p: Pantry) -> Iterator[str]:
    """Every ceiling and where it is from; then the days otherwise than usual."""
    found = appetite(p)
    yield f"people: {found.people}"
    yield f"main meals a week from the stores: {found.meals}"
    for group in Group:
        chart = "from planning charts" if group in CHARTED else "common practice"
        origin = _origin(found, group.value, chart)
        yield f"{group}: {found.group_ceiling(group):.3g} servings a person a week ({origin})"
    yield f"any one food: {FOOD_CEILING:g} servings a person a week (from planning charts)"
    yield (
        f"potatoes, rice, pasta, bread and the like: {STAPLE_CEILING:g} servings a person a week "
        "(common practice)"
    )
    for food in sorted({*found.foods, *found.learned} - set(Group)):
        most = found.food_ceiling(food)
        yield f"{food}: {most:.3g} servings a person a week ({_origin(found, food, '')})"
    for day, people in table(p):
        yield f"{dates.say(day)}: {at_table(people)}"


def _origin(found: Appetite, name: str, otherwise: str) -> str:
    if name in found.groups or name in found.foods:
        return "yours"
    return "learned from your log" if name in found.learned else otherwise
