"""What a verdict says beside its dates, in sentences."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from datetime import date

from pantry_tui.core import dates
from pantry_tui.core.canned import LIDDED
from pantry_tui.core.keeping.exposure import Span
from pantry_tui.core.keeping.no_day import IN_PROGRESS as IN_PROGRESS
from pantry_tui.core.keeping.no_day import NO_DAY as NO_DAY
from pantry_tui.core.keeping.no_day import NO_LIMIT as NO_LIMIT
from pantry_tui.core.keeping.no_day import NOTHING as NOTHING
from pantry_tui.core.keeping.no_day import PROCESS as PROCESS
from pantry_tui.core.keeping.no_day import gone_since
from pantry_tui.core.keeping.outcome import Outcome
from pantry_tui.core.keeping.printed import date_stands_alone, days_cover
from pantry_tui.core.keeping.quality import Spent
from pantry_tui.core.keeping.reckoning import Limit, Reckoning
from pantry_tui.core.keeping.rules import Rule, guessed
from pantry_tui.core.keeping.sold import Sold, not_believed
from pantry_tui.core.keeping.trouble import Trouble
from pantry_tui.core.model import DAY_MIN, FoodFacts, When
from pantry_tui.core.words import Kind, State, Verdict

#: Less than this part of a life is nothing that anybody would call spent.
_BEGUN = 0.01
#: Before the date.
DISCARD, BEST = "Discard after", "Best by"
#: While its two hours run.
TOO_WARM = "It stands too warm"


def of_spent(spent: Spent) -> Limit:
    """The end of a quality life, with how it was reckoned."""
    stretch, rule = spent.stretch, spent.rule
    assert rule.use is not None
    note = stretch.life.note
    estimate = f" (an estimate: {note})" if note else ""
    life, day = dates.span(rule.use, rule.unit), dates.say(stretch.day)
    # What began elsewhere is not whole any more where it went on.
    begun = spent.before >= _BEGUN
    counted = f"what was left of {life} on {day}" if begun else f"{life} from {day}"
    text = f"{counted}{estimate}. {rule.wording}"
    return Limit(spent.day, stretch.day, rule, text)


def over_at_once(limit: Limit) -> bool:
    """Whether it was over at some hour of day 0, so that it has no last day."""
    return limit.day < limit.start


def because(word: str, limit: Limit) -> str:
    """A date and why it is that one."""
    rule = limit.rule
    if isinstance(rule, Rule) and rule.kind is Kind.REFUSE:
        return rule.wording
    if limit.text:
        said = f"{word} {dates.say(limit.day)}: {limit.text}"
        return limit.text if word == DISCARD else said
    assert isinstance(rule, Rule)
    assert rule.use is not None
    return (
        f"{word} {dates.say(limit.day)}: {dates.span(rule.use, rule.unit)} from "
        f"{dates.say(limit.start)}. {rule.wording}"
    )


def guesses(food: FoodFacts, limits: Iterable[Limit | None]) -> list[str]:
    """What is said where a figure is another food's, which this one might be of."""
    guessing = any(
        limit is not None and isinstance(limit.rule, Rule) and guessed(limit.rule, food)
        for limit in limits
    )
    said = (
        f"No row names {food.name}: it is held to the strictest of its group, as if it were that."
    )
    return [said] if guessing else []


def ahead(safety: Limit, now: When) -> bool:
    """Whether its last day is still to come."""
    return safety.day >= now.day


def why_none(safety: Limit | None, doubted: Trouble | None, in_progress: bool) -> str:
    """Why there is no day after which it is discarded, "" where there is one."""
    if safety is not None:
        return gone_since(safety.start) if over_at_once(safety) else ""
    if doubted is not None:
        return NOTHING
    return IN_PROGRESS if in_progress else NO_LIMIT


def first_words(
    doubted: Trouble | None, in_progress: bool, outcomes: Sequence[Outcome], over: bool
) -> list[str]:
    """What is said before the dates; what is `over` is told nothing milder of a power cut."""
    mild = [one.said for one in outcomes if one.triage.verdict is not Verdict.DISCARD]
    found = [] if over else mild
    if doubted is not None:
        return [doubted.text, *found]
    if in_progress:
        found.insert(0, "Still in progress: look at it, and mark it ready when it is.")
    return found


def floor(outcomes: Sequence[Outcome], too_warm: bool) -> Verdict:
    """What power cuts leave, and what stands too warm, is eaten first."""
    soon = any(one.triage.verdict is Verdict.EAT_SOON for one in outcomes)
    return Verdict.EAT_SOON if soon or too_warm else Verdict.SOUND


def hurry(reckoning: Reckoning, runs_out: int | None) -> list[str]:
    """What is to be done at once with what stands too warm. The hour is said where it is known:
    the sentence may be read later than it was made."""
    if runs_out is None:
        return []
    now = reckoning.now
    left = runs_out - now.last - 1
    by = f" of {_clock(now, now.last)}, by {_clock(now, runs_out - 1)}" if now.known else ""
    return [f"{TOO_WARM}: eat it, or put it in the cold within {left} minutes{by}."]


def _clock(now: When, minute: int) -> str:
    """ "18:30", by the clock of the household."""
    hours, minutes = divmod((minute + now.zone) % DAY_MIN, 60)
    return f"{hours:02}:{minutes:02}"


def notes(reckoning: Reckoning, here: Sequence[Span], safety: Limit | None) -> list[str]:
    """What else a person should know of its place and its two hours."""
    found = []
    gone = reckoning.charged(reckoning.now.last)
    if gone and (safety is None or ahead(safety, reckoning.now)):
        found.append(f"{gone} of the 120 minutes that it may be out of the cold in all are gone.")
    if any(one.said.both_worlds is not None for one in reckoning.told):
        found.append(
            "It stood at 40 to 41 F: United States pages say 40 F, others 41 F, so the stricter "
            "day count of both stands."
        )
    printed = reckoning.batch.printed
    shorter = safety is not None and printed is not None and safety.day < printed
    open_end = safety is None or ahead(safety, reckoning.now)
    found += shelf_words(reckoning, here)
    if open_end and unsure_of_date(reckoning):
        found.append(
            "The printed date is not one that counts alone, and no days are published for it: only "
            "a use-by that a pack of its kind can have does; record dated=use-by then."
        )
    elif shorter and not date_stands_alone(reckoning.batch, reckoning.sold):
        found.append(
            "The published days end before the printed date. Only where that is a use-by does it "
            "count alone: record dated=use-by then."
        )
    if here and not here[0].measured:
        found.append(f"{here[0].temperature_f:g} F is assumed for its place, not measured.")
    return found


def shelf_words(reckoning: Reckoning, here: Sequence[Span]) -> list[str]:
    """What is said where nobody knows whether a shop keeps it on a shelf."""
    warm = any(not span.climate.is_cold and not span.opened for span in here)
    if warm and reckoning.sold is Sold.EITHER:
        return ["Nobody said whether it stood on the shop's shelf: record sold=shelf if it did."]
    if not_believed(reckoning.batch, reckoning.sold):
        return ["A shelf is believed of raw meat, fish and eggs only in a tin, jar or pouch."]
    return []


def unsure_of_date(reckoning: Reckoning) -> bool:
    """Whether a shut pack has a date that says nothing of its safety, and nothing else does."""
    if date_stands_alone(reckoning.batch, reckoning.sold):
        return False
    return any(
        reckoning.printed(one.state)
        and one.span.climate.is_cold
        and not (one.span.frozen or days_cover(one.said.safety, reckoning.batch.food))
        for one in reckoning.told
    )


def aged(reckoning: Reckoning, here: Sequence[Span]) -> tuple[tuple[date, str], ...]:
    """The word of caution for a sealed home-canned jar of more than two years: the University of
    Idaho Extension would throw it out (lids are rated 18 months); others set no end."""
    batch = reckoning.batch
    sealed = any(state is State.SEALED for span in here for state in reckoning.states(span))
    if batch.made is None or batch.method not in LIDDED or not sealed:
        return ()
    words = "Over two years old: one publisher would throw it out; look at seal and lid closely."
    return ((dates.add(batch.made, 24, "months"), words),)
