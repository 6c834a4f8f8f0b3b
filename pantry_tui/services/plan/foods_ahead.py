"""The outlook of one food: what stands of it till when, how much is eaten, what to put up next."""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Sequence
from datetime import date

from pantry_tui.core.dataclass import dataclass, replace
from pantry_tui.core.plan import pace_words as saying
from pantry_tui.core.plan.appetite import Appetite
from pantry_tui.core.plan.outlook import Ahead, ahead
from pantry_tui.core.plan.range_words import in_words
from pantry_tui.core.plan.replay import Replayed, replayed
from pantry_tui.core.words import Group, Method
from pantry_tui.services.books.past import Past, by_food
from pantry_tui.services.books.rating import verdicts
from pantry_tui.services.books.rows import FoodAhead, FoodYear
from pantry_tui.services.books.year import years
from pantry_tui.services.pantry import Pantry
from pantry_tui.services.plan import harvest as harvests
from pantry_tui.services.plan import paces, putup_next, ways
from pantry_tui.services.plan.basis import Basis
from pantry_tui.services.plan.paces import Paced, Portions
from pantry_tui.services.plan.putup_next import AS_EATEN, Ask, Demand, Usual
from pantry_tui.services.stock.stands import Stands


@dataclass(frozen=True, slots=True)
class OneFood:
    """One food while the outlook is reckoned."""

    name: str
    group: Group
    paced: Paced
    standing: list[Stands]
    reserved: int
    harvest: date
    comes: bool  # that day is a harvest, or was asked for
    bought: bool  # all of it, always
    puts_up: bool  # some of it, ever
    ahead: Ahead
    way: Usual
    unit: saying.Unit
    wanted: Demand
    eats: bool
    known: bool  # the rate is what the household really eats
    replayed: Replayed | None


def foods(p: Pantry, until: date | None, basis: Basis) -> list[OneFood]:
    """Every food that stands or was eaten lately."""
    books: dict[str, list[FoodYear]] = defaultdict(list)
    for year in p.once("years", lambda: years(p)):
        books[year.food].append(year)
    standing = paces.by_food(p)
    return [
        _food(p, name, batches, standing.get(name, ()), basis, books[name], until)
        for name, batches in by_food(p).items()
        if name in standing or name in basis.eaten or putup_next.comes_again(p, batches)
    ]


def _food(
    p: Pantry,
    name: str,
    batches: Sequence[Past],
    standing: Sequence[Stands],
    basis: Basis,
    book: Sequence[FoodYear],
    until: date | None,
) -> OneFood:
    own = ways.own(batches)
    way = putup_next.usual(p, own or batches)
    group = way.batch.food.group
    ours = [one for one in standing if not one.line.reserved]
    its = paces.paced(p, name, group)
    asks, stands = its.pace, its.stands
    eats, eaten = basis.appetite, basis.eaten.get(name)
    ceiling = paces.usual_room(p, eats, name, group, asks.tight)
    end = until or its.harvest
    coming = ahead(
        stands.parts,
        end,
        p.today,
        eaten=eaten,
        ceiling=ceiling,
        factors=basis.factors_of(name),
        planned=stands.in_week,
        asks=asks if end == its.harvest else paces.pace_to(p, stands, end),
    )
    # How far one looks ahead does not change how much the stock gives to its next harvest.
    most = min(asks.can, ceiling)
    wanted = putup_next.demand(p, eaten, most, book, way, batches)
    wanted = _as_said(eats, name, group, _supposed(basis, name, wanted))
    return OneFood(
        name,
        group,
        its,
        ours,
        sum(one.line.n for one in standing if one.line.reserved),
        end,
        until is not None or harvests.comes(p, name),
        all(one.method is Method.BOUGHT for one in batches),
        bool(own),
        coming,
        way,
        its.unit if ours else way.unit,
        wanted,
        eats.eats(name, group),
        name in basis.eaten and name not in basis.supposed,
        _replayed(name, stands, end, p.today, coming, basis),
    )


def _replayed(
    name: str,
    stands: Portions,
    end: date,
    today: date,
    coming: Ahead,
    basis: Basis,
) -> Replayed | None:
    """Its own weeks again and again; None where there are too few of them."""
    own = basis.own.get(name)
    if own is None or not any(own):
        return None
    return replayed(stands.parts, end, today, own, coming.rate, basis.factors, stands.in_week)


def _supposed(basis: Basis, name: str, wanted: Demand) -> Demand:
    """What is known of the household as it is, for so many mouths."""
    if name in basis.supposed:
        return replace(wanted, source="as supposed", known=True)
    if basis.mouths == 1.0 or wanted.source.startswith(AS_EATEN) or not wanted.known:
        return wanted
    return replace(wanted, a_week=wanted.a_week * basis.mouths)


def _as_said(eats: Appetite, name: str, group: Group, wanted: Demand) -> Demand:
    """No more than the household itself says that it eats."""
    said = [eats.of_food(name)] if name in eats.foods else []
    said += [eats.of_group(group)] if group.value in eats.groups else []
    most = min(said, default=wanted.a_week)
    if wanted.a_week <= most:
        return wanted
    return replace(wanted, a_week=most, source="as you said", known=True)


def container_of(one: OneFood) -> str:
    """What its number to put up counts."""
    return one.way.batch.size or one.way.unit.one


def row(p: Pantry, one: OneFood, ask: Ask, basis: Basis) -> FoodAhead:
    """As it is shown."""
    found, known = one.ahead, one.known
    most = paces.most_eaten(p, basis.appetite, one.name, one.group, found.pace.tight)
    over = saying.too_much(found, most, one.unit, one.paced.passing)
    unwanted = "" if one.eats else saying.unwanted(one.name, found, one.unit)
    end = one.harvest if one.comes else None
    much = unwanted or saying.hoarding(one.name, found, one.unit, end, p.today, over)
    scarce = known and not one.bought  # what is bought is bought again
    little = saying.rationing(one.name, found, one.unit, one.harvest, p.today) if scarce else ""
    again = one.replayed
    next_ = putup_next.plan(p, one.name, one.wanted, one.way, found.left, ask)
    return FoodAhead(
        food=one.name,
        group=one.group.value,
        servings=round(found.pace.servings, 1),
        pace_need=round(found.pace.needs, 2),
        pace_can=round(found.pace.can, 2),
        rate=round(found.rate, 2),
        harvest=end,
        runs_out=found.runs_out,
        lost=round(found.lost, 1),
        left=round(found.left, 1),
        put_up=next_.count,
        supply=found.supply,
        says=much or little,
        pace_says=unwanted
        or saying.pace_in_words(
            one.name,
            one.paced.stands.parts,
            found,
            one.unit,
            one.harvest,
            p.today,
            one.paced.passing,
            most=most,
            comes=one.comes,
        ),
        hoarding=much,
        rationing=little,
        container=container_of(one) if one.puts_up else "",
        pounds=next_.pounds,
        crop=next_.crop,
        pounds_note=next_.note,
        reckoning=next_.reckoning,
        ways=next_.ways,
        short_lived=next_.short_lived,
        reserved=one.reserved,
        tasted=verdicts(p, one.name),
        eaten_known=known,
        lost_range=again.lost_range if again else None,
        runs_out_range=again.runs_out_range if again else None,
        # Of what there is none left, no week that was eaten tells anything.
        range_says=in_words(again, one.unit, found.lost) if again and found.pace.servings else "",
    )
