"""Why something is in the week, in a sentence with its number: "1 of 14 jars; one every two weeks
lasts to July". The pace is the one that the outlook says."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from datetime import date

from pantry_tui.core import dates
from pantry_tui.core.amounts import kitchen_count
from pantry_tui.core.canned import PROCESSED
from pantry_tui.core.keeping.limits import Judgement
from pantry_tui.core.log.payloads import Entry
from pantry_tui.core.model import Container
from pantry_tui.core.plan.menu import Why
from pantry_tui.core.plan.pace import CRUMB, Pace
from pantry_tui.core.plan.pace_words import Unit, a_week, month, pressing
from pantry_tui.core.safety import seals
from pantry_tui.core.text import counted
from pantry_tui.core.words import Group, Method, State
from pantry_tui.services.pantry import Pantry
from pantry_tui.services.plan.appetite import appetite
from pantry_tui.services.plan.freezing import freezer
from pantry_tui.services.plan.one_piece import cooked_days, pieces
from pantry_tui.services.plan.paces import beyond, paced

_RAW = frozenset({Method.FROZEN, Method.FRESH, Method.BOUGHT})


def reasons(
    p: Pantry,
    entry: Entry,
    left: Sequence[Container],
    servings: float,
    judged: Judgement,
    so_far: float = 0.0,
) -> Iterable[str]:
    """Why it is in the week, how much of what stands it is, and what its opening ties up; with it
    the week has `so_far` servings of its food."""
    yield _head(p, entry, left, servings, judged, so_far)
    if seals.FIRST in judged.standing:
        yield seals.FIRST
    batch = p.stock.batches[left[0].batch]
    if pieces(p, batch, left[0]) == 1 and not left[0].begun:
        days = counted(cooked_days(p, batch), "days")
        yield f"Cook it whole; booked as a cooked meal, what is left of it keeps {days} from then."
    if entry.dish and entry.why != Why.DISH:
        yield f"For {entry.dish}."
    if entry.later >= 1:
        by = f": finish it by {dates.say(entry.until)}" if entry.until else ""
        days = f"{len(entry.days)} days" if len(entry.days) > 1 else "that day"
        yield f"It is for {days}, and about {_some(entry.later)} for next week{by}."
    elif len(entry.days) > 1:
        yield f"It is for {len(entry.days)} days: finish it by {dates.say(entry.days[-1])}."
    if entry.spare >= 1:
        one = round(entry.spare) == 1
        them = "it" if one else "them"
        yield (
            f"About {_some(entry.spare)} {'is' if one else 'are'} more than you can eat by its "
            f"last safe day: share {them}{_freezes(p, left[0], them)} on the first day."
        )


def _freezes(p: Pantry, container: Container, them: str) -> str:
    """How the rest of it may be frozen on the day on which it is opened, where that is published:
    what is canned or cooked, once it is out of its jar, and raw meat, fresh or thawed, once it is
    cooked (USDA FSIS, "Freezing and Food Safety", from memory)."""
    batch, place = p.stock.batches[container.batch], freezer(p)
    if not place:
        return ""
    if batch.method in PROCESSED or batch.method is Method.MEAL:
        how = f'`repack {batch.code} "1 box {batch.food.name}, {place}"`'
        return f" or freeze {them} ({how})"
    if batch.method in _RAW and batch.food.group in (Group.MEAT, Group.FISH):
        return f", or cook {them} and freeze the meal,"
    return ""


def _head(
    p: Pantry,
    entry: Entry,
    left: Sequence[Container],
    servings: float,
    judged: Judgement,
    so_far: float,
) -> str:
    food = p.stock.batches[left[0].batch].food
    its = paced(p, food.name, food.group)
    found, unit = its.pace, its.unit
    much = _part(servings, found.servings, unit)
    near = [day for day in (judged.best_by, judged.discard_after) if day and day >= p.today]
    match Why(entry.why):
        case Why.KEPT:
            return f"You chose it; it is {much}."
        case Why.MUST:
            return f"It is {_state(left[0])}: its clock runs; it is {much}."
        case Why.DUE:
            return f"{_due_by(p, near, judged)}; it is {much}."
        case Why.GUESTS:
            heads = appetite(p).sit(entry.days[0])
            return f"For the {heads} at the table; it is {much}."
        case Why.DISH:
            return f"For {entry.dish}; it is {much}." if entry.dish else f"It is {much}."
        case _ if judged.best_by is not None and judged.best_by < p.today:
            return f"Past its best since {dates.say(judged.best_by)}; it is {much}."
        case _ if over := beyond(p, food.name, food.group):
            if so_far > appetite(p).of_food(food.name) + CRUMB:
                return f"{much[:1].upper()}{much[1:]}; more falls due than is usual in a week."
            # How much, and what else to do with it, is said once, in the outlook.
            return f"{much[:1].upper()}{much[1:]}; {over}."
        case _ if _ahead(found, unit, servings, so_far):
            return f"{much[:1].upper()}{much[1:]}; {_faster(entry, found, unit, so_far)}."
        case _ if hurry := pressing(found, unit, its.passing):
            return f"{much[:1].upper()}{much[1:]}; {hurry}."
        case _:
            rate = a_week(found.can, unit, at_most=True)
            lasts = "lasts" if rate.startswith("one ") else "last"
            return f"{much[:1].upper()}{much[1:]}; {rate} {lasts} to {month(its.harvest, p.today)}."


def _ahead(found: Pace, unit: Unit, servings: float, so_far: float) -> bool:
    """Whether the week has more of it than its pace, by more than one of it: it is then not there
    because of the pace."""
    one = servings if unit.noun == "servings" else unit.servings
    return so_far > max(found.needs, found.can) + one + CRUMB


def _faster(entry: Entry, found: Pace, unit: Unit, so_far: float) -> str:
    """ "with it 3 this week, ahead of its pace of one jar every six weeks"."""
    much = kitchen_count(so_far) if unit.noun == "servings" else str(unit.count(so_far))
    want = " for want of another of its kind that day" if entry.why == Why.TABLE else ""
    rate = a_week(max(found.needs, found.can), unit, at_most=found.can >= found.needs)
    return f"with it {much} this week{want}, ahead of its pace of {rate}"


def _due_by(p: Pantry, near: Sequence[date], judged: Judgement) -> str:
    """Its nearer day, which kind of day that is, and that nobody is there then."""
    if not near:
        return "It falls due this week"
    day = min(near)
    kind = "Eat" if day == judged.discard_after else "Best"
    away = "" if appetite(p).sit(day) else ", when nobody is at home"
    return f"{kind} by {dates.say(day)}{away}"


def _part(servings: float, whole: float, unit: Unit) -> str:
    """ "1 of 14 jars", "4 of 88 servings", "the last 2 jars"."""
    if unit.noun == "servings":
        mine, all_ = kitchen_count(servings), kitchen_count(max(whole, servings))
    else:
        mine = str(unit.count(servings))
        all_ = str(max(unit.count(whole), unit.count(servings)))
    if mine == all_:
        noun = unit.one if mine == "1" else unit.noun
        return f"the last {noun}" if mine == "1" else f"the last {mine} {noun}"
    return f"{mine} of {all_} {unit.noun}"


def _state(container: Container) -> str:
    return "thawed" if container.state is State.THAWED else "open"


def _some(servings: float) -> str:
    return "one serving" if round(servings) == 1 else f"{servings:.0f} servings"
