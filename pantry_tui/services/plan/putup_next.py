"""How much to put up at the next harvest, in containers and in pounds of fresh crop.

Servings a week (as really eaten, else by the last year's book, else as many as were put up in it)
times the weeks to cover; what was given away in the last year on top, what spoiled made up for,
what will be left over taken off. Never for longer than the food keeps, nor more than twice what
there was. In a food's first year nobody knows yet. What is bought, or only stood fresh, nobody puts
up; nor again that of which none was eaten, given or made into something else in a year.
"""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Mapping, Sequence
from datetime import date, timedelta

from pantry_tui.core.amounts import kitchen_count
from pantry_tui.core.dataclass import dataclass, replace
from pantry_tui.core.model import Batch, Container, Turn
from pantry_tui.core.plan import pace_words as saying
from pantry_tui.core.plan.outlook import YEAR_WEEKS, cover, to_put_up
from pantry_tui.core.plan.pace_words import Unit
from pantry_tui.core.text import begun
from pantry_tui.core.words import State
from pantry_tui.reference.yields import load_yields
from pantry_tui.services.books.past import TOO_MUCH, Came, Past, by_food
from pantry_tui.services.books.rows import FoodYear, Way
from pantry_tui.services.pantry import Pantry
from pantry_tui.services.plan.eaten import by_week
from pantry_tui.services.plan.nouns import counted_as
from pantry_tui.services.plan.own_yields import own_yields
from pantry_tui.services.plan.portions import MISSING, holds, leavings_of, whole
from pantry_tui.services.plan.servings import per_pint, weight
from pantry_tui.services.plan.ways import of_own, own, shared_out, shares
from pantry_tui.services.stock.came_of import born

#: Where a rate is from when the log says it.
AS_EATEN = "as eaten"
NOT_YET = "not known yet: it takes a full year of eating, giving, losing and leaving"

NONE_EATEN = "none eaten in a year"
NOT_PUT_UP = "not put up here: all of it was bought or stood fresh"

#: Size words that tell a volume; of other containers no pounds are reckoned.
_VOLUMES = ("half-pint", "half pint", "pint", "quart", "half-gallon", "gallon")

#: Containers put up so long ago say nothing of the household's usual way any more.
_USUAL = timedelta(days=730)

#: What was put up within so long is likely to be put up again.
_LATELY = timedelta(days=400)

#: From the first batch of a food to one harvest later; the next may come in some weeks sooner.
_FULL_YEAR = timedelta(weeks=46)
#: What ran out in two months is wanted for longer, and for how long nobody knows: at most so many
#: times what there was. Common practice, no source.
_AT_MOST = 2.0

#: A year of a food that runs for less than this says little.
_TELLING = timedelta(weeks=8)


@dataclass(frozen=True, slots=True)
class Ask:
    """What a person asks of the plan: a share on top, and how many years to cover."""

    margin: float = 0.0
    years: int = 1


@dataclass(frozen=True, slots=True)
class Usual:
    """How the household usually keeps a food: one container that stands for all of its kind."""

    batch: Batch
    container: Container
    servings: float
    unit: Unit


@dataclass(frozen=True, slots=True)
class Demand:
    """Servings a week of one food and where the figure is from; what the last year corrects.
    `known` is False in a first year, when there is none yet."""

    a_week: float
    source: str
    known: bool
    given: float = 0.0
    spoiled: float = 0.0


@dataclass(frozen=True, slots=True)
class Next:
    """What to put up next of one food; `count` None where nobody knows yet."""

    count: int | None
    pounds: float | None
    crop: str
    note: str
    reckoning: str
    short_lived: str
    ways: tuple[Way, ...] = ()


def comes_again(p: Pantry, batches: Sequence[Past]) -> bool:
    """Whether it was put up in two years and lately, so that it is planned for though none is left
    and it was gone too soon to learn from."""
    made = [one.born for one in own(batches)]
    return bool(made) and p.today - min(made) >= _FULL_YEAR and p.today - max(made) < _LATELY


_Kind = tuple[str, str, float]  # method, size, servings


def usual(p: Pantry, batches: Sequence[Past]) -> Usual:
    """The kind of container most were put up in within two years (else ever); a youngest one."""
    lately = _kinds(p, batches, p.today - _USUAL) or _kinds(p, batches, date.min)
    count = {kind: sum(one.n for _, one in some) for kind, some in lately.items()}
    young = {kind: max(one.born for _, one in some) for kind, some in lately.items()}
    most = max(lately, key=lambda kind: (count[kind], young[kind]))
    last = max(batch.id for batch, one in lately[most] if one.born == young[most])
    batch = p.stock.batches[last]
    mine = [c for c in p.containers_of(batch) if whole(p, c) == most[2]]
    youngest = max(mine, key=lambda c: (born(batch, c), c.id))
    return Usual(
        batch,
        youngest,
        most[2],
        Unit(most[2], counted_as(batch.food.name, batch.method, batch.size)),
    )


def _kinds(
    p: Pantry, batches: Sequence[Past], since: date
) -> Mapping[_Kind, Sequence[tuple[Past, Came]]]:
    found: dict[_Kind, list[tuple[Past, Came]]] = defaultdict(list)
    servings = holds(p)
    for batch in batches:
        for one in batch.came:
            if one.born >= since:
                size = servings(batch.food, batch.group, batch.method, one.held)
                found[batch.method.value, batch.size, size].append((batch, one))
    return found


def demand(
    p: Pantry, eaten: float | None, can: float, years: Sequence[FoodYear], way: Usual,
    batches: Sequence[Past],
) -> Demand:  # fmt: skip
    """What the household wants of one food; `eaten` is what its log says, None when not yet, `can`
    what the stock can give."""
    telling = [year for year in years if (year.end or p.today) - year.start >= _TELLING]
    closed = [year for year in telling if year.end is not None]
    last = closed[-1] if closed else telling[-1] if telling else None
    if last is None or p.today - min(one.born for one in batches) < _FULL_YEAR:
        return Demand(can if eaten is None else eaten, "not known yet", known=False)
    each = _each(last, way)
    held = (last.opening + last.made) * each
    gone = (last.eaten + last.unrecorded) * each
    a_week, source = last.made * each / YEAR_WEEKS, "as many as last year"
    if eaten:
        a_week, source = eaten * of_own(p, batches), AS_EATEN
    elif _none_eaten(p, years):
        a_week, source = 0.0, NONE_EATEN
    elif closed and gone:
        a_week, source = gone / _weeks(last, batches), "by last year's book"
    most = _AT_MOST * max((one.opening + one.made) * _each(one, way) for one in years[-2:])
    if a_week * YEAR_WEEKS > most:
        a_week, source = most / YEAR_WEEKS, f"{source}, at most twice what there was"
    spoiled = _spoiled(p, last, batches) / held if held else 0.0
    return Demand(a_week, source, True, last.given * each, min(0.5, spoiled))


def _none_eaten(p: Pantry, years: Sequence[FoodYear]) -> bool:
    """Neither this year nor in the one before, by who books what it eats; what was made into
    something else is wanted."""
    if not by_week(p):
        return False
    late = p.today - timedelta(weeks=YEAR_WEEKS)
    lately = [year for year in years if (year.end or p.today) > late]
    return not any(year.eaten + year.unrecorded + year.repacked for year in lately)


def _each(year: FoodYear, way: Usual) -> float:
    """Servings in one of what a year counts: a container, a pound, a piece."""
    first = way.container.first
    return way.servings / float(first.number) if year.unit and first else way.servings


def _weeks(year: FoodYear, batches: Sequence[Past]) -> float:
    """Weeks of a closed year in which there was any of it: what ran out early was wanted longer."""
    end = year.end
    assert end is not None
    if year.closing == 0:
        late = (batch for batch in batches if batch.last >= year.start.isoformat())
        days = (one.ended for batch in late for one in batch.kept if one.ended)
        ended = [day for day in days if year.start <= day < end]
        end = min(end, max(ended, default=end) + timedelta(days=7))
    return max(1.0, (end - year.start).days / 7)


def _spoiled(p: Pantry, year: FoodYear, batches: Sequence[Past]) -> float:
    """Servings that came to nothing in that year, though there was not too much of them."""
    return sum(
        one.servings
        for one in leavings_of(p, batches, year.start, ("discarded", MISSING))
        if one.why not in TOO_MUCH and one.end < (year.end or date.max)
    )


def life_days(p: Pantry, way: Usual) -> int | None:
    """Days of quality that a fresh container has in its usual place, None without a figure."""
    turns = way.container.turns
    sealed = next((turn for turn in turns if turn.state is State.SEALED), turns[0])
    where = sealed.place or turns[0].place
    state = sealed.state or State.SEALED
    fresh = Turn(p.clock.now, "", where, state)
    container = Container(way.container.id, way.batch.id, 1, state, where or "", (fresh,))
    batch = replace(way.batch, made=p.today, printed=None, doubt=(), suspect="")
    judged = p.assess_bare(batch, container, p.clock.now).on(p.today)
    ends = [day for day in (judged.best_by, judged.discard_after) if day is not None]
    return (min(ends) - p.today).days if ends else None


def plan(p: Pantry, name: str, wanted: Demand, way: Usual, left: float, ask: Ask) -> Next:
    """What to put up of `name`; `left` servings will be left over at the harvest."""
    if not own(by_food(p)[name]):
        return Next(None, None, "", "", NOT_PUT_UP, "")
    life = life_days(p, way)
    weeks = cover(ask.years, life)
    short = _short_lived(name, life, weeks, ask)
    if not wanted.known:
        return Next(None, None, "", "", NOT_YET, short)

    def needed(servings: float) -> int:
        return to_put_up(
            wanted.a_week,
            weeks,
            1,
            servings,
            left,
            given=wanted.given,
            spoiled=wanted.spoiled,
            margin=ask.margin,
        )

    count = needed(way.servings)
    pounds, crop, note = fresh_pounds(p, way, count)
    each = _crate_pounds(way)
    if each is not None:
        pounds = float(needed(way.servings / each))  # a crate need not be full
    said = _reckoning(wanted, weeks, left, ask, way, count)
    ways = _ways(p, name, float(needed(1.0)))
    return Next(count, pounds, crop, note, said, short, ways)


def _ways(p: Pantry, name: str, servings: float) -> tuple[Way, ...]:
    """By which methods, where there are several."""
    batches = own(by_food(p)[name])
    found = shares(p, batches)
    if len(found) < 2:
        return ()
    each = {}
    for method in found:
        mine = usual(p, [one for one in batches if one.method is method])
        each[method] = mine.servings, mine.batch.size
    return shared_out(servings, found, each)


def _reckoning(
    wanted: Demand, weeks: float, left: float, ask: Ask, way: Usual, count: int
) -> str:  # fmt: skip
    parts = [f"{wanted.a_week:.1f} servings a week ({wanted.source}) for {weeks:.0f} weeks"]
    if weeks < YEAR_WEEKS * ask.years - 1:
        parts[0] += ", as long as it keeps"
    if wanted.given:
        parts.append(f"{wanted.given:.0f} to give away as in the last year")
    if ask.margin:
        parts.append(f"{ask.margin:.0%} on top")
    if wanted.spoiled >= 0.005:
        parts.append(f"{wanted.spoiled:.0%} for what spoiled")
    if left >= 0.5:
        parts.append(f"less {left:.0f} left over")
    each = f"{kitchen_count(way.servings)} in one"
    return f"{'; '.join(parts)}; {each}: {saying.containers(count, way.batch.size)}."


def _short_lived(name: str, life: int | None, weeks: float, ask: Ask) -> str:
    head = begun(name)
    if life is None:
        if ask.years == 1:
            return ""
        return f"{head}: no published figure for how long it keeps, so one year is covered."
    if weeks >= YEAR_WEEKS * ask.years - 1:
        return ""
    return f"{head}: keeps {_span(life)} at its best, so no more than that is covered."


def _span(days: int) -> str:
    if days < 21:
        return f"{days} days"
    return f"{days // 7} weeks" if days < 90 else f"{round(days / 30.44)} months"


def fresh_pounds(p: Pantry, way: Usual, count: int) -> tuple[float | None, str, str]:
    """(pounds, crop, a note with the source) for `count` containers; None where nothing is
    published for this food, method and size."""
    if way.container.bulk:
        return _of_crates(way, count)
    mine = own_yields(p).get((way.batch.food.name, way.batch.method))
    if mine is not None:
        batches = f"{mine.batches} batch{'es' if mine.batches > 1 else ''} of your own"
        return round(count * way.servings * mine.lb_a_serving, 1), mine.crop, f"by {batches}"
    found = load_yields().get((way.batch.food.name, way.batch.method))
    if found is None or not way.batch.size.lower().startswith(_VOLUMES):
        return None, "", ""
    a_pint = per_pint(p.tables.index.find(way.batch.food.name))
    pounds = count * way.servings / a_pint * found.per_pint
    words = "; ".join(filter(None, (found.wording, "an estimate" if found.weak else "")))
    source = f"{p.tables.sources[found.source]} ({found.trust.shown})"
    return round(pounds, 1), found.crop, f"{words}; {source}" if words else source


def _crate_pounds(way: Usual) -> float | None:
    """Pounds in a full crate; None for what is not drawn from, or not by weight."""
    return weight(way.container.first) if way.container.bulk else None


def _of_crates(way: Usual, count: int) -> tuple[float | None, str, str]:
    """A crate takes its own weight of the crop."""
    pounds = _crate_pounds(way)
    if pounds is None:
        return None, "", ""
    note = "the crop itself, as it was put up last"
    return round(count * pounds, 1), way.batch.food.name, note


def target(p: Pantry, wanted: Demand, way: Usual, older: float) -> int:
    """Containers that this year's harvest was asked for; `older` servings were there before."""
    weeks = cover(1, life_days(p, way))
    return to_put_up(
        wanted.a_week, weeks, 1, way.servings, older, given=wanted.given, spoiled=wanted.spoiled
    )


def containers(servings: float, way: Usual) -> int:
    """Whole containers that hold so many servings."""
    return to_put_up(servings, 1, 1, way.servings)
