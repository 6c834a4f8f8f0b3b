"""The week's menu."""

from __future__ import annotations

from operator import itemgetter
from typing import TYPE_CHECKING

from pantry_tui.cli.printing.lines import named, table
from pantry_tui.core.amounts import kitchen_count
from pantry_tui.core.dates import say
from pantry_tui.core.text import agreed, clean, counted
from pantry_tui.services.plan.rows import REST, by_day

if TYPE_CHECKING:
    from collections.abc import Sequence

    from pantry_tui.services.plan.cooking import Cooked
    from pantry_tui.services.plan.rows import OnDay
    from pantry_tui.services.rows import Take, WeekView


def week(view: WeekView) -> list[str]:
    """Day by day, then what to know, what waits and what must go; last why each is in it."""
    state = "accepted" if view.accepted else "proposed"
    people = "1 person" if view.people == 1 else f"{view.people} people"
    lines = [f"{say(view.start)} to {say(view.end)}, for {people}, {state}"]
    lines += [clean(f"Eaten on {say(day)}: {what}.") for day, what in view.eaten]
    lines += map(clean, (*view.urgent, *(one.told for one in view.fallen)))
    rows = [(one.day, _row(one)) for one in by_day(view.take) if one.day >= view.first]
    rows += [(day, (say(day), "", why, *[""] * 5)) for day, why in view.bare.items()]
    if rows:
        heads = ("day", "code", "food", "take", "place", "servings", "thaw from", "dish")
        lines += table(heads, [row for _, row in sorted(rows, key=itemgetter(0))])
    lines += [view.nothing] if view.nothing else []
    lines += _listed("Open beside the meals", view.beside)
    lines += _listed("If you want more, these next", view.more)
    lines += _listed("Better kept, to last until more comes", view.kept)
    lines += [clean(view.no_main)] if view.no_main else []
    notes = view.notes[len(view.urgent) :]
    lines += [clean(one) for one in (*notes, *(text for _, text in view.seats_said))]
    if view.left_out:
        lines.append(clean(f"Skipped this week: {', '.join(view.left_out)}."))
    lines += list(named("Needs care, or has no published figure", view.waiting))
    lines += list(named("Discard as its own page says, never taste", view.discard))
    why = ["  " + clean(f"{one.code} {one.food}: {' '.join(one.why)}") for one in view.to_come]
    lines += ["Why:", *dict.fromkeys(why)] if why else []
    return [*lines, *(f"care: {one}" for one in view.cautions)]


def _row(one: OnDay) -> tuple[str, ...]:
    take = one.take
    named = say(one.day), take.code, f"{take.food}, {take.now}" if take.now else take.food
    if one.rest:
        return (*named, REST, "", "", "", take.dish)
    thaw = say(take.thaw_by) if take.thaw_by else ""
    some = kitchen_count(take.servings)
    much = take.amount or take.rest_of_one or str(take.count)
    return (*named, much, take.place, some, thaw, take.dish)


def _listed(head: str, takes: Sequence[Take]) -> list[str]:
    held = [clean(f"  {one.code} {one.food}, {_held(one)} in {one.place}") for one in takes]
    return [f"{head}:", *held] if held else []


def _held(take: Take) -> str:
    if take.amount:
        return take.amount
    if take.begun:  # nobody measures what is left of a jar of jam
        return "open"
    some = kitchen_count(take.servings)
    return "one serving" if some == "1" else f"{some} servings"


def cooked(found: Sequence[Cooked]) -> list[str]:
    """Each dish with where it stands, and what is to be bought for it."""
    if not found:
        return [
            "No dish of yours can be cooked from what stands; add one: "
            'pantry-tui household dish add "bean soup = 4 runner beans, 4 chicken stock".'
        ]
    lines: list[str] = []
    for one in found:
        due = (
            f", {counted(one.due, 'servings')} of it {agreed(one.due, 'falls', 'fall')} due"
            if one.due
            else ""
        )
        lines.append(
            clean(
                f"{one.dish}: {'all of it stands' if one.stands else 'something is lacking'}{due}"
            )
        )
        for part in one.takes:
            thaw = f", thawed by {say(part.ready)} at the earliest" if part.ready else ""
            codes = ", ".join(part.containers)
            said = f"{part.servings:g} {part.food}: {codes} in {part.place}{thaw}"
            lines.append(f"  {clean(said)}")
        lines += [
            f"  to buy: {counted(lack.servings, 'servings')} of {lack.food}" for lack in one.lacks
        ]
    return lines
