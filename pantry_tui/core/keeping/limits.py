"""How long a container keeps, and what to do with it on which day: the one judge of food safety.

`assess` does all the work once, from all that happened to a container and its places up to `now`;
what it gives is a ladder of days, from which `on` reads the verdict of a day by comparing dates.

Laws, tested over random histories (tests/judging):

* nothing that happens later moves `discard_after` later, and opening, thawing, moving and filling
  never lengthen it; cooler never lengthens it;
* any order of booking facts with the same moments gives the same verdict, and to stay where it is
  changes nothing;
* what no publication covers is unknown, and not usable where the food can hurt.

The day made, opened or thawed is day 0; the last day is day 0 + N and is still good. What is over
at once was last good on the day before.
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from datetime import date, timedelta

from pantry_tui.core.canned import LIDDED, low_acid_in_water
from pantry_tui.core.dataclass import replace
from pantry_tui.core.keeping import wording
from pantry_tui.core.keeping.asked import only_asked, while_asked
from pantry_tui.core.keeping.doubt import (
    CUT_OFF,
    RESCUE_DAYS,
    cut_hurts,
    cut_off,
    not_checked,
    noted,
    over_at_once,
    rescued,
    still_to_come,
    unknown_origin,
    unsealed,
    was_ahead,
)
from pantry_tui.core.keeping.exposure import Span, exposures
from pantry_tui.core.keeping.harm import can_hurt
from pantry_tui.core.keeping.ladder import Assessment as Assessment
from pantry_tui.core.keeping.ladder import Fixed
from pantry_tui.core.keeping.ladder import Judgement as Judgement
from pantry_tui.core.keeping.latest import caught_up
from pantry_tui.core.keeping.misdated import WRONG_CLOCK, as_at_any_time, of_wrong_clock
from pantry_tui.core.keeping.outcome import Outcome, after_cuts
from pantry_tui.core.keeping.packs import packed
from pantry_tui.core.keeping.printed import is_last_safe, too_far
from pantry_tui.core.keeping.reckoning import Limit, Reckoning
from pantry_tui.core.keeping.rules import Rule, Rulebook
from pantry_tui.core.keeping.shopfood import wide_ends, wide_limit
from pantry_tui.core.keeping.trouble import Trouble
from pantry_tui.core.keeping.unripe import unripe
from pantry_tui.core.keeping.warm import made_with, westmost
from pantry_tui.core.keeping.weather import FOREVER, above
from pantry_tui.core.keeping.with_signs import with_signs
from pantry_tui.core.model import DAY_MIN, Batch, Container, Cut, Place, Turn, When
from pantry_tui.core.words import Climate, Kind, Method, State, Verdict

PRINTED = "The printed date."


def judge_fresh(batch: Batch, state: State, place: Place, day: date, book: Rulebook) -> Judgement:
    """The verdict on what came into a state in a place on a day, on that day: day 0 of both."""
    minute = day.toordinal() * DAY_MIN
    now = When(minute, minute, day)
    container = Container("", "", 1, state, place.id, (Turn(now, "", place.id, state),))
    return assess(batch, container, {place.id: place}, book, now).on(day)


def as_packed(batch: Batch, opened: bool) -> Batch:
    """A pack under vacuum keeps the air out, and so has rules of its own until it is opened."""
    return replace(batch, food=packed(batch.food, batch, opened))


def assess(
    batch: Batch,
    container: Container,
    places: Mapping[str, Place],
    book: Rulebook,
    now: When,
    used: int = 0,
) -> Assessment:
    """All that can be said of a container up to `now`, a known minute. `used`: the minutes out of
    the cold that it was made with."""
    now = caught_up(container, places, now)
    spans = exposures(batch, container, places, now)
    start = Assessment(
        now.day,
        standing=(
            *still_to_come(container, places, now),
            *was_ahead(batch, container, spans, places, now),
            *not_checked(batch, spans),
        ),
        facts_to=_facts_to(batch, container, spans, places),
        spans=spans,
        warm_used=used,
    )
    own = _by_dates(batch, container, start, places, book, now)

    def alone(meant: Batch, box: Container, there: Mapping[str, Place] = places) -> Assessment:
        return assess(replace(meant, suspect=""), box, there, book, now, used)

    if batch.note:
        from pantry_tui.core.keeping.as_noted import as_noted  # few starts read a note

        own = as_noted(batch, container, own, alone)
    own = as_at_any_time(batch, container, own, places, now, alone)
    return with_signs(batch, container, own)


def _by_dates(
    batch: Batch,
    container: Container,
    start: Assessment,
    places: Mapping[str, Place],
    book: Rulebook,
    now: When,
) -> Assessment:
    spans: Sequence[Span] = start.spans
    if low_acid_in_water(batch.method, batch.food):
        why = "Low-acid food in boiling water: spores live through it, so it is suspect unseen."
        return _settled(start, Fixed(Verdict.DO_NOT_TASTE), (why,), wording.PROCESS)
    if batch.method is Method.LIME:
        # Refused wherever it stands, so neither thawing nor any other state changes that.
        rules = tuple(book.speaking(batch.food, batch.method, State.SEALED, Climate.ROOM))
        said = tuple(rule.wording for rule in rules)
        return replace(_settled(start, Fixed(Verdict.DISCARD), said, wording.PROCESS), rules=rules)
    asked = only_asked(batch, spans)
    if batch.doubt and not asked:
        saved = rescued(batch, spans, book)
        if saved is None:
            return _doubtful(batch, start, now)
        spans = saved
    reckoning = Reckoning(batch, spans, book, now, unsealed(batch, container, asked))
    reckoning.home = westmost(container, now)
    reckoning.warm += made_with(start.warm_used, spans)
    against = [Trouble(WRONG_CLOCK)] if of_wrong_clock(container, now) else []
    against += [Trouble(CUT_OFF)] if cut_off(batch, container) else []
    hurts = [*map(Trouble, asked), *_may_harm(batch, container, spans, book)]
    return while_asked(_weigh(reckoning, start, places, against, hurts), asked, batch, now)


def _may_harm(
    batch: Batch, container: Container, spans: Sequence[Span], book: Rulebook
) -> list[Trouble]:
    """What makes harmful what else could not hurt: nobody knows how it was canned, its note says
    what has to be looked at, it is no finished ferment, or a crop that was cut and is not in the
    cold."""
    origin = unknown_origin(batch)
    if not origin and cut_off(batch, container) and cut_hurts(batch, spans):
        origin = CUT_OFF
    raw = unripe(batch, spans, container.turns[0].when.zone, book)
    return [*(Trouble(one) for one in (origin, noted(batch)) if one), *([raw] if raw else [])]


def _settled(start: Assessment, fixed: Fixed, reasons: tuple[str, ...], why: str) -> Assessment:
    return replace(start, fixed=fixed, reasons=reasons, why_no_discard=why)


def _doubtful(batch: Batch, start: Assessment, now: When) -> Assessment:
    """A process that no publication stands for gives no shelf date. What may still be done is said
    while it may be."""
    why = batch.doubt
    then = Verdict.DISCARD if batch.food.is_acid else Verdict.DO_NOT_TASTE
    if (at_once := over_at_once(why)) is not None:
        gone = _settled(start, Fixed(at_once), why, wording.PROCESS)
        return replace(gone, discard_after=batch.made and batch.made - timedelta(days=1))
    if batch.made is None:
        return _settled(start, Fixed(then), why, wording.PROCESS)
    if batch.method in LIDDED and any(span.climate.is_cold for span in start.spans):
        # It came too late, or left the cold that had saved it: that is over at once.
        lost = _settled(start, Fixed(then), why, wording.PROCESS)
        return replace(lost, discard_after=batch.made - timedelta(days=1))
    by = batch.made + timedelta(days=RESCUE_DAYS)
    found = _settled(start, Fixed(Verdict.UNKNOWN, by, then), why, wording.PROCESS)
    if not batch.possible or now.day > by:
        return found
    over = (by.toordinal() + 1) * DAY_MIN - now.zone
    return replace(found, reasons=(*why, batch.possible), again_at=over)


def _weigh(
    reckoning: Reckoning,
    start: Assessment,
    places: Mapping[str, Place],
    against: Sequence[Trouble],
    hurts: Sequence[Trouble],
) -> Assessment:
    """`against` leaves it unknown, `hurts` makes it harmful beside."""
    batch, now = reckoning.batch, reckoning.now
    outcomes = after_cuts(reckoning, places, now)
    safety = _safety(reckoning, outcomes)
    here = [span for span in reckoning.spans if span.end >= FOREVER]
    in_progress = any(span.in_progress for span in here)
    if (
        safety is not None
        and safety.text == PRINTED
        and (far := too_far(batch, reckoning.sold, here))
    ):
        hurts = (*hurts, Trouble(far))
    harmless = not (hurts or can_hurt(batch, in_progress))
    if batch.made is None or batch.made > now.day:
        start = replace(start, harmless=harmless, again_at=reckoning.runs_out(now.last))
        return _undated(reckoning, start, safety)
    quality = _quality(reckoning, safety)
    troubles = [*against, *hurts]
    troubles += reckoning.troubles()
    troubles += [Trouble(one.said) for one in outcomes if one.triage.verdict is Verdict.UNKNOWN]
    doubted = next(iter(troubles), None)
    over = safety is not None and not wording.ahead(safety, now)
    runs_out = None if over else reckoning.runs_out(now.last)
    limits = [(wording.DISCARD, safety), (wording.BEST, quality)]
    if over and safety is not None and wording.over_at_once(safety):
        limits = limits[:1]  # until when it would have been good is no matter any more
    if runs_out is not None:  # while its two hours run, no later day is said of it
        limits = [one for one in limits if one[1] is not None and one[1].day <= now.day]
    reasons = wording.first_words(doubted, in_progress, outcomes, over)
    reasons += wording.hurry(reckoning, runs_out)
    reasons += [wording.because(word, limit) for word, limit in limits if limit is not None]
    reasons += wording.guesses(batch.food, (safety, quality))
    reasons += wording.notes(reckoning, here, safety)
    both = (limit.rule for limit in (safety, quality) if limit is not None)
    rules = [rule for rule in both if rule is not None]
    if doubted is not None:
        rules += [rule for rule in doubted.rules if rule not in rules]
        # "No safety end" of all frozen food would say the opposite of what is doubted here.
        reasons += [one.wording for one in doubted.rules if one.kind is not Kind.SAFETY or one.use]
    return replace(
        start,
        best_by=quality.day if quality else None,
        discard_after=safety.day if safety else None,
        began=max(reckoning.clocks[state] for span in here for state in reckoning.states(span)),
        doubt=doubted is not None,
        in_progress=in_progress,
        floor=wording.floor(outcomes, runs_out is not None),
        over_from=now.day + timedelta(days=1) if runs_out is not None else None,
        reasons=tuple(dict.fromkeys(reasons)),
        later=wording.aged(reckoning, here),
        rules=tuple(rules),
        why_no_discard=wording.why_none(safety, doubted, in_progress),
        harmless=harmless,
        refused=reckoning.refused_here(),
        again_at=runs_out,
        warm_used=reckoning.charged(now.last),
    )


def _safety(reckoning: Reckoning, outcomes: Sequence[Outcome]) -> Limit | None:
    """The earliest of all safety limits that ever started."""
    found = list(reckoning.limits)
    over = reckoning.over(reckoning.now.last)
    if over is not None:
        found.append(over)
    found += [
        Limit(one.day - timedelta(days=1), one.day, next(iter(one.triage.rules), None), one.said)
        for one in outcomes
        if one.triage.verdict is Verdict.DISCARD
    ]
    batch = reckoning.batch
    if batch.printed is not None and is_last_safe(batch, reckoning.sold):
        found.append(Limit(batch.printed, batch.printed, None, PRINTED))
    return min(found, key=lambda one: (one.day, one.text), default=None)


def _quality(reckoning: Reckoning, safety: Limit | None) -> Limit | None:
    """The earlier of the published and the household's own; a printed date stands for both, unless
    it lies behind the last safe day."""
    batch = reckoning.batch
    found = [reckoning.own_quality()]
    over = safety is not None and batch.printed is not None and safety.day < batch.printed
    if batch.method is Method.BOUGHT and batch.printed is not None and not over:
        found.append(Limit(batch.printed, batch.printed, None, PRINTED))
    spent = reckoning.spent()
    if spent is not None:
        found.append(wording.of_spent(spent))
    found += [wide_limit(one, safety) for one in wide_ends(reckoning)]
    return min((one for one in found if one), key=lambda one: one.day, default=None)


def _undated(reckoning: Reckoning, start: Assessment, safety: Limit | None) -> Assessment:
    if safety is not None:
        why = "Nobody knows when it was made, and a safety limit runs on it: judged as past it."
        rules = (safety.rule,) if safety.rule is not None else ()
        said = safety.rule.wording if isinstance(safety.rule, Rule) else safety.text
        fixed = _settled(start, Fixed(Verdict.DISCARD), (why, said), wording.NO_DAY)
        return replace(fixed, rules=rules)
    why = "Nobody knows when it was made: no date can be given."
    here = tuple(one.said.found for one in reckoning.told if one.span.end >= FOREVER)
    found = tuple(dict.fromkeys(rule for rules in here for rule in rules))
    return replace(_settled(start, Fixed(Verdict.UNKNOWN), (why,), wording.NO_DAY), rules=found)


def _facts_to(
    batch: Batch, container: Container, spans: Sequence[Span], places: Mapping[str, Place]
) -> date:
    """The latest day of anything that it rests on."""
    days = [turn.when.day for turn in container.turns]
    days += [seen.day for seen in container.signs]
    days += [day for day in (container.looked, batch.made) if day is not None]
    for name in dict.fromkeys(span.place for span in spans):
        for place in above(name, places):
            days += [
                fact.end.day if isinstance(fact, Cut) else fact.when.day
                for fact in place.facts[-1:]
            ]
    return max(days)
