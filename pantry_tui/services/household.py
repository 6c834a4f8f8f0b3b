"""What kind of household it is: where it cooks, for how many, in which units."""

from __future__ import annotations

from collections.abc import Mapping
from typing import TYPE_CHECKING

from pantry_tui.core.log.payloads import Household
from pantry_tui.core.plan.appetite import MEALS, Appetite
from pantry_tui.core.safety.metric_jars import JARS_BY
from pantry_tui.core.words import Group
from pantry_tui.errors import BadInput
from pantry_tui.services.done import Done

if TYPE_CHECKING:
    from pantry_tui.services.pantry import Pantry
    from pantry_tui.services.rows import HouseholdFacts
    from pantry_tui.services.told import Told

#: Whose limits are followed; the first one where nobody said.
ADVICE = ("usual", "strictest")


#: The halves of the world; the first one where nobody said.
HALVES = ("north", "south")

#: As they are told.
_JARS = {"maker": "their makers' manuals", "strict": "the published sizes alone"}


def said_of(
    altitude_ft: int | None = None,
    people: int | None = None,
    units: str | None = None,
    advice: str | None = None,
    jars: str | None = None,
    half: str | None = None,
) -> Household:
    """What is said, None for what stays as it is. Raises BadInput for impossible numbers."""
    if altitude_ft is not None and not -1500 <= altitude_ft <= 20_000:
        raise BadInput("The altitude must lie between -1,500 and 20,000 ft.")
    if people is not None and not 1 <= people <= 100:
        raise BadInput("The household must be 1 to 100 people.")
    if units is not None and units not in ("us", "metric"):
        raise BadInput("Units are us or metric.")
    if advice is not None and advice not in ADVICE:
        raise BadInput("Advice is usual (US federal and extension) or strictest (any country's).")
    if jars is not None and jars not in JARS_BY:
        raise BadInput(
            "Jars go by maker (their makers' manuals) or strict (published sizes alone)."
        )
    if half is not None and half not in HALVES:
        raise BadInput("The half of the world is north or south.")
    return Household(altitude_ft, people, units, advice=advice, jars=jars, half=half)


def appetite(p: Told, learned: Mapping[str, float]) -> Appetite:
    """What the household eats of its stores in a week, at most: its own word before the log's."""
    asked = p.home.ceilings
    return Appetite(
        p.people,
        {name: most for name, most in asked.items() if name in tuple(Group)},
        {name: most for name, most in asked.items() if name not in tuple(Group)},
        learned,
        p.home.meals or MEALS,
        dict(p.home.table),
    )


def facts(p: Pantry) -> HouseholdFacts:
    """As it is now."""
    from pantry_tui.services.rows import HouseholdFacts

    advice, half = p.home.advice or ADVICE[0], HALVES[p.south]
    return HouseholdFacts(p.altitude_ft, p.people, p.units, advice, p.jars, half)


def change(
    p: Pantry,
    altitude_ft: int | None = None,
    people: int | None = None,
    units: str | None = None,
    advice: str | None = None,
    jars: str | None = None,
    half: str | None = None,
) -> Done:
    """Change what is given; None leaves it as it is. Jars that were canned when nobody had said
    the altitude, or a lower one, are checked for it. Raises BadInput for impossible numbers."""
    was = facts(p)
    said = said_of(altitude_ft, people, units, advice, jars, half)
    told: tuple[str, ...] = ()
    with p.together():
        if altitude_ft is None or altitude_ft == was.altitude_ft:
            p.book(said)
        else:
            from pantry_tui.services.stock import recheck

            before = recheck.canned(p)
            p.book(said)
            recheck.for_altitude(p, was.altitude_ft)
            told = recheck.said_of_change(p, before, was.altitude_ft)
    now = facts(p)
    if now.advice != was.advice:
        stricter = now.advice == "strictest"
        told += (
            f"Every date follows the {now.advice} advice now: some are "
            f"{'earlier' if stricter else 'later'} than before.",
        )
    if now.jars != was.jars:
        told += (
            f"Metric jars go by {_JARS[now.jars]} from now on; what is put up already keeps the "
            "verdict it had.",
        )
    if now.half != was.half:
        told += (f"Harvests are those of the {now.half}ern half of the world.",)
    where = say_altitude(now.altitude_ft)
    return Done(
        f"The household: {now.people} at table, {where}, in {now.units} units, "
        f"{now.advice} advice.",
        told,
    )


def say_altitude(feet: int | None) -> str:
    """ "1,800 ft", or that nobody said."""
    return "altitude not said" if feet is None else f"{feet:,} ft"
