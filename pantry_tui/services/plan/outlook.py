"""Supply against time, per food, per group and for the household, to the next harvest; both
alarms; what to put up next, and which food stands in for a crop that failed."""

from __future__ import annotations

from collections.abc import Sequence
from datetime import date

from pantry_tui.core.canned import LIDDED
from pantry_tui.core.plan import pace_words as saying
from pantry_tui.core.plan.outlook import together
from pantry_tui.core.plan.pace import Portion, next_harvest
from pantry_tui.core.plan.range_words import SUPPOSED, range_note
from pantry_tui.core.plan.replay import band
from pantry_tui.core.plan.suppose import Suppose
from pantry_tui.core.text import begun
from pantry_tui.core.words import Group
from pantry_tui.services.batchwork import jars
from pantry_tui.services.books.rows import FoodAhead, OutlookView
from pantry_tui.services.pantry import Pantry
from pantry_tui.services.plan.basis import Basis, as_it_is, supposing
from pantry_tui.services.plan.foods_ahead import OneFood, row
from pantry_tui.services.plan.foods_ahead import foods as foods_of
from pantry_tui.services.plan.putup_next import Ask
from pantry_tui.services.plan.shifting import shift
from pantry_tui.services.stock.ready import ready


def outlook(
    p: Pantry,
    until: date | None = None,
    ask: Ask | None = None,
    suppose: Suppose | None = None,
) -> OutlookView:
    """Every food that stands or was eaten lately, the most pressing first. `until` replaces all
    harvests. What is kept apart as a gift is no supply, and is counted by itself. With `suppose`
    as it would be then."""
    ready(p)
    ask = ask or Ask()
    basis = supposing(p, suppose) if suppose else as_it_is(p)
    foods = foods_of(p, until, basis)
    plans = {one.name: row(p, one, ask, basis) for one in foods}
    shifts = shift(p, foods, plans)
    rows = sorted(plans.values(), key=lambda one: (-one.lost, one.runs_out or date.max, one.food))
    groups = [
        _together(p, basis, group.value, [one for one in foods if one.group is group], rows)
        for group in sorted(Group, key=str)
        if any(one.group is group for one in foods)
    ]
    notes = [one.short_lived for one in rows if one.short_lived] if ask.years > 1 else []
    notes += jars.enough(
        p,
        [
            (plans[one.name].container, plans[one.name].put_up or 0, one.way.batch.method in LIDDED)
            for one in foods
        ],
    )
    return OutlookView(
        p.today,
        tuple(rows),
        tuple(groups),
        _together(p, basis, "whole household", foods, rows),
        tuple(_alarms(rows)),
        tuple(shifts),
        (*(f"{SUPPOSED}{one}." for one in (suppose.says if suppose else ())), *notes),
        range_note(sum(one.replayed is not None for one in foods), len(foods)),
    )


# -- groups and the household ----------------------------------------------------------------------


def _together(
    p: Pantry, basis: Basis, name: str, foods: Sequence[OneFood], rows: Sequence[FoodAhead]
) -> FoodAhead:
    """The same of several foods: a group by its own ceiling, the household by all of them."""
    mine = {one.name for one in foods}
    groups = {one.group for one in foods}
    ceiling = sum(basis.appetite.of_group(group) for group in groups)
    parts = [part for one in foods for part in one.paced.stands.parts]
    found = together(
        [(one.ahead, one.harvest) for one in foods],
        parts,
        p.today,
        ceiling,
        basis.factors,
        Portion(sum(one.paced.stands.in_week.servings for one in foods), None),
    )
    harvest = min((one.harvest for one in foods if one.comes), default=None)
    rows = [row for row in rows if row.food in mine]
    known = [row.put_up for row in rows if row.put_up is not None]
    weights = [row.pounds for row in rows if row.pounds is not None]
    says = ""
    if found.pace.needs > ceiling and found.lost >= saying.BULK_ALARM:
        says = (
            f"{begun(name)}: {found.pace.needs:.0f} servings a week fall due and you eat "
            f"{ceiling:g} at most: about {found.lost:.0f} servings pass their date."
        )
    return FoodAhead(
        food=name,
        group=name if len(groups) == 1 else "",
        servings=round(found.pace.servings, 1),
        pace_need=round(found.pace.needs, 2),
        pace_can=round(found.pace.can, 2),
        rate=round(found.rate, 2),
        harvest=harvest,
        runs_out=found.runs_out,
        lost=round(found.lost, 1),
        left=round(found.left, 1),
        put_up=sum(known) if known else None,
        supply=found.supply,
        says=says,
        pace_says=saying.pace_in_words(
            name,
            parts,
            found,
            saying.SERVINGS,
            harvest or next_harvest(None, p.today),
            p.today,
            until="the harvest of each" if harvest else "",
            comes=harvest is not None,
        ),
        hoarding=says,
        pounds=round(sum(weights), 1) if weights else None,
        reserved=sum(row.reserved for row in rows),
        lost_range=_lost_range(foods),
    )


def _lost_range(foods: Sequence[OneFood]) -> tuple[float, float] | None:
    """Of several together, replay by replay; what has no weeks of its own counts as reckoned."""
    if not any(one.replayed for one in foods):
        return None
    rest = sum(one.ahead.lost for one in foods if one.replayed is None)
    again = zip(*(one.replayed.lost for one in foods if one.replayed), strict=True)
    return band([rest + sum(lost) for lost in again])


# -- alarms -------------------------------------------------------------------------------------


def _alarms(rows: Sequence[FoodAhead]) -> list[str]:
    """The worst three, in servings lost, left over or missed; where both alarms hold, the worst of
    each kind is among them."""
    much = sorted((r for r in rows if r.hoarding), key=lambda r: -(r.lost + r.left))
    little = sorted((r for r in rows if r.rationing), key=lambda r: -_missed(r))
    ranked = [(r.lost + r.left, r.hoarding) for r in much] + [
        (_missed(r), r.rationing) for r in little
    ]
    ranked.sort(key=lambda one: -one[0])
    worst = [said for _, said in ranked[:3]]
    for kind in ([r.hoarding for r in much], [r.rationing for r in little]):
        if kind and not set(kind) & set(worst):
            worst[-1] = kind[0]
    return worst


def _missed(row: FoodAhead) -> float:
    assert row.runs_out is not None
    if row.harvest is None:
        return 0.0
    return row.rate * (row.harvest - row.runs_out).days / 7
